#include "core/diagnosis/flux_speed.h"

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kPairZ = 30, kLoneZ = 300;  // one of two lines that agree; a line without its twin
constexpr double kMirrorBins = 0.35;         // how evenly a pair stands about the mains
constexpr double kNearestBins = 5;           // to the mains: beyond the window's main lobe
constexpr double kClearlyStronger = 4;       // in power, over any other pair

struct Pair {
    double distanceHz = 0, plusMinusHz = 0, power = 0;
};

// Pairs that stand evenly about the mains, least to most away from it; strongest first.
std::vector<Pair> pairsAbout(const FluxView& view, const Mains& mains, double least, double most) {
    const auto below = linesBetween(view.spectrum, view.z, mains.hz - most, mains.hz - least, kPairZ);
    const auto above = linesBetween(view.spectrum, view.z, mains.hz + least, mains.hz + most, kPairZ);
    const double even = 2 * (kMirrorBins * view.spectrum.stepHz);
    std::vector<Pair> pairs;
    for (const PlacedLine& b : below)
        for (const PlacedLine& a : above)
            if (std::abs(a.hz + b.hz - 2 * mains.hz) < even)
                pairs.push_back(
                    {(a.hz - b.hz) / 2, (a.plusMinusHz + b.plusMinusHz) / 2, std::min(a.power, b.power)});
    std::sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) { return a.power > b.power; });
    return pairs;
}

std::optional<SpeedReading> besideRotation(const FluxView& view, const Mains& mains, double least,
                                           double most) {
    const double df = view.spectrum.stepHz;
    const auto pairs = pairsAbout(view, mains, least - df / 4, most + df / 4);
    if (!pairs.empty()) return SpeedReading{"f1 +- fr in flux", pairs[0].distanceHz, pairs[0].plusMinusHz};
    std::vector<PlacedLine> lone =
        linesBetween(view.spectrum, view.z, mains.hz - most, mains.hz - least, kLoneZ);
    if (lone.size() != 1) return std::nullopt;
    return SpeedReading{"f1 - fr in flux", mains.hz - lone[0].hz, lone[0].plusMinusHz + mains.plusMinusHz};
}

std::optional<SpeedReading> slipSidebands(const FluxView& view, const Mains& mains, double poles,
                                          double least, double most) {
    const double synchronous = 2 * mains.hz / poles;
    // 2 s f1 = poles x (synchronous - shaft)
    const double nearest = std::max(poles * (synchronous - most), kNearestBins * view.spectrum.stepHz);
    const auto pairs = pairsAbout(view, mains, nearest, poles * (synchronous - least));
    if (pairs.empty()) return std::nullopt;
    if (pairs.size() > 1 && pairs[1].power * kClearlyStronger > pairs[0].power) return std::nullopt;
    return SpeedReading{kSlipSidebands, synchronous - pairs[0].distanceHz / poles,
                        pairs[0].plusMinusHz / poles + 2 * mains.plusMinusHz / poles};
}

}  // namespace

std::vector<SpeedReading> speedInFlux(const Machine& machine, const std::vector<FluxView>& flux,
                                      const Mains& mains, double leastHz, double mostHz) {
    std::vector<SpeedReading> readings;
    if (!mains.measured || mains.from != "flux" || !machine.driver.poles) return readings;
    const double poles = *machine.driver.poles;
    if (!slips(machine))
        return {{"synchronous with the mains in flux", 2 * mains.hz / poles, 2 * mains.plusMinusHz / poles}};
    for (const FluxView& view : flux) {
        if (poles > 2)
            if (auto reading = besideRotation(view, mains, leastHz, mostHz)) readings.push_back(*reading);
        if (auto reading = slipSidebands(view, mains, poles, leastHz, mostHz)) readings.push_back(*reading);
    }
    return readings;
}

}  // namespace fettle
