// Why: what files are taken for where neither they nor a sidecar say is decided once, by a person, and kept:
// a pattern of the path and the keys of a sidecar it stands for. What pattern and keys mean is
// core/intake/rules.h; here they are texts. Thread: that of the FleetFile. Errors: NotFound for an id that is
// not there; Invalid for an empty pattern.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

class Database;

struct ReadingRuleEntry {
    std::int64_t id = 0;
    std::string pattern;  // one rule a pattern
    std::string json;     // an object with keys of a sidecar
    Instant createdAt{};
    std::string by;
};

class ReadingRuleStore {
  public:
    explicit ReadingRuleStore(Database& database) : database_(database) {}

    // A pattern that is there already gets the new keys.
    Status put(const ReadingRuleEntry& rule);
    Status remove(std::int64_t id);
    Result<std::vector<ReadingRuleEntry>> all();  // by pattern

  private:
    Database& database_;
};

}  // namespace fettle
