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

// Order parts by, do not run beyond (or inspect by), next planned stop: three, in this order.
std::vector<SheetDate> datesOf(const SheetCase& sheet, const JobDatesTable& table, bool needsParts);
// Another finding of the machine with its own date: "2. misalignment, motor: plan, inspect by 9 July 2026".
std::string otherWords(const SheetCase& sheet, std::size_t number, const JobDatesTable& table);
// `job` and `inspect` of the advice, filled in.
std::string firstLineOf(const SheetCase& sheet, const std::string& job, const std::string& inspect,
                        const std::vector<SheetDate>& dates);
std::string limitDateWords(const RoundFinding& finding,
                           const std::string& day);  // empty: no date can be said
// Said where the round is more than 14 days old (common practice, no source); else empty.
std::string ageWords(const SheetCase& sheet);

}  // namespace fettle
