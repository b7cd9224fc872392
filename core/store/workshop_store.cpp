#include "core/store/workshop_store.h"

#include <fmt/format.h>

#include "core/store/database.h"
#include "core/store/day.h"

namespace fettle {

namespace {
constexpr const char* kDocument =
    "SELECT w.id, m.tag, w.kind, w.name, w.created, w.changed, w.closed, w.json FROM workshop w "
    "JOIN machine m ON m.id = w.machine ";

void readDocument(Statement& row, WorkshopEntry& entry) {
    row.into(entry.id, entry.machine, entry.kind, entry.name, entry.createdAt, entry.changedAt,
             entry.closedAt, entry.json);
}

Result<std::int64_t> insert(Database& database, const WorkshopEntry& entry) {
    const auto machine = database.one<std::int64_t>("SELECT id FROM machine WHERE tag=?", entry.machine);
    if (!machine) return fail(machine.error());
    if (!*machine)
        return fail(ErrorKind::NotFound, database.path(), fmt::format("machine {}", entry.machine),
                    "is not in the register");
    const Instant now = nowUtc();
    const Instant created = entry.createdAt == Instant{} ? now : entry.createdAt;
    if (auto good = database.run("INSERT INTO workshop(machine, kind, name, created, changed, closed, json) "
                                 "VALUES (?,?,?,?,?,?,?)",
                                 **machine, entry.kind, entry.name, created, now, entry.closedAt, entry.json);
        !good)
        return fail(good.error());
    return database.lastId();
}
}  // namespace

Result<std::int64_t> WorkshopStore::put(const WorkshopEntry& entry) {
    if (entry.kind != "balance" && entry.kind != "trial")
        return fail(ErrorKind::Invalid, database_.path(), "kind of the workshop's document",
                    fmt::format("is \"{}\", must be balance or trial", entry.kind));
    if (entry.id == 0) return insert(database_, entry);
    const auto old = get(entry.id);
    if (!old) return fail(old.error());
    if (old->closedAt)
        return fail(ErrorKind::Invalid, database_.path(), fmt::format("{} {}", old->kind, old->name),
                    "is closed and does not change any more");
    if (auto good = database_.run("UPDATE workshop SET name=?, changed=?, closed=?, json=? WHERE id=?",
                                  entry.name, nowUtc(), entry.closedAt, entry.json, entry.id);
        !good)
        return fail(good.error());
    return entry.id;
}

Result<WorkshopEntry> WorkshopStore::get(std::int64_t id) {
    Statement rows(database_, std::string(kDocument) + "WHERE w.id = ?");
    rows.bind(id);
    auto found = allRows<WorkshopEntry>(rows, readDocument);
    if (!found) return fail(found.error());
    if (found->empty())
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("document {} of the workshop", id),
                    "is not in the fleet file");
    return found->front();
}

Result<std::vector<WorkshopEntry>> WorkshopStore::list(const std::string& machine, const std::string& kind) {
    Statement rows(database_, std::string(kDocument) +
                                  "WHERE (?1 = '' OR m.tag = ?1) AND (?2 = '' OR w.kind = ?2) "
                                  "ORDER BY w.created DESC, w.id DESC");
    rows.bind(machine, kind);
    return allRows<WorkshopEntry>(rows, readDocument);
}

}  // namespace fettle
