#include "ui/dialogs/move_model.h"

#include "ui/model/round_words.h"
#include "ui/model/words.h"

namespace fettle {

void MoveModel::set(std::shared_ptr<const RoundComparison> comparison) {
    beginResetModel();
    comparison_ = std::move(comparison);
    endResetModel();
}

QString MoveModel::tagAt(int row) const {
    if (!comparison_ || row < 0 || row >= rowCount()) return {};
    return shown(comparison_->moves[std::size_t(row)].tag);
}

int MoveModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !comparison_ ? 0 : int(comparison_->moves.size());
}

int MoveModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

QString MoveModel::text(const MachineMove& move, int column) const {
    const auto orNothing = [](const std::string& words) {
        return words.empty() ? tr("nothing") : shown(words);
    };
    switch (column) {
        case Machine:
            return move.service.empty() ? shown(move.tag)
                                        : tr("%1, %2").arg(shown(move.tag), shown(move.service));
        case Move:
            return tr("%1: %2").arg(moveWord(move.move), urgencyStep(move));
        case Why: {
            const std::string& finding = move.findingAfter.empty() ? move.findingBefore : move.findingAfter;
            const QString why = spelledDates(shown(move.why));
            return finding.empty() ? why : tr("%1. %2").arg(shown(finding), why);
        }
        case Decided:
            if (move.decidedBefore.empty() && move.decidedAfter.empty()) return {};
            return spelledDates(
                tr("%1; then %2").arg(orNothing(move.decidedBefore), orNothing(move.decidedAfter)));
    }
    return {};
}

QVariant MoveModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !comparison_) return {};
    const MachineMove& move = comparison_->moves[std::size_t(index.row())];
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole || role == Qt::AccessibleTextRole)
        return text(move, index.column());
    return {};
}

QVariant MoveModel::headerData(int section, Qt::Orientation orientation, int role) const {
    static const char* const names[] = {QT_TR_NOOP("Machine"), QT_TR_NOOP("Move"), QT_TR_NOOP("Why"),
                                        QT_TR_NOOP("Decided then, and now")};
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section < 0 || section >= Columns)
        return {};
    return tr(names[section]);
}

}  // namespace fettle
