// Why: an examination as a text a person enjoys reading: the verdict first, then the lines that made it with
// their sum, rivals, what speaks against it, and what could not be seen. Printed rows add up: the search row
// absorbs the rounding. UTF-8, lines of at most about 110 columns; no user text can break a line.
#pragma once

#include <string>

#include "core/diagnosis/examination.h"
#include "core/machine/machine.h"

namespace fettle {

// With the machine also which faults do not concern it.
std::string asText(const Examination& examination, const Machine* machine = nullptr);

}  // namespace fettle
