// Why: what core/round says of a cure is said of figures; here they are gathered from the fleet file: moments
// at like speed and load before and after the work, levels and lines there, baselines from before (they are
// kept), weights joined from the examinations as they were weighed. Days by the site's calendar. Thread: as
// the FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/job_done.h"
#include "core/round/verification.h"
#include "core/round/verify_window.h"

namespace fettle {

struct JobVerification {
    Job job;
    std::optional<JobDone> done;  // empty: not known when
    std::string doneOn;           // the site's day of it
    VerifyWindow window;
    CureCase figures;
    std::optional<CureVerdict> verdict;  // where verification is over
    // "cured: ..." with its figures, "running in since 2026-05-04, until 2026-05-07"
    std::string words() const;
};

// As known at the end of the site's day `until`; empty: of the newest recording of the fleet.
Result<JobVerification> verifyJob(FleetFile& fleet, const Job& job, const std::string& until = "");

// The machine before and after any dated event, by the same figures: of what stood out in the week before it.
// The job has no number then.
Result<JobVerification> compareAround(FleetFile& fleet, const Event& event, const std::string& until = "");

}  // namespace fettle
