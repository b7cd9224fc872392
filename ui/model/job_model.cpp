#include "ui/model/job_model.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/model/words.h"

namespace fettle {

QString jobStateWord(const std::string& state) {
    if (state == "drafted") return QCoreApplication::translate("Jobs", "drafted");
    if (state == "issued") return QCoreApplication::translate("Jobs", "issued");
    if (state == "scheduled") return QCoreApplication::translate("Jobs", "scheduled");
    if (state == "done") return QCoreApplication::translate("Jobs", "done");
    if (state == "verified") return QCoreApplication::translate("Jobs", "verified");
    if (state == "closed") return QCoreApplication::translate("Jobs", "closed");
    return shown(state);
}

QString jobFindingWords(const Job& job) {
    QStringList words;
    for (const std::string& text : job.findings) {
        const JobFinding finding = jobFinding(text);
        words << faultWords(finding.fault, finding.at);
    }
    return words.join(QStringLiteral("; "));
}

void JobModel::set(std::vector<JobRow> rows) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

const JobRow* JobModel::at(int row) const {
    return row < 0 || row >= int(rows_.size()) ? nullptr : &rows_[std::size_t(row)];
}

int JobModel::rowOf(std::int64_t job) const {
    const auto found =
        std::find_if(rows_.begin(), rows_.end(), [job](const JobRow& row) { return row.job.id == job; });
    return found == rows_.end() ? -1 : int(found - rows_.begin());
}

int JobModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(rows_.size());
}

int JobModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

QVariant JobModel::data(const QModelIndex& index, int role) const {
    const JobRow* row = at(index.row());
    if (!row) return {};
    if (role == Qt::ToolTipRole)
        return index.column() == State ? shown(row->words) : data(index, Qt::DisplayRole);
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
        case Number:
            return row->job.revision > 1 ? tr("%1, R%2").arg(row->job.id).arg(row->job.revision)
                                         : QString::number(row->job.id);
        case Machine:
            return shown(row->job.machine);
        case Findings:
            return jobFindingWords(row->job);
        case State:
            return row->replacedBy ? tr("replaced by job %1").arg(*row->replacedBy)
                                   : jobStateWord(row->job.state);
        case Due:
            return row->due.empty() ? QString()
                   : row->overdue   ? tr("%1, overdue").arg(dateText(row->due))
                                    : dateText(row->due);
        case Priority:
            return row->job.urgency.empty()
                       ? QString()
                       : tr("%1, %2 of 4").arg(urgencyWord(row->job.urgency)).arg(row->priority);
        case WorkOrder:
            return shown(row->job.workOrder);
    }
    return {};
}

QVariant JobModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= Columns) return {};
    static const char* const names[] = {
        QT_TR_NOOP("Job"),     QT_TR_NOOP("Machine"),  QT_TR_NOOP("For"),       QT_TR_NOOP("State"),
        QT_TR_NOOP("By when"), QT_TR_NOOP("Priority"), QT_TR_NOOP("Work order")};
    if (role == Qt::DisplayRole) return tr(names[section]);
    if (role == Qt::TextAlignmentRole) return QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    return {};
}

}  // namespace fettle
