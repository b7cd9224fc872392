// Why: what the recordings of a site cannot show is asked for: of a node (longer, wider), or on the walk with
// the hand instrument. Here such requests are listed in the order of the walk, put in, and answered: by a
// recording that came in after it was asked for and brings what it says, or by hand. Times UTC. Thread: as
// the FleetFile. Errors: those of the stores; Invalid for a request that says no place, or nothing why.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/ask_spec.h"
#include "core/machine/machine.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct Ask {
    Request request;  // `what` follows `spec`
    AskSpec spec;
    std::string asset, service, area;  // of the machine
    std::string state() const;         // open | answered | dropped
};

// By area, then machine, then age. Empty machine: of the fleet.
Result<std::vector<Ask>> asksOf(FleetFile& fleet, const std::string& machine = "", bool answeredToo = false);
// The id; one alike that is still open stands once. `by` empty: the user's login name.
Result<std::int64_t> putAsk(FleetFile& fleet, Ask ask);
// By hand. outcome: answered | dropped.
Status closeAsk(FleetFile& fleet, std::int64_t id, const std::string& outcome, const std::string& note);

// Whether a running recording brings it: place, direction, length, band, tachometer.
bool brings(const Machine& machine, const RecordingEntry& recording, const Ask& ask);
struct AnsweredAsk {
    std::int64_t id = 0, recording = 0;
};
// Answers what recordings answer that came in after it was asked for; empty machine: of the fleet.
Result<std::vector<AnsweredAsk>> answerAsks(FleetFile& fleet, const std::string& machine = "");

// The list as one JSON array (resources/schemas/asks.schema.json) and as CSV with its header.
Json toJson(const std::vector<Ask>& asks);
std::string csvOf(const std::vector<Ask>& asks);

}  // namespace fettle
