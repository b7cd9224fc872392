// Every kind of fault the simulator knows, at four severities, three noise levels and every kind of node,
// each a week after sound ones, as the round tells it: what is named, what is named instead, and what the
// blind spots had said.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>

#include "core/simulate/condition_table.h"
#include "core/simulate/random_stream.h"
#include "tests/trials/seeded_matrix_bench.h"
#include "tests/trials/seeded_matrix_table.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr double kNoises[] = {1, 3, 10};  // times the node's own
constexpr std::size_t kMachinesACell = 2;

struct Cell {
    std::string kind, at;  // empty kind: sound
    std::size_t severity = 0;
};
using Benches = std::map<BenchOrder, std::vector<Cell>>;

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
void addKind(const sim::Scenario& scenario, const std::string& kind, std::size_t least, Benches& benches) {
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

// `only`: kinds, comma between; empty: all.
Benches benchesOf(const sim::Scenario& scenario, const std::string& only, std::size_t least) {
    Benches benches;
    for (const sim::ConditionRow& row : sim::conditionTable())
        if (isSeeded(row.kind) &&
            (only.empty() || ("," + only + ",").find("," + row.kind + ",") != std::string::npos))
            addKind(scenario, row.kind, least, benches);
    for (auto& [order, cells] : benches)
        cells.push_back({});
    return benches;
}

Told toldOf(const MatrixBench& bench, const BenchOrder& order, const Cell& cell) {
    Told told;
    told.kind = cell.kind;
    told.at = cell.at;
    told.node = order.node;
    told.noise = order.noiseFactor;
    told.severity = cell.severity;
    std::vector<sim::Condition> conditions;
    if (!cell.kind.empty()) {
        sim::Condition condition;
        condition.kind = cell.kind;
        condition.at = cell.at;
        condition.severity = kSeverities[cell.severity];
        conditions = {condition};
    }
    const CellVerdict said = bench.weekWith(conditions, 1 + sim::fnv1a(cell.kind) + cell.severity);
    read(said, told);
    return told;
}

std::vector<Told> tell(const sim::Scenario& scenario, const Benches& benches, const std::string& folder) {
    const std::vector<std::pair<BenchOrder, std::vector<Cell>>> all(benches.begin(), benches.end());
    std::vector<std::vector<Told>> told(all.size());
    onAllCores(all.size(), [&](std::size_t i) {
        const auto& [order, cells] = all[i];
        const MatrixBench bench(scenario, order, folder);
        for (const Cell& cell : cells) {
            told[i].push_back(toldOf(bench, order, cell));
            told[i].back().machine = scenario.machines[order.like].machine.tag;
        }
    });
    std::vector<Told> flat;
    for (const auto& some : told)
        flat.insert(flat.end(), some.begin(), some.end());
    return flat;
}

// Every nth bench, so that a sample has all kinds of node.
void thin(Benches& benches, std::size_t cells) {
    std::size_t all = 0;
    for (const auto& [order, some] : benches)
        all += some.size();
    const std::size_t step = cells == 0 ? 1 : std::max<std::size_t>(1, all / cells);
    std::size_t nth = 0;
    std::erase_if(benches, [&](const auto&) { return sim::fnv1a(std::to_string(nth++)) % step != 0; });
}

}  // namespace

int seededMatrix(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    Benches benches = benchesOf(scenario, textAfter(arguments, "--kinds", ""),
                                numberAfter(arguments, "--upper", 0) > 0 ? kUpper : 0);
    thin(benches, std::size_t(numberAfter(arguments, "--cells", 0)));
    const auto folder = std::filesystem::temp_directory_path() / fmt::format("fettle-matrix-{}", getpid());
    std::filesystem::create_directories(folder);
    const std::vector<Told> told = tell(scenario, benches, folder.string());
    std::filesystem::remove_all(folder);
    printMatrix(told);
    const long list = numberAfter(arguments, "--list", 0);
    if (list > 0) printMissed(told, list == 2, list > 2);
    return 0;
}

}  // namespace fettle::trials
