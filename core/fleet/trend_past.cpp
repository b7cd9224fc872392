#include "core/fleet/trend_past.h"

#include <algorithm>
#include <cmath>

#include "core/fleet/followed_trends.h"
#include "core/fleet/machine_desk.h"
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

// The week that is asked about, and since when the machine is as it is.
struct Asked {
    SiteSettings site;
    Period period;
    const Point* point = nullptr;
    std::optional<int> segment;
    int firstDay = 0, lastDay = 0;
};

// Empty: nothing was recorded.
Result<std::optional<Asked>> askedOf(FleetFile& fleet, const std::string& tag, const Machine& machine,
                                     const ChannelEntry& channel, const std::string& until) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto date = lastDayOf(fleet, channel, *site, until);
    if (!date) return fail(date.error());
    if (date->empty()) return std::nullopt;
    const auto period = periodTo(*site, *date);
    if (!period) return fail(period.error());
    const auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    Asked asked{*site, *period, machine.pointById(channel.point), {}, 0, 0};
    const auto segment = segmentStart(*events, asked.point, *period);
    if (!segment) return fail(segment.error());
    asked.segment = *segment;
    const auto firstDay = dayNumber(period->firstDay), lastDay = dayNumber(period->lastDay);
    if (!firstDay || !lastDay) return fail(firstDay ? lastDay.error() : firstDay.error());
    asked.firstDay = *firstDay, asked.lastDay = *lastDay;
    return asked;
}

RunValue runValueOf(const TrendValues& row, Instant clock) {
    RunValue value;
    value.time = clock;
    value.value = row.of(Quantity::VelocityRms).value_or(0);
    value.running = row.running;
    value.speedRpm = row.of(Quantity::SpeedRpm);
    value.loadPct = row.of(Quantity::LoadPct);
    return value;
}

Result<std::optional<Condition>> conditionOfWeek(FleetFile& fleet, const ChannelEntry& channel,
                                                 const Asked& asked, SiteClock& clock) {
    std::vector<RunValue> week;
    const auto read = fleet.trends().walk(channel.id, asked.period.from,
                                          [&](const TrendValues& row) -> std::optional<Instant> {
                                              if (row.time > asked.period.last()) return std::nullopt;
                                              if (isRunning(row.running))
                                                  week.push_back(runValueOf(row, clock.at(row.time)));
                                              return row.time;
                                          });
    if (!read) return fail(read.error());
    return usualCondition(week);
}

// Days of the segment with a value in this condition, one value each, up to the end of the baseline.
class LikeDays {
  public:
    LikeDays(const Asked& asked, const Condition& like, SiteClock& clock)
        : asked_(asked), like_(like), clock_(clock) {}

    std::optional<Instant> take(const TrendValues& row) {
        const RunValue value = runValueOf(row, clock_.at(row.time));
        const int day = dayOf(value.time);
        if (day >= asked_.firstDay) return std::nullopt;
        if (!isRunning(row.running) || !std::isfinite(value.value) || !like_.holds(value)) return row.time;
        days_.push_back({day, value.value, 1});
        found_ = baselineOf(days_, asked_.segment, asked_.firstDay);
        if (found_.baseline && found_.baseline->lastDay() < day) return std::nullopt;
        const auto next = startOfDate(asked_.site.timeZone, dateOfDay(day + 1));
        return next ? *next : row.time;
    }
    std::optional<DaySpan> span() const {
        if (!found_.baseline) return std::nullopt;
        return DaySpan{found_.baseline->firstDay(), found_.baseline->lastDay()};
    }

  private:
    const Asked& asked_;
    const Condition& like_;
    SiteClock& clock_;
    std::vector<DayValue> days_;
    BaselineSearch found_;
};

}  // namespace

Result<TrendPast> trendPast(FleetFile& fleet, const std::string& tag, const Machine& machine,
                            const ChannelEntry& channel, Quantity quantity, const std::string& until) {
    TrendPast past;
    const auto followed = followedAs(quantity);
    if (!followed) return past;
    const auto asked = askedOf(fleet, tag, machine, channel, until);
    if (!asked) return fail(asked.error());
    if (!*asked) return past;
    const Asked& week = **asked;
    const auto runs = ChannelRuns::read(fleet, channel, week.site.timeZone, Instant{}, week.period.last());
    if (!runs) return fail(runs.error());
    auto values = runs->of(fleet, quantity);
    if (!values) return fail(values.error());
    std::sort(values->begin(), values->end(),
              [](const RunValue& a, const RunValue& b) { return a.time < b.time; });
    addBaseline(*values, week.segment, week.firstDay, week.lastDay, mattersBy(machine, week.point, *followed),
                past);
    if (quantity == Quantity::VelocityRms)
        addHeading(*values, machine, week.point, week.firstDay, week.lastDay, past);
    return past;
}

Result<std::optional<DaySpan>> baselineDays(FleetFile& fleet, const std::string& tag, const Machine& machine,
                                            const ChannelEntry& channel) {
    const auto asked = askedOf(fleet, tag, machine, channel, "");
    if (!asked) return fail(asked.error());
    if (!*asked) return std::nullopt;
    const Asked& week = **asked;
    auto clock = SiteClock::of(week.site.timeZone);
    if (!clock) return fail(clock.error());
    const auto like = conditionOfWeek(fleet, channel, week, *clock);
    if (!like) return fail(like.error());
    if (!*like) return std::nullopt;
    Instant from{};
    if (week.segment) {
        const auto start = startOfDate(week.site.timeZone, dateOfDay(*week.segment));
        if (!start) return fail(start.error());
        from = *start;
    }
    LikeDays days(week, **like, *clock);
    const auto read =
        fleet.trends().walk(channel.id, from, [&](const TrendValues& row) { return days.take(row); });
    if (!read) return fail(read.error());
    return days.span();
}

}  // namespace fettle
