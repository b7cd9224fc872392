// Why: the ledger as a view: columns that fit the window, groups across the whole width, machines one line
// each; a key or a click sorts within the groups. Emits what was picked, decides nothing. Thread: the
// window's.
#pragma once

#include <QTableView>
#include <string>
#include <vector>

#include "ui/model/ledger_model.h"
#include "ui/theme/theme.h"

namespace fettle {

class RoundLedger : public QTableView {
    Q_OBJECT
  public:
    RoundLedger(LedgerModel& model, const Theme& theme, QWidget* parent = nullptr);

    std::string current() const;              // tag; empty: a group's row or none
    void setCurrent(const std::string& tag);  // unfolds its group, scrolls there
    void chooseFirst();                       // the first machine shown
    void foldCurrent();
    void showOrder();  // the model's, in the head

    // What the reader sees and has chosen, across a round that was read again.
    struct Standing {
        std::vector<std::string> chosen;
        int top = 0;
    };
    Standing standing() const;
    void standAgain(const Standing& standing);

  signals:
    void orderWanted(LedgerModel::Order order, bool backwards);  // a column's head was clicked
    void columnsChanged();                                       // one went or came back for want of room
    void currentMachineChanged();
    void machineOpened(const QString& tag);  // double click
    void menuWanted(const QPoint& globalPlace);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

  private:
    void arrange();  // spans and heights, after every reset
    void stand(int row, int column);
    void fitColumns();
    void sortBy(int column);

    LedgerModel& model_;
    std::string kept_;  // current machine, across resets
};

}  // namespace fettle
