#include "core/store/round_store.h"

#include <fmt/format.h>

#include <bit>

#include "core/base/text.h"
#include "core/store/database.h"
#include "core/store/day.h"
#include "core/store/packing.h"

namespace fettle {

namespace {
constexpr const char* kRoundEntry =
    "SELECT id, from_day, until_day, engine, alpha, list_needs_dban, sample_seed, opened, closed, closed_by, "
    "leave_accepted, leave_accepted_by FROM round ";

void readRound(Statement& row, RoundEntry& entry) {
    std::int64_t seed = 0;
    row.into(entry.id, entry.from, entry.until, entry.engine, entry.alpha, entry.listNeedsDban, seed,
             entry.openedAt, entry.closedAt, entry.closedBy, entry.leaveAcceptedAt, entry.leaveAcceptedBy);
    entry.sampleSeed = std::bit_cast<std::uint64_t>(seed);
}

Status insertRound(Database& database, const RoundEntry& round) {
    const Instant opened = round.openedAt == Instant{} ? nowUtc() : round.openedAt;
    return database.run(
        "INSERT INTO round(from_day, until_day, engine, alpha, list_needs_dban, sample_seed, opened) "
        "VALUES (?,?,?,?,?,?,?)",
        round.from, round.until, round.engine, round.alpha, round.listNeedsDban,
        std::bit_cast<std::int64_t>(round.sampleSeed), opened);
}

Status insertRow(Database& database, std::int64_t round, std::size_t place, const RoundRow& row) {
    if (auto good = database.run(
            "INSERT INTO round_row(round, place, machine, urgency, listed_by, weight_dban, in_sample, json) "
            "VALUES (?,?,?,?,?,?,?,?)",
            round, place, row.machine, row.urgency, row.listedBy, row.weightDban, row.inSample, row.json);
        !good)
        return good;
    if (row.examinationJson.empty()) return {};
    return database.run("INSERT INTO round_examination(round, machine, json) VALUES (?,?,?)", round,
                        row.machine, Blob{pack(row.examinationJson)});
}

std::string nameOfRound(std::int64_t round) {
    return fmt::format("round {}", round);
}

Status checkDecision(const Decision& decision, const std::string& file) {
    const std::string place = fmt::format("decision on {}", decision.machine);
    const bool asksWhy = decision.kind == DecisionKind::Dispute || decision.kind == DecisionKind::Defer;
    if (asksWhy && decision.reason.empty())
        return fail(ErrorKind::Invalid, file, place,
                    fmt::format("to {} needs a reason", toText(decision.kind)));
    if (decision.kind == DecisionKind::Defer && decision.deferTo.empty())
        return fail(ErrorKind::Invalid, file, place, "to defer needs a day");
    return checkDay(decision.deferTo, file, place);
}

void readDecision(Statement& row, Decision& decision) {
    std::string kind;
    row.into(decision.id, decision.machine, kind, decision.reason, decision.deferTo, decision.by,
             decision.at);
    for (const DecisionKind known :
         {DecisionKind::Accept, DecisionKind::Dispute, DecisionKind::Defer, DecisionKind::Withdraw})
        if (kind == toText(known)) {
            decision.kind = known;
            return;
        }
    row.broken(fmt::format("decision {} on {} is of a kind this program does not know: \"{}\"", decision.id,
                           decision.machine, oneLine(kind, 40)));
}
}  // namespace

Result<std::int64_t> RoundStore::open(const RoundEntry& round, const std::vector<RoundRow>& rows) {
    Transaction transaction(database_);
    if (!transaction.begun()) return fail(transaction.begun().error());
    const auto another = openOne();
    if (!another) return fail(another.error());
    if (*another)
        return fail(ErrorKind::Invalid, database_.path(), nameOfRound((*another)->id),
                    fmt::format("to {} is still open; close it first", (*another)->until));
    if (auto good = insertRound(database_, round); !good) return fail(good.error());
    const std::int64_t id = database_.lastId();
    for (std::size_t place = 0; place < rows.size(); ++place)
        if (auto good = insertRow(database_, id, place, rows[place]); !good) return fail(good.error());
    if (auto good = transaction.commit(); !good) return fail(good.error());
    return id;
}

Result<std::vector<RoundEntry>> RoundStore::all() {
    Statement rows(database_, std::string(kRoundEntry) + "ORDER BY id");
    return allRows<RoundEntry>(rows, readRound);
}

Result<std::optional<RoundEntry>> RoundStore::openOne() {
    Statement rows(database_, std::string(kRoundEntry) + "WHERE closed IS NULL");
    std::optional<RoundEntry> found;
    if (rows.next()) readRound(rows, found.emplace());
    if (auto good = rows.status(); !good) return fail(good.error());
    return found;
}

Result<RoundEntry> RoundStore::entry(std::int64_t id) {
    Statement rows(database_, std::string(kRoundEntry) + "WHERE id=?");
    RoundEntry entry;
    const bool found = rows.bind(id).next();
    if (found) readRound(rows, entry);
    if (auto good = rows.status(); !good) return fail(good.error());
    if (!found)
        return fail(ErrorKind::NotFound, database_.path(), nameOfRound(id), "is not in the fleet file");
    return entry;
}

Result<std::vector<RoundRow>> RoundStore::rows(std::int64_t round) {
    if (const auto there = entry(round); !there) return fail(there.error());
    Statement rows(database_,
                   "SELECT machine, urgency, listed_by, weight_dban, in_sample, json FROM round_row WHERE "
                   "round=? ORDER BY place");
    rows.bind(round);
    return allRows<RoundRow>(rows, [](Statement& row, RoundRow& one) {
        row.into(one.machine, one.urgency, one.listedBy, one.weightDban, one.inSample, one.json);
    });
}

Result<std::string> RoundStore::examinationJson(std::int64_t round, const std::string& machine) {
    const std::string place = fmt::format("examination of {} in {}", machine, nameOfRound(round));
    Statement rows(database_, "SELECT json FROM round_examination WHERE round=? AND machine=?");
    const bool found = rows.bind(round, machine).next();
    const std::string packed = found ? rows.blob() : "";
    if (auto good = rows.status(); !good) return fail(good.error());
    if (!found) return fail(ErrorKind::NotFound, database_.path(), place, "was not kept");
    auto text = unpack(packed, kMostPackedText);
    if (!text) return fail(ErrorKind::Damaged, database_.path(), place, text.error());
    return *text;
}

// The open round, with the machine in it.
Status RoundStore::checkOpen(std::int64_t round, const std::string& machine) {
    const auto there = entry(round);
    if (!there) return fail(there.error());
    if (there->closedAt)
        return fail(ErrorKind::Invalid, database_.path(), nameOfRound(round), "the round is closed");
    if (machine.empty()) return {};
    const auto row =
        database_.one<int>("SELECT 1 FROM round_row WHERE round=? AND machine=?", round, machine);
    if (!row) return fail(row.error());
    if (!*row)
        return fail(ErrorKind::NotFound, database_.path(), nameOfRound(round),
                    fmt::format("machine {} is not in it", machine));
    return {};
}

Result<std::int64_t> RoundStore::decide(std::int64_t round, const Decision& decision) {
    if (auto good = checkDecision(decision, database_.path()); !good) return fail(good.error());
    if (decision.machine.empty())
        return fail(ErrorKind::Invalid, database_.path(), nameOfRound(round), "a decision needs a machine");
    Transaction transaction(database_);
    if (!transaction.begun()) return fail(transaction.begun().error());
    if (auto good = checkOpen(round, decision.machine); !good) return fail(good.error());
    const Instant at = decision.at == Instant{} ? nowUtc() : decision.at;
    if (auto good = database_.run(
            "INSERT INTO decision(round, machine, kind, reason, defer_to, by, time) VALUES (?,?,?,?,?,?,?)",
            round, decision.machine, toText(decision.kind), decision.reason, decision.deferTo, decision.by,
            at);
        !good)
        return fail(good.error());
    const std::int64_t id = database_.lastId();
    if (auto good = transaction.commit(); !good) return fail(good.error());
    return id;
}

Status RoundStore::mark(std::int64_t round, const std::string& machine, const Mark& mark) {
    Transaction transaction(database_);
    if (!transaction.begun()) return transaction.begun();
    if (auto good = checkOpen(round, machine); !good) return good;
    if (auto good = database_.run(
            "INSERT OR REPLACE INTO round_mark(round, machine, mark, reason, by, time) VALUES (?,?,?,?,?,?)",
            round, machine, mark.kind, mark.reason, mark.by, nowUtc());
        !good)
        return good;
    return transaction.commit();
}

Status RoundStore::markOpened(std::int64_t round, const std::string& machine) {
    return mark(round, machine, {"opened", "", ""});
}

Status RoundStore::answerUnseen(std::int64_t round, const std::string& machine, const std::string& reason,
                                const std::string& by) {
    if (reason.empty())
        return fail(ErrorKind::Invalid, database_.path(), fmt::format("machine {}", machine),
                    "the reason must be said");
    return mark(round, machine, {"unseen", reason, by});
}

Status RoundStore::acceptLeave(std::int64_t round, const std::string& by) {
    Transaction transaction(database_);
    if (!transaction.begun()) return transaction.begun();
    if (auto good = checkOpen(round, ""); !good) return good;
    if (auto good = database_.run("UPDATE round SET leave_accepted=?, leave_accepted_by=? WHERE id=?",
                                  nowUtc(), by, round);
        !good)
        return good;
    return transaction.commit();
}

Status RoundStore::close(std::int64_t round, const std::string& by) {
    Transaction transaction(database_);
    if (!transaction.begun()) return transaction.begun();
    if (auto good = checkOpen(round, ""); !good) return good;
    if (auto good = database_.run("UPDATE round SET closed=?, closed_by=? WHERE id=?", nowUtc(), by, round);
        !good)
        return good;
    return transaction.commit();
}

Result<std::vector<std::string>> RoundStore::marked(std::int64_t round, const char* kind) {
    Statement rows(database_,
                   "SELECT machine FROM round_mark WHERE round=? AND mark=? ORDER BY time, machine");
    rows.bind(round, kind);
    return allRows<std::string>(rows, [](Statement& row, std::string& tag) { row.into(tag); });
}

Result<std::vector<RoundMark>> RoundStore::marks(std::int64_t round) {
    Statement rows(
        database_,
        "SELECT machine, mark, reason, by, time FROM round_mark WHERE round=? ORDER BY time, machine");
    rows.bind(round);
    return allRows<RoundMark>(rows, [](Statement& row, RoundMark& one) {
        row.into(one.machine, one.mark, one.reason, one.by, one.at);
    });
}

Result<RoundState> RoundStore::state(std::int64_t round) {
    const auto there = entry(round);
    if (!there) return fail(there.error());
    RoundState state;
    state.leaveAccepted = there->leaveAcceptedAt.has_value();
    Statement rows(
        database_,
        "SELECT id, machine, kind, reason, defer_to, by, time FROM decision WHERE round=? ORDER BY id");
    rows.bind(round);
    auto decisions = allRows<Decision>(rows, readDecision);
    auto opened = marked(round, "opened"), unseen = marked(round, "unseen");
    if (!decisions) return fail(decisions.error());
    if (!opened) return fail(opened.error());
    if (!unseen) return fail(unseen.error());
    state.decisions = std::move(*decisions);
    state.opened = std::move(*opened);
    state.unseenAnswered = std::move(*unseen);
    return state;
}

}  // namespace fettle
