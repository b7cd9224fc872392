// Why: what the evidence panel shows, as one value made on a worker: the examination of a week or of one
// recording with what is needed to say more of it: the description, the site's urgency table, since when each
// hypothesis has weighed so much. Immutable once shown. Times UTC. Thread: any.
#pragma once

#include <QString>
#include <QTimeZone>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/time.h"
#include "core/diagnosis/examination.h"
#include "core/diagnosis/urgency.h"
#include "core/machine/machine.h"
#include "core/round/round.h"
#include "core/store/recording_store.h"

namespace fettle {

struct PanelContent {
    Examination examination;
    std::vector<Instant> times;               // of its recordings
    std::vector<std::int64_t> recordings;     // their ids
    QString basis;                            // "Week to 24 May 2026: 7 recordings"
    bool week = true;                         // else one recording
    QTimeZone zone = QTimeZone::utc();        // of the site, for moments
    std::shared_ptr<const Machine> machine;   // null: not at hand
    std::optional<UrgencyTable> urgencies;    // empty: not at hand
    std::vector<WeightReached> reached = {};  // a finding's weight
    std::vector<RoundFinding> changes = {};   // of the week, against the baseline; among the findings too
};

// The change a finding stands on alone; null: it has lines that were weighed, or a level.
const ChangeFacts* changeOf(const PanelContent& content, const Hypothesis& finding);

// Where the machine stood in the open or last kept round.
struct RoundStanding {
    std::string until;  // last day of it
    std::string listedBy, urgency;
    double needsDban = 0;
    std::optional<double> weightDban;  // of the machine, criticality counted in
};

// What the machine's history says of a fault, asked for when the panel is shown or on a button.
struct FaultHistory {
    std::vector<std::string> greasings;  // what the sensor heard of each, in words
};

}  // namespace fettle
