#include "core/diagnosis/view_lines.h"

#include <algorithm>
#include <cmath>

#include "core/base/units.h"

namespace fettle {

std::vector<float> velocityLines(const ChannelViews& views, double leastHz, double topHz) {
    const auto count = std::min(views.spectrum.values.size(), std::size_t(topHz / views.df) + 1);
    std::vector<float> lines(count, 0.0F);
    for (std::size_t k = 1; k < count; ++k) {
        const double hz = views.spectrum.frequencyHz(k);
        if (hz >= leastHz) lines[k] = float(velocityMmPerS(std::sqrt(views.spectrum.values[k]), Hertz(hz)));
    }
    return lines;
}

std::vector<float> accelerationLines(const ChannelViews& views) {
    std::vector<float> lines(views.spectrum.values.size());
    std::transform(views.spectrum.values.begin(), views.spectrum.values.end(), lines.begin(),
                   [](double power) { return float(std::sqrt(power)); });
    return lines;
}

const View* wholeBandEnvelope(const ChannelViews& views) {
    const View* widest = nullptr;
    const auto width = [](const View& v) { return v.band.highHz - v.band.lowHz; };
    for (const View& view : views.envelopes)
        if (!view.whitened && (!widest || width(view) > width(*widest))) widest = &view;
    return widest;
}

const View* viewNamed(const ChannelViews& views, const std::string& channelAndView) {
    for (const View& view : views.envelopes)
        if (channelAndView.ends_with(", " + view.name)) return &view;
    return nullptr;
}

}  // namespace fettle
