#include "ui/plot/colour_scale.h"

#include <algorithm>
#include <cmath>

namespace fettle {

double ColourRange::share(double value) const {
    if (linear) return (value - low) / (high - low);
    return value > 0 ? std::log(value / low) / std::log(high / low) : -1e9;
}

double ColourRange::value(double share) const {
    if (linear) return low + share * (high - low);
    return low * std::pow(high / low, share);
}

ColourScale::ColourScale(ColourRange range, const ColourMap& map, QRgb gap)
    : range_(range), table_(std::size_t(1) << 16, gap) {
    for (std::uint32_t i = 0; i < table_.size() / 2; ++i) {
        const float value = std::bit_cast<float>((i << 16) | 0x8000U);  // middle of the step
        const double share = std::isfinite(value) ? range_.share(value) : 1;
        table_[i] = map[std::size_t(std::clamp(share, 0.0, 1.0) * double(map.size() - 1) + 0.5)];
    }
}

}  // namespace fettle
