#include "tests/trials/seeded_cells.h"

#include <algorithm>

#include "core/simulate/condition_table.h"
#include "core/simulate/random_stream.h"

namespace fettle::trials {

namespace {

constexpr double kNoises[] = {1, 3, 10};  // times the node's own
constexpr std::size_t kMachinesACell = 2;

// Where the fault can be on this machine; empty: nowhere.
std::string placeFor(const std::string& kind, const Machine& machine) {
    if (kind.starts_with("bearing_")) {
        for (const BearingPlace& place : machine.bearings)
            for (const Point& point : machine.points)
                if (point.at == place.at && !place.bearing.variants.empty()) return place.at;
        return "";
    }
    if (kind == "gear_mesh" || kind == "gear_tooth") return machine.gears.empty() ? "" : machine.gears[0].id;
    if (kind == "belt") return machine.belts.empty() ? "" : machine.belts[0].id;
    if (kind == "blade_pass") return machine.driven.blades ? "driven" : "";
    if (kind == "cavitation" || kind == "flow") return machine.driven.kind == "pump" ? "driven" : "";
    const bool cage = machine.driver.kind == DriverKind::Induction && !machine.driver.inverter;
    if (kind == "rotor_bar" || kind == "air_gap" || kind == "electrical_2x_mains" ||
        kind == "supply_unbalance")
        return cage ? "driver" : "";
    return "driver";
}

bool isSeeded(const std::string& kind) {
    constexpr const char* kNot[] = {"neighbour", "overheating", "loose_node"};
    return std::find(std::begin(kNot), std::end(kNot), kind) == std::end(kNot);
}

// The four severities of a kind share a bench, so that they differ in nothing else.
void addKind(const sim::Scenario& scenario, const std::string& kind, std::size_t least,
             SeededBenches& benches) {
    std::vector<std::pair<std::size_t, std::string>> able;
    for (std::size_t m = 0; m < scenario.machines.size(); ++m)
        if (auto at = placeFor(kind, scenario.machines[m].machine); !at.empty())
            able.emplace_back(m, std::move(at));
    std::size_t turn = 0;
    for (const std::string& node : nodeKinds(scenario))
        for (const double noise : kNoises)
            for (std::size_t i = 0; i < kMachinesACell && !able.empty(); ++i) {
                const auto& [like, at] = able[turn++ % able.size()];
                for (std::size_t s = least; s < kSeverities.size(); ++s)
                    benches[{like, node, noise}].push_back({kind, at, s});
            }
}

}  // namespace

SeededBenches seededBenches(const sim::Scenario& scenario, const std::string& only, std::size_t least) {
    SeededBenches benches;
    for (const sim::ConditionRow& row : sim::conditionTable())
        if (isSeeded(row.kind) &&
            (only.empty() || ("," + only + ",").find("," + row.kind + ",") != std::string::npos))
            addKind(scenario, row.kind, least, benches);
    for (auto& [order, cells] : benches)
        cells.push_back({});
    return benches;
}

void thin(SeededBenches& benches, std::size_t cells) {
    std::size_t all = 0;
    for (const auto& [order, some] : benches)
        all += some.size();
    const std::size_t step = cells == 0 ? 1 : std::max<std::size_t>(1, all / cells);
    std::size_t nth = 0;
    std::erase_if(benches, [&](const auto&) { return sim::fnv1a(std::to_string(nth++)) % step != 0; });
}

std::vector<sim::Condition> conditionsOf(const SeededCell& cell) {
    if (cell.kind.empty()) return {};
    sim::Condition condition;
    condition.kind = cell.kind;
    condition.at = cell.at;
    condition.severity = kSeverities[cell.severity];
    return {condition};
}

std::uint64_t keyOf(const SeededCell& cell) {
    return 1 + sim::fnv1a(cell.kind) + cell.severity;
}

}  // namespace fettle::trials
