#include "core/diagnosis/rank.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <numeric>

namespace fettle {

namespace {

constexpr int kOwnPeak = 3;

// Positions with their values, to be sorted by falling value: three passes of 11 bits over the float's bit pattern, which
// orders non-negative floats.
struct Entry {
    std::uint32_t key, position;
};

void sortFalling(std::vector<Entry>& entries) {
    constexpr std::size_t kPasses = 3, kDigits = 2048;
    const auto digit = [](const Entry& e, std::size_t pass) { return kDigits - 1 - ((e.key >> (11 * pass)) & (kDigits - 1)); };
    std::array<std::array<std::uint32_t, kDigits>, kPasses> start{};
    for (const Entry& e : entries)
        for (std::size_t pass = 0; pass < kPasses; ++pass) ++start[pass][digit(e, pass)];
    std::vector<Entry> sorted(entries.size());
    for (std::size_t pass = 0; pass < kPasses; ++pass) {
        std::exclusive_scan(start[pass].begin(), start[pass].end(), start[pass].begin(), 0u);
        for (const Entry& e : entries) sorted[start[pass][digit(e, pass)]++] = e;
        entries.swap(sorted);
    }
}

// i^exponent for i = 0, 1, 2 ..; grown on demand and kept by each thread.
const std::vector<float>& powersTo(std::size_t n, double exponent) {
    thread_local std::vector<float> table;
    thread_local double of = 0;
    if (of != exponent) table.clear();
    of = exponent;
    while (table.size() <= n) table.push_back(float(std::pow(double(table.size()), exponent)));
    return table;
}

// What positions are ranked by, with kOwnPeak entries of kNoReference beyond either end.
struct Peaks {
    std::vector<float> all;         // the largest of a position and its neighbours
    std::vector<float> references;  // the same, kNoReference where it is no reference
};
constexpr float kNoReference = -1;

Peaks peaksOf(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first) {
    const std::size_t size = z.size();
    Peaks peaks{std::vector<float>(size + 2 * kOwnPeak, kNoReference), {}};
    float* all = peaks.all.data() + kOwnPeak;
    for (std::size_t k = 1; k + 1 < size; ++k) all[k] = std::max(z[k], std::max(z[k - 1], z[k + 1]));
    if (size > 1) {
        all[0] = std::max(z[0], z[1]);
        all[size - 1] = std::max(z[size - 2], z[size - 1]);
    }
    peaks.references = peaks.all;
    float* references = peaks.references.data() + kOwnPeak;
    std::fill_n(references, std::min(first, size), kNoReference);
    for (std::size_t k = first; k < size; ++k) references[k] = masked[k] ? kNoReference : references[k];
    return peaks;
}

// Whether more than half of the references have the same value: the one that survives when unlike ones are struck out in
// pairs is counted (Boyer and Moore, in Automated Reasoning (1991) 105-117).
bool mostlyTied(std::span<const float> z, const std::vector<Entry>& references) {
    float survivor = 0;
    std::size_t votes = 0, ties = 0;
    for (const Entry& e : references) {
        const float value = z[e.position];
        if (votes == 0) survivor = value;
        votes += value == survivor ? 1 : -1;
    }
    for (const Entry& e : references) ties += z[e.position] == survivor;
    return ties * 2 > references.size();
}

// For each of the sorted references, how many are as high: all up to the end of its ties. By position.
std::vector<std::uint32_t> asHigh(const std::vector<Entry>& falling, std::size_t size) {
    std::vector<std::uint32_t> counts(size, 0);
    for (std::size_t from = 0, to = 0; from < falling.size(); from = to) {
        while (to < falling.size() && falling[to].key == falling[from].key) ++to;
        for (std::size_t i = from; i < to; ++i) counts[falling[i].position] = std::uint32_t(to);
    }
    return counts;
}

}  // namespace

Ranking rankPositions(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first,
                      int fewestReferences, double kappa) {
    const std::size_t size = z.size();
    Ranking ranking{std::vector<float>(size, 1.0f), std::vector<float>(size, 1.0f), ""};
    const Peaks peaks = peaksOf(z, masked, first);
    const float* references = peaks.references.data() + kOwnPeak;
    std::vector<Entry> falling;
    falling.reserve(size);
    for (std::size_t k = first; k < size; ++k)
        if (!masked[k]) falling.push_back({std::bit_cast<std::uint32_t>(references[k]), std::uint32_t(k)});
    const std::size_t n = falling.size();
    if (n < std::size_t(fewestReferences)) {
        ranking.unusable = fmt::format("only {} positions free of ordinary lines, {} needed", n, fewestReferences);
        return ranking;
    }
    if (mostlyTied(z, falling)) {
        ranking.unusable = "more than half of its positions have the same value";
        return ranking;
    }
    sortFalling(falling);
    const std::vector<std::uint32_t> count = asHigh(falling, size);

    const std::vector<float>& power = powersTo(n + 1, kappa - 1);
    std::array<float, 2 * kOwnPeak + 2> scale{};  // kappa (1 + n - own)^(1 - kappa), own = references in the own peak
    for (std::size_t own = 0; own < scale.size(); ++own)
        scale[own] = float(kappa * std::pow(double(1 + n - own), 1 - kappa));
    for (std::size_t k = first; k < size; ++k) {
        if (masked[k]) continue;
        std::size_t own = 0, ownAsHigh = 0;
        for (const float* r = references + k - kOwnPeak; r <= references + k + kOwnPeak; ++r) {
            own += *r >= 0;
            ownAsHigh += *r >= references[k];
        }
        const std::size_t others = 1 + count[k] - ownAsHigh;
        ranking.p[k] = float(double(others) / double(1 + n - own));
        ranking.factor[k] = power[others] * scale[own];
    }
    return ranking;
}

}  // namespace fettle
