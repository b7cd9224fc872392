// Why: colours of a waterfall follow the logarithm of the value between two ends, or the value itself. One
// table is indexed by the upper half of the float's bits (monotonic for positive numbers, steps of about 0.07
// dB), so that colouring a pixel costs one look-up and no logarithm; negative means gap. Units: linear, those
// of the data.
#pragma once

#include <QColor>
#include <bit>
#include <cstdint>
#include <vector>

#include "ui/theme/colour_map.h"

namespace fettle {

struct ColourRange {
    double low = 1e-3, high = 1;  // low > 0, high > low
    bool linear = false;          // else by logarithm
    bool operator==(const ColourRange&) const = default;
    double share(double value) const;  // 0 at low, 1 at high; not clipped
    double value(double share) const;
};

class ColourScale {
  public:
    ColourScale(ColourRange range, const ColourMap& map, QRgb gap);

    QRgb of(float value) const { return table_[std::bit_cast<std::uint32_t>(value) >> 16]; }
    const ColourRange& range() const { return range_; }

  private:
    ColourRange range_;
    std::vector<QRgb> table_;  // 65,536; the upper half (negative numbers): gap
};

}  // namespace fettle
