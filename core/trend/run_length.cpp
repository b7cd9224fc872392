#include <cmath>
#include <numbers>
#include <utility>

#include "core/trend/charts.h"
#include "core/trend/distribution.h"

namespace fettle {

namespace {

constexpr std::size_t kNodes = 96;

struct Quadrature {
    std::vector<double> at, weight;
};

// P_n(x) and its derivative, by the three-term recurrence.
std::pair<double, double> legendre(std::size_t n, double x) {
    double now = 1, before = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const double next = ((2.0 * double(i) + 1) * x * now - double(i) * before) / double(i + 1);
        before = now;
        now = next;
    }
    return {now, double(n) * (x * now - before) / (x * x - 1)};
}

// Gauss-Legendre on [low, high]; nodes by Newton's method from their known neighbourhood.
Quadrature gauss(double low, double high) {
    Quadrature rule;
    for (std::size_t i = 0; i < kNodes; ++i) {
        double x = std::cos(std::numbers::pi * (double(i) + 0.75) / (double(kNodes) + 0.5));
        for (int step = 0; step < 50; ++step) {
            const auto [value, slope] = legendre(kNodes, x);
            x -= value / slope;
            if (std::abs(value / slope) < 1e-15) break;
        }
        const double slope = legendre(kNodes, x).second;
        rule.at.push_back(low + (high - low) * (1 + x) / 2);
        rule.weight.push_back((high - low) / ((1 - x * x) * slope * slope));
    }
    return rule;
}

using Rows = std::vector<std::vector<double>>;  // each ends with its right-hand side

void eliminate(Rows& rows, std::size_t column) {
    std::size_t pivot = column;
    for (std::size_t r = column; r < rows.size(); ++r)
        if (std::abs(rows[r][column]) > std::abs(rows[pivot][column])) pivot = r;
    std::swap(rows[column], rows[pivot]);
    for (std::size_t r = column + 1; r < rows.size(); ++r) {
        const double share = rows[r][column] / rows[column][column];
        for (std::size_t c = column; c < rows[r].size(); ++c)
            rows[r][c] -= share * rows[column][c];
    }
}

std::vector<double> solvedRows(Rows rows) {
    const std::size_t n = rows.size();
    for (std::size_t column = 0; column < n; ++column)
        eliminate(rows, column);
    std::vector<double> x(n);
    for (std::size_t r = n; r-- > 0;) {
        double rest = rows[r][n];
        for (std::size_t c = r + 1; c < n; ++c)
            rest -= rows[r][c] * x[c];
        x[r] = rest / rows[r][r];
    }
    return x;
}

}  // namespace

// Crowder (1987), equation 2: L(u) = 1 + 1/lambda int L(x) phi((x - (1 - lambda) u) / lambda - shift) dx.
double ewmaRunLength(const EwmaOptions& options, double shift) {
    const double lambda = options.lambda, edge = options.width * std::sqrt(lambda / (2 - lambda));
    const Quadrature rule = gauss(-edge, edge);
    const auto kernel = [&](double from, std::size_t j) {
        return rule.weight[j] / lambda * normalDensity((rule.at[j] - (1 - lambda) * from) / lambda - shift);
    };
    Rows rows(kNodes, std::vector<double>(kNodes + 1, 1));
    for (std::size_t i = 0; i < kNodes; ++i)
        for (std::size_t j = 0; j < kNodes; ++j)
            rows[i][j] = (i == j) - kernel(rule.at[i], j);
    const std::vector<double> length = solvedRows(std::move(rows));
    double sum = 1;
    for (std::size_t j = 0; j < kNodes; ++j)
        sum += length[j] * kernel(0, j);
    return sum;
}

// Page (1954): L(u) = 1 + L(0) P(u + X - k <= 0) + int_0^h L(x) phi(x - u + k - shift) dx; the last unknown
// is L(0).
double cusumOneSidedRunLength(const CusumOptions& options, double shift) {
    const Quadrature rule = gauss(0, options.h);
    const auto from = [&](std::size_t i) { return i < kNodes ? rule.at[i] : 0; };
    const double off = options.k - shift;
    Rows rows(kNodes + 1, std::vector<double>(kNodes + 2, 1));
    for (std::size_t i = 0; i <= kNodes; ++i) {
        for (std::size_t j = 0; j < kNodes; ++j)
            rows[i][j] = (i == j) - rule.weight[j] * normalDensity(rule.at[j] - from(i) + off);
        rows[i][kNodes] = (i == kNodes) - normalBelow(off - from(i));
    }
    return solvedRows(std::move(rows)).back();
}

double cusumRunLength(const CusumOptions& options, double shift) {
    return 1 / (1 / cusumOneSidedRunLength(options, shift) + 1 / cusumOneSidedRunLength(options, -shift));
}

double shewhartRunLength(double width, double shift) {
    return 1 / (normalBelow(-width - shift) + normalBelow(-width + shift));
}

}  // namespace fettle
