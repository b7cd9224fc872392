#include "core/diagnosis/levels.h"

#include <algorithm>

#include "core/dsp/integrate.h"
#include "core/dsp/statistics.h"
#include "core/machine/severity_limits.h"

namespace fettle {

namespace {

// Below, the velocity band starts at 2 Hz (ISO 10816-3:2009, from memory).
constexpr double kWideBandBelowRpm = 600;

bool turnsSlowly(const Machine& machine) {
    const auto rpm = machine.driver.ratedRpm ? machine.driver.ratedRpm : machine.synchronousRpm();
    return rpm && *rpm < kWideBandBelowRpm;
}

void addZones(ChannelLevels& levels, const Machine& machine, const Point& point) {
    const auto limits = limitsFor(machine, point);
    if (!limits) {
        levels.noZoneWhy = limits.error().sentence();
        return;
    }
    levels.noZoneWhy = limits->why;
    for (const ZoneLimits& set : limits->sets) {
        const Zone zone = zoneOf(*levels.velocityRmsMmS, set);
        ZoneNote note{toText(zone), set.basis, std::nullopt, limits->indicative, set.greyOnly};
        if (zone != Zone::D) note.limit = set.velocity[std::size_t(zone)];
        levels.zones.push_back(note);
    }
}

}  // namespace

ChannelLevels levelsOf(const Machine& machine, const Channel& channel, const ChannelRole& role,
                       const ChannelViews* views) {
    ChannelLevels levels;
    levels.channel = channel.name;
    std::vector<double> moving = channel.samples;
    const double offset = mean(moving);
    for (double& x : moving)
        x -= offset;
    levels.crestFactor = crestFactor(moving);
    levels.kurtosis = kurtosis(moving);
    if (role.quantity != "acceleration") return levels;
    levels.accelerationRmsG = rms(moving) * role.toG;
    if (!views || views->samplesUsed == 0) return levels;
    if (turnsSlowly(machine)) levels.velocityLeastHz = 2;
    levels.velocityMostHz = std::min(levels.velocityMostHz, 0.45 * channel.sampleRateHz);
    levels.velocityRmsMmS = velocityRms(views->spectrum, levels.velocityLeastHz, levels.velocityMostHz);
    if (role.point) addZones(levels, machine, *role.point);
    return levels;
}

void addShaftOrders(ChannelLevels& levels, const ChannelViews& views, double shaftHz) {
    std::optional<double>* orders[] = {&levels.order1MmS, &levels.order2MmS, &levels.order3MmS};
    const double half = 3 * views.df;
    for (int h = 1; h <= 3; ++h)
        if (h * shaftHz - half > 0)
            *orders[h - 1] = velocityRms(views.spectrum, h * shaftHz - half, h * shaftHz + half);
}

}  // namespace fettle
