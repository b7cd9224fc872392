// Why: urgency follows from severity and criticality by a table the user can edit
// (resources/tables/urgency.json). Words: leave, watch, plan, act.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/diagnosis/examination.h"

namespace fettle {

class UrgencyTable {
  public:
    static Result<UrgencyTable> load();
    // "leave" where the table has no row. A severity by a limit that is a grey note only never goes above the
    // table's `grey_only_most`.
    std::string urgencyOf(const Severity& severity, const std::string& criticality,
                          bool greyOnly = false) const;

  private:
    struct Row {
        std::string kind, value, criticality, urgency;
    };
    std::vector<Row> rows_;
    std::string greyOnlyMost_;
};

// leave < watch < plan < act; -1 for another word.
int urgencyRank(const std::string& urgency);

}  // namespace fettle
