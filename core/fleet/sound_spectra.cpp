#include "core/fleet/sound_spectra.h"

#include <cmath>
#include <map>

#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/trend_past.h"

namespace fettle {

namespace {

constexpr double kLikeSpeed = 0.1;      // share of the speed
constexpr std::size_t kMostRead = 500;  // spectra: more days than recordings a day make no other band

struct Days {
    Instant from{}, until{};
};

Result<Days> daysOf(FleetFile& fleet, const BaselineBand& baseline) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto from = startOfDate(site->timeZone, dateOfDay(baseline.from));
    if (!from) return fail(from.error());
    const auto until = startOfDate(site->timeZone, dateOfDay(baseline.to + 1));
    if (!until) return fail(until.error());
    return Days{*from, *until};
}

// Speeds of the running recordings by id; 0: not known.
Result<std::map<std::int64_t, double>> runningShaftHz(FleetFile& fleet, std::int64_t channel, Days days) {
    std::map<std::int64_t, double> shafts;
    const auto levels = fleet.trends().trend(channel, Quantity::VelocityRms, days.from, days.until);
    if (!levels) return fail(levels.error());
    for (const TrendPoint& point : *levels)
        if (isRunning(point.running)) shafts[point.recording] = 0;
    const auto speeds = fleet.trends().trend(channel, Quantity::SpeedRpm, days.from, days.until);
    if (!speeds) return fail(speeds.error());
    for (const TrendPoint& point : *speeds)
        if (const auto at = shafts.find(point.recording); at != shafts.end()) at->second = point.value / 60;
    return shafts;
}

bool isLike(double shaftHz, double wantedHz) {
    return !(shaftHz > 0) || !(wantedHz > 0) || std::abs(shaftHz - wantedHz) <= kLikeSpeed * wantedHz;
}

}  // namespace

Result<SoundBand> soundBand(FleetFile& fleet, const std::string& tag, const Machine& machine,
                            const ChannelEntry& channel, WaterfallKind kind, double shaftHz) {
    const auto past = trendPast(fleet, tag, machine, channel, Quantity::VelocityRms);
    if (!past) return fail(past.error());
    SoundBand sound;
    sound.why = past->why;
    if (!past->baseline) return sound;
    sound.from = dateOfDay(past->baseline->from);
    sound.to = dateOfDay(past->baseline->to);
    sound.days = past->baseline->days;
    const auto days = daysOf(fleet, *past->baseline);
    if (!days) return fail(days.error());
    const auto shafts = runningShaftHz(fleet, channel.id, *days);
    if (!shafts) return fail(shafts.error());
    auto spectra = fleet.trends().spectra(channel.id, kind, days->from, days->until);
    if (!spectra) return fail(spectra.error());
    std::vector<SoundSpectrum> rows;
    const std::size_t every = spectra->size() / kMostRead + 1;
    for (std::size_t i = 0; i < spectra->size(); i += every) {
        SpectrumAt& one = (*spectra)[i];
        const auto shaft = shafts->find(one.recording);
        if (shaft == shafts->end() || !isLike(shaft->second, shaftHz)) continue;
        rows.push_back({one.topHz, shaft->second, std::move(one.lines)});
    }
    sound.band = bandOf(rows, shaftHz);
    if (sound.band.spectra == 0) sound.why = "no spectra of the baseline's days at a speed like this one's";
    return sound;
}

}  // namespace fettle
