// Why: what a program of today says of a file of an older form is tested on such files, made of a file of
// today: everything that the older form knows is carried over, the rest is left out.
#pragma once

#include <gtest/gtest.h>

#include "core/store/database.h"
#include "core/store/fleet_file.h"
#include "core/store/migrate.h"

namespace fettle::store_test {

inline void copyOfForm(int form, const std::string& today, const std::string& older) {
    const std::vector<Migration> steps(migrations().begin(), migrations().begin() + form);
    FleetTuning tuning;
    tuning.steps = &steps;
    ASSERT_TRUE(FleetFile::create(older, {"Test works", "UTC", 0.1}, tuning));
    auto database = Database::open(older, Access::ReadWrite).value();
    ASSERT_TRUE(database->script("PRAGMA foreign_keys=OFF; ATTACH '" + today + "' AS today;"));
    std::vector<std::string> tables;
    {
        Statement rows(
            *database,
            "SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' "
            "AND name <> 'meta'");
        while (rows.next())
            rows.into(tables.emplace_back());
        ASSERT_TRUE(rows.status());
    }
    for (const std::string& table : tables) {
        const auto good = database->script("DELETE FROM main." + table + "; INSERT INTO main." + table +
                                           " SELECT * FROM today." + table + ";");
        ASSERT_TRUE(good) << good.error().sentence();
    }
    ASSERT_TRUE(database->script("DETACH today; PRAGMA wal_checkpoint(TRUNCATE);"));
}

}  // namespace fettle::store_test
