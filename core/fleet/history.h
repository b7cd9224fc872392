// Why: what was done to a machine and what was said of it stands beside its curves: greasings with type and
// grams, parts, alignment values, remarks, photographs. Nothing is rewritten: a correction is a new note that
// names the kind and the moment of what it corrects, and is shown under it. Times UTC. Thread: as the
// FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

struct HistoryEntry {
    Event event;
    std::vector<Photo> photos;
    std::vector<Event> corrections;  // notes about this one, oldest first
    std::string heard;               // of a greasing: what the nearest sensor heard of it; empty else
};
// Newest first.
Result<std::vector<HistoryEntry>> machineHistory(FleetFile& fleet, const std::string& tag);

// A note about an event: "about the greasing of 2026-05-04T06:20:00Z: 40 g, not 20 g".
std::string correctionText(const Event& of, const std::string& words);
// Whether a note is one about this event, and its words.
bool corrects(const Event& note, const Event& of);
std::string correctionWords(const Event& note);

}  // namespace fettle
