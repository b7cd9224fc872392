// Why: unbalance, misalignment and looseness are lines of every machine. One recording without a baseline can
// only say how large they are (zone) and what they look like (pattern): "possible", with the test that
// decides. They have no weight. Source of the patterns: textbook signatures as in ISO 13373-3:2015 (cited by
// title), figures from memory.
#pragma once

#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/prepare.h"

namespace fettle {

// Always three hypotheses, each without a weight: those whose pattern fits a zone of C or D carry severity
// and a sentence, the rest `why` they are not named.
std::vector<Hypothesis> shaftFaults(const PreparedRecording& prepared);

}  // namespace fettle
