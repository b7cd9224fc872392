#include "core/store/alert_store.h"

#include <fmt/format.h>

#include "core/store/database.h"

namespace fettle {

namespace {

constexpr const char* kAlertColumns =
    "SELECT a.id, m.tag, m.service, m.area, m.criticality, a.fault, a.at, a.rule, a.kind, a.deliver, "
    "a.since, "
    "a.raised, a.seen, a.value, a.told, a.unit, a.words, a.ended, a.acknowledged, a.acknowledged_by, "
    "a.acknowledged_why FROM alert a JOIN machine m ON m.id = a.machine ";
constexpr const char* kItemColumns = "SELECT id, alert, way, event, digest, due FROM alert_item ";
constexpr const char* kMessageColumns =
    "SELECT id, way, message_id, digest, made, next_try, held_until, attempts, error, sent FROM "
    "alert_message ";

void readRule(Statement& row, AlertRule& r) {
    row.into(r.id, r.name, r.kind, r.fault, r.grade, r.least, r.leastHours, r.hits, r.of, r.askSecond,
             r.machine, r.area, r.criticality, r.deliver, r.enabled);
}

void readAlert(Statement& row, Alert& a) {
    row.into(a.id, a.machine, a.service, a.area, a.criticality, a.fault, a.at, a.rule, a.kind, a.deliver,
             a.since, a.raised, a.seen, a.value, a.told, a.unit, a.words, a.ended, a.acknowledged,
             a.acknowledgedBy, a.acknowledgedWhy);
}

void readItem(Statement& row, AlertItem& i) {
    row.into(i.id, i.alert, i.way, i.event, i.digest, i.due);
}

void readMessage(Statement& row, AlertMessage& m) {
    row.into(m.id, m.way, m.messageId, m.digest, m.made, m.nextTry, m.heldUntil, m.attempts, m.error, m.sent);
}

tl::unexpected<Error> notThere(const Database& database, const std::string& what) {
    return fail(ErrorKind::NotFound, database.path(), what, "is not in the fleet file");
}

}  // namespace

Result<std::vector<AlertRule>> AlertStore::rules() {
    Statement rows(database_,
                   "SELECT id, name, kind, fault, grade, least, least_hours, hits, of, ask_second, machine, "
                   "area, criticality, deliver, enabled FROM alert_rule ORDER BY id");
    return allRows<AlertRule>(rows, readRule);
}

Status AlertStore::putRule(const AlertRule& r) {
    return database_.run(
        "INSERT INTO alert_rule(name, kind, fault, grade, least, least_hours, hits, of, ask_second, machine, "
        "area, criticality, deliver, enabled) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?) ON CONFLICT(name) DO "
        "UPDATE "
        "SET kind=excluded.kind, fault=excluded.fault, grade=excluded.grade, least=excluded.least, "
        "least_hours=excluded.least_hours, hits=excluded.hits, of=excluded.of, "
        "ask_second=excluded.ask_second, machine=excluded.machine, area=excluded.area, "
        "criticality=excluded.criticality, deliver=excluded.deliver, enabled=excluded.enabled",
        r.name, r.kind, r.fault, r.grade, r.least, r.leastHours, r.hits, r.of, r.askSecond, r.machine, r.area,
        r.criticality, r.deliver, r.enabled);
}

Status AlertStore::removeRule(const std::string& name) {
    if (auto good = database_.run("DELETE FROM alert_rule WHERE name=?", name); !good) return good;
    if (database_.changes() > 0) return {};
    return notThere(database_, fmt::format("alert rule \"{}\"", name));
}

Result<std::vector<Alert>> AlertStore::alerts(bool clearedToo, const std::string& machine) {
    Statement rows(database_, std::string(kAlertColumns) +
                                  "WHERE (?1 = 1 OR a.acknowledged IS NULL OR a.ended IS NULL) AND "
                                  "(?2 = '' OR m.tag = ?2) ORDER BY a.raised DESC, a.id DESC");
    rows.bind(clearedToo, machine);
    return allRows<Alert>(rows, readAlert);
}

Result<Alert> AlertStore::alert(std::int64_t id) {
    Statement rows(database_, std::string(kAlertColumns) + "WHERE a.id = ?");
    rows.bind(id);
    auto found = allRows<Alert>(rows, readAlert);
    if (!found) return fail(found.error());
    if (found->empty()) return notThere(database_, fmt::format("alert {}", id));
    return std::move(found->front());
}

Result<std::size_t> AlertStore::openCount() {
    return database_.one<std::int64_t>("SELECT count(*) FROM alert WHERE acknowledged IS NULL")
        .map([](const auto& count) { return std::size_t(count.value_or(0)); });
}

Result<std::int64_t> AlertStore::add(const Alert& a) {
    const auto machine = database_.one<std::int64_t>("SELECT id FROM machine WHERE tag=?", a.machine);
    if (!machine) return fail(machine.error());
    if (!*machine) return notThere(database_, fmt::format("machine {}", a.machine));
    if (auto good = database_.run("INSERT INTO alert(machine, fault, at, rule, kind, deliver, since, raised, "
                                  "value, told, unit, words, "
                                  "seen) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?)",
                                  **machine, a.fault, a.at, a.rule, a.kind, a.deliver, a.since, a.raised,
                                  a.value, a.told, a.unit, a.words, a.seen);
        !good)
        return fail(good.error());
    return database_.lastId();
}

Status AlertStore::update(const Alert& a) {
    return database_.run(
        "UPDATE alert SET rule=?, kind=?, deliver=?, value=?, told=?, unit=?, words=?, seen=?, ended=?, "
        "acknowledged=?, acknowledged_by=?, acknowledged_why=? WHERE id=?",
        a.rule, a.kind, a.deliver, a.value, a.told, a.unit, a.words, a.seen, a.ended, a.acknowledged,
        a.acknowledgedBy, a.acknowledgedWhy, a.id);
}

Status AlertStore::acknowledge(std::int64_t id, const std::string& by, const std::string& why, Instant now) {
    const auto old = alert(id);
    if (!old) return fail(old.error());
    if (old->acknowledged)
        return fail(ErrorKind::Invalid, database_.path(), fmt::format("alert {}", id),
                    fmt::format("was acknowledged by {} already", old->acknowledgedBy));
    if (auto good = database_.run("UPDATE alert SET acknowledged=?, acknowledged_by=?, acknowledged_why=? "
                                  "WHERE id=? AND acknowledged IS NULL",
                                  now, by, why, id);
        !good)
        return good;
    // Somebody else was a moment earlier.
    return database_.changes() > 0 ? Status{} : acknowledge(id, by, why, now);
}

Status AlertStore::addItem(const AlertItem& item) {
    return database_.run("INSERT INTO alert_item(alert, way, event, digest, due) VALUES (?,?,?,?,?)",
                         item.alert, item.way, item.event, item.digest, item.due);
}

Result<std::vector<AlertItem>> AlertStore::waitingItems() {
    Statement rows(database_,
                   std::string(kItemColumns) + "WHERE message IS NULL AND dropped = '' ORDER BY due, id");
    return allRows<AlertItem>(rows, readItem);
}

Result<std::vector<AlertItem>> AlertStore::itemsOf(std::int64_t message) {
    Statement rows(database_, std::string(kItemColumns) + "WHERE message = ? ORDER BY id");
    rows.bind(message);
    return allRows<AlertItem>(rows, readItem);
}

Status AlertStore::dropItem(std::int64_t id, const std::string& why) {
    return database_.run("UPDATE alert_item SET dropped=? WHERE id=?", why, id);
}

Result<std::int64_t> AlertStore::addMessage(const AlertMessage& m, const std::vector<std::int64_t>& items) {
    Transaction transaction(database_);
    if (!transaction.begun()) return fail(transaction.begun().error());
    if (auto good =
            database_.run("INSERT INTO alert_message(way, digest, message_id, made, next_try, held_until) "
                          "VALUES (?,?,?,?,?,?)",
                          m.way, m.digest, m.messageId, m.made, m.nextTry, m.heldUntil);
        !good)
        return fail(good.error());
    const std::int64_t id = database_.lastId();
    for (const std::int64_t item : items)
        if (auto good = database_.run("UPDATE alert_item SET message=? WHERE id=?", id, item); !good)
            return fail(good.error());
    if (auto good = transaction.commit(); !good) return fail(good.error());
    return id;
}

Status AlertStore::dropMessage(std::int64_t id, const std::string& why) {
    Transaction transaction(database_);
    if (!transaction.begun()) return transaction.begun();
    if (auto good = database_.run("UPDATE alert_item SET message=NULL, dropped=? WHERE message=?", why, id);
        !good)
        return good;
    if (auto good = database_.run("DELETE FROM alert_message WHERE id=? AND sent IS NULL", id); !good)
        return good;
    return transaction.commit();
}

Result<std::vector<AlertMessage>> AlertStore::unsentMessages() {
    Statement rows(database_, std::string(kMessageColumns) + "WHERE sent IS NULL ORDER BY id");
    return allRows<AlertMessage>(rows, readMessage);
}

Result<std::vector<AlertMessage>> AlertStore::newestMessages(std::size_t most) {
    Statement rows(database_, std::string(kMessageColumns) + "ORDER BY id DESC LIMIT ?");
    rows.bind(most);
    return allRows<AlertMessage>(rows, readMessage);
}

Status AlertStore::eachDelivery(const std::function<void(const AlertDelivery&)>& take) {
    Statement rows(
        database_,
        "SELECT t.tag, a.fault, a.at, a.raised, i.id, i.alert, i.way, i.event, i.digest, i.due, "
        "i.dropped, m.id, m.way, m.message_id, m.digest, m.made, m.next_try, m.held_until, "
        "m.attempts, m.error, m.sent FROM alert_item i JOIN alert a ON a.id = i.alert JOIN machine "
        "t ON t.id = a.machine LEFT JOIN alert_message m ON m.id = i.message ORDER BY i.id");
    while (rows.next()) {
        AlertDelivery one;
        AlertItem& i = one.item;
        AlertMessage m;
        std::optional<std::int64_t> message;
        rows.into(one.machine, one.fault, one.at, one.raised, i.id, i.alert, i.way, i.event, i.digest, i.due,
                  one.dropped, message, m.way, m.messageId, m.digest, m.made, m.nextTry, m.heldUntil,
                  m.attempts, m.error, m.sent);
        m.id = message.value_or(0);
        if (message) one.message = std::move(m);
        take(one);
    }
    return rows.status();
}

Result<std::size_t> AlertStore::madeSince(const std::string& way, Instant since) {
    return database_
        .one<std::int64_t>("SELECT count(*) FROM alert_message WHERE way=? AND made>?", way, since)
        .map([](const auto& count) { return std::size_t(count.value_or(0)); });
}

Result<bool> AlertStore::hold(std::int64_t message, Instant now, Instant until) {
    if (auto good = database_.run("UPDATE alert_message SET held_until=?, attempts=attempts+1 WHERE id=? AND "
                                  "sent IS NULL AND held_until<=?",
                                  until, message, now);
        !good)
        return fail(good.error());
    return database_.changes() > 0;
}

Status AlertStore::noteSent(std::int64_t message, Instant when) {
    return database_.run("UPDATE alert_message SET sent=?, error='', held_until=0 WHERE id=?", when, message);
}

Status AlertStore::noteFailed(std::int64_t message, const std::string& error, Instant nextTry) {
    return database_.run("UPDATE alert_message SET error=?, next_try=?, held_until=0 WHERE id=?", error,
                         nextTry, message);
}

Result<std::string> AlertStore::setting(const std::string& key) {
    return database_.one<std::string>("SELECT value FROM alert_setting WHERE key=?", key)
        .map([](const auto& value) { return value.value_or(""); });
}

Status AlertStore::setSetting(const std::string& key, const std::string& value) {
    return database_.run("INSERT OR REPLACE INTO alert_setting(key, value) VALUES (?, ?)", key, value);
}

Result<AlertStore::NewWork> AlertStore::newWork(std::int64_t afterRecording, Instant since) {
    NewWork work;
    const auto newest = database_.one<std::int64_t>("SELECT max(id) FROM recording");
    if (!newest) return fail(newest.error());
    work.newest = newest->value_or(0);
    Statement rows(database_,
                   "SELECT DISTINCT machine FROM recording NOT INDEXED WHERE id > ? AND time >= ?");
    rows.bind(afterRecording, since);
    auto machines = allRows<std::int64_t>(rows, [](Statement& row, std::int64_t& id) { row.into(id); });
    if (!machines) return fail(machines.error());
    work.machines = std::move(*machines);
    return work;
}

}  // namespace fettle
