// Why: what the evidence panel asks of the fleet file besides its examination, as functions that run on a
// worker: what is needed to say more of it, where the machine stood in the round, what was asked for, whose
// line it is, what greasings were heard to do, since when the rule would have listed it. Thread: any, one
// FleetFile at a time. Errors: those of the stores.
#pragma once

#include "core/base/progress.h"
#include "core/fleet/neighbours.h"
#include "core/fleet/time_machine.h"
#include "core/store/fleet_file.h"
#include "ui/model/units.h"
#include "ui/panels/panel_content.h"

namespace fettle {

// Description, urgency table and since when, as of `until`.
Status addPanelFacts(FleetFile& fleet, const std::string& tag, Instant until, PanelContent& content);
// In the open round, else the last closed one; empty: it was not weighed there, or there is none.
Result<std::optional<RoundStanding>> roundStanding(FleetFile& fleet, const std::string& tag);
Result<FaultHistory> faultHistory(FleetFile& fleet, const std::string& tag);
// Of its failures, the newest first; of a machine without one, up to the day after its newest recording.
Result<std::vector<Warning>> firstListedOf(FleetFile& fleet, const std::string& tag,
                                           const CancelToken& cancel);

QString whoseLineWords(const WhoseLine& found, double hz, const Units& units);
QString firstListedWords(const std::vector<Warning>& warnings);

}  // namespace fettle
