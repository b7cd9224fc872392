// Why: levels of a table (level_table.h) are held against the register like recordings, and stored like them
// without a waveform: a row a channel and moment, graded by the zone limits of its point where they are
// velocity. Without a channel of their own they make a series of their own at the point ("horizontal"),
// beside those of a node: two instruments are not one. A level that is there already is known; another value
// for a moment that has one is an objection, never a correction. Batches of one transaction each, so that a
// kill loses nothing that was told. Memory: a batch. Thread: as the FleetFile. Errors: of the fleet file; a
// row's own trouble is among the objections, rows of one trouble together.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/intake/checks.h"
#include "core/intake/closed_periods.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct LevelsTaken {
    std::size_t levels = 0, already = 0, rowsObjected = 0, late = 0;
    std::vector<Objection> objections;  // place "lines 3, 7 and 12 more"
    std::vector<std::string> warnings;
};

struct LevelsWanted {
    const RegisterBook& book;
    const ClosedPeriods& closed;
    Instant now;
    bool store = true;  // else only looked at
};
Result<LevelsTaken> takeLevels(FleetFile& fleet, const std::string& text, const std::string& file,
                               const LevelsWanted& wanted);

}  // namespace fettle
