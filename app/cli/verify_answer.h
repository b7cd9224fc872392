// Why: what verification says of jobs, as lines to read and as JSON: the outcome with its reason, the moments
// it stands on, the figures before and after.
#pragma once

#include <string>

#include "core/store/fleet_file.h"

namespace fettle {

struct VerifyQuestion {
    std::string machine;  // tag; empty: all
    std::int64_t id = 0;  // of one job; 0: all that are done, verified or closed and not replaced
    std::string until;    // as known on that day of the site; empty: by the newest recording
    bool json = false;
};
int answerVerify(FleetFile& fleet, const VerifyQuestion& question);

}  // namespace fettle
