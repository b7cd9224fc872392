// Why: between two descriptions of a machine one wants to know what was changed: a bearing, a motor, a node.
// Compared key by key; elements of lists are told apart by id or name, so that a point put in before another
// is one change. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/store/register_store.h"

namespace fettle {

struct DescriptionChange {
    std::string day;            // from which it holds; empty: from the beginning
    std::string place;          // "driver/bearings/DE/designation", "points/M-DE/node/0417/from"
    std::string before, after;  // empty: was not, is not any more
};

std::vector<DescriptionChange> changesBetween(const Json& before, const Json& after);
// Everything that changed from description to description, and every node fitted or taken off, by day.
std::vector<DescriptionChange> changesThroughTime(const std::vector<DescriptionEntry>& history);

}  // namespace fettle
