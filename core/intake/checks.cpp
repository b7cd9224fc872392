#include "core/intake/checks.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/file_system.h"
#include "core/base/text.h"
#include "core/diagnosis/prepare.h"
#include "core/signal/capture_facts.h"

namespace fettle {

namespace {

using Outcome = std::optional<Objection>;

std::string shown(const std::string& text) {
    return oneLine(text, 80);
}

tl::unexpected<Objection> refuse(std::string place, std::string rule) {
    return tl::unexpected(Objection{false, std::move(place), std::move(rule)});
}
tl::unexpected<Objection> park(std::string place, std::string rule) {
    return tl::unexpected(Objection{true, std::move(place), std::move(rule)});
}

// Said in the sidecar ("/time") or in a CSV file's first lines ("time is ...").
bool isAboutTime(const Error& error) {
    if (error.kind != ErrorKind::Invalid) return false;
    for (const std::string key : {"time", "received"})
        if (error.place == "/" + key || error.rule.starts_with(key + " is ")) return true;
    return false;
}

// Which variable is the samples, and at what rate: the file does not say, and only a person can.
bool isAboutVariables(const Error& error) {
    return error.kind == ErrorKind::Invalid &&
           (error.place == "/samples" || error.place == "/sample_rate_hz");
}

// Which quantity a unit measures; more than one where the trade uses it for both.
struct UnitRow {
    const char* unit;
    std::vector<std::string> quantities;
};
const std::vector<UnitRow>& unitRows() {
    static const std::vector<UnitRow> rows = {
        {"g", {"acceleration"}},
        {"mg", {"acceleration"}},
        {"m/s2", {"acceleration"}},
        {"m/s^2", {"acceleration"}},
        {"m/s²", {"acceleration"}},
        {"mm/s", {"velocity"}},
        {"m/s", {"velocity"}},
        {"in/s", {"velocity"}},
        {"um", {"displacement"}},
        {"µm", {"displacement"}},
        {"mm", {"displacement"}},
        {"mil", {"displacement"}},
        {"t", {"flux"}},
        {"mt", {"flux"}},
        {"v", {"flux", "current", "tacho"}},
        {"mv", {"flux", "current", "tacho"}},
        {"1", {"flux", "current", "tacho"}},
        {"a", {"current"}},
        {"degc", {"temperature"}},
        {"°c", {"temperature"}},
        {"c", {"temperature"}},
        {"k", {"temperature"}},
    };
    return rows;
}

bool measures(const std::string& unit, const std::string& quantity) {
    for (const UnitRow& row : unitRows())
        if (lowerAscii(unit) == row.unit)
            return std::count(row.quantities.begin(), row.quantities.end(), quantity) > 0;
    return false;
}

std::string unitsOf(const std::string& quantity) {
    std::vector<std::string> units;
    for (const UnitRow& row : unitRows())
        if (measures(row.unit, quantity)) units.push_back(row.unit);
    return joined(units, ", ");
}

std::string idsOf(const Machine& machine) {
    std::vector<std::string> ids;
    for (const Point& point : machine.points)
        ids.push_back(point.id);
    return shown(joined(ids, ", "));
}

const Point* pointOf(const Machine& machine, const std::string& id) {
    if (id.empty()) return machine.points.size() == 1 ? &machine.points[0] : nullptr;
    return machine.pointById(id);
}

Objection unknownChannel(const Channel& channel, const Point& point, const std::string& place) {
    const std::string unit =
        channel.unit.empty() ? "no unit is given" : "its unit is \"" + shown(channel.unit) + "\"";
    return {false, place,
            fmt::format("point {} has no channel \"{}\" and {}: nothing says what it measures",
                        shown(point.id), shown(channel.name), unit)};
}

// `role` is what diagnosis would take the channel for.
Outcome checkUnit(const Channel& channel, const ChannelRole& role, const std::string& place) {
    if (role.channel && channel.unit.empty()) return {};
    if (measures(channel.unit, role.quantity)) return {};
    if (!role.channel) return unknownChannel(channel, *role.point, place);
    return Objection{false, place,
                     fmt::format("\"{}\" is in \"{}\", the description says {} ({}); units for that: {}",
                                 shown(channel.name), shown(channel.unit), role.quantity,
                                 shown(role.channel->unit), unitsOf(role.quantity))};
}

Outcome checkChannel(const Recording& recording, std::size_t index, const Machine& machine) {
    const Channel& channel = recording.channels[index];
    const std::string hint = machine.pointById(channel.pointHint) ? channel.pointHint : "";
    const std::string id = !channel.point.empty()     ? channel.point
                           : !recording.point.empty() ? recording.point
                                                      : hint;
    const bool own = !channel.point.empty() && channel.point != recording.point;
    const std::string place = fmt::format("/channels/{}", index);
    const Point* point = pointOf(machine, id);
    if (!point && id.empty())
        return Objection{
            true, "/point",
            fmt::format("no measuring point is named, {} has {}", shown(machine.tag), idsOf(machine))};
    if (!point)
        return Objection{false, own ? place + "/point" : "/point",
                         fmt::format("is \"{}\", the description of {} has {}", shown(id), shown(machine.tag),
                                     idsOf(machine))};
    return checkUnit(channel, roleOf(machine, recording, index), place + "/unit");
}

Outcome checkTime(const Recording& recording, Instant now) {
    if (!recording.time) return Objection{true, "/time", "no time is given"};
    if (*recording.time > now + kClockAhead)
        return Objection{true, "/time",
                         fmt::format("is {}, in the future: the clock is wrong", formatUtc(*recording.time))};
    if (recording.received && *recording.time > *recording.received + kClockAhead)
        return Objection{true, "/time",
                         fmt::format("is {}, after it was received ({}): the clock is wrong",
                                     formatUtc(*recording.time), formatUtc(*recording.received))};
    return {};
}

}  // namespace

Objection objectionFrom(const Error& error, const std::string& path) {
    std::string place = error.place;
    if (!error.file.empty() && error.file != path) {
        place = fileNameOf(error.file);
        if (!error.place.empty()) place += " " + error.place;
    }
    return {isAboutTime(error) || isAboutVariables(error), place, error.rule};
}

namespace {

// Takes the places a file names itself, where nobody else names one and the machine has a point of that name.
RecordingPtr withHints(const RecordingPtr& recording, const Machine& machine) {
    const auto taken = [&](const Channel& c) {
        return c.point.empty() && !c.pointHint.empty() && machine.pointById(c.pointHint);
    };
    if (std::none_of(recording->channels.begin(), recording->channels.end(), taken)) return recording;
    auto copy = std::make_shared<Recording>(*recording);
    for (Channel& channel : copy->channels)
        if (taken(channel)) channel.point = channel.pointHint;
    const std::string& first = copy->channels[0].point;
    const bool one = std::all_of(copy->channels.begin(), copy->channels.end(),
                                 [&](const Channel& c) { return c.point == first; });
    if (copy->point.empty() && one) copy->point = first;
    return copy;
}

}  // namespace

RecordingPtr withPoints(const RecordingPtr& given, const Machine& machine) {
    const RecordingPtr recording = withHints(given, machine);
    const bool named = std::all_of(recording->channels.begin(), recording->channels.end(),
                                   [](const Channel& channel) { return !channel.point.empty(); });
    if (named || machine.points.size() != 1) return recording;
    auto copy = std::make_shared<Recording>(*recording);
    if (copy->point.empty()) copy->point = machine.points[0].id;
    givePoints(*copy);
    return copy;
}

std::optional<Objection> misfit(const Recording& recording, const Machine& machine) {
    for (std::size_t i = 0; i < recording.channels.size(); ++i)
        if (Outcome objection = checkChannel(recording, i, machine)) return objection;
    return {};
}

tl::expected<Admitted, Objection> admit(const Recording& recording, const RegisterBook& book, Instant now) {
    if (recording.machine.empty()) return park("/machine", "no machine is named");
    const BookedMachine* machine = book.find(recording.machine);
    if (!machine)
        return refuse("/machine",
                      fmt::format("is \"{}\", which is not in the register", shown(recording.machine)));
    if (Outcome objection = checkTime(recording, now)) return tl::unexpected(*objection);
    const auto day = machine->dayOf(*recording.time);
    if (!day) return refuse("/time", day.error().sentence());
    if (!machine->entry.removedOn.empty() && *day >= machine->entry.removedOn)
        return refuse("/time", fmt::format("is {}, {} was taken out of the register on {}", *day,
                                           shown(recording.machine), machine->entry.removedOn));
    const auto description = machine->describedAt(*recording.time);
    if (!description) return refuse("/time", description.error().sentence());
    const Admitted admitted{machine, *description};
    if (Outcome objection = misfit(recording, *admitted.description)) return tl::unexpected(*objection);
    return admitted;
}

std::vector<std::string> notesOn(const Recording& recording, const Machine& machine) {
    std::vector<std::string> notes;
    for (std::size_t i = 0; i < recording.channels.size(); ++i) {
        const Channel& channel = recording.channels[i];
        const ChannelRole role = roleOf(machine, recording, i);
        const std::string name = fmt::format("channel \"{}\" of {}", shown(channel.name), shown(machine.tag));
        if (!role.channel) notes.push_back(name + " is not in the description: taken for " + role.quantity);
        const bool whole = channel.bits > 0 && channel.scale == 1 && channel.unit.empty();
        if (role.channel && whole && role.quantity == "acceleration")
            notes.push_back(name + " is whole numbers without a scale: full scale is taken for 1 " +
                            shown(role.channel->unit));
    }
    return notes;
}

}  // namespace fettle
