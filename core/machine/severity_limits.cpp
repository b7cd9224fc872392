#include "core/machine/severity_limits.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/machine/resource.h"

namespace fettle {

namespace {
constexpr const char* kLimitsTable = "severity_limits.json";
constexpr double kSmallKw = 15;              // ISO 20816-3 starts above
constexpr double kLargeKw = 300;             // group 1 starts above
constexpr double kLargeShaftHeightMm = 315;  // group 1 from, electrical machines
constexpr double kLeastShaftHeightMm = 160;  // group 2 from
constexpr double kPumpKw = 200;              // ISO 10816-7 has two columns
constexpr double kMostKw = 50000;
constexpr double kSlowRpm = 600;  // below: from 2 Hz, displacement too

Zone gradeOf(double level, double ab, double bc, double cd) {
    if (level <= ab) return Zone::A;
    if (level <= bc) return Zone::B;
    return level <= cd ? Zone::C : Zone::D;
}

// Names of sets in the table, without the support; or why there are none.
struct Choice {
    std::string id;
    bool bySupport = false;
    std::string why;
};

Choice none(std::string why) {
    return {"", false, std::move(why)};
}

struct Question {
    const Machine& machine;
    std::string component;
    std::optional<double> powerKw, rpm;
    std::string fanCategory, pumpCategory;

    bool onDriver() const { return component == "driver"; }
    bool drives(const std::string& a, const std::string& b) const {
        return machine.driven.kind == a || machine.driven.kind == b;
    }
};

// Group of ISO 20816-3; 0 where neither power nor shaft height tells.
int groupOf(const Question& asked) {
    const double heightMm = asked.onDriver() ? asked.machine.driver.shaftHeightMm.value_or(0) : 0;
    if (asked.powerKw.value_or(0) > kLargeKw || heightMm >= kLargeShaftHeightMm) return 1;
    if (asked.powerKw || heightMm >= kLeastShaftHeightMm) return 2;
    return 0;
}

Choice chooseSmall(const Question& asked) {
    if (asked.drives("fan", "blower")) return {"iso14694/" + asked.fanCategory, true, ""};
    return {"iso10816-1/I", false, ""};
}

Choice choose(const Question& asked) {
    const double powerKw = asked.powerKw.value_or(0);
    const bool small = asked.powerKw && powerKw <= kSmallKw;
    if (asked.drives("pump", "pump") && powerKw >= 1 && (small || asked.component == "driven"))
        return {"iso10816-7/" + asked.pumpCategory + (powerKw <= kPumpKw ? "/to200" : "/over200"), false, ""};
    if (small) return chooseSmall(asked);
    const int group = groupOf(asked);
    if (group == 0) return none("no limits: driver.power_kw, or the motor's shaft_height_mm, is not known");
    if (powerKw > kMostKw) return none("no limits: above the 50 MW of ISO 20816-3");
    if (asked.rpm && (*asked.rpm < 120 || *asked.rpm > 15000))
        return none(
            fmt::format("no limits: {:.0f} r/min is outside the 120 to 15000 of ISO 20816-3", *asked.rpm));
    return {fmt::format("iso20816-3/{}", group), true, ""};
}

std::vector<std::string> idsOf(const Choice& choice, const std::string& support) {
    if (!choice.bySupport) return {choice.id};
    if (support != "unknown") return {choice.id + "/" + support};
    return {choice.id + "/rigid", choice.id + "/flexible"};
}

void readThree(JsonObject& row, const std::string& key, double most, double (&values)[3]) {
    const auto given = row.numbers(key, 3, 0, most);
    if (given.size() != 3) return row.report().broken(row.place(key), "three limits are required");
    std::copy(given.begin(), given.end(), values);
    if (values[0] <= 0 || values[0] >= values[1] || values[1] >= values[2])
        row.report().broken(row.place(key), "limits must rise from A/B to C/D");
}

ZoneLimits readSet(JsonObject& row) {
    ZoneLimits limits;
    limits.basis = row.text("basis", true);
    limits.edition = row.text("edition", true);
    limits.clause = row.text("clause", true);
    limits.sure = row.text("sure", true);
    readThree(row, "velocity_mm_s", 1000, limits.velocity);
    if (row.has("displacement_um")) {
        double values[3]{};
        readThree(row, "displacement_um", 100000, values);
        std::copy(values, values + 3, limits.displacement);
    }
    limits.greyOnly = row.boolean("grey_only").value_or(false);
    return limits;
}

bool namesAnother(const Json& row, const std::string& id) {
    const auto named = row.is_object() ? row.find("id") : row.end();
    return named != row.end() && named->is_string() && named->get_ref<const std::string&>() != id;
}

ZoneLimits findSet(JsonObject& table, const std::string& id) {
    const auto rows = table.list("sets");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (namesAnother(*rows[i], id)) continue;  // asked of every point of every round: not read through
        JsonObject row(*rows[i], fmt::format("{}/{}", table.place("sets"), i), table.report());
        if (row.text("id", true) == id) return readSet(row);
    }
    table.report().broken(table.place("sets"), "no set is named \"" + id + "\"");
    return {};
}

Question questionOf(const Machine& machine, const Point& point, JsonObject& table) {
    const Place place = machine.placeOf(point.at).value_or(Place{"driver", "", 0});
    Question asked{machine, place.component, machine.driver.powerKw, machine.nominalRpm(), "", ""};
    if (asked.rpm && place.shaft < machine.shafts.size()) *asked.rpm *= machine.shafts[place.shaft].ratio;
    asked.fanCategory = table.text("fan_category", true);
    JsonObject categories(table.raw("pump_category"), table.place("pump_category"), table.report());
    asked.pumpCategory = categories.text(machine.criticality, true);
    return asked;
}

// Why a zone here is a hint only; empty where it holds.
std::string whyIndicative(const Question& asked, const Point& point) {
    if (point.mount != "bearing_housing" && point.mount != "end_shield")
        return "indicative: not on a bearing housing or end shield (mount " + point.mount + ")";
    const bool named =
        asked.onDriver() || (asked.component == "driven" &&
                             (asked.drives("fan", "blower") || asked.drives("pump", "compressor") ||
                              asked.drives("generator", "turbine")));
    return named ? "" : "indicative: the standard does not name this kind of machine";
}
}  // namespace

