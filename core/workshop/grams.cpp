#include "core/workshop/grams.h"

#include <algorithm>

namespace fettle {

namespace {
constexpr double kJobShare = 0.1, kLeastFall = 0.3;
}

LevelPerGram perGramOfJob(double perGram) {
    return {perGram, (1 - kJobShare) * perGram, (1 + kJobShare) * perGram};
}

std::optional<LevelPerGram> perGramOfKnownMass(double before, double after, double grams) {
    if (!(before > 0) || !(after >= 0) || !(grams > 0) || after > (1 - kLeastFall) * before)
        return std::nullopt;
    return LevelPerGram{before / grams, (before - after) / grams, (before + after) / grams};
}

MassInterval massOf(double level, const LevelPerGram& perGram, double leftBehind) {
    if (!(perGram.value > 0) || !(perGram.low > 0) || !(level >= 0)) return {};
    return {level / perGram.value, std::max(level - leftBehind, 0.0) / perGram.high,
            (level + leftBehind) / perGram.low};
}

}  // namespace fettle
