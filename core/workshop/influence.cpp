#include "core/workshop/influence.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace fettle {

namespace {

std::string runName(std::size_t number) {
    return fmt::format("run {}", number);
}

Status checkTrial(std::span<const Phasor> before, const TrialRun& trial, std::size_t number) {
    if (trial.vibration.size() != before.size())
        return fail(ErrorKind::Invalid, "", runName(number), "needs a reading at every sensor");
    if (!(std::abs(trial.mass) > 0))
        return fail(ErrorKind::Invalid, "", runName(number), "the trial mass must be more than 0 g");
    const double share = changeShare(before, trial.vibration);
    if (share < kLeastChangeShare)
        return fail(ErrorKind::Invalid, "", runName(number),
                    fmt::format("the trial mass changed the vibration by {:.0f} % only; less than {:.0f} % "
                                "could be the scatter of the readings: move it by 90 degrees, or take more "
                                "as far as the advice allows",
                                100 * share, 100 * kLeastChangeShare));
    return {};
}

// Rows, then columns, to length 1.
std::vector<Phasor> evenedOut(const Influence& influence) {
    std::vector<Phasor> m = influence.perGram;
    const std::size_t n = influence.planes;
    for (const bool rows : {true, false})
        for (std::size_t i = 0; i < n; ++i) {
            double power = 0;
            const auto index = [&](std::size_t j) { return rows ? i * n + j : j * n + i; };
            for (std::size_t j = 0; j < n; ++j)
                power += std::norm(m[index(j)]);
            for (std::size_t j = 0; j < n && power > 0; ++j)
                m[index(j)] /= std::sqrt(power);
        }
    return m;
}

}  // namespace

double changeShare(std::span<const Phasor> before, std::span<const Phasor> after) {
    double most = 0;
    for (std::size_t s = 0; s < std::min(before.size(), after.size()); ++s) {
        const double larger = std::max(std::abs(before[s]), std::abs(after[s]));
        if (larger > 0) most = std::max(most, std::abs(after[s] - before[s]) / larger);
    }
    return most;
}

Result<Influence> influenceOf(std::span<const Phasor> initial, std::span<const TrialRun> trials,
                              TrialMasses masses) {
    const std::size_t n = initial.size();
    if (n < 1 || n > 2 || trials.size() != n)
        return fail(ErrorKind::Invalid, "", "",
                    "one plane takes one sensor and one trial run, two planes take two of each");
    Influence influence{n, std::vector<Phasor>(n * n)};
    std::vector<Phasor> before(initial.begin(), initial.end());
    for (std::size_t p = 0; p < n; ++p) {
        if (auto good = checkTrial(before, trials[p], p + 1); !good) return fail(good.error());
        for (std::size_t s = 0; s < n; ++s)
            influence.perGram[s * n + p] = (trials[p].vibration[s] - before[s]) / trials[p].mass;
        if (masses == TrialMasses::LeftOn) before = trials[p].vibration;
    }
    return influence;
}

// Of two by two numbers the squares of the singular values have the norm as sum and the determinant as
// product.
double conditionOf(const Influence& influence) {
    if (influence.planes == 1) return 1;
    const std::vector<Phasor> m = evenedOut(influence);
    const double sum = std::norm(m[0]) + std::norm(m[1]) + std::norm(m[2]) + std::norm(m[3]);
    const double product = std::abs(m[0] * m[3] - m[1] * m[2]);
    const double root = std::sqrt(std::max(sum * sum / 4 - product * product, 0.0));
    const double largest = sum / 2 + root;
    if (product <= 1e-12 * largest) return std::numeric_limits<double>::infinity();
    return largest / product;
}

Result<std::vector<Phasor>> massesAgainst(const Influence& influence, std::span<const Phasor> vibration) {
    const auto& a = influence.perGram;
    if (influence.planes == 1) {
        if (!(std::abs(a[0]) > 0))
            return fail(ErrorKind::Invalid, "", "", "a mass in this plane does nothing at this sensor");
        return std::vector<Phasor>{-vibration[0] / a[0]};
    }
    const double condition = conditionOf(influence);
    if (condition > kMostCondition)
        return fail(
            ErrorKind::Invalid, "", "",
            std::isinf(condition)
                ? "both planes work alike on both sensors: balance in one plane, or choose planes or "
                  "sensors farther apart"
                : fmt::format("both planes work nearly alike on both sensors (condition {:.0f}, at most "
                              "{:.0f}): balance in one plane, or choose planes or sensors farther apart",
                              condition, kMostCondition));
    const Phasor determinant = a[0] * a[3] - a[1] * a[2];
    return std::vector<Phasor>{-(a[3] * vibration[0] - a[1] * vibration[1]) / determinant,
                               -(a[0] * vibration[1] - a[2] * vibration[0]) / determinant};
}

std::vector<Phasor> predicted(const Influence& influence, std::span<const Phasor> vibration,
                              std::span<const Phasor> masses) {
    std::vector<Phasor> left(vibration.begin(), vibration.end());
    for (std::size_t s = 0; s < left.size(); ++s)
        for (std::size_t p = 0; p < influence.planes; ++p)
            left[s] += influence.at(s, p) * masses[p];
    return left;
}

}  // namespace fettle
