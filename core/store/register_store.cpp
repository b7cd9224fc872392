#include "core/store/register_store.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/json_object.h"
#include "core/store/database.h"
#include "core/store/day.h"

namespace fettle {

namespace {
constexpr const char* kMachineEntry =
    "SELECT id, tag, asset, service, site, area, criticality, standby, by_hand, by_hand_why, removed_on, "
    "removed_why "
    "FROM machine ";

void readMachine(Statement& row, MachineEntry& entry) {
    row.into(entry.id, entry.tag, entry.asset, entry.service, entry.site, entry.area, entry.criticality,
             entry.standby, entry.byHand, entry.byHandWhy, entry.removedOn, entry.removedWhy);
}

Status insertMachine(Database& database, const Machine& machine) {
    return database.run(
        "INSERT INTO machine(tag, asset, service, site, area, criticality, standby) VALUES (?,?,?,?,?,?,?)",
        machine.tag, machine.asset, machine.service, machine.site, machine.area, machine.criticality,
        machine.standby);
}

Status updateMachine(Database& database, std::int64_t id, const Machine& machine) {
    return database.run(
        "UPDATE machine SET asset=?, service=?, site=?, area=?, criticality=?, standby=?, removed_on='', "
        "removed_why='' WHERE id=?",
        machine.asset, machine.service, machine.site, machine.area, machine.criticality, machine.standby, id);
}

Status insertDescription(Database& database, std::int64_t machine, const DescriptionEntry& entry) {
    return database.run("INSERT INTO description(machine, from_day, json, note, recorded) VALUES (?,?,?,?,?)",
                        machine, entry.from, entry.json, entry.note, nowUtc());
}

Status retire(Database& database, std::int64_t machine, const std::string& from) {
    return database.run(
        "UPDATE description SET replaced=? WHERE machine=? AND from_day=? AND replaced IS NULL", nowUtc(),
        machine, from);
}

// Whatever the order of keys: a table has columns of its own order.
bool same(const Json& a, const Json& b) {
    if (a.type() != b.type() && !(a.is_number() && b.is_number())) return false;
    if (!a.is_structured()) return a == b;
    if (a.size() != b.size()) return false;
    if (a.is_array()) return std::equal(a.begin(), a.end(), b.begin(), same);
    const auto items = a.items();
    return std::all_of(items.begin(), items.end(), [&](const auto& item) {
        const auto other = b.find(item.key());
        return other != b.end() && same(item.value(), *other);
    });
}

// The same description, whatever its blanks.
bool alike(const std::string& a, const std::string& b) {
    if (a == b) return true;
    const auto first = parseJson(a, ""), second = parseJson(b, "");
    return first && second && same(*first, *second);
}

struct Holding {
    std::string from, json;
};

Result<std::vector<Holding>> holdingOf(Database& database, std::int64_t machine) {
    Statement rows(database,
                   "SELECT from_day, json FROM description WHERE machine=? AND replaced IS NULL "
                   "ORDER BY from_day");
    rows.bind(machine);
    return allRows<Holding>(rows, [](Statement& row, Holding& one) { row.into(one.from, one.json); });
}

const Holding* holdingOn(const std::vector<Holding>& all, const std::string& day) {
    const Holding* found = nullptr;
    for (const Holding& one : all)
        if (one.from <= day) found = &one;
    return found;
}

Result<std::string> newestJson(Database& database, std::int64_t machine) {
    const auto all = holdingOf(database, machine);
    if (!all) return fail(all.error());
    return all->empty() ? std::string() : all->back().json;
}
}  // namespace

Result<PutMachine> RegisterStore::put(const std::string& json, const std::string& file,
                                      const std::string& from, const std::string& note) {
    return put({json, file, from, note, false});
}

Result<PutMachine> RegisterStore::putHistory(const std::string& json, const std::string& file,
                                             const std::string& from, const std::string& note) {
    return put({json, file, from, note, true});
}

Result<PutMachine> RegisterStore::put(const Given& given) {
    const auto parsed = parseMachine(given.json, given.file);
    if (!parsed) return fail(parsed.error());
    if (auto good = checkDay(given.from, given.file, "from"); !good) return fail(good.error());
    Transaction transaction(database_);
    if (!transaction.begun()) return fail(transaction.begun().error());
    const auto id = database_.one<std::int64_t>("SELECT id FROM machine WHERE tag=?", parsed->machine.tag);
    if (!id) return fail(id.error());
    const auto done = *id ? change(**id, given) : add(parsed->machine, given);
    if (!done) return done;
    if (auto good = transaction.commit(); !good) return fail(good.error());
    return done;
}

Result<PutMachine> RegisterStore::add(const Machine& machine, const Given& given) {
    if (auto good = insertMachine(database_, machine); !good) return fail(good.error());
    if (auto good =
            insertDescription(database_, database_.lastId(), {given.from, given.json, given.note, ""});
        !good)
        return fail(good.error());
    return PutMachine::Added;
}

Result<PutMachine> RegisterStore::change(std::int64_t machine, const Given& given) {
    const auto all = holdingOf(database_, machine);
    if (!all) return fail(all.error());
    const auto removed = database_.one<std::string>("SELECT removed_on FROM machine WHERE id=?", machine);
    if (!removed) return fail(removed.error());
    const bool corrects = given.from.empty() && !given.history && !all->empty();
    const std::string day = corrects ? all->back().from : given.from;
    const Holding* before = holdingOn(*all, day);
    if (before && alike(before->json, given.json) && (given.history || removed->value_or("").empty()))
        return PutMachine::Unchanged;
    if (auto good = retire(database_, machine, day); !good) return fail(good.error());
    if (auto good = insertDescription(database_, machine, {day, given.json, given.note, ""}); !good)
        return fail(good.error());
    const auto newest = newestJson(database_, machine);
    if (!newest) return fail(newest.error());
    const auto parsed = parseMachine(*newest, database_.path());
    if (!parsed) return fail(parsed.error());
    if (auto good = updateMachine(database_, machine, parsed->machine); !good) return fail(good.error());
    return PutMachine::Changed;
}

Status RegisterStore::remove(const std::string& tag, const std::string& on, const std::string& why) {
    if (on.empty()) return fail(ErrorKind::Invalid, database_.path(), tag, "the day of removal must be said");
    if (auto good = checkDay(on, database_.path(), tag); !good) return good;
    const auto entry = byTag(tag);
    if (!entry) return fail(entry.error());
    return database_.run("UPDATE machine SET removed_on=?, removed_why=? WHERE id=?", on, why, entry->id);
}

Status RegisterStore::setByHand(const std::string& tag, bool on, const std::string& why) {
    const auto entry = byTag(tag);
    if (!entry) return fail(entry.error());
    return database_.run("UPDATE machine SET by_hand=?, by_hand_why=? WHERE id=?", on, on ? why : "",
                         entry->id);
}

Result<std::vector<MachineEntry>> RegisterStore::all() {
    Statement rows(database_, std::string(kMachineEntry) + "ORDER BY tag");
    return allRows<MachineEntry>(rows, readMachine);
}

Result<MachineEntry> RegisterStore::byTag(const std::string& tag) {
    Statement rows(database_, std::string(kMachineEntry) + "WHERE tag=?");
    MachineEntry entry;
    const bool found = rows.bind(tag).next();
    if (found) readMachine(rows, entry);
    if (auto good = rows.status(); !good) return fail(good.error());
    if (!found)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("machine {}", tag),
                    "is not in the register");
    return entry;
}

