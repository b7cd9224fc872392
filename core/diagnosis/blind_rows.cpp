#include "core/diagnosis/blind_rows.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/family.h"
#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/wording.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

void addOnce(const std::vector<std::string>& more, std::vector<std::string>& list) {
    for (const std::string& one : more)
        if (!one.empty() && std::find(list.begin(), list.end(), one) == list.end()) list.push_back(one);
}

// Of "a recording of 8 s or more"; 0: another cure.
double secondsAsked(const std::string& cure) {
    const std::string before = "a recording of ", after = " s or more";
    if (!cure.starts_with(before) || !cure.ends_with(after)) return 0;
    return parseNumber(cure.substr(before.size(), cure.size() - before.size() - after.size())).value_or(0);
}

// Joins each row to the first that it is alike; `join` does it.
template <class Alike, class Join>
std::vector<BlindRow> joinedWhere(const std::vector<BlindRow>& rows, Alike alike, Join join) {
    std::vector<BlindRow> out;
    for (const BlindRow& row : rows) {
        const auto same =
            std::find_if(out.begin(), out.end(), [&](const BlindRow& other) { return alike(other, row); });
        if (same == out.end())
            out.push_back(row);
        else
            join(row, *same);
    }
    return out;
}

bool hasRolling(const Machine& machine) {
    return machine.bearings.empty() ||
           std::any_of(machine.bearings.begin(), machine.bearings.end(),
                       [](const BearingPlace& place) { return place.bearing.type != "sleeve"; });
}

bool concerns(const Machine& machine, const std::string& fault, const Examination& e) {
    if (faultsMeet(fault, "bearing") || fault == "bearing_dry_or_worn") return hasRolling(machine);
    const FaultFamily* family = faultFamily(fault);
    if (!family) return true;
    const auto told = [&](const BlindSpot& spot) { return spot.fault == fault; };
    return !family->placesOn(machine).empty() || std::any_of(e.blind.begin(), e.blind.end(), told);
}

bool isBlindTo(const Examination& e, const std::string& fault, const std::string& at) {
    return std::any_of(e.blind.begin(), e.blind.end(), [&](const BlindSpot& spot) {
        const bool same = faultsMeet(fault, spot.fault);
        const auto places = placesIn(spot.at);
        return same && std::any_of(places.begin(), places.end(), [&](const std::string& place) {
                   return at == place || at.starts_with(place + " ");  // "driven" is all of it
               });
    });
}

FaultSight sightOf(const Machine& machine, const Examination& e, const std::string& fault) {
    if (!concerns(machine, fault, e)) return {fault, FaultSight::State::NoConcern};
    std::size_t blind = 0, places = 0;
    for (const Hypothesis& h : e.considered)
        if (h.fault == fault)
            for (const std::string& place : placesIn(h.at)) {
                ++places;
                blind += isBlindTo(e, fault, place);
            }
    const bool told = std::any_of(e.blind.begin(), e.blind.end(),
                                  [&](const BlindSpot& spot) { return faultsMeet(fault, spot.fault); });
    if (places == blind) return {fault, told ? FaultSight::State::Blind : FaultSight::State::Seen};
    return {fault, told ? FaultSight::State::BlindSomewhere : FaultSight::State::Seen};
}

}  // namespace

std::vector<BlindRow> blindRows(const std::vector<BlindSpot>& spots) {
    std::vector<BlindRow> rows;
    for (const BlindSpot& spot : spots) {
        BlindRow row{{}, {}, spot.why, spot.cure};
        addOnce({spot.fault}, row.faults);
        addOnce({spot.at}, row.places);
        rows.push_back(std::move(row));
    }
    rows = joinedWhere(
        rows, [](const BlindRow& a, const BlindRow& b) { return a.why == b.why && a.cure == b.cure; },
        [](const BlindRow& one, BlindRow& into) {
            addOnce(one.faults, into.faults);
            addOnce(one.places, into.places);
        });
    return joinedWhere(
        rows,
        [](const BlindRow& a, const BlindRow& b) {
            const bool lengths = secondsAsked(a.cure) > 0 && secondsAsked(b.cure) > 0;
            return a.places == b.places && (a.cure == b.cure || lengths) && !a.faults.empty() &&
                   !b.faults.empty();
        },
        [](const BlindRow& one, BlindRow& into) {
            addOnce(one.faults, into.faults);
            into.why += "; " + one.why;
            if (secondsAsked(one.cure) > secondsAsked(into.cure)) into.cure = one.cure;
        });
}

std::string blindWhat(const BlindRow& row, const std::function<std::string(const std::string&)>& wordsOf) {
    std::vector<std::string> faults, places;
    for (const std::string& fault : row.faults)
        addOnce({faultName(fault)}, faults);
    for (const std::string& place : row.places)
        addOnce({wordsOf(place)}, places);
    const std::string at = joined(places, ", ");
    if (faults.empty()) return at;
    return joined(faults, ", ") + (at.empty() ? "" : " at " + at);
}

std::string blindWhat(const BlindRow& row) {
    return blindWhat(row, [](const std::string& place) { return place; });
}

const std::vector<std::string>& faultKeys() {
    static const std::vector<std::string> all = {"unbalance",
                                                 "misalignment",
                                                 "bent_shaft",
                                                 "looseness",
                                                 "soft_foot",
                                                 "resonance",
                                                 "rub",
                                                 "bearing_outer_race",
                                                 "bearing_inner_race",
                                                 "bearing_rolling_element",
                                                 "bearing_cage",
                                                 "bearing_dry_or_worn",
                                                 "bearing_unknown",
                                                 "bearing_current",
                                                 "gear_mesh",
                                                 "gear_tooth",
                                                 "belt",
                                                 "blade_pass",
                                                 "cavitation",
                                                 "flow",
                                                 "rotor_bar",
                                                 "electrical_2x_mains",
                                                 "air_gap",
                                                 "supply_unbalance",
                                                 "overheating"};
    return all;
}

std::vector<FaultSight> faultSights(const Machine& machine, const Examination& examination) {
    std::vector<FaultSight> all;
    for (const std::string& fault : faultKeys())
        all.push_back(sightOf(machine, examination, fault));
    return all;
}

}  // namespace fettle
