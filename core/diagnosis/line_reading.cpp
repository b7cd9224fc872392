#include "core/diagnosis/line_reading.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/base/units.h"
#include "core/dsp/integrate.h"
#include "core/machine/machine.h"

namespace fettle {

namespace {
constexpr double kLobeBins = 2.5;       // half the Hann window's main lobe and half a bin
constexpr double kBesideBins = 40;      // of noise on either side of a line
constexpr double kHiddenInNoise = 0.1;  // of the noise's power: a line below it is not told from it
constexpr double kUsedOfRate = 0.45;
constexpr std::size_t kMostFloorValues = 4096;  // enough for a median within 0.1 dB
}  // namespace

double halfWidthHz(const ChannelViews& views, const LineAt& line) {
    return kLobeBins * views.df + line.plusMinusHz;
}

double lineMmS(const ChannelViews& views, const LineAt& line) {
    const double half = halfWidthHz(views, line);
    return velocityRms(views.spectrum, std::max(views.df, line.hz - half), line.hz + half);
}

double lineG(const ChannelViews& views, const LineAt& line) {
    const double half = halfWidthHz(views, line);
    return bandRms(views.spectrum, std::max(0.0, line.hz - half), line.hz + half);
}

double linesMmS(const ChannelViews& views, const std::vector<LineAt>& lines) {
    double power = 0;
    for (const LineAt& line : lines)
        power += std::pow(lineMmS(views, line), 2);
    return std::sqrt(power);
}

double linesG(const ChannelViews& views, const std::vector<LineAt>& lines) {
    double power = 0;
    for (const LineAt& line : lines)
        power += std::pow(lineG(views, line), 2);
    return std::sqrt(power);
}

namespace {
// g^2 of the noise in which a line stands, over the line's width.
double noiseUnder(const ChannelViews& views, const LineAt& line) {
    const double half = halfWidthHz(views, line), beside = half + kBesideBins * views.df;
    const double density = floorDb(views, std::max(0.0, line.hz - beside), line.hz + beside);
    return std::pow(10, density / 10) * 2 * half;
}

double overNoise(double power, double noise) {
    return std::sqrt(std::max(power - noise, kHiddenInNoise * noise));
}
}  // namespace

double linesOverFloorG(const ChannelViews& views, const std::vector<LineAt>& lines) {
    double power = 0, noise = 0;
    for (const LineAt& line : lines) {
        power += std::pow(lineG(views, line), 2);
        noise += noiseUnder(views, line);
    }
    return overNoise(power, noise);
}

double lineOverFloorMmS(const ChannelViews& views, const LineAt& line) {
    const double noise = velocityMmPerS(std::sqrt(noiseUnder(views, line)), Hertz(line.hz));
    return overNoise(std::pow(lineMmS(views, line), 2), noise * noise);
}

double floorDb(const ChannelViews& views, double lowHz, double highHz) {
    const std::vector<double>& power = views.spectrum.values;
    const auto first = std::min(power.size(), std::size_t(std::ceil(lowHz / views.df)));
    const auto last = std::min(power.size(), std::size_t(highHz / views.df) + 1);
    if (first >= last) return std::numeric_limits<double>::quiet_NaN();
    const std::size_t step = std::max<std::size_t>(1, (last - first) / kMostFloorValues);
    std::vector<double> values;
    for (std::size_t k = first; k < last; k += step)
        values.push_back(power[k]);
    const auto middle = values.begin() + std::ptrdiff_t(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    // The median of an exponentially distributed power is ln 2 times its mean.
    return decibels(*middle / std::numbers::ln2 / (views.spectrum.noiseBandwidthBins * views.df));
}

double usableTopHz(const ChannelViews& views, const Point* point) {
    const double top = kUsedOfRate * views.sampleRateHz;
    return point && point->usableHz ? std::min(top, (*point->usableHz)[1]) : top;
}

std::string secondsText(double seconds) {
    return fmt::format("{:.1f} s", seconds);
}

}  // namespace fettle
