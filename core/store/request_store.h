// Why: what a recording could not show is asked for: of the node, or on the walk with the hand instrument.
// What was asked stays when it is answered, with the recording that answered it, or with none where somebody
// answered or dropped it by hand. `what` is a document of core/fleet/ask_spec; the store keeps it as it is.
// Times UTC. Thread: that of the FleetFile. Errors: NotFound for a machine or a request that is not there;
// Invalid where an answered one would be answered again.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

class Database;

struct Request {
    std::int64_t id = 0;
    std::string machine;    // tag
    bool byHand = false;    // on the walk; else of the node
    std::string point;      // id of a point, or a place: "driven DE"
    std::string direction;  // horizontal vertical axial radial, or ''
    std::string what, why;
    Instant askedAt{};
    std::string askedBy;
    std::optional<Instant> answeredAt;      // empty: still open
    std::optional<std::int64_t> recording;  // that answered it
};

class RequestStore {
  public:
    explicit RequestStore(Database& database) : database_(database) {}

    Result<std::int64_t> add(const Request& request);
    Result<Request> get(std::int64_t id);
    // By machine, oldest first; an empty tag: all.
    Result<std::vector<Request>> list(const std::string& machine = "", bool answeredToo = false);
    // `what` as it stands from now on.
    Status answer(std::int64_t id, Instant when, std::optional<std::int64_t> recording,
                  const std::string& what);

  private:
    Database& database_;
};

}  // namespace fettle
