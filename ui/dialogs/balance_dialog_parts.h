// Why: the fixed parts of the balancing's window, apart from what they do: the list of steps with what each
// lacks, the page of cautions, the size that fits a small screen. Thread: the window's.
#pragma once

#include <QListWidget>
#include <QSize>

#include "ui/dialogs/balance_model.h"
#include "ui/theme/theme.h"

class QCheckBox;

namespace fettle {

QListWidget* balanceSteps(QWidget* parent);
// Under each step its state in a word: wanting, refused, complete.
void markBalanceSteps(QListWidget& steps, const BalanceModel& model);

// Where a job that is opened again was left: masses, runs or rotor.
int stepToGoOnWith(const BalanceModel& model);

struct CautionPage {
    QWidget* page = nullptr;
    QCheckBox* read = nullptr;
};
CautionPage balanceCautionPage(const Theme& theme, QWidget* parent);
QSize balanceDialogSize(int em, const QWidget* over);

}  // namespace fettle
