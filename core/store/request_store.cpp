#include "core/store/request_store.h"

#include <fmt/format.h>

#include "core/store/database.h"
#include "core/store/day.h"

namespace fettle {

namespace {
constexpr const char* kColumns =
    "SELECT r.id, m.tag, r.by_hand, r.point, r.direction, r.what, r.why, r.asked, r.asked_by, r.answered, "
    "r.recording FROM request r JOIN machine m ON m.id = r.machine ";

void readRequest(Statement& row, Request& request) {
    int byHand = 0;
    row.into(request.id, request.machine, byHand, request.point, request.direction, request.what, request.why,
             request.askedAt, request.askedBy, request.answeredAt, request.recording);
    request.byHand = byHand != 0;
}
}  // namespace

Result<std::int64_t> RequestStore::add(const Request& request) {
    const auto machine = database_.one<std::int64_t>("SELECT id FROM machine WHERE tag=?", request.machine);
    if (!machine) return fail(machine.error());
    if (!*machine)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("machine {}", request.machine),
                    "is not in the register");
    const Instant asked = request.askedAt == Instant{} ? nowUtc() : request.askedAt;
    if (auto good = database_.run(
            "INSERT INTO request(machine, by_hand, point, direction, what, why, asked, asked_by) "
            "VALUES (?,?,?,?,?,?,?,?)",
            **machine, request.byHand, request.point, request.direction, request.what, request.why, asked,
            request.askedBy);
        !good)
        return fail(good.error());
    return database_.lastId();
}

Result<Request> RequestStore::get(std::int64_t id) {
    Statement rows(database_, std::string(kColumns) + "WHERE r.id = ?");
    rows.bind(id);
    auto found = allRows<Request>(rows, readRequest);
    if (!found) return fail(found.error());
    if (found->empty())
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("request {}", id),
                    "is not in the fleet file");
    return found->front();
}

Result<std::vector<Request>> RequestStore::list(const std::string& machine, bool answeredToo) {
    Statement rows(database_, std::string(kColumns) +
                                  "WHERE (?1 = '' OR m.tag = ?1) AND (?2 = 1 OR r.answered IS NULL) "
                                  "ORDER BY m.tag, r.asked, r.id");
    rows.bind(machine, answeredToo);
    return allRows<Request>(rows, readRequest);
}

Status RequestStore::answer(std::int64_t id, Instant when, std::optional<std::int64_t> recording,
                            const std::string& what) {
    const auto old = get(id);
    if (!old) return fail(old.error());
    if (old->answeredAt)
        return fail(ErrorKind::Invalid, database_.path(), fmt::format("request {}", id),
                    "is answered already and does not change any more");
    return database_.run("UPDATE request SET answered=?, recording=?, what=? WHERE id=?", when, recording,
                         what, id);
}

}  // namespace fettle
