// Why: plots and waterfalls show r.m.s. lines in mm/s and g; the views hold mean squares in g. And which view
// is meant. Shapes: value k stands at k x df. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/view.h"

namespace fettle {

// mm/s r.m.s. a line, up to topHz; 0 below leastHz.
std::vector<float> velocityLines(const ChannelViews& views, double leastHz, double topHz);
// g r.m.s. a line, the whole spectrum.
std::vector<float> accelerationLines(const ChannelViews& views);
// The widest band's envelope, not pre-whitened; null where there is none.
const View* wholeBandEnvelope(const ChannelViews& views);
// The one that a verdict names, "x, envelope 3000-3920 Hz"; null where there is none.
const View* viewNamed(const ChannelViews& views, const std::string& channelAndView);

}  // namespace fettle
