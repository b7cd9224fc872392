// Why: one sensor in one run is read three times or more, because only repeats tell whether the machine holds
// still: a row of amounts and phases, with what is wrong with them below. A half-typed pair is no reading
// yet. Thread: the window's.
#pragma once

#include <QWidget>
#include <vector>

#include "core/workshop/balance_job.h"
#include "ui/theme/theme.h"

class QLabel;
class QLineEdit;

namespace fettle {

class BalanceReadings : public QWidget {
    Q_OBJECT
  public:
    // `name`: of the row, "run1sensor1"; its edits are "run1sensor1amount1", "...phase1".
    BalanceReadings(const Theme& theme, const QString& name, const QString& title, bool phases,
                    QWidget* parent);

    void setReadings(const std::vector<VibrationReading>& readings);
    void setUnit(const QString& unit);
    void setNote(const QString& words, bool trouble);
    void setReadOnly(bool readOnly);

    static constexpr int kRepeats = 5, kUsual = 3;  // the others show where a recording filled them

  signals:
    void edited(const std::vector<fettle::VibrationReading>& readings);

  private:
    struct Pair {
        QLineEdit *amount = nullptr, *phase = nullptr;
        QLabel* sign = nullptr;
    };
    QLineEdit* addEdit(const QString& name, const QString& title, int letters);
    static void showPair(const Pair& pair, bool visible);
    void read();
    void showNote();

    const Theme& theme_;
    bool phases_;
    std::vector<Pair> pairs_;
    std::vector<VibrationReading> readings_;
    QLabel *unit_, *note_;
    QString refusal_, words_;
    bool trouble_ = false;
};

}  // namespace fettle
