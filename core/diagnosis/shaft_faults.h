// Why: unbalance, misalignment, looseness and their like are lines of every machine. One recording without a
// baseline can only say how large they are (zone) and what they look like (cause_table.h): "possible", each
// with its share among the causes and the test that decides. They have no weight; their change over weeks has
// (core/trend). Thread: pure.
#pragma once

#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/prepare.h"

namespace fettle {

// One a cause of the table, each without a weight and with its share where the shaft turns at a known speed;
// in a zone of C or D the likeliest ones carry severity and a sentence, the rest `why` they are not named.
std::vector<Hypothesis> shaftFaults(const Machine& machine, const PreparedRecording& prepared);

// A motor without a point of its own: its shaft's lines are heard, and told at the machine whose point it is.
std::vector<BlindSpot> shaftBlindSpots(const Machine& machine);

// What is followed over weeks besides 1x to 3x: orders 4 to 10 and half orders of each acceleration channel,
// but those at which the machine draws lines of its own (cause_pattern.h).
std::vector<FaultMeasure> shaftMeasures(const Machine& machine, const PreparedRecording& prepared);

}  // namespace fettle
