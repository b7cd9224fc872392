// Why: a planner books people and stops, not findings: what the work of a round takes, a machine and summed
// up by urgency and by area. Figures are those of the sheets: common practice, of the work itself, without
// isolating, getting there and waiting; over every finding of the machine that asks for work, so that work
// done at one stop may take less. Hours; person-hours. Thread: pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/sheet_content.h"

namespace fettle {

struct ReportEffort {
    std::size_t findings = 0;  // it is for
    std::string trades;        // "mechanical fitter; electrician"
    std::string standstill;    // of the machine: stopped | partly | running
    std::optional<int> heads;  // the most at once
    std::optional<double> hoursLow, hoursHigh, personHoursLow, personHoursHigh;
};
void addEffort(const SheetNeed& need, ReportEffort& effort);

struct ReportSum {
    std::string of;           // urgency or area; an area may be empty
    std::vector<int> places;  // in the order of work
    std::size_t unknown = 0;  // of these without figures
    std::size_t standstills = 0;
    double personHoursLow = 0, personHoursHigh = 0;
    std::string firstDay;  // the earliest of their latest days; may be empty
};
// In the order in which their first job comes.
class EffortSums {
  public:
    void add(const std::string& of, int place, const std::string& day, const ReportEffort& effort);
    const std::vector<ReportSum>& all() const { return sums_; }

  private:
    std::vector<ReportSum> sums_;
};

Json toJson(const ReportEffort& effort);
Json toJson(const ReportSum& sum, const char* ofKey);

}  // namespace fettle
