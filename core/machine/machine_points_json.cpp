#include <fmt/format.h>

#include <algorithm>

#include "core/base/time.h"
#include "core/machine/machine_parse.h"

namespace fettle::machine_parse {

namespace {

// Standard positions pass; another must be one of the component's bearings, or is kept with a warning.
void checkPlace(const std::string& at, const std::string& place, Reading& reading) {
    const auto found = reading.machine.placeOf(at);
    if (!found)
        return reading.report.broken(
            place,
            "\"" + at +
                "\" names no known place: driver, driven or the id of a gear, belt, shaft or box, then DE "
                "or NDE");
    const auto& bearings = reading.machine.bearings;
    const std::set<std::string> usual{"", "DE", "NDE", "DE or NDE"};
    const bool listed = std::any_of(bearings.begin(), bearings.end(),
                                    [&](const BearingPlace& bearing) { return bearing.at == at; });
    if (!listed && !usual.count(found->position))
        reading.report.warn(place, "no bearing is listed at \"" + at + "\"");
}

std::string usualUnit(const std::string& quantity) {
    if (quantity == "acceleration") return "g";
    if (quantity == "velocity") return "mm/s";
    if (quantity == "displacement") return "um";
    if (quantity == "temperature") return "degC";
    return "1";
}

PointChannel readChannel(JsonObject& object, std::size_t i) {
    PointChannel channel;
    channel.name = readName(object, "name", std::to_string(i + 1));
    channel.quantity =
        readWord(object, "quantity",
                 {"acceleration", "velocity", "displacement", "flux", "temperature", "current", "tacho"},
                 "acceleration");
    channel.unit = object.text("unit");
    if (channel.unit.empty()) channel.unit = usualUnit(channel.quantity);
    channel.direction =
        readWord(object, "direction", {"horizontal", "vertical", "axial", "radial", "unknown"}, "unknown");
    return channel;
}

void readChannels(JsonObject& object, Point& point, Reading& reading) {
    std::set<std::string> names;
    const auto items = readList(object, "channels", kMostChannels);
    for (std::size_t i = 0; i < items.size(); ++i) {
        JsonObject item(*items[i], fmt::format("{}/{}", object.place("channels"), i), reading.report);
        point.channels.push_back(readChannel(item, i));
        if (!names.insert(point.channels.back().name).second)
            reading.report.broken(item.place("name"), "\"" + point.channels.back().name + "\" is used twice");
    }
    if (items.empty()) reading.report.broken(object.place("channels"), "a point needs at least one channel");
}

std::string readDate(JsonObject& object, const std::string& key) {
    std::string date = object.text(key);
    if (!date.empty() && !parseUtc(date + "T00:00:00Z"))
        object.report().broken(object.place(key), "must be a date like 2026-05-04");
    return date;
}

void readNodes(JsonObject& object, Point& point, Reading& reading) {
    const auto items = readList(object, "node", 1000);
    for (std::size_t i = 0; i < items.size(); ++i) {
        JsonObject item(*items[i], fmt::format("{}/{}", object.place("node"), i), reading.report);
        FittedNode node{readName(item, "id", ""), readDate(item, "from"), readDate(item, "to")};
        if (!node.to.empty() && node.to < node.from)
            reading.report.broken(item.place("to"), "is before from");
        point.nodes.push_back(std::move(node));
    }
}

void readHears(JsonObject& object, Point& point, Reading& reading) {
    const auto items = readList(object, "hears", kMostShafts);
    for (std::size_t i = 0; i < items.size(); ++i) {
        JsonObject item(*items[i], fmt::format("{}/{}", object.place("hears"), i), reading.report);
        const std::string at = item.text("at", true);
        const std::string path =
            item.word("path", {"same housing", "same base", "through coupling", "through belt"}, true);
        if (!at.empty()) checkPlace(at, item.place("at"), reading);
        point.hears.push_back({at, path});
    }
}

void readSensor(JsonObject& object, Point& point) {
    point.mount =
        readWord(object, "mount",
                 {"bearing_housing", "end_shield", "frame", "foot", "fin_or_cowl", "unknown"}, "unknown");
    point.fixing = object.word("fixing", {"stud", "adhesive", "magnet", "clamp"});
    const auto usable = object.numbers("usable_hz", 2, 0, 1e6);
    if (usable.size() == 2) {
        point.usableHz = {usable[0], usable[1]};
        if (usable[0] >= usable[1])
            object.report().broken(object.place("usable_hz"), "the first must be less than the second");
    }
    point.range = object.number("range", 1e-6, 1e6);
    point.noisePerRtHz = object.number("noise_per_rt_hz", 0, 1e3);
    point.intervalMin = object.number("interval_min", 0, 1e6);
}

Point readPoint(JsonObject& object, std::size_t i, Reading& reading) {
    Point point;
    point.id = readName(object, "id", std::to_string(i + 1));
    point.at = readName(object, "at", "driver");
    if (!point.at.empty()) checkPlace(point.at, object.place("at"), reading);
    readSensor(object, point);
    readNodes(object, point, reading);
    readHears(object, point, reading);
    readChannels(object, point, reading);
    return point;
}
}  // namespace

void readPoints(JsonObject& root, Reading& reading) {
    std::set<std::string> ids;
    std::size_t channels = 0;
    const auto items = readList(root, "points", kMostPoints);
    for (std::size_t i = 0; i < items.size(); ++i) {
        JsonObject object(*items[i], fmt::format("{}/{}", root.place("points"), i), reading.report);
        reading.machine.points.push_back(readPoint(object, i, reading));
        const Point& point = reading.machine.points.back();
        channels += point.channels.size();
        if (!ids.insert(point.id).second)
            reading.report.broken(object.place("id"), "\"" + point.id + "\" is used twice");
    }
    if (items.empty()) reading.report.broken(root.place("points"), "at least one point is required");
    if (channels > kMostChannels)
        reading.report.broken(root.place("points"), fmt::format("{} channels in all, at most {} are taken",
                                                                channels, kMostChannels));
}

}  // namespace fettle::machine_parse
