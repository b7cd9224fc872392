// Why: what a planner plans by: the three dates of a job, its first line, the dates of the machine's other
// findings. They count from the round; how they are said depends on the day of making: a date that has passed
// is said to have passed. Dates "2026-05-28" in the site's calendar, spelled out in sentences. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/fleet/job_dates.h"
#include "core/fleet/sheet_case.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

// Order parts by, do not run beyond (or inspect by), next planned stop: three, in this order. The second is
// the earliest over the machine's findings that ask for work, and says which one where it is another.
std::vector<SheetDate> datesOf(const SheetCase& sheet, const JobDatesTable& table, bool needsParts,
                               bool listsParts = false);
// The second of these for this finding alone: what a job made for it is due by. Empty: no date.
std::string ownDue(const SheetCase& sheet, const JobDatesTable& table);
// Another finding of the machine with its own date: "2. misalignment, motor: plan, inspect by 9 July 2026".
std::string otherWords(const SheetCase& sheet, std::size_t number, const JobDatesTable& table);
// `job` and `inspect` of the advice, filled in. An old round is told first and orders nothing "now".
std::string firstLineOf(const SheetCase& sheet, const std::string& job, const std::string& inspect,
                        const JobDatesTable& table, const std::vector<SheetDate>& dates);
std::string limitDateWords(const RoundFinding& finding,
                           const std::string& day);  // empty: no date can be said
// Said where the round is more than 14 days old (common practice, no source); else empty. `ageLead` begins
// the first line: "Measured 144 days ago: look at newer recordings first."
std::string ageLead(const std::string& lastDay, const std::string& today);
std::string ageWords(const SheetCase& sheet);
// "plan: a job for a planned stop before the date below"; `due`: the second of datesOf.
std::string urgencyWords(const std::string& urgency, const SheetDate& due);

}  // namespace fettle
