#include "core/trend/forecast.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/trend/distribution.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr double kMadToSigma = 1.4826;
constexpr double kMostAlike = 0.85;   // of neighbouring days
constexpr double kLeastDegrees = 3;   // of freedom
constexpr double kDriftSlope = 1.5;   // what a drift of spread 1 does to a slope, times the days looked at
constexpr double kNeverShare = 0.1;   // of the growths that fit
constexpr double kLeastShare = 1e-6;  // of the level: residuals smaller than this are none
constexpr int kGrid = 41;             // quantiles of level and of slope

using Days = std::vector<DayValue>;

double identity(double x) {
    return x;
}
double logarithm(double x) {
    return std::log(x);
}
double exponential(double x) {
    return std::exp(x);
}

// Straight on a scale of its own: the level itself, or its logarithm.
struct Form {
    double (*to)(double);
    double (*from)(double);
};
constexpr Form kStraight{identity, identity}, kExponential{logarithm, exponential};

struct Fit {
    MiddleLine line;
    double levelError = 0, slopeError = 0, degrees = kLeastDegrees;
    double misfit = 0;  // spread of the residuals in the unit of the level
    double effective = 0;
};

double spreadOf(std::vector<double> residuals) {
    for (double& r : residuals)
        r = std::abs(r);
    return kMadToSigma * medianOf(std::move(residuals));
}

// Correlation of days that follow each other, with the usual correction for a short series.
double alike(const Days& days, const std::vector<double>& residuals) {
    double products = 0, squares = 0;
    int pairs = 0;
    for (std::size_t i = 0; i < days.size(); ++i) {
        squares += residuals[i] * residuals[i] / double(days.size());
        if (i == 0 || days[i].day != days[i - 1].day + 1) continue;
        products += residuals[i] * residuals[i - 1];
        ++pairs;
    }
    if (pairs < 5 || squares <= 0) return 0;
    const double rho = products / pairs / squares;
    return std::clamp(rho + (1 + 4 * rho) / double(days.size()), 0.0, kMostAlike);
}

double spreadOfDays(const Days& days, double centre) {
    double sum = 0;
    for (const DayValue& one : days)
        sum += (one.day - centre) * (one.day - centre);
    return sum;
}

Fit fitOf(const Days& days, const Form& form, double driftShare) {
    Days scaled = days;
    for (DayValue& one : scaled)
        one.value = form.to(one.value);
    Fit fit;
    fit.line = middleLine(scaled);
    std::vector<double> residuals, misfits;
    for (std::size_t i = 0; i < days.size(); ++i) {
        const double expected = fit.line.at(days[i].day);
        residuals.push_back(scaled[i].value - expected);
        misfits.push_back(days[i].value - form.from(expected));
    }
    const double rho = alike(days, residuals), spread = spreadOf(residuals);
    const double level = form.from(fit.line.level);
    fit.effective = double(days.size()) * (1 - rho) / (1 + rho);
    fit.degrees = std::max(fit.effective - 2, kLeastDegrees);
    fit.misfit = std::max(spreadOf(misfits), kLeastShare * level);
    // A drift as a share of the level is as large on the logarithm's scale.
    const double drift = driftShare * (form.to == logarithm ? 1 : level);
    const double span = std::max(days.back().day - days.front().day, 1);
    const double share = double(days.size()) / fit.effective;
    fit.levelError = std::hypot(spread / std::sqrt(fit.effective), drift);
    fit.slopeError = std::hypot(spread * std::sqrt(share / spreadOfDays(days, fit.line.centre)),
                                kDriftSlope * drift / span);
    return fit;
}

// How far the days speak for a form against the better one.
double supportOf(const Fit& fit, double bestMisfit) {
    return std::pow(bestMisfit / fit.misfit, fit.effective / 2);
}

struct Arrival {
    double days = 0, share = 0;  // from the last day on
};

void addArrivals(const Fit& fit, double target, int lastDay, double share, std::vector<Arrival>& all) {
    std::vector<double> quantiles;
    for (int i = 0; i < kGrid; ++i)
        quantiles.push_back(studentQuantile((i + 0.5) / kGrid, fit.degrees));
    for (const double u : quantiles)
        for (const double v : quantiles) {
            const double slope = fit.line.slope + v * fit.slopeError;
            const double rise = target - fit.line.level - u * fit.levelError;
            const double day = slope > 0 ? fit.line.centre + rise / slope : kNever;
            all.push_back({std::max(day - lastDay, 0.0), share});
        }
}

// The days by which `wanted` of the arrivals, sorted, are there.
double quantileOf(const std::vector<Arrival>& sorted, double wanted) {
    double total = 0, sum = 0;
    for (const Arrival& one : sorted)
        total += one.share;
    for (const Arrival& one : sorted)
        if ((sum += one.share) >= wanted * total) return one.days;
    return kNever;
}

// Whole days; a rounding error is no day.
int wholeDays(double days) {
    return int(std::ceil(days - 1e-3));
}

std::vector<Arrival> arrivalsOf(const Days& days, double limit, double driftShare) {
    const Fit straight = fitOf(days, kStraight, driftShare);
    std::vector<Arrival> all;
    const bool positive =
        std::all_of(days.begin(), days.end(), [](const DayValue& one) { return one.value > 0; });
    if (!positive) {
        addArrivals(straight, limit, days.back().day, 1, all);
    } else {
        const Fit bent = fitOf(days, kExponential, driftShare);
        const double best = std::min(straight.misfit, bent.misfit);
        addArrivals(straight, limit, days.back().day, supportOf(straight, best), all);
        addArrivals(bent, std::log(limit), days.back().day, supportOf(bent, best), all);
    }
    std::sort(all.begin(), all.end(), [](const Arrival& a, const Arrival& b) { return a.days < b.days; });
    return all;
}

}  // namespace

std::optional<LimitDate> forecastLimit(std::span<const DayValue> given, double limit,
                                       const ForecastOptions& options) {
    const Days days = growthDays(given, options.window);
    if (days.size() < std::size_t(std::max(options.window.fewestDays, 3)) || !(limit > 0))
        return std::nullopt;
    const MiddleLine line = middleLine(days);
    if (!(line.slope > 0) || line.at(days.back().day) >= limit) return std::nullopt;
    const std::vector<Arrival> arrivals = arrivalsOf(days, limit, options.driftShare);
    const double median = quantileOf(arrivals, 0.5);
    if (quantileOf(arrivals, 1 - kNeverShare) == kNever || median > options.mostDays) return std::nullopt;
    const int last = days.back().day;
    LimitDate date;
    date.median = last + wholeDays(median);
    date.from = last + int(quantileOf(arrivals, (1 - options.cover) / 2));
    const double latest = quantileOf(arrivals, (1 + options.cover) / 2);
    if (latest <= options.mostDays) date.to = last + wholeDays(latest);
    return date;
}

}  // namespace fettle
