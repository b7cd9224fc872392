#include "core/fleet/nodes.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/diagnosis/prepare.h"
#include "core/fleet/site_calendar.h"
#include "core/round/words.h"
#include "core/store/day.h"

namespace fettle {

namespace {

using std::chrono::days;

// What is asked once of a machine, for all its points.
struct MachineHeard {
    std::vector<MeasureSeries> measures;
    std::vector<ChannelEntry> channels;
    std::vector<RecordingHead> recordings;  // of the period
    std::vector<Event> events;
};

struct NodeHeard {
    NodeAnswer answer;
    GridNode grid;
    std::vector<PoseAxis> axes;
    std::vector<PoseReading> poses;
    std::vector<Event> moved;  // of the node, as the site told it
};

const FittedNode* fittedOn(const Point& point, const std::string& day) {
    for (const FittedNode& node : point.nodes)
        if (node.from <= day && (node.to.empty() || node.to >= day)) return &node;
    return nullptr;
}

// From the day the present sensor was fitted, but no farther back than the history asked for.
Result<Instant> heardFrom(const FittedNode* node, const Period& period) {
    const Instant asked = std::min(period.from, period.end - days(kNodeHistoryDays));
    if (!node || node->from.empty()) return asked;
    const auto fitted = startOfDate(period.timeZone, node->from);
    if (!fitted) return fail(fitted.error());
    return std::max(asked, *fitted);
}

Status addMains(FleetFile& fleet, const std::vector<MeasureSeries>& all, const std::string& point,
                Instant from, const Period& period, NodeHeard& node) {
    std::map<std::int64_t, GridReading> byRecording;
    for (const MeasureSeries& series : all) {
        const bool mains = series.name == kMainsMeasure, half = series.name == kMainsHalfWidth;
        if (series.fault != kSensorFault || series.point != point || (!mains && !half)) continue;
        const auto values = fleet.trends().measured(series, from, period.last());
        if (!values) return fail(values.error());
        for (const TrendPoint& value : *values) {
            GridReading& reading = byRecording[value.recording];
            reading.time = value.time;
            (mains ? reading.hz : reading.plusMinusHz) = value.value;
        }
    }
    for (const auto& [recording, reading] : byRecording)
        if (reading.hz > 0) node.grid.readings.push_back(reading);
    std::sort(node.grid.readings.begin(), node.grid.readings.end(),
              [](const GridReading& a, const GridReading& b) { return a.time < b.time; });
    return {};
}

Status addGravity(FleetFile& fleet, const std::vector<ChannelEntry>& channels, const std::string& point,
                  Instant from, const Period& period, NodeHeard& node) {
    std::map<std::int64_t, PoseReading> byRecording;
    for (const ChannelEntry& channel : channels) {
        if (channel.point != point || channel.quantity != "acceleration") continue;
        const auto values = fleet.trends().trend(channel.id, Quantity::Offset, from, period.last());
        if (!values) return fail(values.error());
        if (values->empty()) continue;
        node.axes.push_back({channel.name, channel.direction});
        for (const TrendPoint& value : *values) {
            PoseReading& reading = byRecording[value.recording];
            reading.time = value.time;
            reading.g.push_back(value.value * gPerUnit(channel.unit));
        }
    }
    for (auto& [recording, reading] : byRecording)
        if (reading.g.size() == node.axes.size()) node.poses.push_back(std::move(reading));
    std::sort(node.poses.begin(), node.poses.end(),
              [](const PoseReading& a, const PoseReading& b) { return a.time < b.time; });
    return {};
}

std::string whyNoGrid(const Machine& machine, const NodeHeard& node) {
    if (node.answer.recordings == 0) return "no recording in these days";
    if (machine.driver.inverter) return "behind an inverter: there is no grid in its recordings";
    return "the mains was not read: no flux, and 2 x mains too weak in vibration or hidden beside a shaft "
           "order";
}

Result<MachineHeard> askedOnce(FleetFile& fleet, const MachineEntry& entry, const Period& period) {
    auto measures = fleet.trends().measures(entry.id);
    if (!measures) return fail(measures.error());
    auto channels = fleet.trends().channels(entry.id);
    if (!channels) return fail(channels.error());
    auto recordings = fleet.recordings().heads(entry.id, period.from, period.last());
    if (!recordings) return fail(recordings.error());
    auto events = fleet.log().events(entry.tag);
    if (!events) return fail(events.error());
    return MachineHeard{std::move(*measures), std::move(*channels), std::move(*recordings),
                        std::move(*events)};
}

Result<NodeHeard> heardOf(FleetFile& fleet, const MachineHeard& heard, const MachineEntry& entry,
                          const Machine& machine, const Point& point, const Period& period) {
    NodeHeard node;
    const FittedNode* fitted = fittedOn(point, period.lastDay);
    node.answer.machine = entry.tag;
    node.answer.point = point.id;
    node.answer.at = point.at;
    if (fitted) node.answer.node = fitted->id, node.answer.fittedFrom = fitted->from;
    node.grid.nominalHz = machine.mainsHz;
    const auto from = heardFrom(fitted, period);
    if (!from) return fail(from.error());
    if (auto good = addMains(fleet, heard.measures, point.id, *from, period, node); !good)
        return fail(good.error());
    if (auto good = addGravity(fleet, heard.channels, point.id, *from, period, node); !good)
        return fail(good.error());
    node.answer.recordings =
        std::size_t(std::count_if(heard.recordings.begin(), heard.recordings.end(),
                                  [&](const RecordingHead& r) { return r.point == point.id; }));
    if (machine.driver.inverter || node.answer.recordings == 0) node.grid.readings.clear();
    if (node.grid.readings.empty()) node.answer.noGrid = whyNoGrid(machine, node);
    for (const Event& event : heard.events)
        if (event.kind == "moved_node" && (event.at.empty() || event.at == point.id || event.at == point.at))
            node.moved.push_back(event);
    return node;
}

Result<std::vector<NodeHeard>> allHeard(FleetFile& fleet, const Period& period) {
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    std::vector<NodeHeard> all;
    for (const MachineEntry& entry : *machines) {
        if (!entry.removedOn.empty() && entry.removedOn <= period.firstDay) continue;
        const auto described = fleet.machines().describedOn(entry.tag, period.lastDay);
        if (!described) continue;  // not yet there in those days
        const auto heard = askedOnce(fleet, entry, period);
        if (!heard) return fail(heard.error());
        for (const Point& point : (*described)->points) {
            if (!point.nodes.empty() && !fittedOn(point, period.lastDay)) continue;
            auto node = heardOf(fleet, *heard, entry, **described, point, period);
            if (!node) return fail(node.error());
            all.push_back(std::move(*node));
        }
    }
    return all;
}

// A day to either side: the site's log is kept by hand.
bool wasTold(const PoseMove& move, const std::vector<Event>& moved) {
    return std::any_of(moved.begin(), moved.end(), [&](const Event& event) {
        return event.time >= move.before - days(1) && event.time <= move.after + days(1);
    });
}

std::string nameOf(const NodeAnswer& node) {
    if (node.node.empty()) return "node at " + node.point;
    return fmt::format("node {} at {}", node.node, node.point);
}

void addDoubts(const NodeHeard& heard, const Period& period, NodeAnswer& node) {
    const std::string name = nameOf(node) + ": ";
    const auto add = [&](const std::string& words) {
        if (!words.empty()) node.doubts.push_back(name + words);
    };
    if (node.grid.rate) add(rateWords(*node.grid.rate));
    if (node.grid.clock) add(clockWords(*node.grid.clock));
    for (const PoseMove& move : node.pose.moves)
        if (move.after >= period.from && !wasTold(move, heard.moved)) add(movedWords(move, period));
    add(node.pose.misfit);
}

}  // namespace

std::string movedWords(const PoseMove& move, const Period& period) {
    return moveWords(move, momentIn(period.timeZone, move.before), momentIn(period.timeZone, move.after));
}

Result<NodesAnswer> nodesIn(FleetFile& fleet, const Period& period) {
    auto heard = allHeard(fleet, period);
    if (!heard) return fail(heard.error());
    std::vector<GridNode> grid;
    for (NodeHeard& node : *heard)
        grid.push_back(node.grid);
    const std::vector<GridVerdict> verdicts = askGrid(grid, period.from);
    NodesAnswer all;
    all.period = period;
    for (std::size_t i = 0; i < heard->size(); ++i) {
        NodeAnswer& node = (*heard)[i].answer;
        node.grid = verdicts[i];
        if (!node.grid.rate && node.noGrid.empty()) node.noGrid = "the mains was not read in these days";
        node.pose = askGravity((*heard)[i].axes, (*heard)[i].poses);
        addDoubts((*heard)[i], period, node);
        all.nodes.push_back(std::move(node));
    }
    return all;
}

Result<NodesAnswer> nodesOf(FleetFile& fleet, const std::string& until, int count) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    std::string last = until;
    if (last.empty()) {
        const auto newest = fleet.recordings().newest();
        if (!newest) return fail(newest.error());
        const auto date = dateIn(site->timeZone, newest->value_or(nowUtc()));
        if (!date) return fail(date.error());
        last = *date;
    }
    const auto period = periodTo(*site, last, count);
    if (!period) return fail(period.error());
    return nodesIn(fleet, *period);
}

Result<std::map<std::string, std::vector<NodeDoubt>>> nodeDoubts(FleetFile& fleet, const Period& period) {
    const auto all = nodesIn(fleet, period);
    if (!all) return fail(all.error());
    std::map<std::string, std::vector<NodeDoubt>> doubts;
    for (const NodeAnswer& node : all->nodes)
        for (const std::string& words : node.doubts)
            doubts[node.machine].push_back({node.at, capitalised(words) + "."});
    return doubts;
}

}  // namespace fettle
