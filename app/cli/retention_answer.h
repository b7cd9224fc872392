// Why: what retention would do, did, and what the file takes, in words and as JSON
// (resources/schemas/retention.schema.json), told alike before and after.
#pragma once

#include "core/base/json_object.h"
#include "core/fleet/retention.h"

namespace fettle {

// "1.5 MB"
std::string bytesInWords(double bytes);
std::string inWords(const RetentionPlan& plan);
std::string inWords(const RetentionDone& done);

Json toJson(const RetentionPlan& plan);
Json toJson(const RetentionDone& done);

}  // namespace fettle
