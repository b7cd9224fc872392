#include "core/fleet/sheet_work.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/fleet/sheet_words.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr const char* kConfirm = "confirm on the plate before ordering";

void replaceAll(std::string& text, const std::string& from, const std::string& to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
}

// One of these for each place that the finding may be at.
bool isLookedUpByPlace(const AdvicePart& part) {
    return part.from == "bearing" || part.from == "belt";
}

std::string bearingAt(const Machine& machine, const std::string& at) {
    for (const BearingPlace& place : machine.bearings)
        if (place.at == at) return place.bearing.designation;
    return "";
}

std::string beltOf(const Machine& machine, const std::string& at) {
    for (const Belt& belt : machine.belts)
        if (belt.id == at && belt.lengthMm > 0)
            return fmt::format("{} belt, about {:.0f} mm", belt.kind, belt.lengthMm);
    return "";
}

// "75 kW, 1484 r/min, shaft height 280 mm": what a stores list is searched by.
std::string plateOf(const Driver& driver) {
    std::vector<std::string> words;
    if (driver.powerKw) words.push_back(fmt::format("{:g} kW", *driver.powerKw));
    if (driver.poles) words.push_back(fmt::format("{} poles", *driver.poles));
    if (driver.ratedRpm) words.push_back(fmt::format("{:g} r/min", *driver.ratedRpm));
    if (driver.shaftHeightMm) words.push_back(fmt::format("shaft height {:g} mm", *driver.shaftHeightMm));
    return joined(words, ", ");
}

// A part of the motor is no part of a fan's job, nor a coupling's of a machine on belts.
bool belongs(const SheetCase& sheet, const AdvicePart& asked) {
    const Machine& machine = *sheet.machine;
    if (asked.from == "motor") return sheet.finding.at.empty() || sheet.finding.at.starts_with("driver");
    return asked.from != "coupling" || !machine.coupling.empty() || machine.belts.empty();
}

std::string placeOfPart(const SheetCase& sheet, const Advice& advice, const AdvicePart& asked,
                        const std::string& at) {
    if (isLookedUpByPlace(asked)) return placeWords(*sheet.machine, at);
    if (asked.from == "coupling" || asked.from == "motor" || asked.what == "shims") return "";
    return needsParts(advice) ? placeWords(*sheet.machine, sheet.finding.at) : "";
}

SheetPart partOf(const SheetCase& sheet, const Advice& advice, const AdvicePart& asked,
                 const std::string& at) {
    const Machine& machine = *sheet.machine;
    SheetPart part{asked.what,    placeOfPart(sheet, advice, asked, at), "", kConfirm, asked.blanks,
                   asked.quantity};
    if (asked.from == "bearing") part.designation = bearingAt(machine, at);
    if (asked.from == "belt") part.designation = beltOf(machine, at);
    if (asked.from == "motor") part.designation = plateOf(machine.driver);
    if (asked.from == "motor") part.note = "if the motor is changed instead; compare the plates";
    if (asked.from == "coupling" && !machine.coupling.empty())
        part.note = fmt::format("register says \"{}\"; {}", machine.coupling, kConfirm);
    if (asked.from == "bearing" && part.designation.empty()) {
        part.note = "designation not in the register: " + part.note;
        part.blanks.insert(part.blanks.begin(), "designation");
    }
    return part;
}

std::string zoneNow(const SheetCase& sheet) {
    const Severity& severity = sheet.told.finding.severity;
    return severity.kind == "zone" ? severity.value : sheet.governing.zone;
}

bool isBearing(const std::string& fault) {
    return fault.starts_with("bearing_");
}

}  // namespace

std::string filledIn(const std::string& text, const SheetCase& sheet) {
    const Machine& machine = *sheet.machine;
    std::string out = text;
    replaceAll(out, "{at}", placeWords(machine, sheet.finding.at));
    replaceAll(out, "{driven}", machine.driven.kind.empty() ? "rotor" : machine.driven.kind);
    replaceAll(out, "{cured}", curedWords(sheet.governing));
    replaceAll(out, "{worse}", worseWords(sheet.governing));
    replaceAll(out, "{often}", zoneNow(sheet) == "D" ? "daily" : "weekly");
    replaceAll(out, "{machine}", machineWords(sheet));
    return out;
}

