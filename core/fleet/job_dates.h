// Why: the three dates and the priority of a job follow from stage or zone, urgency and criticality by a
// table the site can edit (resources/tables/job_dates.json), never from an estimate of remaining life. Dates
// "2026-05-04" in the site's calendar. Errors: those of the table.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/diagnosis/examination.h"

namespace fettle {

class JobDatesTable {
  public:
    static Result<JobDatesTable> load();
    // Days from the round to "do not run beyond"; empty where the table has no row.
    std::optional<int> runDays(const Severity& severity, const std::string& criticality) const;
    // Days to an inspection, at least 1.
    std::optional<int> inspectDays(const Severity& severity, const std::string& criticality) const;
    // 1 is first, 4 last.
    int priority(const std::string& urgency, const std::string& criticality, bool standby) const;
    int leadDays() const { return leadDays_; }

  private:
    struct RunRow {
        std::string kind, value, criticality;
        int days = 0;
    };
    struct PriorityRow {
        std::string urgency, criticality;
        int priority = 0;
    };
    std::vector<RunRow> run_;
    std::vector<PriorityRow> priority_;
    int leadDays_ = 14;
    double inspectShare_ = 1;
};

}  // namespace fettle
