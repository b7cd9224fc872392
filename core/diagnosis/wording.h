// Why: the sentences of a finding, in the trade's words. A weight is said as what it is: how unlike chance,
// not the odds that the fault is there.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/examination.h"

namespace fettle {

std::string faultName(const std::string& key);  // "bearing_outer_race" -> "outer-race defect"
// "30 decibans: chance lines reach this in at most 1 recording of 1,000". Empty below 0.
std::string chanceWords(double weightDban);
// The verdict in one or two sentences.
std::string bearingSentence(const Hypothesis& finding);
// What speaks against a bearing finding: expected lines that are absent, a long way to the sensor, and what
// else is unusual.
std::vector<std::string> bearingAgainst(const Hypothesis& finding);

}  // namespace fettle
