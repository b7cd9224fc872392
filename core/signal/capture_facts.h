// Why: what was running, when and where it was measured can stand in a sidecar or in the first lines of a CSV
// file. The keys, their kinds and their limits are one table, so that both refuse the same things. A new key
// is one row here and one member of Recording. Units: in the key names. Times: UTC, from 1980 to 2100; before
// that a clock was not set, after it one is wrong.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

struct TextFact {
    const char* key;
    std::string Recording::*member;
};

struct TimeFact {
    const char* key;
    std::optional<Instant> Recording::*member;
};

struct NumberFact {
    const char* key;
    std::optional<double> Recording::*member;
    double least, most;
    bool operating;  // stands in the sidecar's object "operating"
};

const std::vector<TextFact>& textFacts();
const std::vector<TimeFact>& timeFacts();
const std::vector<NumberFact>& numberFacts();

// The time a text stands for, or the rule it breaks.
tl::expected<Instant, std::string> parseCaptureTime(const std::string& text);

// Takes over every fact `said` has; where the recording already had another, a warning says which one holds.
void mergeFacts(Recording& recording, const Recording& said, const std::string& saidBy);

// Channels that name no point of their own are at the recording's.
void givePoints(Recording& recording);

}  // namespace fettle
