// Why: the kinds of condition a scenario may name, one row each; a new kind is one source file pair and one
// row.
#pragma once

#include <string>
#include <vector>

#include "core/simulate/scene.h"

namespace fettle::sim {

struct ConditionRow {
    std::string kind;
    Status (*apply)(Scene& scene, const Condition& condition);
    bool needsTurning;  // nothing to hear of it at standstill
};

const std::vector<ConditionRow>& conditionTable();
const ConditionRow* conditionRow(const std::string& kind);

}  // namespace fettle::sim
