// Why: the answer of a balancing as it follows from what is typed: masses for each plane and the places they
// go to, expected vibration, what is left against the grade, what to mind; or why there is none yet. Thread:
// the window's.
#pragma once

#include <QScrollArea>

#include "ui/dialogs/balance_model.h"
#include "ui/theme/theme.h"

class QLabel;

namespace fettle {

class BalanceMassesStep : public QScrollArea {
    Q_OBJECT
  public:
    BalanceMassesStep(BalanceModel& model, const Theme& theme, QWidget* parent);

  private:
    void showAnswer();

    BalanceModel& model_;
    const Theme& theme_;
    QLabel *state_, *text_, *doubts_;
};

}  // namespace fettle
