// Why: one list of a description (bearings, gears, points ...) with its head, add and remove, and below it
// what is wrong, line by line. Thread: the window's.
#pragma once

#include <QWidget>

#include "ui/model/json_table_model.h"
#include "ui/theme/theme.h"

class QLabel;
class QPushButton;
class QTableView;

namespace fettle {

class RegisterTable : public QWidget {
    Q_OBJECT
  public:
    RegisterTable(MachineDocument& document, std::unique_ptr<TableRows> rows, std::vector<FieldSpec> columns,
                  const QString& title, const char* name, const Theme& theme, QWidget* parent = nullptr);

    void setReadOnly(bool readOnly);
    bool hasTrouble() const { return !model_.troubles().isEmpty(); }
    JsonTableModel& model() { return model_; }
    int currentRow() const;
    void chooseRow(int row);

  private:
    void refresh();
    void dress();
    void fitHeight();
    int headWidth(int column) const;

    const Theme& theme_;
    JsonTableModel model_;
    QTableView* view_;
    QLabel *head_, *troubles_;
    QPushButton *add_, *remove_;
};

}  // namespace fettle
