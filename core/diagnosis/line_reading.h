// Why: the families read lines and floors of one spectrum in the same few ways, each said once. Units in the
// names; r.m.s. Spectra: ChannelViews::spectrum, g, Hann, one transform. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/view.h"

namespace fettle {

struct Point;

// A line and what its uncertain rate moves it by.
struct LineAt {
    double hz = 0, plusMinusHz = 0;
};

// Half-width in which all of a line lies: the Hann window's main lobe, and its uncertainty.
double halfWidthHz(const ChannelViews& views, const LineAt& line);
double lineMmS(const ChannelViews& views, const LineAt& line);
double lineG(const ChannelViews& views, const LineAt& line);
// Without the noise in which it stands, as linesOverFloorG.
double lineOverFloorMmS(const ChannelViews& views, const LineAt& line);
double linesMmS(const ChannelViews& views, const std::vector<LineAt>& lines);  // together
double linesG(const ChannelViews& views, const std::vector<LineAt>& lines);
// The same without the noise between which they stand, its median beside each line; what the noise hides
// reads as a third of it, never as nothing.
double linesOverFloorG(const ChannelViews& views, const std::vector<LineAt>& lines);

// Level of the noise between two frequencies, dB re 1 g^2/Hz, by the median, so that lines do not count.
double floorDb(const ChannelViews& views, double lowHz, double highHz);

// The highest frequency that may be read: of the point's sensor and mounting, else 0.45 of the sample rate.
double usableTopHz(const ChannelViews& views, const Point* point);

// "8.0 s"
std::string secondsText(double seconds);

}  // namespace fettle
