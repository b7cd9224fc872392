#include "ui/model/alert_model.h"

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

QString deliverWord(const std::string& deliver) {
    if (deliver == "now") return tr("at once, also in quiet hours");
    if (deliver == "day") return tr("at once, after quiet hours");
    if (deliver == "digest") return tr("in the daily digest");
    return tr("not sent, listed only");
}

QString alertKindWord(const std::string& kind) {
    if (kind == "weight") return tr("weight of a fault");
    if (kind == "zone") return tr("zone of a level");
    if (kind == "stage") return tr("stage of a bearing");
    if (kind == "growth") return tr("growth in a week");
    return tr("silence of a sensor");
}

QString alertStateWord(const Alert& alert) {
    const QString state = QString::fromLatin1(alert.state());
    if (state == QStringLiteral("cleared")) return tr("cleared");
    if (state == QStringLiteral("acknowledged")) return tr("acknowledged");
    return alert.ended ? tr("open, no longer seen") : tr("open");
}

QString alertStateText(const Alert& alert, const QTimeZone& zone) {
    if (!alert.acknowledged) return tr("Open: nobody has seen to it yet.");
    return tr("Acknowledged by %1 on %2: %3")
        .arg(shown(alert.acknowledgedBy), momentText(*alert.acknowledged, zone),
             shown(alert.acknowledgedWhy));
}

void AlertModel::set(std::vector<Alert> alerts, const QTimeZone& zone) {
    beginResetModel();
    alerts_ = std::move(alerts);
    zone_ = zone;
    endResetModel();
}

const Alert* AlertModel::at(int row) const {
    return row >= 0 && row < rowCount() ? &alerts_[std::size_t(row)] : nullptr;
}

int AlertModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(alerts_.size());
}

int AlertModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(Columns);
}

QString AlertModel::text(const Alert& alert, int column) const {
    switch (column) {
        case State:
            return alertStateWord(alert);
        case Machine:
            return shown(alert.machine);
        case What:
            return shown(alert.words);
        case Since:
            return shortMomentText(alert.since, zone_);
        case Delivery:
            return deliverWord(alert.deliver);
        default:
            return {};
    }
}

QVariant AlertModel::data(const QModelIndex& index, int role) const {
    const Alert* alert = at(index.row());
    if (!index.isValid() || !alert) return {};
    if (role == Qt::DisplayRole) return text(*alert, index.column());
    if (role == Qt::ToolTipRole) return index.column() == What ? text(*alert, What) : QVariant();
    return {};
}

QVariant AlertModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    const QString heads[] = {tr("state"), tr("machine"), tr("what"), tr("since"), tr("sent")};
    return section >= 0 && section < Columns ? heads[section] : QVariant();
}

}  // namespace fettle
