#include "core/diagnosis/stage.h"

#include <algorithm>
#include <cmath>

#include "core/base/units.h"

namespace fettle {

namespace {

// Common practice, no source.
constexpr double kVelocityTopHz = 1000;
constexpr double kStandsOut = 12;  // power over floor: reached by noise at one of 160,000 bins
constexpr double kWorthMmS = 0.1;  // a line weaker than this in velocity is not yet "in velocity"

int linesInVelocity(const Weighing& found, const ChannelViews& views) {
    int lines = 0;
    for (const LineRow& row : found.rows) {
        if (!row.carrier || row.state == LineState::LeftOut || row.expectedHz > kVelocityTopHz) continue;
        const auto k = std::size_t(row.expectedHz / views.df + 0.5);
        if (k == 0 || k + 1 >= views.plainZ.size()) continue;
        const std::size_t top =
            std::size_t(std::max_element(&views.plainZ[k - 1], &views.plainZ[k + 2]) - views.plainZ.data());
        const double g = std::sqrt(views.spectrum.values[top]);
        lines += views.plainZ[top] > kStandsOut && velocityMmPerS(g, Hertz(row.expectedHz)) > kWorthMmS;
    }
    return lines;
}

}  // namespace

Severity bearingStage(const Weighing& found, const ChannelViews& views) {
    int carriers = 0, sidebands = 0;
    for (const LineRow& row : found.rows)
        if (row.state == LineState::Found) ++(row.carrier ? carriers : sidebands);
    Severity severity;
    severity.kind = "stage";
    severity.value = "early";
    if (carriers >= kDevelopedCarriers && sidebands >= kDevelopedSidebands) severity.value = "developed";
    if (linesInVelocity(found, views) >= kLateLines) severity.value = "late";
    return severity;
}

}  // namespace fettle
