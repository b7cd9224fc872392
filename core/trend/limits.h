// Why: beside a standard's boundary the trade draws limits from the machine's own past: five ways, each with
// its name, none better in general. Mean + k s alarms are common practice, no source; tolerance bound: see
// distribution.h; MAD as a spread: F. R. Hampel, J. Am. Stat. Assoc. 69 (1974) 383-393. Unit of the quantity.
// Thread: pure.
#pragma once

#include <optional>
#include <span>

namespace fettle {

struct StatisticalLimits {
    double meanPlus3s = 0;
    double logNormal = 0;  // exp(mean + 3 s of the logarithms); 0 where a value is not above 0
    double medianMad = 0;  // median + 3 x 1.4826 x median absolute deviation
    double p95 = 0;        // 95th percentile, linear between the order statistics
    double tolerance = 0;  // above 95 % of all values with 95 % confidence, one-sided, normal
    int count = 0;
};

// Of a baseline's daily medians; empty for fewer than three.
std::optional<StatisticalLimits> statisticalLimits(std::span<const double> values);

}  // namespace fettle
