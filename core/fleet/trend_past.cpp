#include "core/fleet/trend_past.h"

#include <algorithm>

#include "core/fleet/followed_trends.h"
#include "core/fleet/run_values.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/severity_limits.h"

namespace fettle {

namespace {

constexpr double kBandSpreads = 2;
constexpr double kListsDban = 20;  // of a change, as in the round

std::optional<Followed> followedAs(Quantity quantity) {
    switch (quantity) {
        case Quantity::VelocityRms:
            return Followed::Velocity;
        case Quantity::Order1:
            return Followed::Order1;
        case Quantity::Order2:
            return Followed::Order2;
        case Quantity::Order3:
            return Followed::Order3;
        case Quantity::HighBand:
            return Followed::HighBand;
        default:
            return std::nullopt;
    }
}

BaselineBand bandOf(const Baseline& baseline, const Condition& condition) {
    const auto at = [&](double spreads) {
        return fromScale(baseline.mean + spreads * baseline.spread, baseline.scale);
    };
    return {baseline.firstDay(), baseline.lastDay(), int(baseline.days.size()), at(-kBandSpreads),
            baseline.median,     at(kBandSpreads),   condition.words()};
}

void addBaseline(const std::vector<RunValue>& values, std::optional<int> segment, int firstDay, int lastDay,
                 const MattersBy& by, TrendPast& past) {
    std::vector<RunValue> week;
    for (const RunValue& value : values)
        if (dayOf(value.time) >= firstDay && dayOf(value.time) <= lastDay) week.push_back(value);
    const auto usual = usualCondition(week);
    if (!usual) {
        past.why = "no running recording in the newest week";
        return;
    }
    const BaselineSearch search = baselineOf(likeDays(values, *usual), segment, firstDay, Scale::Decibels);
    past.why = search.why;
    if (!search.baseline) return;
    past.baseline = bandOf(*search.baseline, *usual);
    std::vector<double> days;
    for (const DayValue& day : search.baseline->days)
        days.push_back(day.value);
    past.limits = statisticalLimits(days);
    const WeekChange change = changeOfWeek(values, segment, firstDay, lastDay, Scale::Decibels, by);
    if (change.change && change.matters && change.change->weightDban >= kListsDban) past.since = change.since;
}

// As the round says it of the channel that governs.
void addHeading(const std::vector<RunValue>& values, const Machine& machine, const Point* point, int firstDay,
                int lastDay, TrendPast& past) {
    const auto limits = point ? limitsFor(machine, *point) : Result<ApplicableLimits>(ApplicableLimits{});
    if (!limits || limits->sets.empty()) return;
    std::vector<TimedValue> timed;
    for (const RunValue& value : values)
        if (dayOf(value.time) > lastDay - 7 * kStripWeeks) timed.push_back({value.time, value.value});
    const std::vector<DayValue> days = dailyMedians(timed);
    const double now = weeklyMedians(days, lastDay, 1).front();
    const auto growth = growthOf(days);
    if (!growth || growth->lastDay < firstDay || !(now > 0)) return;
    const char* names[] = {"A/B", "B/C", "C/D"};
    const auto& boundaries = limits->sets.front().velocity;
    for (int i = 0; i < 3; ++i) {
        if (now > boundaries[std::size_t(i)]) continue;
        const auto date = forecastLimit(days, boundaries[std::size_t(i)]);
        if (date && date->median)
            past.heading = Heading{growth->lastDay, growth->now, boundaries[std::size_t(i)], names[i], *date};
        return;
    }
}

// Empty: nothing was recorded.
Result<std::string> lastDayOf(FleetFile& fleet, const ChannelEntry& channel, const SiteSettings& site,
                              const std::string& until) {
    if (!until.empty()) return until;
    const auto newest = fleet.recordings().newest(channel.machine);
    if (!newest) return fail(newest.error());
    return *newest ? dateIn(site.timeZone, **newest) : Result<std::string>(std::string());
}

}  // namespace

Result<TrendPast> trendPast(FleetFile& fleet, const std::string& tag, const Machine& machine,
                            const ChannelEntry& channel, Quantity quantity, const std::string& until) {
    TrendPast past;
    const auto followed = followedAs(quantity);
    if (!followed) return past;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto date = lastDayOf(fleet, channel, *site, until);
    if (!date) return fail(date.error());
    if (date->empty()) return past;
    const auto period = periodTo(*site, *date);
    if (!period) return fail(period.error());
    const auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    const Point* point = machine.pointById(channel.point);
    const auto segment = segmentStart(*events, point, *period);
    if (!segment) return fail(segment.error());
    const auto runs = ChannelRuns::read(fleet, channel, site->timeZone, Instant{}, period->last());
    if (!runs) return fail(runs.error());
    auto values = runs->of(fleet, quantity);
    if (!values) return fail(values.error());
    std::sort(values->begin(), values->end(),
              [](const RunValue& a, const RunValue& b) { return a.time < b.time; });
    const auto firstDay = dayNumber(period->firstDay), lastDay = dayNumber(period->lastDay);
    if (!firstDay || !lastDay) return fail(firstDay ? lastDay.error() : firstDay.error());
    addBaseline(*values, *segment, *firstDay, *lastDay, mattersBy(machine, point, *followed), past);
    if (quantity == Quantity::VelocityRms) addHeading(*values, machine, point, *firstDay, *lastDay, past);
    return past;
}

}  // namespace fettle