std::string untilThenOf(const SheetCase& sheet, const Advice& advice) {
    const std::string until = filledIn(advice.until, sheet);
    const bool byLevel = advice.stop.find("{worse}") != std::string::npos;
    const std::string agree = byLevel ? agreeWords(sheet.governing) : "";
    return agree.empty() ? until : agree + " " + until;
}

std::string curedOf(const SheetCase& sheet, const Advice& advice) {
    std::string text = advice.cured;
    if (sheet.told.finding.severity.kind != "zone")
        for (const char* velocity : {", and {cured}", " and {cured}", "; {cured}"})
            replaceAll(text, velocity, "");
    return filledIn(text, sheet);
}

std::vector<SheetPart> partsOf(const SheetCase& sheet, const Advice& advice) {
    std::vector<SheetPart> parts;
    for (const AdvicePart& asked : advice.parts) {
        if (!belongs(sheet, asked)) continue;
        const auto places =
            isLookedUpByPlace(asked) ? placesIn(sheet.finding.at) : std::vector<std::string>{""};
        for (const std::string& at : places) {
            parts.push_back(partOf(sheet, advice, asked, at));
            if (places.size() > 1)
                parts.back().note = "which end cannot be told: have both at hand; " + parts.back().note;
        }
    }
    return parts;
}

bool needsParts(const Advice& advice) {
    return std::any_of(advice.parts.begin(), advice.parts.end(), isLookedUpByPlace);
}

SheetNeed needOf(const SheetCase& sheet, const Advice& advice) {
    const bool inspect = !sheet.firm() && !sheet.byHandOnly();
    const AdviceNeed& from = inspect ? advice.inspectNeed : advice.need;
    return {filledIn(from.state, sheet),
            filledIn(from.trades, sheet),
            from.heads,
            from.hoursLow,
            from.hoursHigh,
            from.tools,
            from.permits,
            from.lifting,
            from.access,
            fmt::format("People, hours, tools and permits are common practice for {}; the site knows its "
                        "machine and decides.",
                        inspect ? "the inspection" : "such a job")};
}

SheetIsolation isolationBoxes() {
    return {{"point of isolation", "locked by", "proved dead by"},
            4,
            "The site fills these in from its own list. Nothing here says which or how many there are."};
}

std::vector<SheetStep> stepsOf(const SheetCase& sheet, const Advice& advice) {
    const bool inspect = !sheet.firm() && !advice.inspectSteps.empty();
    std::vector<SheetStep> steps;
    for (const AdviceStep& step : inspect ? advice.inspectSteps : advice.steps)
        steps.push_back({filledIn(step.text, sheet), step.source});
    return steps;
}

std::vector<SheetField> returnFields(const SheetCase& sheet, const Advice& advice) {
    const std::vector<std::string> yesNo{"yes", "no"};
    std::vector<SheetField> fields{
        {"found", {"as told", "another fault", "nothing found", "not opened"}},
        {"it showed as (ISO 14224 manner)",
         {"VIB vibration", "NOI noise", "OHE overheating", "STD structural", "BRD breakdown", "SER minor",
          "OTH other"}},
        {"came from",
         {"wear", "fatigue", "looseness", "misalignment", "breakage", "corrosion", "dirt or build-up",
          "lubrication", "electrical", "other"}},
    };
    if (isBearing(sheet.finding.fault))
        fields.push_back(
            {"bearing damage (ISO 15243)",
             {"fatigue", "wear", "corrosion", "electrical erosion", "plastic deformation", "cracking"}});
    if (!advice.parts.empty()) fields.push_back({"old part kept and tagged", yesNo});
    fields.push_back({"photo", yesNo});
    for (const char* free : {"what was found", "work order number", "people x hours", "done on"})
        fields.push_back({free, {}});
    if (!advice.parts.empty()) fields.push_back({"tag of the old part", {}});
    if (advice.alignment)
        for (const char* free : {"alignment before: offset, angle", "alignment after: offset, angle"})
            fields.push_back({free, {}});
    for (const char* free : {"planner", "fitter", "engineer"})
        fields.push_back({free, {}});
    return fields;
}

}  // namespace fettle
