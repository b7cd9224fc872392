#include "core/diagnosis/rank.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <mutex>

namespace fettle {

namespace {

constexpr int kOwnPeak = 3;

// Positions and values sorted together, largest value first: three passes of 11 bits over the float's bit pattern,
// which orders non-negative floats.
class DescendingOrder {
  public:
    struct Entry {
        std::uint32_t key, position;
    };

    void sort(std::vector<Entry>& entries) {
        spare_.resize(entries.size());
        for (const int shift : {0, 11, 22}) pass(entries, shift);
    }

  private:
    void pass(std::vector<Entry>& entries, int shift) {
        std::array<std::uint32_t, 2048> start{};
        for (const Entry& e : entries) ++start[digit(e, shift)];
        std::uint32_t at = 0;
        for (std::uint32_t& s : start) {
            const std::uint32_t count = s;
            s = at;
            at += count;
        }
        for (const Entry& e : entries) spare_[start[digit(e, shift)]++] = e;
        entries.swap(spare_);
    }
    static std::uint32_t digit(const Entry& e, int shift) { return 2047 - ((e.key >> shift) & 2047); }

    std::vector<Entry> spare_;
};

// i^exponent for i = 0, 1, 2 ..; grown on demand and shared.
const std::vector<float>& powersTo(std::size_t n, double exponent) {
    thread_local std::vector<float> table;
    thread_local double of = 0;
    if (of != exponent) table.clear();
    of = exponent;
    while (table.size() <= n) table.push_back(float(std::pow(double(table.size()), exponent)));
    return table;
}

std::vector<float> peaksOf(std::span<const float> z) {
    std::vector<float> peaks(z.size());
    for (std::size_t k = 0; k < z.size(); ++k) {
        const float left = k > 0 ? z[k - 1] : 0, right = k + 1 < z.size() ? z[k + 1] : 0;
        peaks[k] = std::max({left, z[k], right});
    }
    return peaks;
}

// Whether more than half of the references have a value that another one has too, neighbours under one peak apart.
bool mostlyTied(std::span<const float> z, const std::vector<DescendingOrder::Entry>& references) {
    std::vector<float> values;
    values.reserve(references.size());
    for (const auto& e : references) values.push_back(z[e.position]);
    const std::size_t n = values.size();
    std::nth_element(values.begin(), values.begin() + std::ptrdiff_t(n / 2), values.end());
    const float median = values[n / 2];
    return std::size_t(std::count(values.begin(), values.end(), median)) * 2 > n;
}

}  // namespace

Ranking rankPositions(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first,
                      int fewestReferences, double kappa) {
    const std::size_t size = z.size();
    Ranking ranking{std::vector<float>(size, 1.0f), std::vector<float>(size, 1.0f), ""};
    const std::vector<float> peaks = peaksOf(z);
    std::vector<DescendingOrder::Entry> references;
    references.reserve(size);
    for (std::size_t k = first; k < size; ++k)
        if (!masked[k]) references.push_back({std::bit_cast<std::uint32_t>(peaks[k]), std::uint32_t(k)});
    const std::size_t n = references.size();
    if (n < std::size_t(fewestReferences)) {
        ranking.unusable = fmt::format("only {} positions free of ordinary lines, {} needed", n, fewestReferences);
        return ranking;
    }
    if (mostlyTied(z, references)) {
        ranking.unusable = "more than half of its positions have the same value";
        return ranking;
    }
    DescendingOrder().sort(references);

    const std::vector<float>& power = powersTo(n + 1, kappa - 1);
    std::array<float, 2 * kOwnPeak + 2> scale{};  // kappa (1 + n - own)^(1 - kappa), own = references in the own peak
    for (std::size_t own = 0; own < scale.size(); ++own)
        scale[own] = float(kappa * std::pow(double(1 + n - own), 1 - kappa));

    for (std::size_t from = 0; from < n;) {
        std::size_t to = from;
        while (to < n && references[to].key == references[from].key) ++to;
        for (std::size_t i = from; i < to; ++i) {
            const std::size_t k = references[i].position;
            std::size_t own = 0, ownAsHigh = 0;
            const std::size_t lo = std::max<std::size_t>(first, k < kOwnPeak ? 0 : k - kOwnPeak);
            const std::size_t hi = std::min(size - 1, k + kOwnPeak);
            for (std::size_t j = lo; j <= hi; ++j) {
                own += !masked[j];
                ownAsHigh += !masked[j] && peaks[j] >= peaks[k];
            }
            const std::size_t count = 1 + to - ownAsHigh;
            ranking.p[k] = float(double(count) / double(1 + n - own));
            ranking.factor[k] = power[count] * scale[own];
        }
        from = to;
    }
    return ranking;
}

}  // namespace fettle
