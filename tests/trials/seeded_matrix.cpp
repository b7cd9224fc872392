// Every kind of fault the simulator knows, at four severities, three noise levels and every kind of node:
// what is named, what is named instead, and what the blind spots had said before. What is told by change
// alone cannot be named in two days and counts as blind.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/simulate/condition_table.h"
#include "core/simulate/random_stream.h"
#include "tests/trials/made_weeks.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr double kSeverities[] = {0.25, 0.5, 0.75, 1.0};
constexpr double kNoises[] = {1, 3, 10};  // times the node's own
constexpr std::size_t kMachinesACell = 2;

struct Cell {
    std::string kind, at, node;
    std::size_t like = 0, severity = 0, noise = 0, nth = 0;
};

struct Told {
    std::string top = "nothing";
    bool hit = false, blind = false, foundAny = false;
};

// Where the fault can be on this machine; empty: nowhere.
std::string placeFor(const std::string& kind, const Machine& machine) {
    if (kind.rfind("bearing_", 0) == 0) {
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

bool sameFault(const std::string& kind, const std::string& at, const Hypothesis& h) {
    const bool here = h.at.find(at) != std::string::npos || at.find(h.at) != std::string::npos;
    return h.fault == kind && here;
}

Told toldOf(const sim::Scenario& scenario, const Cell& cell) {
    WeekOrder order;
    order.like = cell.like;
    order.tag = fmt::format("{} {} {}", scenario.machines[cell.like].machine.tag, cell.kind, cell.nth);
    order.perNode = 2;
    order.noiseFactor = kNoises[cell.noise];
    order.nodeKind = cell.node;
    order.key = sim::fnv1a(cell.kind) + cell.severity;
    sim::Condition condition;
    condition.kind = cell.kind;
    condition.at = cell.at;
    condition.severity = kSeverities[cell.severity];
    order.conditions = {condition};
    const Examination week = examinedWeek(madeWeek(scenario, order));
    Told told;
    for (const BlindSpot& spot : week.blind)
        told.blind |=
            spot.fault == cell.kind || (spot.fault == "bearing" && cell.kind.rfind("bearing_", 0) == 0 &&
                                        spot.at.find(cell.at) != std::string::npos);
    for (const Hypothesis& h : week.considered)  // two days have no baseline
        told.blind |= sameFault(cell.kind, cell.at, h) && !h.weightDban && h.why.rfind("no baseline", 0) == 0;
    if (!week.findings.empty()) told.top = week.findings[0].fault;
    for (const Hypothesis& h : week.findings)
        told.hit |= sameFault(cell.kind, cell.at, h);
    told.foundAny = !week.findings.empty();
    return told;
}

std::vector<Cell> cellsOf(const sim::Scenario& scenario) {
    static const std::vector<std::string> notSeeded = {"neighbour", "overheating", "loose_node"};
    std::vector<Cell> cells;
    const auto kinds = nodeKinds(scenario);
    for (const sim::ConditionRow& row : sim::conditionTable()) {
        if (std::find(notSeeded.begin(), notSeeded.end(), row.kind) != notSeeded.end()) continue;
        std::vector<std::pair<std::size_t, std::string>> able;
        for (std::size_t m = 0; m < scenario.machines.size(); ++m)
            if (auto at = placeFor(row.kind, scenario.machines[m].machine); !at.empty())
                able.emplace_back(m, std::move(at));
        std::size_t turn = 0;
        for (const std::string& node : kinds)
            for (std::size_t s = 0; s < std::size(kSeverities); ++s)
                for (std::size_t n = 0; n < std::size(kNoises); ++n)
                    for (std::size_t i = 0; i < kMachinesACell && !able.empty(); ++i) {
                        const auto& [like, at] = able[turn++ % able.size()];
                        cells.push_back({row.kind, at, node, like, s, n, turn});
                    }
    }
    return cells;
}

struct Row {
    std::size_t count[4] = {}, hit[4] = {};
    std::size_t visible = 0, visibleMissed = 0;  // at the two upper severities
    std::map<std::string, std::size_t> named;    // top findings at the two upper severities
};

void print(const std::map<std::string, Row>& rows) {
    fmt::print("{:<26}{:>34}{:>22}   named on top at severity 0.75 and 1\n", "seeded",
               "named at severity 0.25 .5 .75 1", "missed of visible");
    for (const auto& [kind, row] : rows) {
        fmt::print("{:<26}", kind);
        for (std::size_t s = 0; s < 4; ++s)
            fmt::print("{:>8}", row.count[s] ? fmt::format("{:.0f} %",
                                                           100.0 * double(row.hit[s]) / double(row.count[s]))
                                             : "-");
        fmt::print("{:>16}   ", fmt::format("{} of {}", row.visibleMissed, row.visible));
        for (const auto& [name, times] : row.named)
            fmt::print(" {} {}", name, times);
        fmt::print("\n");
    }
}

}  // namespace

int seededMatrix(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    const std::vector<Cell> cells = cellsOf(scenario);
    std::vector<Told> told(cells.size());
    onAllCores(cells.size(), [&](std::size_t i) { told[i] = toldOf(scenario, cells[i]); });
    std::map<std::string, Row> rows;
    std::map<std::string, Row> byNode;
    for (std::size_t i = 0; i < cells.size(); ++i)
        for (Row* row : {&rows[cells[i].kind], &byNode[cells[i].node]}) {
            const std::size_t s = cells[i].severity;
            ++row->count[s];
            row->hit[s] += told[i].hit;
            if (s < 2) continue;
            row->visible += !told[i].blind;
            row->visibleMissed += !told[i].blind && !told[i].hit;
            ++row->named[told[i].top];
        }
    fmt::print(
        "{} weeks of two days: every kind of fault x 4 severities x 3 noise levels x {} kinds of node\n",
        cells.size(), nodeKinds(scenario).size());
    print(rows);
    fmt::print("\nby kind of node\n");
    print(byNode);
    return 0;
}

}  // namespace fettle::trials
