#include "core/exchange/arithmetic.h"

#include <cmath>

namespace fettle {

namespace {

using Kind = ArithmeticRow::Kind;

double tenth(double value) {
    return std::round(value * 10) / 10;
}

}  // namespace

std::vector<ArithmeticRow> arithmeticOf(const Hypothesis& h) {
    if (!h.weightDban) return {};
    std::vector<ArithmeticRow> rows;
    double sum = 0;
    for (const LineRow& line : h.best.rows) {
        rows.push_back({Kind::Line, line.name, line, line.weightDban, tenth(line.weightDban)});
        sum += rows.back().printed;
    }
    const bool mean = h.recordingCount > 1;
    const double weight = tenth(*h.weightDban), meanRow = mean ? tenth(h.meanDban) : 0;
    rows.push_back({Kind::Search, "search", {}, h.best.searchDban, tenth(weight - meanRow - sum)});
    if (mean)
        rows.push_back({Kind::Mean,
                        "mean over " + std::to_string(h.recordingCount) + " recordings",
                        {},
                        h.meanDban,
                        meanRow});
    rows.push_back({Kind::Weight, "weight", {}, *h.weightDban, weight});
    return rows;
}

}  // namespace fettle
