// Why: a logger's files may say neither whose they are nor in what unit; a person says it once and it is kept
// as a rule: a pattern of the path (path_pattern.h) with keys of a sidecar. A rule only fills what is not
// said: what the sidecar or the file itself says always holds. Of several rules that match, the one with more
// letters of its own comes first and the others fill what it leaves open. What a rule filled is kept in the
// recording's sidecar as stored, so that it comes out again with the recording. A rule cannot say a time but
// by {time_utc} in its pattern: no two recordings share one. Thread: made on one, then read by any. Errors:
// of a rule that breaks a rule itself, with its pattern as the file.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/intake/path_pattern.h"
#include "core/signal/reader.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct ReadingRule {
    std::string pattern;
    PathPattern compiled;
    Json keys;
};
// Refuses what a sidecar would refuse, keys that only a single recording can have, and unknown keys.
Result<ReadingRule> readRule(const std::string& pattern, const std::string& keysJson);

class RuleBook {
  public:
    static Result<RuleBook> of(FleetFile& fleet);  // rules that cannot be read any more are in `problems`
    void add(ReadingRule rule);

    struct Match {
        const ReadingRule* rule = nullptr;
        PathSays said;
    };
    std::vector<Match> matching(const std::string& path) const;  // the nearest first
    bool empty() const { return rules_.empty(); }
    const std::vector<Error>& problems() const { return problems_; }

  private:
    std::vector<ReadingRule> rules_;
    std::vector<Error> problems_;
};

// What they say of a file of named variables before it is read.
ReadingHints hintsOf(const RuleBook& rules, const std::string& path);

// What rules filled in: `added` as a sidecar would say it.
struct RulesApplied {
    Json added = Json::object();
    std::vector<std::string> patterns;
};
// Changes recording and sidecar of what was read. Errors: a rule that does not fit the file (its channels).
Result<RulesApplied> applyRules(const RuleBook& rules, ReadFile& read);

}  // namespace fettle
