// Why: rounds as they were opened, decided and closed. A kept round never changes: its rows are written once,
// at opening; decisions are appended; after closing nothing is accepted any more. Row JSON is what
// core/exchange/round_json writes; the store does not look into it. Errors: NotFound, Invalid "the round is
// closed".
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"
#include "core/round/round.h"

namespace fettle {

class Database;

struct RoundEntry {
    std::int64_t id = 0;
    std::string from, until, engine;
    double alpha = 0.1, listNeedsDban = 0;
    std::uint64_t sampleSeed = 0;
    Instant openedAt{};
    std::optional<Instant> closedAt;
    std::string closedBy;
    std::optional<Instant> leaveAcceptedAt;
    std::string leaveAcceptedBy;
};

// What was answered besides decisions; mark: opened (of the sample) | unseen (with the reason).
struct RoundMark {
    std::string machine, mark, reason, by;
    Instant at{};
};

struct RoundRow {
    std::string machine, urgency, listedBy;
    std::optional<double> weightDban;
    bool inSample = false;
    std::string json;             // the RoundMachine
    std::string examinationJson;  // of the week, for every machine that is not on leave; empty else
};

class RoundStore {
  public:
    explicit RoundStore(Database& database) : database_(database) {}

    // One transaction. Refuses while another round is open.
    Result<std::int64_t> open(const RoundEntry& round, const std::vector<RoundRow>& rows);
    Result<std::vector<RoundEntry>> all();        // oldest first
    Result<std::optional<RoundEntry>> openOne();  // the open round, if any
    Result<RoundEntry> entry(std::int64_t id);
    // Without examinations; those one by one.
    Result<std::vector<RoundRow>> rows(std::int64_t round);
    Result<std::string> examinationJson(std::int64_t round, const std::string& machine);

    Result<std::int64_t> decide(std::int64_t round, const Decision& decision);
    Status markOpened(std::int64_t round, const std::string& machine);
    Status answerUnseen(std::int64_t round, const std::string& machine, const std::string& reason,
                        const std::string& by);
    Status acceptLeave(std::int64_t round, const std::string& by);
    Status close(std::int64_t round, const std::string& by);
    Result<RoundState> state(std::int64_t round);
    Result<std::vector<RoundMark>> marks(std::int64_t round);

  private:
    struct Mark {
        const char* kind;
        std::string reason, by;
    };
    Status checkOpen(std::int64_t round, const std::string& machine);
    Status mark(std::int64_t round, const std::string& machine, const Mark& mark);
    Result<std::vector<std::string>> marked(std::int64_t round, const char* kind);

    Database& database_;
};

}  // namespace fettle