std::string toText(Zone zone) {
    return std::string(1, "ABCD"[static_cast<int>(zone)]);
}

Zone zoneOf(double velocityMmS, const ZoneLimits& limits) {
    return gradeOf(velocityMmS, limits.velocity[0], limits.velocity[1], limits.velocity[2]);
}

std::optional<Zone> displacementZoneOf(double displacementUm, const ZoneLimits& limits) {
    const auto& d = limits.displacement;
    if (!d[0] || !d[1] || !d[2]) return std::nullopt;
    return gradeOf(displacementUm, *d[0], *d[1], *d[2]);
}

Result<ApplicableLimits> limitsFor(const Machine& machine, const Point& point) {
    ApplicableLimits found;
    if (point.mount == "fin_or_cowl") {
        found.why = "no limits: a cooling fin or cowl does not move with the housing";
        return found;
    }
    const auto document = sharedResource(kLimitsTable);
    if (!document) return fail(document.error());
    JsonReport report{kLimitsTable, {}, {}};
    JsonObject table(**document, "", report);
    const Question asked = questionOf(machine, point, table);
    const Choice choice = choose(asked);
    if (choice.id.empty()) {
        found.why = choice.why;
        return found;
    }
    for (const std::string& id : idsOf(choice, machine.support))
        found.sets.push_back(findSet(table, id));
    if (report.error) return fail(*report.error);
    if (asked.rpm && *asked.rpm < kSlowRpm)
        for (ZoneLimits& set : found.sets)
            set.leastHz = 2;
    found.why = whyIndicative(asked, point);
    found.indicative = !found.why.empty();
    return found;
}

}  // namespace fettle
