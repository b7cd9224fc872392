// Why: the return half of the findings sheet, typed in: what was found, in codes the maintenance system knows
// (in the manner of ISO 14224; ISO 15243 for bearings) and in words, hours, the old part, alignment before
// and after, photographs. It is kept twice: as the report that the site's own record counts at once, and as a
// dated inspection in the machine's history, on which the photographs hang. Thread: as the FleetFile. Errors:
// Invalid with the rule broken, those of the stores; a picture that is refused leaves nothing behind.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/job_done.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct NewPhoto {
    std::string name, bytes;  // as given
};

struct PlannerReturn {
    std::int64_t job = 0;  // 0: without one
    std::string machine;
    JobFinding finding;              // chosen from those of the job or the machine
    std::string outcome;             // confirmed not_found another_fault not_opened
    std::vector<std::string> codes;  // as found: "VIB vibration", "fatigue"
    std::string text;                // in words; with another fault, which
    std::optional<double> hours;     // people x hours
    std::optional<bool> partKept;
    std::string partTag, alignmentBefore, alignmentAfter;
    std::string on;  // the day it was opened, as momentOf takes it
    std::string by;  // empty: login name
};
// "spall of 8 mm; 6 people x hours; old part kept, tag 117; alignment before ..., after ..."
std::string returnWords(const PlannerReturn& half);

// Codes a planner may choose from, as the sheet prints them.
struct ReturnCodes {
    std::vector<std::string> showedAs, cameFrom, bearingDamage;
};
const ReturnCodes& returnCodes();
bool isBearingFault(const std::string& fault);

struct KeptReturn {
    std::int64_t report = 0, event = 0;
    bool already = false;  // the same report of that day was there
};
Result<KeptReturn> keepReturn(FleetFile& fleet, const PlannerReturn& half,
                              const std::vector<NewPhoto>& photos);

// An event with its photographs; nothing is kept where a picture is refused.
Result<std::int64_t> keepEventWithPhotos(FleetFile& fleet, const Event& event,
                                         const std::vector<NewPhoto>& photos, Instant now);

}  // namespace fettle
