// Why: jobs as a table, the same for one machine and the fleet: what is overdue says so in words. Thread: the
// window's.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "core/fleet/job_desk.h"

namespace fettle {

class JobModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { Number, Machine, Findings, State, Due, Priority, WorkOrder, Columns };

    using QAbstractTableModel::QAbstractTableModel;
    void set(std::vector<JobRow> rows);
    const JobRow* at(int row) const;    // null: no such row
    int rowOf(std::int64_t job) const;  // -1: not among them

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    std::vector<JobRow> rows_;
};

QString jobStateWord(const std::string& state);
QString jobFindingWords(const Job& job);  // "outer-race defect, driver DE; unbalance, driven"

}  // namespace fettle
