// Why: half a designation, three sizes from a caliper, or a line found in a spectrum: which bearing could it
// be? One table answers all three while one types. What is found can be put into the register's form. Shows
// only what core/workshop/bearing_finder finds. Thread: the window's.
#pragma once

#include <QDialog>

#include "core/workshop/bearing_finder.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"

class QDoubleSpinBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QStandardItemModel;
class QTableView;

namespace fettle {

class BearingFinderDialog : public QDialog {
    Q_OBJECT
  public:
    // `rpm`: of the shaft, where it is known, else 0.
    BearingFinderDialog(const Theme& theme, const Units& units, double rpm, QWidget* parent);
    void refusePut(const QString& why);  // there is no form that could take a bearing

  signals:
    void bearingWanted(const KnownBearing& bearing, bool withBuild);

  private:
    QDoubleSpinBox* number(const char* name, const QString& says, const QString& unit, double most,
                           int decimals);
    QWidget* wishes();
    QTableView* results(const Theme& theme);
    void orderOfLine();
    void find();
    void add(const KnownBearing& bearing, const OrderFit* fit);
    void give(bool withBuild);

    std::vector<KnownBearing> all_, found_;
    std::vector<std::size_t> rows_;  // place in found_
    ShownUnit hz_;
    QLabel* word_;
    QLineEdit* part_;
    QDoubleSpinBox *bore_, *outer_, *width_, *order_, *line_, *rpm_, *tolerance_;
    QStandardItemModel* model_;
    QTableView* table_;
    QPushButton *put_, *putName_;
    QString whyNot_;  // empty: what is found may be put into the form
};

}  // namespace fettle
