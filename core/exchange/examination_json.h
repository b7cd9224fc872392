// Why: the examination as one JSON object that others may rely on
// (resources/schemas/examination.schema.json): stable keys, units in the key names, numbers unrounded, so
// that the rows add up to the verdict for every reader.
#pragma once

#include <string>

#include "core/base/json_object.h"
#include "core/diagnosis/examination.h"

namespace fettle {

Json toJson(const Examination& examination);

// Back again: every number as it was, so that toJson of the result is the same text. What is absent reads as
// not measured; Unsupported for another schema, Damaged without a recording or where it is no JSON. A week of
// a recording every twenty minutes is 504 of these texts, 20 MB: they are read by a parser made for that.
Result<Examination> examinationFromText(const std::string& text, const std::string& file);
std::string examinationAsText(const Examination& examination);  // one line, as the fleet file keeps it

}  // namespace fettle
