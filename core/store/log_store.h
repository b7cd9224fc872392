// Why: what people and intake did: dated events of a machine, the planner's reports, jobs, and everything
// that intake refused or parked, kept until somebody answers it. Append-only but for jobs' states and
// answered refusals. Times UTC; `by` is the name of whoever said it (the user's login name, or what is
// given).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

class Database;

// kind: repair greasing part moved_node cleaning inspection note rebaseline low_battery other
struct Event {
    std::int64_t id = 0;
    std::string machine;  // tag
    Instant time{};
    std::string kind, at, text, by;
};

// outcome: confirmed | not_found | another_fault | not_opened
struct Feedback {
    std::int64_t id = 0;
    std::string machine, fault, at, outcome, code, text, by;  // code: as found, ISO 14224 / ISO 15243 words
    Instant time{};
};

const std::vector<std::string>& jobStates();  // drafted issued scheduled done verified closed, in this order

struct Job {
    std::int64_t id = 0;
    std::string machine;                // tag
    std::vector<std::string> findings;  // "bearing_outer_race @ driver DE"
    std::string workOrder, state = "drafted", urgency;
    int revision = 1;
    std::optional<std::int64_t> replaces;             // id of the job it replaces
    std::string orderPartsBy, runUntil, plannedStop;  // dates, may be empty
    Instant createdAt{};
};

struct Refusal {
    std::int64_t id = 0;
    std::string path, place, rule, kind;  // kind: refused | parked
    Instant firstSeen{}, lastSeen{};
    int times = 1;
    bool answered = false;
};

class LogStore {
  public:
    explicit LogStore(Database& database) : database_(database) {}

    Result<std::int64_t> addEvent(
        const Event& event);  // NotFound where the tag is not in the register; an event
                              // alike in machine, time, kind, place and text stands once
    Result<std::vector<Event>> events(const std::string& machine);  // oldest first; empty tag: all
    Result<std::int64_t> addFeedback(const Feedback& feedback);
    Result<std::vector<Feedback>> feedback();     // oldest first
    Result<std::int64_t> putJob(const Job& job);  // id 0: a new one
    Result<std::vector<Job>> jobs(const std::string& machine = "");
    // The same path and rule: counted up. Another rule takes the place of what was wrong with the path
    // before.
    Status putRefusal(const Refusal& refusal);
    Result<std::vector<Refusal>> refusals(bool answeredToo = false);
    Status answerRefusal(std::int64_t id);
    Status clearRefusal(const std::string& path);  // the file was taken in after all

  private:
    Database& database_;
};

}  // namespace fettle
