// Why: what a waterfall keeps of a recording: a few hundred lines a spectrum, taken as the largest of the
// lines they stand for, so that a line one bin wide is still there. Made from the views an examination has
// anyway. Units: velocity mm/s r.m.s. and acceleration g r.m.s. a line; envelope: amplitude over local floor
// (square root of the whole band's z). Shapes: at most `count` cells of equal width from 0 to topHz. Thread:
// pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/view.h"

namespace fettle {

struct WaterfallLines {
    std::size_t channel = 0;  // index into Recording::channels
    std::string kind;         // velocity | acceleration | envelope
    double topHz = 0;
    std::vector<float> lines;
};

inline constexpr std::size_t kWaterfallLines = 800;
inline constexpr double kWaterfallTopHz = 1000;  // of velocity and envelope

std::vector<WaterfallLines> waterfallLines(const ChannelViews& views, double velocityLeastHz,
                                           std::size_t count = kWaterfallLines);

// The largest of the values in each of `count` equal cells from 0 to topHz; value k stands at k x dfHz. Fewer
// values than cells: one cell a value, and topHz is cut to what there is.
std::vector<float> largestInCells(const std::vector<float>& values, double dfHz, double& topHz,
                                  std::size_t count);

}  // namespace fettle
