// Why: what is asked for as a table: machine, where, how, why, since when, state. Thread: the window's.
#pragma once

#include <QAbstractTableModel>
#include <QTimeZone>
#include <vector>

#include "core/fleet/asks.h"
#include "ui/model/units.h"

namespace fettle {

class AskModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { Area, Machine, By, Where, Seconds, Band, Lines, Why, Asked, State, Columns };

    using QAbstractTableModel::QAbstractTableModel;

    void set(std::vector<Ask> asks, const QTimeZone& zone);
    void setUnits(const Units& units);
    const Ask* at(int row) const;
    const std::vector<Ask>& asks() const { return asks_; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString text(const Ask& ask, int column) const;
    QString stateText(const Ask& ask) const;

    std::vector<Ask> asks_;
    QTimeZone zone_ = QTimeZone::utc();
    Units units_;
};

}  // namespace fettle
