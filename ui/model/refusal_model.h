// Why: what intake refused or parked as a table: file, place, rule, since when, how often. Thread: the
// window's.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "core/store/log_store.h"

namespace fettle {

class RefusalModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { File, Place, Rule, Kind, Since, Times, Columns };

    using QAbstractTableModel::QAbstractTableModel;

    void set(std::vector<Refusal> refusals);
    void add(const Refusal& refusal);
    const Refusal* at(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    std::vector<Refusal> refusals_;
};

}  // namespace fettle
