#include "core/fleet/asks.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "core/base/json_parts.h"
#include "core/base/text.h"
#include "core/exchange/csv_cell.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

// Of a sample rate, what an instrument calls its top frequency; and what rounding may take off a demand.
constexpr double kRateOverTop = 2.56, kNearly = 0.99;
const Instant kEnd{std::chrono::milliseconds(253402300799000)};
// A recording comes in at most so long after it was taken: older ones are not looked through; no source.
constexpr std::chrono::days kComesLate{31};

Result<Ask> askFrom(Request request, const std::string& file) {
    Ask ask;
    auto spec = askSpecFrom(request.what, file);
    if (!spec) return fail(spec.error());
    ask.spec = std::move(*spec);
    ask.request = std::move(request);
    return ask;
}

bool sameDemand(const Ask& a, const Ask& b) {
    const auto key = [](const Ask& ask) {
        return std::tuple(ask.request.machine, ask.request.byHand, ask.request.point, ask.request.direction);
    };
    return key(a) == key(b) && a.spec == b.spec;
}

Status checkAsk(const Ask& ask) {
    const std::string place = "request for " + ask.request.machine;
    if (trimmed(ask.request.point).empty())
        return fail(ErrorKind::Invalid, "", place, "says no point or place");
    if (trimmed(ask.request.why).empty()) return fail(ErrorKind::Invalid, "", place, "does not say why");
    static const std::vector<std::string> directions = {"", "horizontal", "vertical", "axial", "radial"};
    if (std::find(directions.begin(), directions.end(), ask.request.direction) == directions.end())
        return fail(ErrorKind::Invalid, "", place,
                    "is for a direction \"" + ask.request.direction +
                        "\", must be horizontal, vertical, axial or radial");
    return checkAskSpec(ask.spec);
}

bool isAtPlace(const Point& point, const std::string& asked) {
    return point.id == asked || point.at == asked || point.at.starts_with(asked + " ");
}

bool isInDirection(const std::string& channel, const std::string& asked) {
    if (asked.empty() || channel == asked) return true;
    return asked == "radial" && (channel == "horizontal" || channel == "vertical");
}

bool isVibration(const std::string& quantity) {
    return quantity == "acceleration" || quantity == "velocity" || quantity == "displacement";
}

bool hasChannel(const RecordingEntry& recording, const std::string& name) {
    return std::find(recording.channels.begin(), recording.channels.end(), name) != recording.channels.end();
}

double topHzOf(const RecordingEntry& recording, const Point& point) {
    const double top = recording.sampleRateHz / kRateOverTop;
    return point.usableHz ? std::min(top, (*point.usableHz)[1]) : top;
}

bool isLongEnough(const RecordingEntry& recording, const Ask& ask) {
    return isRunning(recording.running) && recording.seconds >= kNearly * ask.spec.seconds;
}

// Recordings of each machine, read once.
class Arrivals {
  public:
    explicit Arrivals(FleetFile& fleet) : fleet_(fleet) {}

    Result<std::optional<RecordingEntry>> thatBrings(const Ask& ask) {
        const auto all = of(ask.request);
        if (!all) return fail(all.error());
        for (const RecordingEntry& recording : **all) {
            if (recording.importedAt < ask.request.askedAt || !isLongEnough(recording, ask)) continue;
            const auto described = describedAt(fleet_, ask.request.machine, recording.time);
            if (described && brings(**described, recording, ask)) return recording;
        }
        return std::nullopt;
    }

  private:
    using Entries = std::vector<RecordingEntry>;
    // The first that asks of a machine is its oldest.
    Result<const Entries*> of(const Request& request) {
        const std::string& tag = request.machine;
        const auto known = read_.find(tag);
        if (known != read_.end()) return &known->second;
        const auto machine = fleet_.machines().byTag(tag);
        if (!machine) return &read_[tag];  // taken out of the register
        auto all = fleet_.recordings().list(machine->id, request.askedAt - kComesLate, kEnd);
        if (!all) return fail(all.error());
        return &(read_[tag] = std::move(*all));
    }

    FleetFile& fleet_;
    std::map<std::string, Entries> read_;
};

Json jsonOf(const Ask& ask) {
    const Request& r = ask.request;
    const auto known = [](double value) { return value > 0 ? Json(value) : Json(); };
    const int lines = linesOf(ask.spec);
    return {{"id", r.id},
            {"machine", r.machine},
            {"asset", ask.asset},
            {"service", ask.service},
            {"area", ask.area},
            {"by", r.byHand ? "hand" : "node"},
            {"point", r.point},
            {"direction", r.direction.empty() ? Json() : Json(r.direction)},
            {"seconds", known(ask.spec.seconds)},
            {"top_hz", known(ask.spec.topHz)},
            {"lines", lines > 0 ? Json(lines) : Json()},
            {"tachometer", ask.spec.tachometer},
            {"why", r.why},
            {"asked_at", formatUtc(r.askedAt)},
            {"asked_by", r.askedBy},
            {"state", ask.state()},
            {"answered_at", r.answeredAt ? Json(formatUtc(*r.answeredAt)) : Json()},
            {"recording", orNull(r.recording)},
            {"note", ask.spec.note}};
}

}  // namespace

