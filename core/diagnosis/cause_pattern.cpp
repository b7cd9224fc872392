#include "core/diagnosis/cause_pattern.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/diagnosis/line_reading.h"
#include "core/dsp/integrate.h"
#include "core/machine/forcing.h"

namespace fettle {

namespace {

// Common practice, no source.
constexpr double kWorth = 0.1;          // of the larger of 1x and 2x: a line that matters
constexpr double kCauseStandsOut = 12;  // power over floor
constexpr double kHalves[] = {0.5, 1.5, 2.5};
constexpr double kParted = 4;  // bins between 2x shaft and 2x mains
constexpr int kTopOrder = 10, kFirstHigh = 4;
constexpr int kBeltHarmonics = 4, kCauseBladeHarmonics = 2;
constexpr double kSameOrder = 0.05;  // nearer than this two orders are one
constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

double ratioDb(double a, double b) {
    return a > 0 && b > 0 ? 20 * std::log10(a / b) : kNone;
}

double rmsAt(const ChannelViews& views, double hz) {
    const double half = 3 * views.df;
    return hz > half && hz + half < views.spectrum.topHz() ? velocityRms(views.spectrum, hz - half, hz + half)
                                                           : 0;
}

bool standsOut(const ChannelViews& views, double hz) {
    const auto k = std::size_t(hz / views.df + 0.5);
    if (k == 0 || k + 1 >= views.plainZ.size()) return false;
    return *std::max_element(&views.plainZ[k - 1], &views.plainZ[k + 2]) > kCauseStandsOut;
}

// A line of this build besides the shafts', as an order of the driver's shaft.
struct OwnLine {
    double order = 0, spread = 0;
    bool twiceMains = false;
};

std::vector<OwnLine> ownLines(const Machine& machine) {
    std::vector<OwnLine> own;
    // The mains as seen from the synchronous speed: slip moves it by less than two orders are told apart.
    if (machine.driver.poles) own.push_back({double(*machine.driver.poles), 0, true});
    for (const Gear& gear : machine.gears)
        own.push_back({meshOrder(machine, gear), 0, false});
    for (const Belt& belt : machine.belts)
        for (int h = 1; h <= kBeltHarmonics; ++h)
            own.push_back(
                {h * beltOrder(machine, belt), h * beltOrder(machine, belt) * belt.creepPct[1] / 100, false});
    const auto driven = machine.shaftOfDriven();
    if (machine.driven.blades && driven)
        for (int h = 1; h <= kCauseBladeHarmonics; ++h) {
            const double order = h * *machine.driven.blades * machine.shafts[*driven].ratio;
            own.push_back({order, order * machine.shafts[*driven].ratioSpread, false});
        }
    return own;
}

bool isAmong(const std::vector<OwnLine>& own, double order) {
    return std::any_of(own.begin(), own.end(), [&](const OwnLine& one) {
        return std::abs(one.order - order) < kSameOrder + one.spread;
    });
}

// In velocity, those that none of 1x to 3x covers.
double othersMmS(const Machine& machine, const PreparedRecording& prepared, const ChannelViews& views) {
    const Rates& rates = prepared.rates;
    double power = 0;
    for (const OwnLine& one : ownLines(machine)) {
        const double whole = std::round(one.order);
        if (whole <= 3 && std::abs(one.order - whole) < kSameOrder + one.spread) continue;
        const double hz = one.twiceMains ? 2 * rates.mainsHz : one.order * rates.shaftHz;
        if (hz > 0 && hz < views.spectrum.topHz())
            power += std::pow(lineMmS(views, {hz, one.spread * rates.shaftHz}), 2);
    }
    return std::sqrt(power);
}

ShaftLines linesOf(const Machine& machine, const PreparedRecording& prepared, const ChannelViews& views) {
    const double shaft = prepared.rates.shaftHz;
    ShaftLines lines;
    lines.channel = views.channel;
    lines.axial = prepared.facts.channels[views.channel].direction == "axial";
    lines.overall = prepared.facts.levels[views.channel].velocityRmsMmS.value_or(0);
    if (!(shaft > 0)) return lines;
    lines.own = ownOrders(machine);
    lines.others = othersMmS(machine, prepared, views);
    for (int h = 1; h <= kTopOrder; ++h)
        lines.orders[h] = rmsAt(views, h * shaft);
    const double worth = kWorth * std::max(lines.orders[1], lines.orders[2]);
    for (int h = kFirstHigh; h <= kTopOrder; ++h)
        lines.high += !lines.own.high[h] && lines.orders[h] > worth && standsOut(views, h * shaft);
    for (std::size_t i = 0; i < std::size(kHalves); ++i) {
        lines.halves[i] = lineOverFloorMmS(views, {kHalves[i] * shaft, 0});
        lines.half += !lines.own.halves[i] && lines.halves[i] > worth && standsOut(views, kHalves[i] * shaft);
    }
    return lines;
}

double squares(const ShaftLines& lines) {
    double sum = 0;
    for (const double one : lines.orders)
        sum += one * one;
    for (const double one : lines.halves)
        sum += one * one;
    return sum;
}

void takeWorst(const PreparedRecording& prepared, ShaftPattern& pattern) {
    const auto& levels = prepared.facts.levels;
    for (std::size_t i = 0; i < levels.size(); ++i) {
        const ChannelLevels& l = levels[i];
        if (!l.velocityRmsMmS || l.zones.empty()) continue;
        const ZoneNote& zone = l.zones[0];
        const bool worse = !pattern.worst || zone.zone > pattern.zone.zone ||
                           (zone.zone == pattern.zone.zone && *l.velocityRmsMmS > pattern.overall);
        if (!worse) continue;
        pattern.worst = &l;
        pattern.worstChannel = i;
        pattern.zone = zone;
        pattern.overall = *l.velocityRmsMmS;
    }
    const Point* point = pattern.worst ? prepared.roles[pattern.worstChannel].point : nullptr;
    if (point && point->at.substr(0, point->at.find(' ')) == "driven") pattern.at = "driven";
}

// Larger over smaller of the radial channels, where two were measured.
double oneDirection(const std::vector<ShaftLines>& channels) {
    double least = std::numeric_limits<double>::infinity(), most = 0;
    int radial = 0;
    for (const ShaftLines& one : channels) {
        if (one.axial || !(one.orders[1] > 0)) continue;
        ++radial;
        least = std::min(least, one.orders[1]);
        most = std::max(most, one.orders[1]);
    }
    return radial >= 2 ? ratioDb(most, least) : kNone;
}

bool twiceMainsBeside(const PreparedRecording& prepared, std::size_t channel) {
    for (const ChannelViews& views : prepared.views)
        if (views.channel == channel)
            return prepared.rates.mainsHz > 0 &&
                   2 * std::abs(prepared.rates.shaftHz - prepared.rates.mainsHz) < kParted * views.df;
    return false;
}

// The channel whose pattern speaks: the loudest radial one.
const ShaftLines* loudest(const std::vector<ShaftLines>& channels) {
    const ShaftLines* found = nullptr;
    for (const ShaftLines& one : channels)
        if (!one.axial && (!found || one.overall > found->overall)) found = &one;
    return found;
}

void addFeatures(const PreparedRecording& prepared, ShaftPattern& pattern) {
    const ShaftLines* radial = loudest(pattern.channels);
    const bool axial = std::any_of(pattern.channels.begin(), pattern.channels.end(),
                                   [](const ShaftLines& one) { return one.axial; });
    const auto add = [&](const char* key, double value) {
        if (!std::isnan(value)) pattern.features.push_back({key, value});
    };
    if (!radial) return;
    if (!twiceMainsBeside(prepared, radial->channel))
        add("two_over_one", ratioDb(pattern.radial2, pattern.radial1));
    add("three_over_one", ratioDb(radial->orders[3], radial->orders[1]));
    if (axial) add("axial_over_radial", ratioDb(pattern.axial1, pattern.radial1));
    add("high_orders", pattern.high);
    add("half_orders", pattern.half);
    add("one_direction", oneDirection(pattern.channels));
    if (!(radial->overall > 0)) return;
    const double power = radial->overall * radial->overall;
    add("one_share", std::min(1.0, radial->orders[1] * radial->orders[1] / power));
    add("rest_share", std::clamp(1 - squares(*radial) / power, 0.0, 1.0));
}

}  // namespace

double ShaftLines::highMmS() const {
    double sum = 0;
    for (int h = kFirstHigh; h <= kTopOrder; ++h)
        sum += own.high[h] ? 0 : orders[h] * orders[h];
    return std::sqrt(sum);
}

double ShaftLines::halfMmS() const {
    double sum = 0;
    for (std::size_t i = 0; i < std::size(kHalves); ++i)
        sum += own.halves[i] ? 0 : halves[i] * halves[i];
    return std::sqrt(sum);
}

OwnOrders ownOrders(const Machine& machine) {
    const std::vector<OwnLine> lines = ownLines(machine);
    OwnOrders own;
    for (int h = kFirstHigh; h <= kTopOrder; ++h)
        own.high[h] = isAmong(lines, h);
    for (std::size_t i = 0; i < std::size(kHalves); ++i)
        own.halves[i] = isAmong(lines, kHalves[i]);
    return own;
}

std::string highOrdersName(const OwnOrders& own) {
    std::string but;
    for (int h = kFirstHigh; h <= kTopOrder; ++h)
        if (own.high[h]) but += fmt::format("{}{}", but.empty() ? " but " : ", ", h);
    return "orders 4-10" + but;
}

std::string halfOrdersName(const OwnOrders& own) {
    std::string but;
    for (std::size_t i = 0; i < std::size(kHalves); ++i)
        if (own.halves[i]) but += fmt::format("{}{}", but.empty() ? " but " : ", ", kHalves[i]);
    return "half orders over floor" + but;
}

ShaftPattern shaftPattern(const Machine& machine, const PreparedRecording& prepared) {
    ShaftPattern pattern;
    takeWorst(prepared, pattern);
    for (const ChannelViews& views : prepared.views) {
        const ShaftLines lines = linesOf(machine, prepared, views);
        if (pattern.worst && lines.channel == pattern.worstChannel && lines.overall > 0)
            pattern.othersShare = std::pow(lines.others / lines.overall, 2);
        double& one = lines.axial ? pattern.axial1 : pattern.radial1;
        one = std::max(one, lines.orders[1]);
        if (!lines.axial) pattern.radial2 = std::max(pattern.radial2, lines.orders[2]);
        pattern.high = std::max(pattern.high, lines.high);
        pattern.half = std::max(pattern.half, lines.half);
        pattern.channels.push_back(lines);
    }
    if (prepared.rates.shaftHz > 0) addFeatures(prepared, pattern);
    return pattern;
}

}  // namespace fettle
