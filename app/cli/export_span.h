// Why: every part of an export is asked for the same machines and days. Days in the site's calendar. Thread:
// one. Errors: a tag that is not in the register, a day that is none.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

struct ExportSpan {
    std::vector<MachineEntry> machines;
    std::string machine;            // the one asked for; empty: all
    std::string firstDay, lastDay;  // empty: open end
    Instant from{}, until = Instant::max();

    bool has(const std::string& tag) const { return machine.empty() || machine == tag; }
    bool has(Instant time) const { return time >= from && time <= until; }
    // Whether a round that ends on this day is meant.
    bool hasRound(const std::string& last) const {
        return last >= firstDay && (lastDay.empty() || last <= lastDay);
    }
};

// Calls `part` with one month of the machine's recordings after the other, so that what is held does not grow
// with its history. Nothing where it has none in the span.
Status monthByMonth(FleetFile& fleet, const MachineEntry& machine, const ExportSpan& span,
                    const std::function<Status(Instant from, Instant until)>& part);

Result<ExportSpan> exportSpanOf(FleetFile& fleet, const std::string& machine, const std::string& firstDay,
                                const std::string& lastDay);

}  // namespace fettle
