// Why: the alerts between rounds as a table: state, machine, what, since when, told where. Thread: the
// window's.
#pragma once

#include <QAbstractTableModel>
#include <QTimeZone>
#include <vector>

#include "core/store/alert_store.h"

namespace fettle {

QString deliverWord(const std::string& deliver);                    // "at once, also in quiet hours"
QString alertKindWord(const std::string& kind);                     // "weight of a fault"
QString alertStateWord(const Alert& alert);                         // "open", "acknowledged", "cleared"
QString alertStateText(const Alert& alert, const QTimeZone& zone);  // with who, when, why

class AlertModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { State, Machine, What, Since, Delivery, Columns };

    using QAbstractTableModel::QAbstractTableModel;

    void set(std::vector<Alert> alerts, const QTimeZone& zone);
    const Alert* at(int row) const;
    const QTimeZone& zone() const { return zone_; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString text(const Alert& alert, int column) const;

    std::vector<Alert> alerts_;
    QTimeZone zone_ = QTimeZone::utc();
};

}  // namespace fettle
