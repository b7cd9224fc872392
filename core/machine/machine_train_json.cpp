#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "core/machine/machine_parse.h"

namespace fettle::machine_parse {

namespace {

std::string takeId(JsonObject& object, const std::string& fallback, Reading& reading) {
    std::string id = readName(object, "id", fallback);
    if (!id.empty() && !reading.ids.insert(id).second)
        reading.report.broken(object.place("id"), "\"" + id + "\" is used twice");
    return id;
}

std::string takeShaftId(JsonObject& object, const std::string& key, Reading& reading) {
    std::string id = object.text(key, true);
    if (!id.empty() && !reading.machine.shaftById(id))
        reading.report.broken(object.place(key), "no shaft is named \"" + id + "\"");
    return id;
}

void takeEnds(JsonObject& object, std::string& from, std::string& to, Reading& reading) {
    from = takeShaftId(object, "from", reading);
    to = takeShaftId(object, "to", reading);
    if (from == to) reading.report.broken(object.place("to"), "must be another shaft than from");
}

// One shaft where the description lists none; a driven machine of known ratio has its own.
void assumeShafts(const DrivenSpeed& driven, Reading& reading) {
    auto& shafts = reading.machine.shafts;
    shafts.push_back({"S1", "driver", 1, 0});
    if (driven.ratio) shafts.push_back({"S2", "driven", 1, 0});
    for (const Shaft& shaft : shafts)
        reading.ids.insert(shaft.id);
}

// The driver's shaft is moved to the front: its speed is the unit of every ratio.
void readShafts(JsonObject& root, const DrivenSpeed& driven, Reading& reading) {
    auto& shafts = reading.machine.shafts;
    const auto items = readList(root, "shafts", kMostShafts);
    for (std::size_t i = 0; i < items.size(); ++i) {
        JsonObject object(*items[i], fmt::format("{}/{}", root.place("shafts"), i), reading.report);
        Shaft shaft{takeId(object, "", reading), object.word("of", {"driver", "driven"}), 0, 0};
        for (const Shaft& other : shafts)
            if (!shaft.of.empty() && shaft.of == other.of)
                reading.report.broken(object.place("of"), "two shafts are \"of\" the " + shaft.of);
        shafts.insert(shaft.of == "driver" ? shafts.begin() : shafts.end(), shaft);
    }
    if (shafts.empty()) return assumeShafts(driven, reading);
    if (shafts[0].of != "driver")
        reading.report.broken(root.place("shafts"), "one shaft must be \"of\": \"driver\"");
}

void readPlanetary(JsonObject& object, Gear& gear) {
    const auto sun = object.integer("sun", 3, 2000, true), ring = object.integer("ring", 3, 2000, true);
    const auto planet = object.integer("planet", 3, 2000), planets = object.integer("planets", 1, 24);
    gear.fixed = object.word("fixed", {"ring", "sun", "carrier"}, true);
    gear.planetary = {sun.value_or(3), ring.value_or(9), planet.value_or(0), planets.value_or(3)};
    if (!sun || !ring) return;
    if (*ring <= *sun) object.report().broken(object.place("ring"), "must have more teeth than the sun");
    if (planet && std::abs(*ring - *sun - 2 * *planet) > 2)
        object.report().warn(
            object.place("planet"),
            fmt::format("{} teeth do not fit between sun {} and ring {}", *planet, *sun, *ring));
}

void readTeeth(JsonObject& object, std::array<int, 2>& teeth, bool required) {
    const auto given = object.numbers("teeth", 2, 1, 5000);
    if (required && !object.has("teeth")) object.report().broken(object.place("teeth"), "is required");
    for (std::size_t i = 0; i < given.size(); ++i) {
        if (given[i] != std::floor(given[i]))
            object.report().broken(object.place("teeth"), "must be whole numbers");
        teeth[i] = static_cast<int>(given[i]);
    }
}

Gear readGear(JsonObject& object, std::size_t i, Reading& reading) {
    Gear gear;
    gear.id = takeId(object, fmt::format("G{}", i + 1), reading);
    takeEnds(object, gear.from, gear.to, reading);
    gear.kind =
        object.word("kind", {"spur", "helical", "double_helical", "bevel", "hypoid", "worm", "planetary"});
    if (object.has("planetary")) {
        JsonObject set(object.raw("planetary"), object.place("planetary"), reading.report);
        readPlanetary(set, gear);
    } else if (object.has("sun") || gear.kind == "planetary") {
        readPlanetary(object, gear);
    } else {
        readTeeth(object, gear.teeth, true);
    }
    return gear;
}

void readPulleys(JsonObject& object, Belt& belt) {
    const auto pulleys = object.numbers("pulley_mm", 2, 5, 20000);
    if (pulleys.size() == 2) belt.pulleyMm = {pulleys[0], pulleys[1]};
    readTeeth(object, belt.teeth, false);
    if (!object.has("pulley_mm") && !object.has("teeth"))
        object.report().broken(object.place("pulley_mm"), "pulley_mm or teeth is required");
    belt.lengthMm = object.number("length_mm", 50, 200000).value_or(0);
    const double least = std::numbers::pi / 2 * (belt.pulleyMm[0] + belt.pulleyMm[1]);
    if (belt.lengthMm > 0 && belt.lengthMm < least)
        object.report().broken(
            object.place("length_mm"),
            fmt::format("is {}, less than the {:.0f} that lie on the pulleys", belt.lengthMm, least));
}

Belt readBelt(JsonObject& object, std::size_t i, Reading& reading) {
    Belt belt;
    belt.id = takeId(object, fmt::format("B{}", i + 1), reading);
    takeEnds(object, belt.from, belt.to, reading);
    belt.kind = object.word("kind", {"vee", "flat", "toothed"});
    readPulleys(object, belt);
    if (belt.kind.empty()) belt.kind = belt.teeth[0] > 0 ? "toothed" : "vee";
    if (belt.kind == "toothed") belt.creepPct = {0, 0};
    const auto creep = object.numbers("creep_pct", 2, 0, 20);
    if (creep.size() == 2) belt.creepPct = {creep[0], creep[1]};
    if (belt.creepPct[0] > belt.creepPct[1])
        reading.report.broken(object.place("creep_pct"), "the first must not be more than the second");
    if (belt.kind == "toothed" && belt.creepPct[1] > 0)
        reading.report.broken(object.place("creep_pct"), "a toothed belt does not creep");
    return belt;
}

void readBoxes(JsonObject& root, Reading& reading) {
    const auto items = readList(root, "intermediate", kMostShafts);
    for (std::size_t i = 0; i < items.size(); ++i) {
        JsonObject object(*items[i], fmt::format("{}/{}", root.place("intermediate"), i), reading.report);
        const std::string id = takeId(object, "", reading);
        const std::string shaft = takeShaftId(object, "shaft", reading);
        object.raw("bearings");
        reading.machine.boxes.push_back({id, reading.machine.shaftById(shaft).value_or(0)});
    }
}
}  // namespace

void readTrain(JsonObject& root, const DrivenSpeed& driven, Reading& reading) {
    Machine& machine = reading.machine;
    const auto gears = readList(root, "gears", kMostShafts), belts = readList(root, "belts", kMostShafts);
    readShafts(root, driven, reading);
    if (!root.has("shafts") && (!gears.empty() || !belts.empty()))
        reading.report.broken(root.place("shafts"), "is required where there are gears or belts");
    for (std::size_t i = 0; i < gears.size(); ++i) {
        JsonObject object(*gears[i], fmt::format("{}/{}", root.place("gears"), i), reading.report);
        machine.gears.push_back(readGear(object, i, reading));
    }
    for (std::size_t i = 0; i < belts.size(); ++i) {
        JsonObject object(*belts[i], fmt::format("{}/{}", root.place("belts"), i), reading.report);
        machine.belts.push_back(readBelt(object, i, reading));
    }
    readBoxes(root, reading);
    setRatios(driven, reading);
}

}  // namespace fettle::machine_parse
