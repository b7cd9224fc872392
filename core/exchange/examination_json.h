// Why: the examination as one JSON object that others may rely on
// (resources/schemas/examination.schema.json): stable keys, units in the key names, numbers unrounded, so
// that the rows add up to the verdict for every reader.
#pragma once

#include "core/base/json_object.h"
#include "core/diagnosis/examination.h"

namespace fettle {

Json toJson(const Examination& examination);

}  // namespace fettle