Result<std::vector<DescriptionEntry>> RegisterStore::history(const std::string& tag) {
    const auto entry = byTag(tag);
    if (!entry) return fail(entry.error());
    Statement rows(database_,
                   "SELECT from_day, json, note, recorded FROM description WHERE machine=? AND replaced IS "
                   "NULL ORDER BY from_day");
    rows.bind(entry->id);
    return allRows<DescriptionEntry>(rows, [](Statement& row, DescriptionEntry& one) {
        Instant recorded{};
        row.into(one.from, one.json, one.note, recorded);
        one.recordedAt = formatUtc(recorded);
    });
}

Result<std::shared_ptr<const Machine>> RegisterStore::describedOn(const std::string& tag,
                                                                  const std::string& day) {
    const auto entry = byTag(tag);
    if (!entry) return fail(entry.error());
    const auto all = holdingOf(database_, entry->id);
    if (!all) return fail(all.error());
    const Holding* found = holdingOn(*all, day.empty() ? "9999-12-31" : day);
    if (!found)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("machine {}", tag),
                    day.empty() ? "has no description" : "has no description that holds on " + day);
    const auto parsed = parseMachine(found->json, database_.path());
    if (!parsed) return fail(parsed.error());
    return std::make_shared<const Machine>(parsed->machine);
}

}  // namespace fettle
