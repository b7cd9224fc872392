#include "core/workshop/four_runs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace fettle {

namespace {

constexpr int kMostSteps = 100;
constexpr double kCloseEnough = 1e-14;

Phasor direction(double degrees) {
    return phasorOf({1, degrees});
}

// A run's amount if the circles met in `effect`: the initial arrow lies against the correction, so that the
// trial at its place takes away.
double amountFor(Phasor effect, double initial, double degrees) {
    return std::abs(initial * direction(degrees) - effect);
}

// Least-squares step of the meeting point by Gauss and Newton, from where it is.
Phasor stepFrom(Phasor effect, double initial, std::span<const AmountRun> runs) {
    double xx = 0, xy = 0, yy = 0, xr = 0, yr = 0;
    for (const AmountRun& run : runs) {
        const Phasor from = effect - initial * direction(run.degrees);
        const double amount = std::max(std::abs(from), 1e-300);
        const double x = from.real() / amount, y = from.imag() / amount, r = run.amount - amount;
        xx += x * x;
        xy += x * y;
        yy += y * y;
        xr += x * r;
        yr += y * r;
    }
    const double determinant = xx * yy - xy * xy;
    if (!(std::abs(determinant) > 1e-12 * (xx + yy) * (xx + yy))) return {};
    return {(yy * xr - xy * yr) / determinant, (xx * yr - xy * xr) / determinant};
}

double missOf(Phasor effect, double initial, std::span<const AmountRun> runs) {
    double sum = 0;
    for (const AmountRun& run : runs) {
        const double off = run.amount - amountFor(effect, initial, run.degrees);
        sum += off * off;
    }
    return std::sqrt(sum / double(runs.size()));
}

// From several sides, because circles have two crossings.
Phasor meetingPoint(double initial, std::span<const AmountRun> runs) {
    Phasor best;
    double miss = -1;
    for (int start = 0; start < 12; ++start)
        for (const double reach : {0.3, 1.0, 2.5}) {
            Phasor effect = reach * initial * direction(30.0 * start);
            for (int i = 0; i < kMostSteps; ++i) {
                const Phasor step = stepFrom(effect, initial, runs);
                effect += step;
                if (std::abs(step) <= kCloseEnough * initial) break;
            }
            const double here = missOf(effect, initial, runs);
            if (std::isfinite(here) && (miss < 0 || here < miss)) {
                miss = here;
                best = effect;
            }
        }
    return best;
}

std::optional<Error> wrong(double initial, double trialG, std::span<const AmountRun> runs) {
    const auto error = [](const std::string& place, const std::string& rule) {
        return Error{ErrorKind::Invalid, "", place, rule};
    };
    if (!(initial > 0)) return error("run 0", "the initial vibration must be more than 0");
    if (!(trialG > 0)) return error("", "the trial mass must be more than 0 g");
    if (runs.size() < 3) return error("", "three trial runs are needed beside the initial one");
    double change = 0;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        if (!(runs[i].amount > 0)) return error(fmt::format("run {}", i + 1), "must be more than 0");
        change = std::max(change, std::abs(runs[i].amount - initial) / std::max(runs[i].amount, initial));
        for (std::size_t j = 0; j < i; ++j)
            if (std::abs(degreesBetween(runs[i].degrees, runs[j].degrees)) < kLeastStepDegrees)
                return error(fmt::format("run {}", i + 1),
                             fmt::format("its trial place lies nearer than {:.0f} degrees to that of run {}: "
                                         "the circles would hardly cross",
                                         kLeastStepDegrees, j + 1));
    }
    if (change < 0.1)  // scatter of an amount is taken up to that
        return error("",
                     "the trial mass changed the vibration by less than 10 % at every place, which could "
                     "be the scatter of the readings: take more as far as the advice allows");
    return std::nullopt;
}

}  // namespace

Result<FourRunResult> fromFourRuns(double initial, double trialG, std::span<const AmountRun> runs) {
    if (const auto error = wrong(initial, trialG, runs)) return fail(*error);
    FourRunResult result;
    result.effect = meetingPoint(initial, runs);
    const double size = std::abs(result.effect);
    result.missShare = missOf(result.effect, initial, runs) / initial;
    if (!(size > 0) || result.missShare > kMostMissShare)
        return fail(
            ErrorKind::Invalid, "", "",
            fmt::format("the circles miss each other by {:.0f} % of the initial vibration, at most "
                        "{:.0f} % is taken: read the runs again, one of them does not belong to these",
                        100 * result.missShare, 100 * kMostMissShare));
    result.perGram = size / trialG;
    result.correction = trialG * initial / size * (result.effect / size);
    return result;
}

}  // namespace fettle
