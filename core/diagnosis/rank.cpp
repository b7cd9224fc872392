#include "core/diagnosis/rank.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <numeric>

namespace fettle {

namespace {

constexpr std::size_t kOwnPeak = 3, kBlock = 512;
constexpr float kNoReference = -1;

// A reference position and the bits of its peak, which order as non-negative floats do.
struct Entry {
    std::uint32_t key, position;
};

// kappa p^(kappa - 1) of p = high / (1 + n - own) without a power for every position.
class Calibrator {
  public:
    Calibrator(std::size_t n, double kappa) : high_(powersTo(n + 1, kappa - 1).data()) {
        for (std::size_t own = 0; own < own_.size(); ++own)
            own_[own] = float(kappa * std::pow(double(1 + n - own), 1 - kappa));
    }
    float of(std::int32_t high, std::int32_t own) const {
        return high_[std::size_t(high)] * own_[std::size_t(own)];
    }

  private:
    // i^exponent for i = 0, 1, 2 ..; grown on demand and kept by each thread.
    static const std::vector<float>& powersTo(std::size_t n, double exponent) {
        thread_local std::vector<float> table;
        thread_local double of = 0;
        if (of != exponent) table.clear();
        of = exponent;
        while (table.size() <= n)
            table.push_back(float(std::pow(double(table.size()), exponent)));
        return table;
    }

    const float* high_;
    std::array<float, 2 * kOwnPeak + 2> own_;
};

// Whether more than half of the references have the same value: the one that survives when unlike ones are
// struck out in pairs is counted (Boyer and Moore, in Automated Reasoning (1991) 105-117).
bool mostlyTied(std::span<const float> z, const std::vector<Entry>& references) {
    const auto valueOf = [&](const Entry& e) { return std::bit_cast<std::uint32_t>(z[e.position]); };
    std::uint32_t survivor = 0;
    std::size_t votes = 0;
    for (const Entry& e : references) {
        const std::uint32_t value = valueOf(e);
        survivor = votes == 0 ? value : survivor;
        votes += value == survivor ? 1 : -1;
    }
    if (votes == 0) return false;
    const auto ties = std::count_if(references.begin(), references.end(),
                                    [&](const Entry& e) { return valueOf(e) == survivor; });
    return std::size_t(ties) * 2 > references.size();
}

// Ranks one view; its buffers serve the next one again.
class Ranker {
  public:
    Ranking rank(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first,
                 int fewestReferences, double kappa);

  private:
    void findPeaks(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first);
    void collectReferences();
    void sortFalling();
    void countAsHigh();
    void rankBlock(std::size_t from, std::size_t count, const Calibrator& factor, Ranking& ranking) const;

