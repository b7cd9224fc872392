// Why: what to do and with which parts: the advice table's row for this fault, its words filled in from the
// machine's description, unknown parts as empty boxes. Thread: pure.
#pragma once

#include "core/fleet/advice.h"
#include "core/fleet/sheet_case.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

// Words in braces: {at} {machine} {driven} {cured} {worse} {often}. Others stay as they are.
std::string filledIn(const std::string& text, const SheetCase& sheet);
// With who has to agree that it runs on, where the level asks for it.
std::string untilThenOf(const SheetCase& sheet, const Advice& advice);
// Without the velocity where it did not grade the finding: what is met today tests nothing.
std::string curedOf(const SheetCase& sheet, const Advice& advice);
std::vector<SheetPart> partsOf(const SheetCase& sheet, const Advice& advice);
// Whether one of the parts is what the job is about, so that it has to be ordered.
bool needsParts(const Advice& advice);
std::vector<SheetStep> stepsOf(const SheetCase& sheet, const Advice& advice);
// For the repair, or for the inspection where that is what is asked for.
SheetNeed needOf(const SheetCase& sheet, const Advice& advice);
SheetIsolation isolationBoxes();
// The boxes to fill in afterwards; codes in the manner of ISO 14224, damage by ISO 15243 (from memory).
std::vector<SheetField> returnFields(const SheetCase& sheet, const Advice& advice);

}  // namespace fettle
