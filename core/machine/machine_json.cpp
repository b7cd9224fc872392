#include <fmt/format.h>

#include "core/base/text.h"
#include "core/machine/machine_parse.h"

namespace fettle {
namespace machine_parse {

std::string readName(JsonObject& object, const std::string& key, const std::string& fallback) {
    const bool absent = !object.has(key);
    std::string name = object.text(key, fallback.empty());
    if (absent) {
        if (!fallback.empty())
            object.report().warn(object.place(key), "not given, taken as \"" + fallback + "\"");
        return fallback;
    }
    if (name.size() > 100 || name != oneLine(name) || trimmed(name) != name || name.empty())
        object.report().broken(object.place(key),
                               "must be 1 to 100 bytes on one line without spaces at its ends");
    return name;
}

std::string readWord(JsonObject& object, const std::string& key, const std::vector<std::string>& words,
                     const std::string& otherwise) {
    const std::string word = object.word(key, words);
    return word.empty() ? otherwise : word;
}

std::vector<const Json*> readList(JsonObject& object, const std::string& key, std::size_t most) {
    auto items = object.list(key);
    if (items.size() <= most) return items;
    object.report().broken(object.place(key),
                           fmt::format("has {} entries, at most {} are taken", items.size(), most));
    items.resize(most);
    return items;
}

namespace {

DriverKind kindOf(const std::string& word) {
    if (word == "wound_rotor") return DriverKind::WoundRotor;
    if (word == "two_speed") return DriverKind::TwoSpeed;
    if (word == "pm_synchronous") return DriverKind::PmSynchronous;
    if (word == "reluctance") return DriverKind::Reluctance;
    return DriverKind::Induction;
}

void readInverter(JsonObject& object, Driver& driver) {
    driver.inverter = object.word("supply", {"mains", "inverter"}) == "inverter";
    const auto range = object.numbers("output_hz_range", 2, 0, 2000);
    if (range.size() == 2) {
        driver.outputHzLeast = range[0];
        driver.outputHzMost = range[1];
        if (range[0] >= range[1])
            object.report().broken(object.place("output_hz_range"), "the first must be less than the second");
    }
    driver.ratedHz = object.number("rated_hz", 1, 2000);
    driver.carrierHz = object.number("carrier_hz", 100, 200000);
    driver.rpmMin = object.number("rpm_min", 0, 200000);
    driver.rpmMax = object.number("rpm_max", 1, 200000);
    if (driver.rpmMin && driver.rpmMax && *driver.rpmMin >= *driver.rpmMax)
        object.report().broken(object.place("rpm_min"), "must be less than rpm_max");
}

void readPlate(JsonObject& object, Driver& driver) {
    driver.kind = kindOf(
        object.word("kind", {"induction", "wound_rotor", "two_speed", "pm_synchronous", "reluctance"}));
    driver.powerKw = object.number("power_kw", 0.01, 100000);
    driver.ratedRpm = object.number("rated_rpm", 1, 200000);
    driver.shaftHeightMm = object.number("shaft_height_mm", 20, 3000);
    driver.poles = object.integer("poles", 2, 48);
    driver.rotorBars = object.integer("rotor_bars", 4, 1000);
    driver.statorSlots = object.integer("stator_slots", 3, 1000);
    driver.thermalClass = object.word("thermal_class", {"Y", "A", "E", "B", "F", "H", "N", "R"});
    if (driver.poles && *driver.poles % 2)
        object.report().broken(object.place("poles"), fmt::format("is {}, must be even", *driver.poles));
    if (!driver.poles && !driver.ratedRpm)
        object.report().broken(object.place("poles"), "poles or rated_rpm is required");
}

// Wrong by a pair of poles is the usual slip of the pen: 1484 r/min with 6 poles.
void checkSlip(JsonObject& object, const Machine& machine) {
    const auto synchronous = machine.synchronousRpm();
    if (!synchronous || !machine.driver.ratedRpm) return;
    const double rated = *machine.driver.ratedRpm;
    const bool asynchronous =
        machine.driver.kind == DriverKind::Induction || machine.driver.kind == DriverKind::WoundRotor;
    if (asynchronous && (rated >= *synchronous || rated < 0.8 * *synchronous))
        object.report().warn(
            object.place("rated_rpm"),
            fmt::format("{} r/min does not fit {} poles at {} Hz: synchronous speed is {} r/min", rated,
                        *machine.driver.poles, machine.mainsHz, *synchronous));
}

const Json& readDriver(JsonObject& root, Reading& reading) {
    JsonObject object(root.raw("driver"), root.place("driver"), reading.report);
    readPlate(object, reading.machine.driver);
    readInverter(object, reading.machine.driver);
    checkSlip(object, reading.machine);
    return object.raw("bearings");
}

const Json& readDriven(JsonObject& root, DrivenSpeed& speed, Reading& reading) {
    const Json& value = root.raw("driven");
    if (value.is_null()) return value;
    JsonObject object(value, root.place("driven"), reading.report);
    reading.machine.driven.known = true;
    reading.machine.driven.kind = object.text("kind");
    reading.machine.driven.blades = object.integer("blades", 1, 1000);
    speed.ratio = object.number("speed_ratio", 0.0001, 1000);
    speed.tolerance = object.number("speed_ratio_tol", 0, 0.5).value_or(0);
    return object.raw("bearings");
}

void readHeading(JsonObject& root, Machine& machine) {
    for (const char* written : {"schema", "engine"})
        root.raw(written);
    machine.tag = readName(root, "tag", "");
    machine.asset = root.text("asset");
    machine.service = root.text("service");
    machine.site = root.text("site");
    machine.area = root.text("area");
    machine.coupling = root.text("coupling");
    machine.criticality = readWord(root, "criticality", {"A", "B", "C"}, "B");
    machine.standby = root.boolean("standby").value_or(false);
    machine.mainsHz = root.number("mains_hz", 40, 70, true).value_or(50);
    machine.support = readWord(root, "support", {"rigid", "flexible", "unknown"}, "unknown");
}

void readBoxBearings(JsonObject& root, Reading& reading) {
    const Json& boxes = root.raw("intermediate");
    for (std::size_t i = 0; i < reading.machine.boxes.size(); ++i) {
        const Box box = reading.machine.boxes[i];
        const std::string place = fmt::format("{}/{}/bearings", root.place("intermediate"), i);
        if (boxes[i].is_object() && boxes[i].contains("bearings"))
            readBearings(boxes[i]["bearings"], place, box.id, box.shaft, reading);
    }
}

void readMachine(const Json& document, Reading& reading) {
    JsonObject root(document, "", reading.report);
    Machine& machine = reading.machine;
    readHeading(root, machine);
    DrivenSpeed speed;
    const Json& driverBearings = readDriver(root, reading);
    const Json& drivenBearings = readDriven(root, speed, reading);
    readTrain(root, speed, reading);
    readBearings(driverBearings, root.place("driver") + "/bearings", "driver", 0, reading);
    if (!drivenBearings.is_null() && !machine.shaftOfDriven())
        reading.report.broken(root.place("shafts"),
                              "no shaft is \"of\" the driven machine, which has bearings");
    readBearings(drivenBearings, root.place("driven") + "/bearings", "driven",
                 machine.shaftOfDriven().value_or(0), reading);
    readBoxBearings(root, reading);
    readPoints(root, reading);
}

}  // namespace
}  // namespace machine_parse

Result<ParsedMachine> parseMachine(const std::string& text, const std::string& file) {
    const auto document = parseJson(text, file);
    if (!document) return fail(document.error());
    ParsedMachine parsed;
    JsonReport report{file, {}, {}};
    machine_parse::Reading reading{parsed.machine, report};
    machine_parse::readMachine(*document, reading);
    if (report.error) return fail(*report.error);
    parsed.warnings = std::move(report.warnings);
    return parsed;
}

std::vector<Error> machineFaults(const std::string& text, const std::string& file) {
    const auto document = parseJson(text, file);
    if (!document) return {document.error()};
    Machine machine;
    JsonReport report{file, {}, {}};
    machine_parse::Reading reading{machine, report};
    machine_parse::readMachine(*document, reading);
    if (report.error) report.more.insert(report.more.begin(), std::move(*report.error));
    return std::move(report.more);
}

}  // namespace fettle
