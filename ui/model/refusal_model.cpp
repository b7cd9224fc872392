#include "ui/model/refusal_model.h"

#include "core/base/file_system.h"
#include "ui/model/words.h"

namespace fettle {

void RefusalModel::set(std::vector<Refusal> refusals) {
    beginResetModel();
    refusals_ = std::move(refusals);
    endResetModel();
}

void RefusalModel::add(const Refusal& refusal) {
    const int row = rowCount();
    beginInsertRows({}, row, row);
    refusals_.push_back(refusal);
    endInsertRows();
}

const Refusal* RefusalModel::at(int row) const {
    return row < 0 || row >= int(refusals_.size()) ? nullptr : &refusals_[std::size_t(row)];
}

int RefusalModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(refusals_.size());
}

int RefusalModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

QVariant RefusalModel::data(const QModelIndex& index, int role) const {
    const Refusal* refusal = at(index.row());
    if (!refusal) return {};
    if (role == Qt::ToolTipRole) return index.column() == File ? shown(refusal->path) : shown(refusal->rule);
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
        case File:
            return shown(fileNameOf(refusal->path));
        case Place:
            return shown(refusal->place);
        case Rule:
            return shown(refusal->rule);
        case Kind:
            return refusal->kind == "parked" ? tr("parked") : tr("refused");
        case Since:
            return refusal->firstSeen == Instant{} ? QString() : dateText(refusal->firstSeen);
        case Times:
            return refusal->times;
    }
    return {};
}

QVariant RefusalModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= Columns) return {};
    static const char* const names[] = {QT_TR_NOOP("File"), QT_TR_NOOP("Place"), QT_TR_NOOP("Rule"),
                                        QT_TR_NOOP("Kind"), QT_TR_NOOP("Since"), QT_TR_NOOP("Times")};
    if (role == Qt::DisplayRole) return tr(names[section]);
    if (role == Qt::TextAlignmentRole) return QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    return {};
}

}  // namespace fettle
