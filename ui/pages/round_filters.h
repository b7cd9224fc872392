// Why: how the ledger is looked at: what is grouped and sorted by what, and which machines are shown. Each is
// a choice that is reached by Tab and steps by a key; a click on a column's head sorts as well. Emits, knows
// no model. Thread: the window's.
#pragma once

#include <QWidget>

#include "ui/model/ledger_model.h"

class QComboBox;
class QLineEdit;

namespace fettle {

class RoundFilters : public QWidget {
    Q_OBJECT
  public:
    explicit RoundFilters(QWidget* parent = nullptr);

    void setAreas(const QStringList& areas);
    void setDraft(bool draft);  // of a draft nothing was decided
    void showOrder(LedgerModel::Grouping grouping, LedgerModel::Order order, bool backwards);
    void setUrgencyAndText(const std::string& urgency, const QString& text);
    void clear();
    void focusText();
    LedgerFilter filter() const;

  signals:
    void filterChanged(const LedgerFilter& filter);
    void groupingWanted(LedgerModel::Grouping grouping);
    void orderWanted(LedgerModel::Order order);

  private:
    QComboBox* choice(const char* name, const QString& label, const QString& hint);
    void fill();

    QComboBox *grouping_, *order_, *urgency_, *decision_, *area_;
    QLineEdit* text_;
};

QString orderName(LedgerModel::Order order);
QString groupingName(LedgerModel::Grouping grouping);

}  // namespace fettle