    // From position -kOwnPeak on: the largest of a position and its neighbours, kNoReference where it is no
    // reference and for more than a block beyond the end.
    std::vector<float> peaks_;
    std::vector<Entry> references_, spare_;
    std::vector<std::int32_t> asHigh_;  // by position: how many references are as high
};

void Ranker::findPeaks(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first) {
    const std::size_t size = z.size();
    peaks_.assign(size + kBlock + 2 * kOwnPeak, kNoReference);
    float* peak = peaks_.data() + kOwnPeak;
    for (std::size_t k = std::max<std::size_t>(first, 1); k + 1 < size; ++k)
        peak[k] = masked[k] ? kNoReference : std::max(z[k], std::max(z[k - 1], z[k + 1]));
    if (size < 2) return;
    if (first == 0 && !masked[0]) peak[0] = std::max(z[0], z[1]);
    if (first < size && !masked[size - 1]) peak[size - 1] = std::max(z[size - 2], z[size - 1]);
}

void Ranker::collectReferences() {
    references_.resize(peaks_.size());
    std::size_t count = 0;
    for (std::size_t k = kOwnPeak; k + kOwnPeak < peaks_.size(); ++k) {
        references_[count] = {std::bit_cast<std::uint32_t>(peaks_[k]), std::uint32_t(k - kOwnPeak)};
        count += peaks_[k] >= 0;
    }
    references_.resize(count);
}

// By digits, the lowest first: three passes of as many bits as the range of the keys needs.
void Ranker::sortFalling() {
    std::uint32_t least = ~0u, most = 0;
    for (const Entry& e : references_) {
        least = std::min(least, e.key);
        most = std::max(most, e.key);
    }
    const int bits = (std::bit_width(most - least) + 2) / 3;
    const std::uint32_t mask = (1u << bits) - 1;
    const auto digit = [=](const Entry& e, int pass) { return ((most - e.key) >> (bits * pass)) & mask; };
    std::array<std::array<std::uint32_t, 2048>, 3> start{};
    for (const Entry& e : references_)
        for (int pass = 0; pass < 3; ++pass)
            ++start[std::size_t(pass)][digit(e, pass)];
    spare_.resize(references_.size());
    for (int pass = 0; pass < 3; ++pass) {
        auto& at = start[std::size_t(pass)];
        std::exclusive_scan(at.begin(), at.begin() + mask + 1, at.begin(), 0u);
        for (const Entry& e : references_)
            spare_[at[digit(e, pass)]++] = e;
        references_.swap(spare_);
    }
}

// All references up to the end of the ties are as high.
void Ranker::countAsHigh() {
    std::size_t last = references_.size();
    for (std::size_t i = references_.size(); i-- > 0;) {
        const bool tied = i + 1 < references_.size() && references_[i].key == references_[i + 1].key;
        last = tied ? last : i + 1;
        asHigh_[references_[i].position] = std::int32_t(last);
    }
}

// Counts, offset by offset, the references in each position's own peak and how many of them are as high.
void Ranker::rankBlock(std::size_t from, std::size_t count, const Calibrator& factor,
                       Ranking& ranking) const {
    std::array<std::int32_t, kBlock> own{}, ownAsHigh{};
    const float* centre = &peaks_[from + kOwnPeak];
    for (std::size_t offset = 0; offset <= 2 * kOwnPeak; ++offset) {
        const float* beside = &peaks_[from + offset];
        for (std::size_t i = 0; i < kBlock; ++i)
            own[i] += beside[i] >= 0;
        for (std::size_t i = 0; i < kBlock; ++i)
            ownAsHigh[i] += beside[i] >= centre[i];
    }
    const auto n = std::int32_t(references_.size());
    const std::int32_t* asHigh = &asHigh_[from];
    float *p = &ranking.p[from], *f = &ranking.factor[from];
    for (std::size_t i = 0; i < count; ++i) {
        if (centre[i] < 0) continue;
        const std::int32_t high = 1 + asHigh[i] - ownAsHigh[i];
        p[i] = float(high) / float(1 + n - own[i]);
        f[i] = factor.of(high, own[i]);
    }
}

Ranking Ranker::rank(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first,
                     int fewestReferences, double kappa) {
    Ranking ranking{std::vector<float>(z.size(), 1.0f), std::vector<float>(z.size() + 1, 1.0f), ""};
    findPeaks(z, masked, first);
    collectReferences();
    if (references_.size() < std::size_t(fewestReferences)) {
        ranking.unusable = fmt::format("only {} positions free of ordinary lines, {} needed",
                                       references_.size(), fewestReferences);
        return ranking;
    }
    if (mostlyTied(z, references_)) {
        ranking.unusable = "more than half of its positions have the same value";
        return ranking;
    }
    sortFalling();
    asHigh_.resize(z.size());
    countAsHigh();
    const Calibrator factor(references_.size(), kappa);
    for (std::size_t from = 0; from < z.size(); from += kBlock)
        rankBlock(from, std::min(kBlock, z.size() - from), factor, ranking);
    return ranking;
}

}  // namespace

Ranking rankPositions(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first,
                      int fewestReferences, double kappa) {
    thread_local Ranker ranker;
    return ranker.rank(z, masked, first, fewestReferences, kappa);
}

}  // namespace fettle
