// Why: a round is made even where somebody's urgency table cannot be read: then by a built-in one, and the
// list says so. Thread: const after making.
#pragma once

#include <optional>
#include <string>

#include "core/diagnosis/urgency.h"

namespace fettle {

class UrgencyRule {
  public:
    UrgencyRule();  // reads the table
    // Of A, B and C; any other criticality counts as B.
    std::string of(const Severity& severity, const std::string& criticality, bool greyOnly) const;
    const std::string& problem() const { return problem_; }  // a sentence; empty: none

  private:
    std::optional<UrgencyTable> table_;
    std::string problem_;
};

// The less and the more urgent of two.
std::string calmerOf(const std::string& a, const std::string& b);
std::string graverOf(const std::string& a, const std::string& b);

}  // namespace fettle
