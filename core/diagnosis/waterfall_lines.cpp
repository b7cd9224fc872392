#include "core/diagnosis/waterfall_lines.h"

#include <algorithm>
#include <cmath>

#include "core/diagnosis/view_lines.h"

namespace fettle {

namespace {

WaterfallLines cells(const ChannelViews& views, const char* kind, double topHz,
                     const std::vector<float>& values, std::size_t count) {
    WaterfallLines result{views.channel, kind, topHz, {}};
    result.lines = largestInCells(values, views.df, result.topHz, count);
    return result;
}

}  // namespace

std::vector<float> largestInCells(const std::vector<float>& values, double dfHz, double& topHz,
                                  std::size_t count) {
    const auto reach = std::min(values.size(), std::size_t(std::floor(topHz / dfHz + 1e-9)));
    if (reach < count || topHz > double(values.size()) * dfHz) topHz = double(reach) * dfHz;
    count = std::min(count, reach);
    std::vector<float> largest(count, 0.0F);
    for (std::size_t k = 0; k < reach; ++k) {
        const auto cell = std::min(count - 1, std::size_t(double(k) * dfHz / topHz * double(count)));
        largest[cell] = std::max(largest[cell], values[k]);
    }
    return largest;
}

std::vector<WaterfallLines> waterfallLines(const ChannelViews& views, double velocityLeastHz,
                                           std::size_t count) {
    std::vector<WaterfallLines> all;
    if (views.samplesUsed == 0) return all;
    const double top = views.spectrum.topHz();
    all.push_back(cells(views, "velocity", std::min(kWaterfallTopHz, top),
                        velocityLines(views, velocityLeastHz, kWaterfallTopHz), count));
    all.push_back(cells(views, "acceleration", top, accelerationLines(views), count));
    if (const View* whole = wholeBandEnvelope(views)) {
        std::vector<float> amplitude(whole->z.size());
        std::transform(whole->z.begin(), whole->z.end(), amplitude.begin(),
                       [](float z) { return std::sqrt(std::max(z, 0.0F)); });
        const double reach = double(amplitude.size()) * views.df;
        all.push_back(cells(views, "envelope", std::min(kWaterfallTopHz, reach), amplitude, count));
    }
    return all;
}

}  // namespace fettle
