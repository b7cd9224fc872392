// Why: what is missing or doubtful in a balancing job beside the arithmetic: data of the rotor, trial masses
// over the advice, trials that did little, runs at unlike speed or load, coefficients learnt under other
// conditions, a check run that got worse. Speeds count as unlike over 3 %, loads over 15 points: at 1x the
// force alone grows by 6 %, and near a resonance the phase turns (common practice, no source). Thread: pure.
#pragma once

#include "core/workshop/balance_solve.h"

namespace fettle {

inline constexpr double kTrialShare = 0.1;      // of the weight, as force (rule of thumb, no source)
inline constexpr double kMostLeftShare = 0.05;  // of a correction, left over by the places
inline constexpr double kUnlikeSpeedShare = 0.03, kUnlikeLoadPct = 15;
inline constexpr double kDoubtCondition = 8;

// `answer`: readings and permissible values are in it.
std::vector<BalanceRemark> balanceChecks(const BalanceJob& job, const BalanceAnswer& answer);

}  // namespace fettle
