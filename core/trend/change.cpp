#include "core/trend/change.h"

#include <algorithm>
#include <cmath>

#include "core/trend/charts.h"
#include "core/trend/distribution.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr double kShareOfBC = 0.25, kLineStepDb = 6, kLineShareOfAB = 0.1;
// A level drifts over seasons by more than six weeks show; a temperature over ambient hardly. dB; kelvin.
// Common practice, no source; what it does to false entries: `fettle-trials healthy-trends`.
constexpr double kDriftDb = 1, kDriftLinear = 1;
constexpr double kPersistsDban = 10;

double spreadOf(const Baseline& baseline) {
    return std::hypot(baseline.spread, baseline.scale == Scale::Linear ? kDriftLinear : kDriftDb);
}

// Two-sided, of one new day.
double dayP(const Baseline& baseline, double value, double floorP) {
    const auto count = double(baseline.days.size());
    const double t =
        (onScale(value, baseline.scale) - baseline.mean) / (spreadOf(baseline) * std::sqrt(1 + 1 / count));
    return std::max(studentTwoSided(t, count - 1), floorP);
}

double persistenceOf(const Baseline& baseline, std::span<const DayValue> week, double floorP, double kappa) {
    const auto out = std::count_if(week.begin(), week.end(), [&](const DayValue& one) {
        return changeDban(dayP(baseline, one.value, floorP), kappa) >= kPersistsDban;
    });
    return double(out) / double(week.size());
}

double meanOfDaysDban(const Baseline& baseline, std::span<const DayValue> week, double floorP, double kappa) {
    double sum = 0;
    for (const DayValue& one : week)
        sum += std::pow(10.0, changeDban(dayP(baseline, one.value, floorP), kappa) / 10);
    return 10 * std::log10(sum / double(week.size()));
}

}  // namespace

double changeDban(double p, double kappa) {
    return 10 * std::log10(kappa) + 10 * (kappa - 1) * std::log10(p);
}

std::optional<Change> weighChange(const Baseline& baseline, std::span<const DayValue> week,
                                  const ChangeOptions& options) {
    if (week.size() < std::size_t(std::max(options.fewestWeekDays, 1))) return std::nullopt;
    std::vector<double> values;
    for (const DayValue& one : week)
        values.push_back(one.value);
    const double floorP = std::pow(double(baseline.days.size()) + 1, -options.tailPower);
    Change change;
    change.weekDays = int(week.size());
    change.was = baseline.median;
    change.now = medianOf(std::move(values));
    change.step = onScale(change.now, baseline.scale) - onScale(change.was, baseline.scale);
    change.persistence = persistenceOf(baseline, week, floorP, options.kappa);
    change.p = dayP(baseline, change.now, floorP);
    change.mostDban = changeDban(floorP, options.kappa);
    change.weightDban = options.rule == WeekRule::MiddleDay
                            ? changeDban(change.p, options.kappa)
                            : meanOfDaysDban(baseline, week, floorP, options.kappa);
    return change;
}

bool matters(const Change& change, const MattersBy& by) {
    if (by.leastValue && std::max(change.now, change.was) < *by.leastValue) return false;
    if (!by.limitBC || !by.limitAB) return std::abs(change.step) >= by.leastStep;
    if (std::abs(change.now - change.was) >= kShareOfBC * *by.limitBC) return true;
    return by.line && std::abs(change.step) >= kLineStepDb &&
           std::max(change.now, change.was) > kLineShareOfAB * *by.limitAB;
}

std::optional<int> changedSince(const Baseline& baseline, std::span<const DayValue> days) {
    std::vector<double> after;
    std::vector<int> dates;
    for (const DayValue& one : days) {
        if (one.day <= baseline.lastDay()) continue;
        after.push_back(onScale(one.value, baseline.scale));
        dates.push_back(one.day);
    }
    const CusumChart chart = cusum(after, {baseline.mean, spreadOf(baseline)});
    if (chart.points.empty()) return std::nullopt;
    const CusumPoint& last = chart.points.back();
    const int run = last.up >= last.down ? last.upRun : last.downRun;
    if (run == 0) return std::nullopt;
    return dates[dates.size() - std::size_t(run)];
}

}  // namespace fettle
