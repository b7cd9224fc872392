#include "core/round/e_bh.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace fettle {

namespace {

constexpr double kRounding = 1e-9;  // decibans: a weight exactly on the bound is listed
constexpr double kNoWeight = -std::numeric_limits<double>::infinity();

double neededDban(double machines, double alpha, double listed) {
    return 10 * std::log10(std::max(machines, 1.0) / (alpha * std::max(listed, 1.0)));
}

double shareOf(std::span<const double> shares, std::size_t i) {
    if (shares.empty()) return 1;
    return i < shares.size() && shares[i] > 0 ? shares[i] : 0;
}

}  // namespace

EbhResult eBh(std::span<const double> weightsDban, double alpha) {
    std::vector<double> sorted(weightsDban.begin(), weightsDban.end());
    std::replace_if(
        sorted.begin(), sorted.end(), [](double w) { return std::isnan(w); }, kNoWeight);
    std::sort(sorted.begin(), sorted.end(), std::greater<>());
    const auto all = double(sorted.size());
    std::size_t listed = 0;
    for (std::size_t k = 1; k <= sorted.size(); ++k)
        if (sorted[k - 1] >= neededDban(all, alpha, double(k)) - kRounding) listed = k;
    EbhResult result;
    result.needsDban = neededDban(all, alpha, double(listed));
    for (const double weight : weightsDban)
        result.listed.push_back(listed > 0 && weight >= result.needsDban - kRounding);
    return result;
}

double meanDban(std::span<const double> weightsDban, std::span<const double> shares) {
    double top = kNoWeight, total = 0;
    for (std::size_t i = 0; i < weightsDban.size(); ++i)
        if (!std::isnan(weightsDban[i]) && shareOf(shares, i) > 0) {
            top = std::max(top, weightsDban[i]);
            total += shareOf(shares, i);
        }
    if (total <= 0) return 0;
    if (std::isinf(top)) return top;
    double sum = 0;
    for (std::size_t i = 0; i < weightsDban.size(); ++i)
        if (!std::isnan(weightsDban[i]))
            sum += shareOf(shares, i) / total * std::pow(10.0, (weightsDban[i] - top) / 10);
    return top + 10 * std::log10(sum);
}

std::vector<double> priorsDban(std::span<const double> shares) {
    double total = 0;
    for (const double share : shares)
        total += share;
    std::vector<double> priors;
    for (const double share : shares)
        priors.push_back(10 * std::log10(share * double(shares.size()) / total));
    return priors;
}

}  // namespace fettle
