// Why: what to do about a finding is the trade's knowledge, not code: a table the site can edit
// (resources/tables/advice.json), one row for faults that ask for the same work. Words in braces are filled
// in by the caller. Thread: const after loading. Errors: those of the table.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

struct AdviceStep {
    std::string text, source;
};

struct AdvicePart {
    std::string what;
    std::string from;                 // bearing | belt: looked up in the machine; empty: unknown here
    std::vector<std::string> blanks;  // boxes the site fills in
};

struct Advice {
    std::vector<std::string> faults;  // "*": any other
    std::string job, inspect, state, trades;
    std::vector<AdvicePart> parts;
    std::vector<AdviceStep> steps, inspectSteps;  // inspectSteps empty: the same
    std::string until, stop, left, measure, cured;
};

class AdviceTable {
  public:
    static Result<AdviceTable> load();
    // Always a row: of the fault, else the one for any other.
    const Advice& of(const std::string& fault) const;

  private:
    std::vector<Advice> rows_;
};

}  // namespace fettle