std::string Ask::state() const {
    if (!request.answeredAt) return "open";
    return spec.outcome.empty() ? "answered" : spec.outcome;
}

Result<std::vector<Ask>> asksOf(FleetFile& fleet, const std::string& machine, bool answeredToo) {
    auto requests = fleet.requests().list(machine, answeredToo);
    if (!requests) return fail(requests.error());
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    std::map<std::string, const MachineEntry*> byTag;
    for (const MachineEntry& entry : *machines)
        byTag[entry.tag] = &entry;
    std::vector<Ask> asks;
    for (Request& request : *requests) {
        auto ask = askFrom(std::move(request), fleet.path());
        if (!ask) return fail(ask.error());
        if (const auto at = byTag.find(ask->request.machine); at != byTag.end()) {
            ask->asset = at->second->asset;
            ask->service = at->second->service;
            ask->area = at->second->area;
        }
        asks.push_back(std::move(*ask));
    }
    std::stable_sort(asks.begin(), asks.end(), [](const Ask& a, const Ask& b) {
        return std::tie(a.area, a.request.machine) < std::tie(b.area, b.request.machine);
    });
    return asks;
}

Result<std::int64_t> putAsk(FleetFile& fleet, Ask ask) {
    if (auto good = checkAsk(ask); !good) return fail(good.error());
    ask.spec.outcome.clear();
    ask.spec.note.clear();
    ask.request.point = std::string(trimmed(ask.request.point));
    const auto open = asksOf(fleet, ask.request.machine);
    if (!open) return fail(open.error());
    for (const Ask& one : *open)
        if (sameDemand(one, ask)) return one.request.id;
    ask.request.what = toText(ask.spec);
    ask.request.askedBy = orLoginName(ask.request.askedBy);
    return fleet.requests().add(ask.request);
}

Status closeAsk(FleetFile& fleet, std::int64_t id, const std::string& outcome, const std::string& note) {
    if (outcome != "answered" && outcome != "dropped")
        return fail(ErrorKind::Invalid, "", fmt::format("request {}", id),
                    "is given the outcome \"" + outcome + "\", must be answered or dropped");
    auto request = fleet.requests().get(id);
    if (!request) return fail(request.error());
    auto ask = askFrom(std::move(*request), fleet.path());
    if (!ask) return fail(ask.error());
    ask->spec.outcome = outcome;
    ask->spec.note = note;
    return fleet.requests().answer(id, nowUtc(), {}, toText(ask->spec));
}

bool brings(const Machine& machine, const RecordingEntry& recording, const Ask& ask) {
    const Point* point = machine.pointById(recording.point);
    if (!point || !isLongEnough(recording, ask) || !isAtPlace(*point, ask.request.point)) return false;
    if (topHzOf(recording, *point) < kNearly * ask.spec.topHz) return false;
    bool direction = false, tachometer = false;
    for (const PointChannel& channel : point->channels) {
        if (!hasChannel(recording, channel.name)) continue;
        tachometer |= channel.quantity == "tacho";
        direction |= isVibration(channel.quantity) && isInDirection(channel.direction, ask.request.direction);
    }
    return direction && (tachometer || !ask.spec.tachometer);
}

Result<std::vector<AnsweredAsk>> answerAsks(FleetFile& fleet, const std::string& machine) {
    const auto asks = asksOf(fleet, machine);
    if (!asks) return fail(asks.error());
    Arrivals arrivals(fleet);
    std::vector<AnsweredAsk> answered;
    for (const Ask& ask : *asks) {
        const auto recording = arrivals.thatBrings(ask);
        if (!recording) return fail(recording.error());
        if (!*recording) continue;
        const RecordingEntry& r = **recording;
        auto kept = fleet.requests().answer(ask.request.id, r.importedAt, r.id, toText(ask.spec));
        if (!kept) return fail(kept.error());
        answered.push_back({ask.request.id, r.id});
    }
    return answered;
}

Json toJson(const std::vector<Ask>& asks) {
    Json all = Json::array();
    for (const Ask& ask : asks)
        all.push_back(jsonOf(ask));
    return all;
}

std::string csvOf(const std::vector<Ask>& asks) {
    const auto number = [](double value) { return value > 0 ? fmt::format("{:g}", value) : std::string(); };
    std::string text =
        csvLine({"area", "machine", "asset", "service", "by", "point", "direction", "seconds", "top_hz",
                 "lines", "tachometer", "why", "asked_at", "asked_by", "state", "note"});
    for (const Ask& ask : asks) {
        const Request& r = ask.request;
        text += csvLine({ask.area, r.machine, ask.asset, ask.service, r.byHand ? "hand" : "node", r.point,
                         r.direction, number(ask.spec.seconds), number(ask.spec.topHz),
                         number(linesOf(ask.spec)), ask.spec.tachometer ? "yes" : "no", r.why,
                         formatUtc(r.askedAt), r.askedBy, ask.state(), ask.spec.note});
    }
    return text;
}

}  // namespace fettle
