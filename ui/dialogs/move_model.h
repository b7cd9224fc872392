// Why: the machines that moved between two rounds, as a table. Plain data handed in whole. Thread: the
// window's.
#pragma once

#include <QAbstractTableModel>
#include <memory>

#include "core/round/comparison.h"

namespace fettle {

class MoveModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { Machine, Move, Why, Decided, Columns };
    using QAbstractTableModel::QAbstractTableModel;

    void set(std::shared_ptr<const RoundComparison> comparison);
    QString tagAt(int row) const;
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString text(const MachineMove& move, int column) const;
    std::shared_ptr<const RoundComparison> comparison_;
};

}  // namespace fettle
