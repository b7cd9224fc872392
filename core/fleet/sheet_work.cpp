#include "core/fleet/sheet_work.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/fleet/sheet_words.h"

namespace fettle {

namespace {

constexpr const char* kConfirm = "confirm on the plate before ordering";

void replaceAll(std::string& text, const std::string& from, const std::string& to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
}

// "driver DE or NDE" -> "driver DE", "driver NDE"
std::vector<std::string> placesOf(const std::string& at) {
    const std::size_t choice = at.find(" or ");
    if (choice == std::string::npos) return {at};
    const std::string first = at.substr(0, choice);
    return {first, first.substr(0, first.rfind(' ') + 1) + at.substr(choice + 4)};
}

SheetPart bearingPart(const Machine& machine, const AdvicePart& asked, const std::string& at) {
    SheetPart part{asked.what, placeWords(machine, at), "", kConfirm, asked.blanks};
    for (const BearingPlace& place : machine.bearings)
        if (place.at == at) part.designation = place.bearing.designation;
    if (part.designation.empty()) part.note = "designation not in the register: " + part.note;
    return part;
}

SheetPart beltPart(const Machine& machine, const AdvicePart& asked, const std::string& at) {
    SheetPart part{asked.what, placeWords(machine, at), "", kConfirm, asked.blanks};
    for (const Belt& belt : machine.belts)
        if (belt.id == at && belt.lengthMm > 0)
            part.designation = fmt::format("{} belt, about {:.0f} mm", belt.kind, belt.lengthMm);
    return part;
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
    replaceAll(out, "{machine}", machineWords(sheet));
    return out;
}

std::vector<SheetPart> partsOf(const SheetCase& sheet, const Advice& advice) {
    std::vector<SheetPart> parts;
    for (const AdvicePart& asked : advice.parts) {
        const auto places = asked.from.empty() ? std::vector<std::string>{""} : placesOf(sheet.finding.at);
        for (const std::string& at : places) {
            if (asked.from == "bearing")
                parts.push_back(bearingPart(*sheet.machine, asked, at));
            else if (asked.from == "belt")
                parts.push_back(beltPart(*sheet.machine, asked, at));
            else
                parts.push_back({asked.what,
                                 needsParts(advice) ? placeWords(*sheet.machine, sheet.finding.at) : "", "",
                                 kConfirm, asked.blanks});
            if (places.size() > 1)
                parts.back().note = "which end cannot be told: have both at hand; " + parts.back().note;
        }
    }
    return parts;
}

bool needsParts(const Advice& advice) {
    return std::any_of(advice.parts.begin(), advice.parts.end(),
                       [](const AdvicePart& part) { return !part.from.empty(); });
}

std::vector<SheetStep> stepsOf(const SheetCase& sheet, const Advice& advice) {
    const bool inspect = !sheet.firm() && !advice.inspectSteps.empty();
    std::vector<SheetStep> steps;
    for (const AdviceStep& step : inspect ? advice.inspectSteps : advice.steps)
        steps.push_back({filledIn(step.text, sheet), step.source});
    return steps;
}

std::vector<SheetField> returnFields(const SheetCase& sheet) {
    std::vector<SheetField> fields{
        {"work order number", {}},
        {"isolation points", {}},
        {"permits", {}},
        {"found", {"as told", "another fault", "nothing found", "not opened"}},
    };
    if (isBearing(sheet.finding.fault)) {
        fields.push_back(
            {"bearing damage (ISO 15243)",
             {"fatigue", "wear", "corrosion", "electrical erosion", "plastic deformation", "cracking"}});
        fields.push_back({"old bearing kept and marked", {"yes", "no"}});
    }
    if (sheet.finding.fault == "misalignment") fields.push_back({"offset and angle before / after", {}});
    for (const char* free : {"remarks, picture", "hours", "done on", "planner", "fitter", "engineer"})
        fields.push_back({free, {}});
    return fields;
}

}  // namespace fettle
