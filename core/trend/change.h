// Why: unbalance, a dry bearing, an overheating frame are lines and levels of every machine; the evidence is
// change. A week's daily medians are weighed against the baseline's days; the weight says whether, never how
// bad. Each day of the week is one value against the spread of the baseline's days (Student's t for one new
// value, degrees of freedom count days), its p-value bounded by what the number of days can carry, brought to
// an e-value by f(p) = kappa p^(kappa - 1). Source: V. Vovk and R. Wang, Ann. Statist. 49 (2021), section 2
// (calibrators), section 3 (a mean of e-values is one); G. J. Hahn and W. Q. Meeker, Statistical Intervals
// (1991), section 4.7 (one new value). Days are not independent (weather, product, drift): how often chance
// reaches a weight is measured on shuffled dates (`fettle-trials shuffled-dates`), not proved. Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/trend/baseline.h"

namespace fettle {

enum class WeekRule {
    MeanOfDays,  // mean of the days' e-values
    MiddleDay    // e-value of the week's median as if it were one day: one odd day cannot carry it
};

struct ChangeOptions {
    double kappa = 0.15;
    double tailPower = 3;    // no p below (days + 1)^-tailPower: the tail is not known farther out
    int fewestWeekDays = 2;  // of the week judged
    WeekRule rule = WeekRule::MiddleDay;
};

struct Change {
    double weightDban = 0;
    double mostDban = 0;      // what the baseline's days can carry at most
    double p = 1;             // of the middle day
    double was = 0, now = 0;  // medians of baseline and week, in the unit
    double step = 0;          // now less was, on the scale: dB or the unit
    int weekDays = 0;
    double persistence = 0;  // share of these days that reach 10 decibans by themselves
    bool up() const { return step > 0; }
};

// Of a quantity at one place: `week` holds the daily medians judged, at like conditions. Empty where they are
// too few.
std::optional<Change> weighChange(const Baseline& baseline, std::span<const DayValue> week,
                                  const ChangeOptions& options = {});

double changeDban(double p, double kappa);  // 10 log10 of kappa p^(kappa - 1)

// A change is listed only where it matters too. Levels in mm/s against a limit set: 25 % of the B/C boundary,
// up or down; a line besides: 6 dB where it lies above 10 % of A/B, before or after (common practice, no
// source).
struct MattersBy {
    std::optional<double> limitAB, limitBC;  // mm/s; empty: no limits apply
    bool line = false;                       // one line, not the overall level
    double leastStep = 6;                    // on the scale, for what has no limit: dB, or kelvin
    std::optional<double> leastValue = {};   // in its unit, before or after: below, nobody acts on it
};
bool matters(const Change& change, const MattersBy& by);

// The day from which the level has stayed apart: the day after the last zero of a two-sided cumulative sum
// (k 0.5 spreads) over the days since the baseline. Empty where it stands at zero at the end.
std::optional<int> changedSince(const Baseline& baseline, std::span<const DayValue> days);

}  // namespace fettle
