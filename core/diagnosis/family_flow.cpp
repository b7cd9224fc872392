// Source: signatures of blade pass, cavitation and turbulence as in common textbooks (ISO 13373-3 and -5
// cited by title), from memory; the 2 to 20 kHz range of cavitation noise likewise.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/units.h"
#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/line_reading.h"
#include "core/machine/path.h"
#include "core/machine/severity_limits.h"

namespace fettle {

namespace {

constexpr int kBladeHarmonics = 2;
constexpr double kCavitationLowHz = 2000, kCavitationHighHz = 20000, kCavitationNeedsHz = 4500;
constexpr double kNoiseFromHz = 1500, kNoiseToTop = 1.25;  // bands are steps of a tree, not cut to measure
constexpr double kFlowLeastHz = 2, kFlowMostOrder = 0.8;   // of the driven shaft
constexpr double kFewestFlowBins = 20;
constexpr double kHiddenShare = 0.1;   // of the noise's power: what lies below is not told from it
constexpr double kDrownedShare = 0.5;  // of the B/C limit

bool movesFluid(const Machine& machine) {
    if (machine.driven.blades) return true;
    const std::string& kind = machine.driven.kind;
    for (const char* word : {"fan", "pump", "blower", "compressor"})
        if (kind.find(word) != std::string::npos) return true;
    return false;
}

bool isPump(const Machine& machine) {
    return machine.driven.kind.find("pump") != std::string::npos;
}

std::vector<std::string> drivenIf(bool concerns) {
    if (concerns) return {"driven"};
    return {};
}

double drivenRatio(const Machine& machine) {
    return machine.shafts[machine.shaftOfDriven().value_or(0)].ratio;
}

const Point* pointOf(const Listening& of, const ChannelViews& views) {
    return of.prepared.roles[views.channel].point;
}

// Belts hold back what the driven machine's casing does: a tenth of it arrives, which the limits of the
// motor's own housing do not fit.
void sayIfBehindBelt(const Listening& of, FamilyReport& report) {
    const Path nearest = nearestPath(of.machine, of.at);
    if (nearest == Path::ThroughBelt)
        report.addBlind(of, "heard " + wordsOf(nearest), "a sensor on the " + of.machine.driven.kind);
}

void measureBlades(const Listening& of, FamilyReport& report) {
    sayIfBehindBelt(of, report);
    const double order = *of.machine.driven.blades * drivenRatio(of.machine);
    const double spread = of.machine.shafts[of.machine.shaftOfDriven().value_or(0)].ratioSpread;
    const Rates& rates = of.prepared.rates;
    for (const ChannelViews* views : of.near) {
        const double top = usableTopHz(*views, pointOf(of, *views)), pass = order * rates.shaftHz;
        const int count = std::min(kBladeHarmonics, int(top / pass));
        if (count == 0) {
            report.addBlind(of, fmt::format("blade pass at {:.0f} Hz lies above {:.0f} Hz", pass, top),
                            fmt::format("a sample rate of {:.0f} Hz or more", 3 * pass));
            continue;
        }
        std::vector<LineAt> lines;
        for (int h = 1; h <= count; ++h)
            lines.push_back({h * pass, h * order * (rates.shaftSpreadHz + spread * rates.shaftHz)});
        const double mmS = linesMmS(*views, lines);
        report.add(of, count > 1 ? fmt::format("blade pass 1-{} x", count) : "blade pass 1 x", "mm/s",
                   views->channel, mmS);
        addPossible(of, views->channel, mmS, fmt::format("blade pass makes up {:.1f} mm/s of it", mmS),
                    report);
    }
}

// The widest band of noise alone, not pre-whitened; null: none lies so high.
const View* noiseBand(const ChannelViews& views, double topHz) {
    const View* widest = nullptr;
    const auto width = [](const View& v) { return v.band.highHz - v.band.lowHz; };
    for (const View& view : views.envelopes) {
        if (view.whitened || view.top == 0) continue;
        const bool high = view.band.lowHz >= kNoiseFromHz && view.band.highHz <= kNoiseToTop * topHz;
        if (high && (!widest || width(view) > width(*widest))) widest = &view;
    }
    return widest;
}

// Vapour bubbles collapse with every blade that passes, a bearing's friction does not: how high blade pass
// stands over the floor of the noise's envelope.
void measureSwing(const Listening& of, const ChannelViews& views, double topHz, FamilyReport& report) {
    if (!of.machine.driven.blades) return;
    const View* band = noiseBand(views, topHz);
    const double pass = *of.machine.driven.blades * drivenRatio(of.machine) * of.prepared.rates.shaftHz;
    const auto k = std::size_t(pass / views.df + 0.5);
    if (!band || k < 2 || k + 1 >= band->top) return;
    const double z = *std::max_element(&band->z[k - 1], &band->z[k + 2]);
    report.add(of, kBladeSwing, "dB", views.channel, decibels(std::max(z, 1.0)));
}

void measureCavitation(const Listening& of, FamilyReport& report) {
    const Path nearest = nearestPath(of.machine, of.at);
    if (nearest > Path::SameBase) {
        report.addBlind(of, "heard " + wordsOf(nearest), "a sensor on the pump");
        return;
    }
    for (const ChannelViews* views : of.near) {
        const double top = std::min(usableTopHz(*views, pointOf(of, *views)), kCavitationHighHz);
        if (top < kCavitationNeedsHz) {
            report.addBlind(
                of, fmt::format("its noise lies from 2 kHz up, this channel can be read to {:.0f} Hz", top),
                "a sample rate of 10 kHz or more and a stud or adhesive mount");
            continue;
        }
        report.add(of, fmt::format("floor 2-{:.1f} kHz", top / 1000), "dB", views->channel,
                   floorDb(*views, kCavitationLowHz, top));
        measureSwing(of, *views, top, report);
    }
}

// (mm/s)^2 of random motion over a band by its median bin, which lines do not lift; `power`: g^2 of a bin.
template <class Power>
double randomPower(const ChannelViews& views, double lowHz, double highHz, Power power) {
    std::vector<double> densities;
    for (auto k = std::size_t(std::ceil(lowHz / views.df)); double(k) * views.df < highHz; ++k)
        densities.push_back(std::pow(velocityMmPerS(std::sqrt(power(k)), Hertz(double(k) * views.df)), 2));
    std::nth_element(densities.begin(), densities.begin() + std::ptrdiff_t(densities.size() / 2),
                     densities.end());
    const double middle = densities[densities.size() / 2];
    return middle / views.spectrum.noiseBandwidthBins * double(densities.size());
}

// Below the shaft's order; the median of an exponentially distributed power is ln 2 times its mean.
double measuredPower(const ChannelViews& views, double lowHz, double highHz) {
    return randomPower(views, lowHz, highHz, [&](std::size_t k) { return views.spectrum.values[k]; }) /
           std::log(2.0);
}

// What the sensor's stated noise alone would read as; 0: not stated.
double noisePower(const ChannelViews& views, const ChannelRole& role, double lowHz, double highHz) {
    if (!role.point || !role.point->noisePerRtHz) return 0;
    const double density = *role.point->noisePerRtHz * role.toG;
    const double bin = density * density * views.spectrum.noiseBandwidthBins * views.df;
    return randomPower(views, lowHz, highHz, [&](std::size_t) { return bin; });
}

// Of a sensor's noise so much that what matters hides in it: half of B/C.
bool isDrowned(const Listening& of, const Point* point, double noiseMmS) {
    if (!point) return false;
    const auto limits = limitsFor(of.machine, *point);
    if (!limits || limits->sets.empty()) return false;
    return noiseMmS > kDrownedShare * limits->sets.front().velocity[1];
}

// The sensor's own noise is taken away where it is stated.
void readRandom(const Listening& of, const ChannelViews& views, double low, double high,
                FamilyReport& report) {
    const ChannelRole& role = of.prepared.roles[views.channel];
    const double all = measuredPower(views, low, high), noise = noisePower(views, role, low, high);
    if (noise == 0) return report.add(of, "random below 1x", "mm/s", views.channel, std::sqrt(all));
    report.add(of, "random below 1x over noise", "mm/s", views.channel,
               std::sqrt(std::max(all - noise, kHiddenShare * noise)));
    if (isDrowned(of, role.point, std::sqrt(noise)))
        report.addBlind(
            of,
            fmt::format("the sensor's own noise is {:.1f} mm/s between {:.0f} Hz and {:.1f} Hz, below 1x "
                        "of the driven shaft",
                        std::sqrt(noise), low, high),
            "a sensor of less noise");
}

void measureFlow(const Listening& of, FamilyReport& report) {
    sayIfBehindBelt(of, report);
    const double turn = drivenRatio(of.machine) * of.prepared.rates.shaftHz;
    for (const ChannelViews* views : of.near) {
        const Point* point = pointOf(of, *views);
        const double low = std::max(kFlowLeastHz, point && point->usableHz ? (*point->usableHz)[0] : 0);
        const double high = kFlowMostOrder * turn;
        if ((high - low) / views->df < kFewestFlowBins) {
            const double needs = high > low ? kFewestFlowBins / (high - low) : 0;
            report.addBlind(
                of,
                fmt::format("too little can be read between {:.0f} Hz and {:.1f} Hz, below 1x of the "
                            "driven shaft",
                            low, high),
                needs > 0 ? "a recording of " + secondsText(needs) + " or more"
                          : "a sensor that reads lower");
            continue;
        }
        readRandom(of, *views, low, high, report);
    }
}

}  // namespace

FaultFamily bladePassFamily() {
    return {"blade_pass",
            "blades x shaft and its harmonics",
            "radial, at the discharge; ducts and pipes too",
            "blade pass unchanged when flow or damper changes; 1x growing as well: then it is build-up",
            "a duct or casing resonance on blade pass, off-design flow, 2 x mains beside it",
            "a point on the driven machine, sample rate 2.2 x blade pass or more, like flow",
            "change of flow or damper position, and clearance at the cut-off at standstill under lock-out, "
            "decide",
            "common textbooks, from memory",
            "simulation only",
            [](const Machine& m) { return drivenIf(m.driven.blades && m.shaftOfDriven()); },
            measureBlades};
}

FaultFamily cavitationFamily() {
    return {"cavitation",
            "no lines: random noise from 2 to 20 kHz, often swinging with blade pass",
            "every direction at the pump's casing",
            "noise that does not change with suction head; temperature of a bearing rising with it",
            "a dry bearing, gas in the liquid, a throttled valve nearby",
            "a point on the pump, readable to 4.5 kHz or more",
            "suction pressure against the pump's NPSH curve, and whether the noise goes when the level rises "
            "or the "
            "flow falls, decide",
            "common textbooks, from memory",
            "simulation only",
            [](const Machine& m) { return drivenIf(isPump(m)); },
            measureCavitation};
}

FaultFamily flowFamily() {
    return {"flow",
            "no lines: random motion below 1x of the driven shaft",
            "radial; pipes and ducts too",
            "random motion unchanged when the flow changes",
            "a shaking floor or neighbour, loose node, drift of the sensor",
            "readable from 2 Hz, long enough for 20 steps below 0.8 x",
            "operating point against the curve, and a change of flow, decide",
            "common textbooks, from memory",
            "simulation only",
            [](const Machine& m) { return drivenIf(movesFluid(m)); },
            measureFlow};
}

}  // namespace fettle
