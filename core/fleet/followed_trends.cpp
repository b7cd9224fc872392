#include "core/fleet/followed_trends.h"

#include <algorithm>
#include <cmath>

#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/trend/dependence.h"

namespace fettle {

namespace {

using std::chrono::days;

constexpr days kBaselineReach{120};  // in which the days of a baseline are looked for
constexpr days kRecentReach{42};
constexpr std::chrono::hours kWarmUp{2};  // running before a frame's temperature says anything
constexpr double kLeastLineG = 0.02;      // of lines in acceleration that matter; common practice, no source
constexpr double kLeastKelvin = 10;       // of a rise that matters; common practice, no source

// What the quantities of one channel have in common.
struct Frame {
    const ChannelEntry& channel;
    const Point* point = nullptr;
    std::optional<int> segmentStart;
    int firstDay = 0, lastDay = 0;
    MattersBy limits;
};

bool altersMachine(const Event& event, const Point* point) {
    if (event.kind == "repair" || event.kind == "part" || event.kind == "rebaseline") return true;
    if (event.kind != "moved_node") return false;
    return event.at.empty() || !point || event.at == point->id || event.at == point->at;
}

std::optional<int> later(std::optional<int> a, std::optional<int> b) {
    if (!a || !b) return a ? a : b;
    return std::max(*a, *b);
}

}  // namespace

Result<std::optional<int>> segmentStart(const std::vector<Event>& events, const Point* point,
                                        const Period& period) {
    std::optional<int> start;
    for (const Event& event : events) {
        if (event.time >= period.end || !altersMachine(event, point)) continue;
        const auto clock = clockIn(period.timeZone, event.time);
        if (!clock) return fail(clock.error());
        start = later(start, dayOf(*clock));
    }
    if (!point) return start;
    for (const FittedNode& node : point->nodes)
        if (node.from <= period.lastDay)
            if (const auto day = dayNumber(node.from)) start = later(start, *day);
    return start;
}

namespace {

Result<Instant> startOf(const Period& period, int day) {
    return startOfDate(period.timeZone, dateOfDay(day));
}

// Of the first months of the segment and of the last weeks, oldest first.
template <class Read>
auto readBoth(Instant from, const Period& period, Read read) -> decltype(read(from, from)) {
    const Instant middle = std::min(from + kBaselineReach, period.last());
    auto first = read(from, middle);
    if (!first) return first;
    const Instant recent = std::max(period.end - kRecentReach, middle + std::chrono::milliseconds(1));
    if (recent > period.last()) return first;
    auto last = read(recent, period.last());
    if (!last) return last;
    first->insert(first->end(), last->begin(), last->end());
    return first;
}

RunValue conditionOf(const TrendValues& row, Instant clock) {
    RunValue value;
    value.time = clock;
    value.running = row.running;
    value.speedRpm = row.of(Quantity::SpeedRpm);
    value.loadPct = row.of(Quantity::LoadPct);
    value.frameTempC = row.of(Quantity::FrameTempC);
    return value;
}

MattersBy limitsOf(const Machine& machine, const Point* point) {
    MattersBy by;
    const auto limits = point ? limitsFor(machine, *point) : Result<ApplicableLimits>(ApplicableLimits{});
    if (!limits || limits->sets.empty()) return by;
    by.limitAB = limits->sets.front().velocity[0];
    by.limitBC = limits->sets.front().velocity[1];
    return by;
}

MattersBy withoutLimits(double leastStep) {
    MattersBy by;
    by.leastStep = leastStep;
    return by;
}

FollowedChange headOf(const Frame& frame, Followed quantity, const std::string& unit) {
    FollowedChange one;
    one.quantity = quantity;
    one.name = followedName(quantity);
    one.at = frame.point ? frame.point->at : "";
    one.point = frame.channel.point;
    one.channel = frame.channel.name;
    one.direction = frame.channel.direction;
    one.unit = unit;
    return one;
}

// All rows of one channel with the site's clock.
struct TrendRows {
    std::vector<TrendValues> rows;
    std::vector<Instant> clocks;
};

std::vector<RunValue> valuesOf(const TrendRows& all, Quantity quantity) {
    std::vector<RunValue> values;
    for (std::size_t i = 0; i < all.rows.size(); ++i) {
        const auto value = all.rows[i].of(quantity);
        if (!value || !isRunning(all.rows[i].running)) continue;
        values.push_back(conditionOf(all.rows[i], all.clocks[i]));
        values.back().value = *value;
    }
    return values;
}

// Frame over ambient of recordings before which the machine is known to have run for two hours.
std::vector<RunValue> risesOf(const TrendRows& all) {
    std::vector<RunValue> rises;
    std::optional<Instant> runsSince;
    for (std::size_t i = 0; i < all.rows.size(); ++i) {
        const TrendValues& row = all.rows[i];
        if (!isRunning(row.running)) {
            runsSince.reset();
            continue;
        }
        if (!runsSince) runsSince = row.time;
        const auto frame = row.of(Quantity::FrameTempC), ambient = row.of(Quantity::AmbientTempC);
        if (!frame || !ambient || row.time - *runsSince < kWarmUp) continue;
        rises.push_back(conditionOf(row, all.clocks[i]));
        rises.back().value = *frame - *ambient;
    }
    return rises;
}

// Levels that are followed, in the order in which changes are listed, and the columns they stand in.
constexpr std::pair<Followed, Quantity> kLevels[] = {{Followed::Velocity, Quantity::VelocityRms},
                                                     {Followed::Order1, Quantity::Order1},
                                                     {Followed::Order2, Quantity::Order2},
                                                     {Followed::Order3, Quantity::Order3},
                                                     {Followed::HighBand, Quantity::HighBand}};

MattersBy mattersOf(Followed quantity, const MattersBy& limits) {
    if (quantity == Followed::HighBand) return {};
    MattersBy by = limits;
    by.line = quantity != Followed::Velocity;
    return by;
}

void addLevels(const Frame& frame, const TrendRows& rows, FollowedTrends& out) {
    for (const auto& [followed, quantity] : kLevels) {
        const std::vector<RunValue> values = valuesOf(rows, quantity);
        if (values.empty()) continue;
        FollowedChange change = headOf(frame, followed, unitOf(quantity));
        const MattersBy by = mattersOf(followed, frame.limits);
        change.week =
            changeOfWeek(values, frame.segmentStart, frame.firstDay, frame.lastDay, Scale::Decibels, by);
        out.changes.push_back(std::move(change));
    }
}

void addTemperature(const Frame& frame, const TrendRows& rows, FollowedTrends& out) {
    const std::vector<RunValue> rises = risesOf(rows);
    const bool known = std::any_of(out.changes.begin(), out.changes.end(), [&](const FollowedChange& c) {
        return c.quantity == Followed::TemperatureRise && c.point == frame.channel.point;
    });
    if (rises.empty() || known) return;  // the channels of a point share one thermometer
    FollowedChange change = headOf(frame, Followed::TemperatureRise, "K");
    change.channel.clear();
    change.week = changeOfWeek(rises, frame.segmentStart, frame.firstDay, frame.lastDay, Scale::Linear,
                               withoutLimits(kLeastKelvin));
    out.changes.push_back(std::move(change));
}

// Of the radial channel read first that tells anything.
void addDependences(const Frame& frame, const TrendRows& rows, FollowedTrends& out) {
    if (!out.dependences.empty() || frame.channel.direction == "axial" || frame.channel.quantity == "flux")
        return;
    const std::vector<RunValue> values = valuesOf(rows, Quantity::Order1);
    const auto add = [&](const char* key, std::optional<double> value) {
        if (value) out.dependences.push_back({key, *value});
    };
    add("speed_power", speedPower(values));
    add("load_follow", followsLoad(values));
    add("warm_follow", followsWarmth(values));
}

Result<std::vector<Instant>> clocksOf(const std::vector<TrendValues>& rows, const std::string& zone) {
    std::vector<Instant> clocks;
    for (const TrendValues& row : rows) {
        const auto clock = clockIn(zone, row.time);
        if (!clock) return fail(clock.error());
        clocks.push_back(*clock);
    }
    return clocks;
}

struct ChannelTrend {
    Frame frame;
    TrendRows rows;
    Instant from{};  // what is read of it begins here
};

// Empty where the channel has no rows.
Result<std::optional<ChannelTrend>> channelTrend(FleetFile& fleet, const Frame& frame, const Period& period) {
    const auto oldest = fleet.trends().first(frame.channel.id);
    if (!oldest) return fail(oldest.error());
    if (!*oldest) return std::nullopt;
    Instant from = **oldest;
    if (frame.segmentStart) {
        const auto start = startOf(period, *frame.segmentStart);
        if (!start) return fail(start.error());
        from = std::max(from, *start);
    }
    auto rows = readBoth(from, period,
                         [&](Instant a, Instant b) { return fleet.trends().values(frame.channel.id, a, b); });
    if (!rows) return fail(rows.error());
    auto clocks = clocksOf(*rows, period.timeZone);
    if (!clocks) return fail(clocks.error());
    return ChannelTrend{frame, {std::move(*rows), std::move(*clocks)}, from};
}

// Values of a measure with the conditions of the recordings they are of.
std::vector<RunValue> withConditions(const std::vector<TrendPoint>& points, const TrendRows& rows) {
    std::vector<RunValue> values;
    std::size_t at = 0;
    for (const TrendPoint& point : points) {
        while (at < rows.rows.size() && rows.rows[at].time < point.time)
            ++at;
        if (at == rows.rows.size()) break;
        if (rows.rows[at].time != point.time || !isRunning(point.running)) continue;
        values.push_back(conditionOf(rows.rows[at], rows.clocks[at]));
        values.back().value = point.value;
    }
    return values;
}

Status addMeasure(FleetFile& fleet, const MeasureSeries& series, const ChannelTrend& trend,
                  const Period& period, FollowedTrends& out) {
    const auto points = readBoth(trend.from, period,
                                 [&](Instant a, Instant b) { return fleet.trends().measured(series, a, b); });
    if (!points) return fail(points.error());
    const std::vector<RunValue> values = withConditions(*points, trend.rows);
    if (values.empty()) return {};
    FollowedChange change = headOf(trend.frame, Followed::Measure, series.unit);
    change.fault = series.fault;
    change.name = series.name;
    change.at = series.at;
    MattersBy by = series.unit == "mm/s" ? trend.frame.limits : MattersBy{};
    by.line = true;
    if (series.unit == "g") by.leastValue = kLeastLineG;
    const Scale scale = series.unit == "dB" ? Scale::Linear : Scale::Decibels;
    change.week =
        changeOfWeek(values, trend.frame.segmentStart, trend.frame.firstDay, trend.frame.lastDay, scale, by);
    out.changes.push_back(std::move(change));
    return {};
}

Status addMeasures(FleetFile& fleet, std::int64_t machine, const std::vector<ChannelTrend>& trends,
                   const Period& period, FollowedTrends& out) {
    const auto measures = fleet.trends().measures(machine);
    if (!measures) return fail(measures.error());
    for (const MeasureSeries& series : *measures)
        for (const ChannelTrend& trend : trends) {
            if (trend.frame.channel.id != series.channel || series.fault == kSensorFault) continue;
            if (auto good = addMeasure(fleet, series, trend, period, out); !good) return good;
        }
    return {};
}

Result<Frame> frameOf(const ChannelEntry& channel, const Machine& described, const Period& period,
                      const std::vector<Event>& events) {
    Frame frame{channel, described.pointById(channel.point), {}, 0, 0, {}};
    const auto start = segmentStart(events, frame.point, period);
    const auto first = dayNumber(period.firstDay), last = dayNumber(period.lastDay);
    if (!start) return fail(start.error());
    if (!first) return fail(first.error());
    if (!last) return fail(last.error());
    frame.segmentStart = *start;
    frame.firstDay = *first;
    frame.lastDay = *last;
    frame.limits = limitsOf(described, frame.point);
    return frame;
}

}  // namespace

MattersBy mattersBy(const Machine& machine, const Point* point, Followed quantity) {
    return mattersOf(quantity, limitsOf(machine, point));
}

Result<std::vector<RunValue>> followedLevels(FleetFile& fleet, std::int64_t channel, Followed quantity,
                                             const std::string& timeZone, Instant from, Instant until) {
    auto rows = fleet.trends().values(channel, from, until);
    if (!rows) return fail(rows.error());
    auto clocks = clocksOf(*rows, timeZone);
    if (!clocks) return fail(clocks.error());
    const TrendRows all{std::move(*rows), std::move(*clocks)};
    if (quantity == Followed::TemperatureRise) return risesOf(all);
    for (const auto& [followed, column] : kLevels)
        if (followed == quantity) return valuesOf(all, column);
    return std::vector<RunValue>();
}

Result<FollowedTrends> followedTrends(FleetFile& fleet, const MachineEntry& machine, const Machine& described,
                                      const Period& period) {
    const auto channels = fleet.trends().channels(machine.id);
    if (!channels) return fail(channels.error());
    const auto events = fleet.log().events(machine.tag);
    if (!events) return fail(events.error());
    std::vector<ChannelTrend> trends;
    FollowedTrends out;
    for (const ChannelEntry& channel : *channels) {
        if (channel.quantity != "acceleration" && channel.quantity != "flux") continue;
        const auto frame = frameOf(channel, described, period, *events);
        if (!frame) return fail(frame.error());
        auto trend = channelTrend(fleet, *frame, period);
        if (!trend) return fail(trend.error());
        if (!*trend) continue;
        addLevels(*frame, (*trend)->rows, out);
        addTemperature(*frame, (*trend)->rows, out);
        addDependences(*frame, (*trend)->rows, out);
        trends.push_back(std::move(**trend));
    }
    if (auto good = addMeasures(fleet, machine.id, trends, period, out); !good) return fail(good.error());
    return out;
}

}  // namespace fettle
