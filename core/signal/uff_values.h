// Why: the values of a data set 58, written as text in columns of 13 or 20 or as raw IEEE 754 bytes, evenly
// spaced or each with its abscissa. Memory: room is made only for values whose bytes are there. Errors:
// Damaged where fewer follow than stated, Invalid "line L, column C" (text) or "value N" (bytes) for what is
// no finite number, Unsupported for more than a recording holds. Source: as uff_function.h; of unevenly
// spaced binary values of double precision, abscissas of 4 and of 8 bytes are both in use and told apart by
// the count of bytes.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/signal/uff_function.h"

namespace fettle {

struct UffValues {
    std::vector<double> ordinates;
    std::vector<double> abscissas;  // of unevenly spaced ones
    double rounding = 0;            // of an abscissa as printed, at most so much of itself
};

// Reads them, or only passes over them where they are not `wanted`; leaves `lines` at the closing mark.
Result<UffValues> readUffValues(UffLines& lines, const UffFunction& function, bool wanted,
                                const std::string& file);

}  // namespace fettle
