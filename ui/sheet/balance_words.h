// Why: what a balancing says is worded once for the window and for the printed record: cautions, the
// convention of angles, masses plane by plane, vibration, residual against the grade, remarks. Cautions are
// the usual ones; local codes and licensed practice come first. Thread: the window's.
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/workshop/balance_solve.h"

namespace fettle {

struct BalanceTable {
    QStringList heads;
    std::vector<QStringList> rows;
};
struct BalanceSection {
    QString heading;
    QStringList lines;
    BalanceTable table = {};  // under the lines; may be empty
};

QStringList balanceCautions();
QString conventionWords(const BalanceJob& job);
QString methodWords(BalanceMethod method);
// "12.3 g at 100°"
QString massWords(const Polar& mass);
QString vibrationWords(const Polar& vibration, const BalanceJob& job);
// One a plane, then vibration.
std::vector<BalanceSection> balanceResults(const BalanceJob& job, const BalanceAnswer& answer);
BalanceTable runTable(const BalanceJob& job, const BalanceAnswer& answer);
// Refusals and doubts; what is only missing is left out.
QStringList balanceDoubts(const BalanceAnswer& answer);
// How far it is: "3 values are missing yet", "refused: ..."; empty: solved without a doubt.
QString balanceState(const BalanceAnswer& answer);

}  // namespace fettle
