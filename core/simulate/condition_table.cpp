#include "core/simulate/condition_table.h"

#include "core/simulate/bearing_sources.h"
#include "core/simulate/drive_train_sources.h"
#include "core/simulate/electrical_sources.h"
#include "core/simulate/flow_sources.h"
#include "core/simulate/shaft_sources.h"

namespace fettle::sim {

namespace {
// Felt by the sensor or the thermometer only (sensor.cpp, simulation.cpp).
Status nothingMoves(Scene&, const Condition&) {
    return {};
}
}  // namespace

const std::vector<ConditionRow>& conditionTable() {
    static const std::vector<ConditionRow> rows{
        {"unbalance", addUnbalance, true},
        {"misalignment", addMisalignment, true},
        {"looseness", addLooseness, true},
        {"bearing_outer_race", addOuterRace, true},
        {"bearing_inner_race", addInnerRace, true},
        {"bearing_rolling_element", addRollingElement, true},
        {"bearing_cage", addCage, true},
        {"bearing_dry_or_worn", addDryBearing, true},
        {"gear_mesh", addGearWear, true},
        {"gear_tooth", addGearTooth, true},
        {"belt", addBeltWear, true},
        {"blade_pass", addBladePass, true},
        {"cavitation", addCavitation, true},
        {"flow", addRoughFlow, true},
        {"rotor_bar", addRotorBars, true},
        {"air_gap", addAirGap, true},
        {"electrical_2x_mains", addTwiceMains, true},
        {"supply_unbalance", addSupplyUnbalance, true},
        {"neighbour", addNeighbour, false},
        {"overheating", nothingMoves, false},
        {"loose_node", nothingMoves, false},
    };
    return rows;
}

const ConditionRow* conditionRow(const std::string& kind) {
    for (const ConditionRow& row : conditionTable())
        if (row.kind == kind) return &row;
    return nullptr;
}

}  // namespace fettle::sim
