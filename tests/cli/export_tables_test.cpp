// Everything in a fleet file comes out again, or the list below says why not: no table is forgotten. Truth:
// the tables that SQLite itself lists, and what the test put in.
#include <sqlite3.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/fleet/alert_post.h"
#include "core/fleet/alerts.h"
#include "tests/cli/site_fixture.h"

namespace fettle::cli_test {

namespace {

// Table and the part of `export` that holds it.
const std::map<std::string, std::string> kExported = {
    {"meta", "site"},
    {"machine", "machines"},
    {"description", "register"},
    {"channel", "trends"},
    {"recording", "recordings"},
    {"recording_channel", "recordings"},
    {"waveform", "recordings"},
    {"sidecar", "recordings"},
    {"trend", "trends"},
    {"hypothesis", "weights"},
    {"weight", "weights"},
    {"examination", "examinations"},
    {"event", "events"},
    {"feedback", "feedback"},
    {"job", "jobs"},
    {"refusal", "refusals"},
    {"round", "rounds"},
    {"round_row", "rounds"},
    {"round_examination", "rounds"},
    {"decision", "decisions"},
    {"round_mark", "decisions"},
    {"measure", "measures"},
    {"measured", "measures"},
    {"photo", "photos"},
    {"job_step", "job_steps"},
    {"request", "requests"},
    {"workshop", "workshop"},
    {"reading_rule", "reading_rules"},
    {"alert_rule", "alert_rules"},
    {"alert", "alerts"},
    {"alert_item", "deliveries"},
    {"alert_message", "deliveries"},
    {"re_examination", "changed_verdicts"},
    {"re_examined", "changed_verdicts"},
    {"re_examined_verdict", "changed_verdicts"},
};
const std::map<std::string, std::string> kStays = {
    {"spectrum", "follows from the recordings"},
    {"sidecar_pattern", "sidecars come out whole, each beside its recording"},
    {"spectrum_span", "largest lines of those spectra"},
    {"spans_to_build", "a note of the file's own on work in progress"},
    {"retention_rule", "how long this file keeps what: retention --json"},
    {"retention_run", "what is no longer there is in no export"},
    {"thinned", "what is no longer there is in no export"},
    {"alert_setting", "one user's on one computer, and arguments of a program may hold a secret"},
};

class ExportTables : public Site {
  protected:
    std::set<std::string> tables() const {
        std::set<std::string> names;
        sqlite3* handle = nullptr;
        EXPECT_EQ(sqlite3_open_v2(fleet_.c_str(), &handle, SQLITE_OPEN_READONLY, nullptr), SQLITE_OK);
        const auto take = [](void* to, int, char** values, char**) {
            static_cast<std::set<std::string>*>(to)->insert(values[0]);
            return 0;
        };
        EXPECT_EQ(
            sqlite3_exec(handle,
                         "SELECT name FROM sqlite_master WHERE type='table' AND name NOT LIKE 'sqlite_%'",
                         take, &names, nullptr),
            SQLITE_OK);
        sqlite3_close(handle);
        return names;
    }
    // Alerts raised, one acknowledged, one mail that could not be sent.
    void work() {
        ::setenv("XDG_CONFIG_HOME", at("config").c_str(), 1);
        EXPECT_EQ(on("alerts", {"--mail-server", "127.0.0.1", "--mail-port", "1", "--mail-from",
                                "a@site.example", "--mail-to", "b@site.example", "--mail-user", "fettle",
                                "--mail-password-command", "/bin/echo hunter2-secret"})
                      .status,
                  0);
        {
            const auto fleet = FleetFile::open(fleet_);
            ASSERT_TRUE(raiseAlerts(**fleet, {AlertRun::Which::All, *parseUtc("2026-05-10T12:00:00Z")}));
        }
        EXPECT_EQ(on("alerts", {"--run"}).status, 1) << "nobody takes mail there";
        EXPECT_EQ(on("alerts", {"--acknowledge", "1", "--by", "Mara", "--why", "=bolts"}).status, 0);
        ::unsetenv("XDG_CONFIG_HOME");
    }
    Json read(const std::string& name) const {
        return Json::parse(made::contentOf(at("out/") + name), nullptr, false);
    }
};

TEST_F(ExportTables, EveryTableComesOutOrThereIsAReason) {
    ASSERT_EQ(on("export", {"all", "-o", at("out")}).status, 0);
    std::set<std::string> told;
    for (const auto& [table, part] : kExported) {
        EXPECT_EQ(kStays.count(table), 0u) << table;
        told.insert(table);
        const bool there = part == "recordings" ? std::filesystem::is_directory(at("out/recordings"))
                                                : std::filesystem::exists(at("out/") + part + ".json") ||
                                                      std::filesystem::exists(at("out/") + part + ".csv");
        EXPECT_TRUE(there) << table << " in " << part;
    }
    for (const auto& [table, why] : kStays)
        told.insert(table);
    EXPECT_EQ(tables(), told) << "a new table needs a part of export, or a reason here";
}

TEST_F(ExportTables, AlertsComeOutWithWhoSawToThemAndWithoutAnySecret) {
    work();
    ASSERT_EQ(on("export", {"all", "-o", at("out")}).status, 0);
    const Json rules = read("alert_rules.json"), alerts = read("alerts.json"), sent = read("deliveries.json");
    ASSERT_EQ(rules.size(), 5u);
    EXPECT_EQ(rules[0]["name"], "Zone D");
    EXPECT_TRUE(rules[0]["least"].is_null());
    ASSERT_GE(alerts.size(), 2u);
    EXPECT_EQ(alerts[0]["id"], 1);
    EXPECT_EQ(alerts[0]["state"], "acknowledged");
    EXPECT_EQ(alerts[0]["acknowledged_by"], "Mara");
    EXPECT_EQ(alerts[0]["acknowledged_why"], "=bolts");
    EXPECT_EQ(alerts[1]["state"], "open");
    ASSERT_EQ(sent.size(), alerts.size());
    const auto tried =
        std::find_if(sent.begin(), sent.end(), [](const Json& one) { return one["machine"] == "C-SHAKE"; });
    ASSERT_NE(tried, sent.end()) << "zone D is told at once, whatever the hour";
    EXPECT_EQ((*tried)["way"], "mail b@site.example");
    EXPECT_EQ((*tried)["attempts"], 1);
    EXPECT_TRUE((*tried)["sent"].is_null());
    EXPECT_NE((*tried)["error"], "");
    for (const auto& entry : std::filesystem::recursive_directory_iterator(at("out")))
        if (entry.is_regular_file()) {
            EXPECT_EQ(made::contentOf(entry.path()).find("hunter2"), std::string::npos) << entry.path();
        }
    ASSERT_EQ(on("export", {"alerts", "-o", at("a.csv"), "--machine", "C-SHAKE"}).status, 0);
    const std::string csv = made::contentOf(at("a.csv"));
    EXPECT_THAT(csv, testing::HasSubstr("\"C-SHAKE\""));
    EXPECT_THAT(csv, testing::Not(testing::HasSubstr("\"A-RACE\"")));
    EXPECT_THAT(csv, testing::Not(testing::HasSubstr(",=bolts"))) << "a cell starts no formula";
}

TEST_F(ExportTables, WhatWasAskedForBalancedAndPicturedComesOut) {
    std::int64_t event = 0;
    {
        const auto fleet = FleetFile::open(fleet_);
        ASSERT_TRUE(fleet);
        const auto time = *parseUtc("2026-05-08T08:00:00Z");
        event = (*fleet)->log().addEvent({0, "A-RACE", time, "inspection", "", "seen", "kim"}).value();
        ASSERT_TRUE((*fleet)->photos().add(event, "race.png", "\x89PNG\r\n\x1a\nrest"));
        ASSERT_TRUE(
            (*fleet)->requests().add({0, "A-RACE", true, "P", "axial", "8 s", "thin", time, "kim", {}, {}}));
        ASSERT_TRUE(
            (*fleet)->workshop().put({0, "A-RACE", "balance", "rotor", time, time, {}, "{\"runs\":[]}"}));
        ASSERT_TRUE((*fleet)->readingRules().put({0, "**/*.wav", "{\"unit\":\"g\"}", time, "kim"}));
    }
    ASSERT_EQ(on("export", {"all", "-o", at("out")}).status, 0);
    EXPECT_EQ(read("photos.json")[0]["base64"], "iVBORw0KGgpyZXN0");  // RFC 4648 of those bytes
    EXPECT_EQ(read("photos.json")[0]["event_kind"], "inspection");
    EXPECT_EQ(read("requests.json")[0]["direction"], "axial");
    EXPECT_EQ(read("workshop.json")[0]["document"], Json::parse("{\"runs\":[]}"));
    EXPECT_EQ(read("reading_rules.json")[0]["keys"]["unit"], "g");
    EXPECT_TRUE(read("job_steps.json").empty());
    EXPECT_TRUE(read("changed_verdicts.json").empty());
    ASSERT_EQ(on("export", {"workshop", "-o", at("w.csv")}).status, 0);
    EXPECT_THAT(made::contentOf(at("w.csv")), testing::HasSubstr("\"{\"\"runs\"\":[]}\""));
}

}  // namespace

}  // namespace fettle::cli_test
