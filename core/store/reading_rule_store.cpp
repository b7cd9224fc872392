#include "core/store/reading_rule_store.h"

#include <fmt/format.h>

#include "core/store/database.h"
#include "core/store/day.h"

namespace fettle {

Status ReadingRuleStore::put(const ReadingRuleEntry& rule) {
    if (rule.pattern.empty())
        return fail(ErrorKind::Invalid, database_.path(), "pattern of a reading rule", "must not be empty");
    return database_.run(
        "INSERT INTO reading_rule(pattern, json, created, by) VALUES (?,?,?,?) "
        "ON CONFLICT(pattern) DO UPDATE SET json=excluded.json, created=excluded.created, by=excluded.by",
        rule.pattern, rule.json, nowUtc(), rule.by);
}

Status ReadingRuleStore::remove(std::int64_t id) {
    const auto known = database_.one<std::int64_t>("SELECT id FROM reading_rule WHERE id=?", id);
    if (!known) return fail(known.error());
    if (!*known)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("reading rule {}", id),
                    "is not in the fleet file");
    return database_.run("DELETE FROM reading_rule WHERE id=?", id);
}

Result<std::vector<ReadingRuleEntry>> ReadingRuleStore::all() {
    Statement rows(database_, "SELECT id, pattern, json, created, by FROM reading_rule ORDER BY pattern");
    return allRows<ReadingRuleEntry>(rows, [](Statement& row, ReadingRuleEntry& rule) {
        row.into(rule.id, rule.pattern, rule.json, rule.createdAt, rule.by);
    });
}

}  // namespace fettle
