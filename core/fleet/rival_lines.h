// Why: where two faults explain the same lines, those that only one of them draws decide. Lines are compared
// as orders of the driver's shaft, since the strongest recordings of the two may differ in speed; they are
// one line within two spectrum lines (Hann: nearer ones are not parted). Weights in decibans as in the
// verdict's table. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/examination.h"

namespace fettle {

struct RivalLines {
    Rival rival;
    bool known = false;                // the rival's lines are in the examination: only then the rest is told
    double sharedDban = 0;             // of found lines that the rival would draw as well
    double ownDban = 0;                // of those that it would not
    std::vector<std::string> shared;   // names of these
    std::vector<std::string> own;      // these decide for the finding where they are found
    std::vector<std::string> against;  // expected lines that only the rival draws, and that are absent
    std::vector<std::string> forIt;    // the same, found
};

// Of every rival of the hypothesis, in its order.
std::vector<RivalLines> rivalLines(const Examination& examination, const Hypothesis& hypothesis);

// A hypothesis of the examination, the finding first; a place of either end counts as both. Null: none.
const Hypothesis* hypothesisIn(const Examination& examination, const std::string& fault,
                               const std::string& at);

}  // namespace fettle
