// Why: the table that makes a verdict, one row a line, then search, mean and weight: text, panel and sheet
// show these rows, so that they add up alike everywhere. Decibans; `dban` unrounded: the rows before the
// weight sum to it. `printed` is to a tenth, and the search row absorbs the rounding, so that what is printed
// adds up as well. Thread: pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/examination.h"

namespace fettle {

struct ArithmeticRow {
    enum class Kind { Line, Search, Mean, Weight };
    Kind kind = Kind::Line;
    std::string name;
    std::optional<LineRow> line;  // of a Line row: order, Hz, dB over floor, rank p, w, state
    double dban = 0, printed = 0;
};

// Lines, search, mean (of more than one recording), weight. Empty for a hypothesis that was not weighed.
std::vector<ArithmeticRow> arithmeticOf(const Hypothesis& hypothesis);

}  // namespace fettle
