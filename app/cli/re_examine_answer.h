// Why: old verdicts beside new ones in three forms: as text for a terminal, worst first and cut to what one
// reads; whole as JSON (resources/schemas/re_examination.schema.json); a row for each recording as CSV
// (RFC 4180, no cell starts a formula). Units: decibans, UTC.
#pragma once

#include <string>

#include "core/base/json_object.h"
#include "core/intake/re_examination_report.h"
#include "core/intake/re_examine.h"

namespace fettle {

// `done`: what the run just weighed; empty: only the report was asked for.
std::string differenceText(const ReExaminationDifference& difference);
Json differenceJson(const ReExaminationDifference& difference, const std::optional<ReExamineReport>& done);
// With a head; rows by machine and time.
Result<std::string> differenceCsv(FleetFile& fleet, const ReExaminationDifference& difference);

}  // namespace fettle
