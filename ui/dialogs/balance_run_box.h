// Why: one run of a balancing: the trial mass and its place where it is a trial run, speed and load, the
// readings of every sensor, and everything that is missing or refused, at its value. Thread: the window's.
#pragma once

#include <QGroupBox>
#include <vector>

#include "ui/dialogs/balance_model.h"
#include "ui/theme/theme.h"

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace fettle {

class BalanceField;
class BalanceReadings;

// Which run: 0 as found, 1 to 3 with a trial mass, kCheckRun after the correction.
inline constexpr int kCheckRun = 9;
BalanceRun* runOf(BalanceJob& job, int number);  // null: there is none
const BalanceRun* runOf(const BalanceJob& job, int number);
QString runTitle(const BalanceJob& job, int number);

class BalanceRunBox : public QGroupBox {
    Q_OBJECT
  public:
    BalanceRunBox(BalanceModel& model, const Theme& theme, int number, QWidget* parent);
    void showValues();

  signals:
    void recordingWanted(int number);

  private:
    BalanceField* addField(const QString& title, const QString& name, const QString& unit, double least,
                           double most, std::function<void(BalanceRun&, std::optional<double>)> typed);
    std::string place() const;
    void editTrial();

    BalanceModel& model_;
    const Theme& theme_;
    int number_;
    QString name_;
    BalanceField *mass_ = nullptr, *degrees_ = nullptr, *rpm_ = nullptr, *load_ = nullptr;
    std::vector<BalanceReadings*> sensors_;
    QPushButton* recording_ = nullptr;
    QLabel *note_ = nullptr, *source_ = nullptr;
    QHBoxLayout* row_ = nullptr;
};

}  // namespace fettle
