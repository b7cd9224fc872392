// Why: balancing jobs and seeded-fault trials outlive the program: each is a document of the room that
// computes it (core/workshop writes and reads the JSON), kept with its machine, open until it is closed. A
// closed one never changes. Times UTC. Thread: that of the FleetFile. Errors: NotFound for a machine or a
// document that is not there; Invalid where the kind is unknown or a closed one would change.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

class Database;

struct WorkshopEntry {
    std::int64_t id = 0;
    std::string machine;  // tag
    std::string kind;     // balance | trial
    std::string name;
    Instant createdAt{}, changedAt{};
    std::optional<Instant> closedAt;  // empty: in work
    std::string json;
};

class WorkshopStore {
  public:
    explicit WorkshopStore(Database& database) : database_(database) {}

    // id 0: a new one. Name, JSON and closing are what changes; `changedAt` is set to now.
    Result<std::int64_t> put(const WorkshopEntry& entry);
    Result<WorkshopEntry> get(std::int64_t id);
    // Newest first; an empty machine or kind: all.
    Result<std::vector<WorkshopEntry>> list(const std::string& machine = "", const std::string& kind = "");

  private:
    Database& database_;
};

}  // namespace fettle
