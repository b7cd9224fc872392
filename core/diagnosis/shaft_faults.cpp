#include "core/diagnosis/shaft_faults.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/dsp/integrate.h"

namespace fettle {

namespace {

// Shares of the overall velocity, from memory of common textbooks; a pattern is a hint, so the thresholds are
// round.
constexpr double kOneDominates = 0.8;       // 1x over overall
constexpr double kTwoBesideOne = 0.5;       // 2x over 1x
constexpr double kAxialBesideRadial = 0.5;  // axial 1x over the larger radial 1x
constexpr int kHighOrders[] = {4, 5, 6, 7, 8, 9, 10};
constexpr int kManyHigh = 4;  // of those, each above kWorth x the larger of 1x and 2x
constexpr double kWorth = 0.1;
constexpr double kStandsOut = 12;  // power over floor

struct Pattern {
    const ChannelLevels* worst = nullptr;  // the channel with the worst zone
    ZoneNote zone;
    double radial1 = 0, radial2 = 0, axial1 = 0, overall = 0;
    int high = 0;       // of kHighOrders that stand out and matter
    bool half = false;  // so does 0.5x or 1.5x
};

// A line that stands above its floor and is not small beside the largest of 1x and 2x.
bool matters(const ChannelViews& views, double hz, double largestMmS) {
    const auto k = std::size_t(hz / views.df + 0.5);
    if (k == 0 || k + 1 >= views.plainZ.size()) return false;
    if (*std::max_element(&views.plainZ[k - 1], &views.plainZ[k + 2]) <= kStandsOut) return false;
    return velocityRms(views.spectrum, hz - 3 * views.df, hz + 3 * views.df) > kWorth * largestMmS;
}

void countHighOrders(const PreparedRecording& prepared, Pattern& pattern) {
    for (const ChannelViews& views : prepared.views) {
        const ChannelLevels& levels = prepared.facts.levels[views.channel];
        const double largest = std::max(levels.order1MmS.value_or(0), levels.order2MmS.value_or(0));
        int high = 0;
        for (const int h : kHighOrders)
            high += matters(views, h * prepared.rates.shaftHz, largest);
        pattern.high = std::max(pattern.high, high);
        for (const double order : {0.5, 1.5})
            pattern.half |= matters(views, order * prepared.rates.shaftHz, largest);
    }
}

Pattern patternOf(const PreparedRecording& prepared) {
    Pattern pattern;
    for (std::size_t i = 0; i < prepared.facts.levels.size(); ++i) {
        const ChannelLevels& l = prepared.facts.levels[i];
        if (!l.velocityRmsMmS) continue;
        if (!l.zones.empty() &&
            (!pattern.worst || l.zones[0].zone > pattern.zone.zone ||
             (l.zones[0].zone == pattern.zone.zone && *l.velocityRmsMmS > pattern.overall))) {
            pattern.worst = &l;
            pattern.zone = l.zones[0];
            pattern.overall = *l.velocityRmsMmS;
        }
        const bool axial = prepared.facts.channels[i].direction == "axial";
        double& one = axial ? pattern.axial1 : pattern.radial1;
        one = std::max(one, l.order1MmS.value_or(0));
        if (!axial) pattern.radial2 = std::max(pattern.radial2, l.order2MmS.value_or(0));
    }
    countHighOrders(prepared, pattern);
    return pattern;
}

struct Cause {
    const char *fault, *name, *test;
    bool fits;
    std::string pattern;
};

std::vector<Cause> causesOf(const Pattern& p) {
    const double one = std::max(p.radial1, p.axial1);
    const bool two = p.radial2 > kTwoBesideOne * p.radial1, axial = p.axial1 > kAxialBesideRadial * p.radial1;
    const bool many = p.high >= kManyHigh;
    return {
        {"unbalance", "unbalance",
         "phase at two radial directions (about 90 degrees apart and steady) decides against a bent shaft "
         "and resonance",
         one > kOneDominates * p.overall && !axial && !many && !p.half,
         fmt::format("1x is {:.1f} of {:.1f} mm/s, radial", p.radial1, p.overall)},
        {"misalignment", "misalignment",
         "phase across the coupling, or an alignment check at standstill under lock-out, decides",
         (two || axial) && !many && !p.half,
         fmt::format("2x is {:.1f} and 1x {:.1f} mm/s radial, 1x axial {:.1f} mm/s", p.radial2, p.radial1,
                     p.axial1)},
        {"looseness", "looseness",
         "phase between foot, plate and base, and a check of the bolts at standstill under lock-out, decides",
         many || p.half,
         fmt::format("{} of the shaft orders 4 to 10 {} above a tenth of the larger of 1x and 2x{}", p.high,
                     p.high == 1 ? "is" : "are", p.half ? ", and so are half orders" : "")},
    };
}

std::string whyNotNamed(const Pattern& pattern, const Cause& cause) {
    if (!pattern.worst) return "no baseline, and no limit applies to this point";
    if (pattern.zone.zone < "C")
        return fmt::format("no baseline; zone {} by {}", pattern.zone.zone, pattern.zone.basis);
    return fmt::format("no baseline; zone {}, but the pattern does not fit ({})", pattern.zone.zone,
                       cause.pattern);
}

}  // namespace

std::vector<Hypothesis> shaftFaults(const PreparedRecording& prepared) {
    const Pattern pattern = patternOf(prepared);
    const bool running = prepared.facts.running == "running" && prepared.facts.speed.rpm;
    std::vector<Hypothesis> all;
    for (const Cause& cause : causesOf(pattern)) {
        Hypothesis h;
        h.fault = cause.fault;
        h.at = "driver";
        h.provedOn = "simulation only";
        h.recordingCount = 1;
        if (!running)
            h.why = fmt::format("running state {}: shaft orders not judged", prepared.facts.running);
        else if (!pattern.worst || pattern.zone.zone < "C" || !cause.fits)
            h.why = whyNotNamed(pattern, cause);
        else {
            h.severity = {"zone", pattern.zone.zone, pattern.overall, pattern.zone.limit,
                          "mm/s", pattern.zone.basis};
            h.why = "possible: no baseline, one recording cannot say more";
            h.sentence =
                fmt::format("Possible {}: {:.1f} mm/s is zone {} ({}{}); {}. No baseline yet; {}.",
                            cause.name, pattern.overall, pattern.zone.zone, pattern.zone.basis,
                            pattern.zone.indicative ? ", indicative" : "", cause.pattern, cause.test);
        }
        all.push_back(std::move(h));
    }
    return all;
}

}  // namespace fettle
