// Why: what came is held against what was promised, line by line, so that nobody has to believe a sentence.
// The rule is the one that alerts go by: 3 of the last 5 running recordings reach the weight. Time to
// detection counts from the moment the machine turned with the change in it. Thread: pure.
#pragma once

#include "core/workshop/trial.h"

namespace fettle {

inline constexpr std::size_t kTrialRule = 3, kTrialRuleOf = 5;

// `recordings`: running ones of both spans, oldest first. `closing`: what is still open stays so for good.
TrialResult judgeTrial(const Trial& trial, std::vector<TrialRecording> recordings, bool closing = false);

// "2 d 4 h", "35 min"
std::string durationWords(std::chrono::milliseconds time);

}  // namespace fettle
