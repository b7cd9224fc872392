// Why: a site's greasing list and work history are tables somewhere else; they come in as they are written
// there: a JSON list of events or a CSV with a head line, one event a line. Columns machine, time, kind, at,
// text, by in any order; machine, time and kind are needed, others are named in a warning. Time: UTC as
// 2026-05-04T06:20:00Z, or a day of the site as 2026-05-04 (its end). An event that is there already is not
// doubled; one that breaks a rule is refused with its line and the others are taken. Thread: as the
// FleetFile.
#pragma once

#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

struct EventsTaken {
    std::size_t taken = 0;  // those already there among them
    std::vector<Error> refusals;
    std::vector<std::string> warnings;
};
// `by`: who says so where the table does not. Errors: where the text is neither, or lacks a needed column.
Result<EventsTaken> takeEvents(FleetFile& fleet, const std::string& text, const std::string& file,
                               const std::string& by, Instant now);

}  // namespace fettle
