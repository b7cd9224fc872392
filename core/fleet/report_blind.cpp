#include "core/fleet/report_blind.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/diagnosis/blind_rows.h"
#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/wording.h"
#include "core/exchange/examination_json.h"
#include "core/fleet/round_desk.h"

namespace fettle {

namespace {

constexpr std::size_t kMostOfAKind = 8;

struct Counted {
    ReportBlind told;
    std::map<std::string, std::size_t> cures;  // on how many machines each would show it
};
using Counts = std::map<std::string, Counted>;  // by fault

void addCures(const Examination& week, Counted& one) {
    std::set<std::string> cures;
    for (const BlindSpot& spot : week.blind)
        if (!spot.cure.empty() && faultsMeet(one.told.fault, spot.fault)) cures.insert(spot.cure);
    for (const std::string& cure : cures)
        ++one.cures[cure];
}

void addMachine(const Machine& machine, const Examination& week, Counts& counts) {
    for (const FaultSight& sight : faultSights(machine, week)) {
        if (sight.state == FaultSight::State::NoConcern) continue;
        Counted& one = counts[sight.fault];
        one.told.fault = sight.fault;
        ++one.told.of;
        one.told.blind += sight.state == FaultSight::State::Blind;
        one.told.somewhere += sight.state == FaultSight::State::BlindSomewhere;
        if (sight.state != FaultSight::State::Seen) addCures(week, one);
    }
}

// The one that helps most of them; of equals the first by name.
std::string bestCure(const Counted& one) {
    const auto best = std::max_element(one.cures.begin(), one.cures.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return best == one.cures.end() ? "" : best->first;
}

}  // namespace

Result<std::vector<ReportBlind>> reportBlind(FleetFile& fleet, const RoundList& list, std::int64_t round) {
    Counts counts;
    for (const RoundMachine& machine : list.machines) {
        if (groupOf(machine.urgency) > 2) continue;
        const auto text = fleet.rounds().examinationJson(round, machine.tag);
        if (!text && text.error().kind == ErrorKind::NotFound) continue;  // by hand: nothing was examined
        if (!text) return fail(text.error());
        const auto week = examinationFromText(*text, machine.tag);
        if (!week) return fail(week.error());
        const auto described = fleet.machines().describedOn(machine.tag, list.until);
        if (!described) return fail(described.error());
        addMachine(**described, *week, counts);
    }
    std::vector<ReportBlind> blind;
    for (auto& [fault, one] : counts) {
        if (one.told.blind + one.told.somewhere == 0) continue;
        one.told.name = faultName(fault);
        one.told.cure = bestCure(one);
        blind.push_back(one.told);
    }
    std::stable_sort(blind.begin(), blind.end(), [](const ReportBlind& a, const ReportBlind& b) {
        return std::pair(a.blind, a.somewhere) > std::pair(b.blind, b.somewhere);
    });
    if (blind.size() > kMostOfAKind) blind.resize(kMostOfAKind);
    return blind;
}

}  // namespace fettle
