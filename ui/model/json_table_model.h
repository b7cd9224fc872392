// Why: bearings, shafts, gears, belts, points, channels and nodes are lists in a machine's description; each
// is edited as a table over the JSON itself. What differs is where the rows are: a TableRows says it. Columns
// whose pointer begins with "@" are not values of the row: its owner ("@component", "@position", "@point") or
// something worked out ("@known", "@speed"). Thread: the window's.
#pragma once

#include <QAbstractTableModel>
#include <memory>
#include <vector>

#include "ui/model/machine_document.h"

namespace fettle {

struct TableRow {
    std::string pointer;  // of the row's object
    std::string owner;    // id of what it belongs to: component, point
    std::string key;      // position of a bearing
};

class TableRows {
  public:
    virtual ~TableRows() = default;
    virtual std::vector<TableRow> rows(const MachineDocument& document) const = 0;
    virtual void add(MachineDocument& document, const TableRow* beside) const = 0;
    virtual QString special(const MachineDocument& document, const TableRow& row,
                            const std::string& name) const;
    // False: not possible.
    virtual bool setSpecial(MachineDocument& document, const TableRow& row, const std::string& name,
                            const QString& text) const;
    virtual QStringList choices(const MachineDocument& document, const std::string& name) const;
};

// "/gears": one array. `fresh` is a new row; its "id" is made different from the others'.
std::unique_ptr<TableRows> arrayRows(const std::string& pointer, Json fresh);
// Channels or nodes of all points: "/points/*/channels".
std::unique_ptr<TableRows> pointRows(const std::string& list, Json fresh);
// Bearings of driver, driven machine and boxes.
std::unique_ptr<TableRows> bearingRows();
// Shafts with the speed they turn at.
std::unique_ptr<TableRows> shaftRows();

class JsonTableModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    JsonTableModel(MachineDocument& document, std::unique_ptr<TableRows> rows, std::vector<FieldSpec> columns,
                   QObject* parent = nullptr);

    const std::vector<FieldSpec>& columns() const { return columns_; }
    QStringList choices(int column) const;
    QString troubleOf(int row, int column) const;
    QStringList troubles() const;  // "row 2, BPFO: must be ..."
    void setReadOnly(bool readOnly);
    const TableRow* row(int index) const;  // null: there is none
    int add(int besideRow);                // the new row
    void remove(int row);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

  private:
    void refresh();
    bool isSpecial(int column) const { return columns_[std::size_t(column)].pointer.front() == '@'; }
    std::string pointerOf(int row, int column) const;

    MachineDocument& document_;
    std::unique_ptr<TableRows> source_;
    std::vector<FieldSpec> columns_;
    std::vector<TableRow> rows_;
    bool readOnly_ = false;
};

}  // namespace fettle
