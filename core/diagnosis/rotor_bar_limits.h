// Why: how far a slip sideband stands below its line is graded by figures of the trade that differ by some
// 6 dB between authors; they are data (resources/tables/rotor_bar_limits.json) that a site may correct.
// Units: dB below the carrier, positive.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

struct RotorBarLimits {
    struct Row {
        std::string value;       // watch | suspect | probable
        double belowDb = 0;      // nearer to the carrier than this
        bool countBars = false;  // worth an estimate of how many
    };
    std::string basis;
    std::vector<Row> rows;

    static Result<RotorBarLimits> load();
    // The gravest row that applies; null: none.
    const Row* rowOf(double belowDb) const;
};

}  // namespace fettle
