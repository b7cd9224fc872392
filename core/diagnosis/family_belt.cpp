// Source: belt rate pi D n / L is kinematics; which harmonics, Randall, Vibration-based Condition Monitoring
// (2011), and common textbooks, from memory. Not weighed by ranks as a bearing is: a sound belt's joint and
// its stiffness draw the same comb, so that it stands there says only that there is a belt (tried: sound
// simulated belts weighed 35 to 37 decibans, worn ones 65 at every severity).
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/line_reading.h"
#include "core/machine/forcing.h"

namespace fettle {

namespace {

constexpr int kHarmonics = 4;
constexpr double kPulleyBins = 4;   // from the shaft orders of either pulley
constexpr double kLeastBeltHz = 2;  // below, a sensor's drift stands in velocity

std::vector<std::string> beltsOf(const Machine& machine) {
    std::vector<std::string> all;
    for (const Belt& belt : machine.belts)
        all.push_back(belt.id);
    return all;
}

const Belt& beltAt(const Listening& of) {
    return *std::find_if(of.machine.belts.begin(), of.machine.belts.end(),
                         [&](const Belt& belt) { return belt.id == of.at; });
}

struct Turning {
    double fastestHz = 0, slowestHz = 0;  // of the belt, by its creep
};

Turning turningOf(const Listening& of, const Belt& belt) {
    const double hz = beltOrder(of.machine, belt) * of.prepared.rates.shaftHz;
    return {hz * (1 - belt.creepPct[0] / 100), hz * (1 - belt.creepPct[1] / 100)};
}

// Whether harmonic h stays clear of the shaft orders of both pulleys over the whole range of creep.
bool clearOfPulleys(const Listening& of, const Belt& belt, const Turning& turning, int h, double df) {
    for (const std::string* id : {&belt.from, &belt.to}) {
        const Shaft& shaft = of.machine.shafts[of.machine.shaftById(*id).value_or(0)];
        const double spread = shaft.ratioSpread * shaft.ratio * of.prepared.rates.shaftHz;
        const double turn = shaft.ratio * of.prepared.rates.shaftHz;
        for (int order = 1; order * turn < 2 * h * turning.fastestHz + turn; ++order) {
            const double low = h * turning.slowestHz - kPulleyBins * df - order * spread;
            const double high = h * turning.fastestHz + kPulleyBins * df + order * spread;
            if (order * turn > low && order * turn < high) return false;
        }
    }
    return true;
}

std::vector<int> clearHarmonics(const Listening& of, const Belt& belt, const Turning& turning, double df) {
    std::vector<int> clear;
    for (int h = 1; h <= kHarmonics; ++h)
        if (h * turning.slowestHz > kLeastBeltHz && clearOfPulleys(of, belt, turning, h, df))
            clear.push_back(h);
    return clear;
}

double combMmS(const ChannelViews& views, const std::vector<int>& harmonics, double beltHz) {
    std::vector<LineAt> lines;
    for (const int h : harmonics)
        lines.push_back({h * beltHz, 0});
    return linesMmS(views, lines);
}

// At the creep that fits best.
double largestComb(const ChannelViews& views, const std::vector<int>& harmonics, const Turning& turning) {
    const double step = views.df / harmonics.back();
    double largest = 0;
    for (double hz = turning.slowestHz; hz <= turning.fastestHz + step / 2; hz += step)
        largest = std::max(largest, combMmS(views, harmonics, hz));
    return largest;
}

std::string nameOf(const std::vector<int>& harmonics) {
    std::string list;
    for (const int h : harmonics)
        list += fmt::format("{}{}", list.empty() ? "" : ", ", h);
    return "belt " + list + " x";
}

void measureBelt(const Listening& of, FamilyReport& report) {
    const Belt& belt = beltAt(of);
    const Turning turning = turningOf(of, belt);
    if (turning.fastestHz <= 0) {
        report.addBlind(of, "the belt's length is not known, so its rate is not", "enter pulleys and length");
        return;
    }
    for (const ChannelViews* views : of.near) {
        const std::vector<int> harmonics = clearHarmonics(of, belt, turning, views->df);
        if (harmonics.empty()) {
            report.addBlind(of,
                            fmt::format("belt rate {:.1f} Hz cannot be parted from the pulleys' shaft orders "
                                        "in {}",
                                        turning.fastestHz, secondsText(1 / views->df)),
                            "a long narrow recording: 32 s at 1 kHz");
            continue;
        }
        const double mmS = largestComb(*views, harmonics, turning);
        report.add(of, nameOf(harmonics), "mm/s", views->channel, mmS);
        addPossible(of, views->channel, mmS, fmt::format("the belt's lines make up {:.1f} mm/s of it", mmS),
                    report);
    }
}

}  // namespace

FaultFamily beltFamily() {
    return {
        "belt",
        "1 to 4 x the belt's rate, mostly 2 x; below the shaft orders",
        "radial, in line with the belt",
        "1x of one pulley dominating: that is an eccentric or misaligned pulley; lines unchanged with a "
        "slack "
        "and a tight belt",
        "eccentric pulley, misaligned pulleys, a frame resonance in line with the belt",
        "a point at a bearing of either pulley, readable from the belt's rate up, long enough to part it "
        "from "
        "the shaft orders",
        "a look at the belt with a strobe light from outside the guard, then tension and pulley alignment at "
        "standstill under lock-out, decide",
        "kinematics; harmonics by common textbooks, from memory",
        "simulation only",
        beltsOf,
        measureBelt};
}

}  // namespace fettle
