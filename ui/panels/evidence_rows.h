// Why: what the evidence panel shows besides the arithmetic itself (core/exchange/arithmetic): the list of
// faults by weight, which families claim a frequency, which lines were left out and why. Plain data and pure
// functions.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/exchange/arithmetic.h"

namespace fettle {

using ArithmeticRows = std::vector<ArithmeticRow>;

// Where a cursor goes for a row: found, else expected; 0 of sums.
double placeHz(const ArithmeticRow& row);

struct FaultEntry {
    std::string fault, at, name;  // name: "Outer-race defect"
    std::optional<double> weightDban;
    std::string urgency;
    bool found = false;                            // a finding; else considered and not found
    std::string why;                               // of one without a weight
    std::string severityKind = {}, severity = {};  // "stage", "developed"
    std::optional<double> persistence = {};        // share of the recordings
    std::string since = {};                        // first day at a finding's weight or apart, as it is shown
    bool byChange = false;                         // it stands on a change against the baseline
};

// Findings by weight, those without one last; then what was considered and not found, the same way.
std::vector<FaultEntry> faultEntries(const Examination& examination);
const Hypothesis* hypothesisOf(const Examination& examination, const std::string& fault,
                               const std::string& at);

struct Claim {
    std::string fault, at, line;
    LineState state = LineState::Absent;
    double printed = 0;                // decibans, to a tenth
    std::optional<double> weightDban;  // of the whole family
};

// Families with a line within `toleranceHz`, the heaviest first.
std::vector<Claim> claimsAt(const Examination& examination, double hz, double toleranceHz);

// Lines left out, joined by their reason: {"shared with shaft order 5", "5 x BPFO, ..."}.
std::vector<std::pair<std::string, std::string>> leftOutByReason(const Hypothesis& hypothesis);

}  // namespace fettle
