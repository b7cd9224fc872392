// Why: what to do about a finding is the trade's knowledge, not code: a table the site can edit
// (resources/tables/advice.json), one row for faults that ask for the same work. Words in braces are filled
// in by the caller. Thread: const after loading. Errors: those of the table.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

struct AdviceStep {
    std::string text, source;
};

struct AdvicePart {
    std::string what;
    // bearing | belt | coupling | motor: looked up in the machine; empty: unknown here
    std::string from;
    std::vector<std::string> blanks;  // boxes the site fills in
    std::optional<int> quantity;      // at each place; empty: a box
};

// What a job takes. Empty: not known, the site fills it in.
struct AdviceNeed {
    std::string state, trades;  // of the machine; who
    std::optional<int> heads;
    std::optional<double> hoursLow, hoursHigh;
    std::vector<std::string> tools, permits;  // permits: likely ones, the site decides
    std::string lifting, access;
};

struct Advice {
    std::vector<std::string> faults;  // "*": any other
    std::string job, inspect;
    AdviceNeed need, inspectNeed;
    bool alignment = false;  // a coupling is parted: offset and angle are asked for before and after
    std::vector<AdvicePart> parts;
    std::vector<AdviceStep> steps, inspectSteps;  // inspectSteps empty: the same
    std::string until, stop, left, measure, cured;
};

class AdviceTable {
  public:
    static Result<AdviceTable> load();
    // Always a row: of the fault, else the one for any other.
    const Advice& of(const std::string& fault) const;
    // For a machine that a person put on the list, of which nothing measured is claimed.
    const Advice& byHand() const { return byHand_; }
    // What the stores are asked about every part.
    const std::vector<std::string>& partBoxes() const { return partBoxes_; }

  private:
    std::vector<Advice> rows_;
    Advice byHand_;
    std::vector<std::string> partBoxes_;
};

}  // namespace fettle
