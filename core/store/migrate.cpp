#include "core/store/migrate.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>

#include "core/base/text.h"

namespace fettle {

namespace {
struct SchemaObject {
    std::string type, name, sql;
};

Result<std::vector<SchemaObject>> objectsOf(Database& database) {
    Statement rows(database, "SELECT type, name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name");
    return allRows<SchemaObject>(
        rows, [](Statement& row, SchemaObject& object) { row.into(object.type, object.name, object.sql); });
}

Status apply(Database& database, const Migration& step) {
    Transaction transaction(database);
    if (!transaction.begun()) return transaction.begun();
    const auto before = versionOf(database);  // another program may have been here meanwhile
    if (!before) return fail(before.error());
    if (*before >= step.version) return {};
    if (auto good = database.script(step.sql); !good) return good;
    if (auto good = database.run("INSERT OR REPLACE INTO meta(key, value) VALUES ('min_reader', ?)",
                                 std::to_string(step.minReader));
        !good)
        return good;
    if (auto good = database.script(fmt::format("PRAGMA user_version={}", step.version)); !good) return good;
    return transaction.commit();
}

Result<std::unique_ptr<Database>> madeOf(const std::vector<Migration>& steps, int version) {
    auto model = Database::open(":memory:", Access::Create);
    if (!model) return model;
    for (const Migration& step : steps)
        if (step.version <= version)
            if (auto good = apply(**model, step); !good) return fail(good.error());
    return model;
}

// Reads anything, writes nothing but temporary tables. A temporary index is announced as a row of the file's
// table of tables, then asked for by what it is, as all others are.
int temporaryAlone(void*, int action, const char* what, const char*, const char* schema, const char*) {
    const bool reads = action == SQLITE_READ || action == SQLITE_SELECT || action == SQLITE_FUNCTION;
    const bool announced = action == SQLITE_INSERT && std::string_view(what) == "sqlite_master";
    return reads || announced || (schema && std::string_view(schema) == "temp") ? SQLITE_OK : SQLITE_DENY;
}

std::string everyReplaced(std::string text, const std::string& what, const std::string& by) {
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
        text.replace(at, what.size(), by);
    return text;
}
}  // namespace

int newestOf(const std::vector<Migration>& steps) {
    return steps.back().version;
}

Result<int> versionOf(Database& database) {
    const auto version = database.one<int>("PRAGMA user_version");
    if (!version) return fail(version.error());
    return version->value_or(0);
}

Result<int> leastReaderOf(Database& database) {
    const auto text = database.one<std::string>("SELECT value FROM meta WHERE key = 'min_reader'");
    if (!text) return fail(text.error());
    const auto number = parseInteger(text->value_or(""));
    if (!number || *number < 1 || *number > 1000000)
        return fail(ErrorKind::Damaged, database.path(), "table meta",
                    "does not say which programs may read the file; restore a backup");
    return int(*number);
}

Result<bool> migrate(Database& database, const std::vector<Migration>& steps) {
    const auto before = versionOf(database);
    if (!before) return fail(before.error());
    for (const Migration& step : steps)
        if (step.version > *before)
            if (auto good = apply(database, step); !good) {
                Error error = good.error();
                error.place = fmt::format("upgrade to {} ({})", step.version, step.description);
                return fail(error);
            }
    return *before < newestOf(steps);
}

// An index on a temporary table is one by itself; a temporary table cannot refer to one of the file.
Status standInForNewer(Database& database, const std::vector<Migration>& steps) {
    const auto version = versionOf(database);
    if (!version) return fail(version.error());
    const auto asItWas = database.one<int>("PRAGMA query_only");
    if (!asItWas) return fail(asItWas.error());
    if (auto good = database.script("PRAGMA query_only=OFF; PRAGMA foreign_keys=OFF;"); !good) return good;
    Status done;
    sqlite3_set_authorizer(database.handle(), temporaryAlone, nullptr);
    for (const Migration& step : steps)
        if (done && step.version > *version)
            done =
                database.script(everyReplaced(everyReplaced(step.sql, "CREATE TABLE ", "CREATE TEMP TABLE "),
                                              "CREATE TRIGGER ", "CREATE TEMP TRIGGER "));
    sqlite3_set_authorizer(database.handle(), nullptr, nullptr);
    const auto restored =
        database.script(fmt::format("PRAGMA foreign_keys=ON; PRAGMA query_only={};", asItWas->value_or(0)));
    return done ? restored : done;
}

Status checkSchema(Database& database, const std::vector<Migration>& steps) {
    const auto version = versionOf(database);
    if (!version) return fail(version.error());
    const auto model = madeOf(steps, *version);
    if (!model) return fail(model.error());
    const auto wanted = objectsOf(**model), found = objectsOf(database);
    if (!wanted) return fail(wanted.error());
    if (!found) return fail(found.error());
    for (const SchemaObject& object : *wanted) {
        const auto same = [&](const SchemaObject& other) {
            return other.type == object.type && other.name == object.name && other.sql == object.sql;
        };
        if (std::none_of(found->begin(), found->end(), same))
            return fail(ErrorKind::Damaged, database.path(), fmt::format("{} {}", object.type, object.name),
                        "is not as a fleet file has it; restore a backup");
    }
    return {};
}

}  // namespace fettle
