#include "ui/model/ask_model.h"

#include "ui/model/numbers.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"

namespace fettle {

void AskModel::set(std::vector<Ask> asks, const QTimeZone& zone) {
    beginResetModel();
    asks_ = std::move(asks);
    zone_ = zone;
    endResetModel();
}

void AskModel::setUnits(const Units& units) {
    beginResetModel();
    units_ = units;
    endResetModel();
}

const Ask* AskModel::at(int row) const {
    return row >= 0 && row < rowCount() ? &asks_[std::size_t(row)] : nullptr;
}

int AskModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(asks_.size());
}

int AskModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(Columns);
}

QString AskModel::stateText(const Ask& ask) const {
    const std::string state = ask.state();
    if (state == "open") return tr("open");
    if (state == "dropped")
        return ask.spec.note.empty() ? tr("dropped") : tr("dropped: %1").arg(shown(ask.spec.note));
    if (ask.request.recording) return tr("answered by recording %1").arg(*ask.request.recording);
    return ask.spec.note.empty() ? tr("answered by hand")
                                 : tr("answered by hand: %1").arg(shown(ask.spec.note));
}

QString AskModel::text(const Ask& ask, int column) const {
    const Request& r = ask.request;
    switch (column) {
        case Area:
            return shown(ask.area);
        case Machine:
            return shown(r.machine);
        case By:
            return r.byHand ? tr("hand") : tr("node");
        case Where:
            return r.direction.empty() ? shown(r.point)
                                       : tr("%1, %2").arg(shown(r.point), shown(r.direction));
        case Seconds:
            return ask.spec.seconds > 0 ? numberText(ask.spec.seconds) : QString();
        case Band:
            return ask.spec.topHz > 0
                       ? fixedText(shownUnit(QStringLiteral("Hz"), units_).shown(ask.spec.topHz), 0)
                       : QString();
        case Lines:
            return linesOf(ask.spec) > 0 ? QString::number(linesOf(ask.spec)) : QString();
        case Why:
            return ask.spec.tachometer ? tr("with a tachometer: %1").arg(shown(r.why)) : shown(r.why);
        case Asked:
            return dateText(siteTime(r.askedAt, zone_).date());
        case State:
            return stateText(ask);
        default:
            return {};
    }
}

QVariant AskModel::data(const QModelIndex& index, int role) const {
    const Ask* ask = at(index.row());
    if (!index.isValid() || !ask) return {};
    if (role == Qt::DisplayRole) return text(*ask, index.column());
    if (role == Qt::ToolTipRole) return index.column() == Why ? text(*ask, Why) : QString();
    if (role == Qt::TextAlignmentRole) {
        const bool number = index.column() >= Seconds && index.column() <= Lines;
        return int((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    }
    return {};
}

QVariant AskModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    const QString unit = shownUnit(QStringLiteral("Hz"), units_).unit;
    const QString heads[] = {
        tr("area"),  tr("machine"), tr("by"),    tr("where"), tr("length, s"), tr("band to, %1").arg(unit),
        tr("lines"), tr("why"),     tr("asked"), tr("state")};
    if (role == Qt::DisplayRole && section >= 0 && section < Columns) return heads[section];
    if (role == Qt::TextAlignmentRole)
        return int((section >= Seconds && section <= Lines ? Qt::AlignRight : Qt::AlignLeft) |
                   Qt::AlignVCenter);
    return {};
}

}  // namespace fettle
