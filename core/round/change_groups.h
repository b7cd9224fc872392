// Why: one quantity at one point has two or three channels; their change is one question, answered by the
// mean of their e-values. Units: decibans. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/round/round.h"

namespace fettle {

struct ChangeGroup {
    std::vector<const FollowedChange*> members;  // with a change
    const FollowedChange* strongest = nullptr;   // of those that matter, by weight; null: none matters
    double weightDban = 0;                       // of the mean e-value
    const FollowedChange& first() const { return *members.front(); }
    bool rises() const { return strongest && strongest->week.change->up(); }
};

// In the order of `changes`; quantities without any change weighed are not among them.
std::vector<ChangeGroup> changeGroups(const std::vector<FollowedChange>& changes);

// Of the group's weight and mattering: it may be listed.
bool isListed(const ChangeGroup& group, double findingDban);

bool isShaft(const FollowedChange& change);  // 1x to 3x, overall level, orders and half orders of the shaft

// What was added to the shaft's lines, as features of the cause table; groups of one component. None where
// they make up little of what was added to the level.
std::vector<CauseFeature> addedPattern(const std::vector<ChangeGroup>& groups);

}  // namespace fettle
