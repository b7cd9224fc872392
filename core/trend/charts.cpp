#include "core/trend/charts.h"

#include <algorithm>
#include <cmath>

namespace fettle {

std::vector<EwmaPoint> ewma(std::span<const double> values, const ChartBasis& basis,
                            const EwmaOptions& options) {
    std::vector<EwmaPoint> points;
    const double keep = 1 - options.lambda;
    double smooth = basis.target, left = 1;
    for (const double value : values) {
        smooth = options.lambda * value + keep * smooth;
        left *= keep * keep;
        const double share = options.fixedLimits ? 1 : 1 - left;
        const double half =
            options.width * basis.sigma * std::sqrt(options.lambda / (2 - options.lambda) * share);
        const double low = basis.target - half, high = basis.target + half;
        points.push_back({smooth, low, high, smooth < low || smooth > high});
    }
    return points;
}

CusumChart cusum(std::span<const double> values, const ChartBasis& basis, const CusumOptions& options) {
    CusumChart chart;
    CusumPoint point;
    for (const double value : values) {
        const double off = (value - basis.target) / basis.sigma;
        point.up = std::max(0.0, point.up + off - options.k);
        point.down = std::max(0.0, point.down - off - options.k);
        point.upRun = point.up > 0 ? point.upRun + 1 : 0;
        point.downRun = point.down > 0 ? point.downRun + 1 : 0;
        point.out = point.up > options.h || point.down > options.h;
        chart.points.push_back(point);
    }
    return chart;
}

std::vector<std::size_t> shewhartOut(std::span<const double> values, const ChartBasis& basis, double width) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < values.size(); ++i)
        if (std::abs(values[i] - basis.target) > width * basis.sigma) out.push_back(i);
    return out;
}

}  // namespace fettle
