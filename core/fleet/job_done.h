// Why: the fleet file keeps that a job is done, not when; the moment stands in the machine's history. Told
// with the job ("job 3 done") it holds; else it is the first repair, part or cleaning at or after the job was
// drafted; a greasing counts for a job about lubrication. Nothing is guessed beyond that. Times UTC. Thread:
// as the FleetFile. Errors: those of the stores; Invalid for a day that is none or has not come.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

struct JobFinding {
    std::string fault, at;
};
// Of "bearing_outer_race @ driver DE".
JobFinding jobFinding(const std::string& text);
std::string toText(const JobFinding& finding);
// A finding of the job, where a week that could not tell two ends apart is of the same bearing.
bool isOfJob(const Job& job, const std::string& fault, const std::string& at);

struct JobDone {
    Instant time{};
    bool greasedOnly = false;
    std::string words;  // "repair: shaft seal renewed"
};
// `events`: of the machine, oldest first. Empty: when it was done is not known.
std::optional<JobDone> doneOf(const Job& job, const std::vector<Event>& events);

// A day of the site (its end: the day itself may hold both states) or a UTC time.
Result<Instant> momentOf(FleetFile& fleet, const std::string& on);

struct WorkDone {
    std::string on;               // as momentOf takes it
    std::string kind = "repair";  // of the event: repair part cleaning greasing
    std::string text = {};        // what was done; may be empty
};
// Keeps the moment as an event of the machine, from which verification starts.
Status keepDone(FleetFile& fleet, const Job& job, const WorkDone& work, const std::string& by);

}  // namespace fettle
