#include <regex>
#include <set>

#include "core/fleet/asks.h"
#include "core/fleet/due.h"
#include "core/fleet/job_desk.h"
#include "core/fleet/nodes.h"
#include "core/fleet/register_csv.h"
#include "core/fleet/reliability.h"
#include "core/store/database.h"
#include "core/store/statement_count.h"
#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

std::set<std::string> seenStatements;

// Tables that grow with every recording.
const char* const kHistory[] = {"recording", "recording_channel", "trend",    "spectrum",   "spectrum_span",
                                "weight",    "measured",          "waveform", "examination"};

// The table behind a name in a statement.
std::string tableOf(const std::string& name, const std::string& sql) {
    for (const char* table : kHistory) {
        if (name == table) return table;
        if (std::regex_search(sql, std::regex(std::string("\\b") + table + "\\s+(AS\\s+)?" + name + "\\b")))
            return table;
    }
    return "";
}

// What SQLite would do, one line a step that reads through a table of the history from end to end.
std::vector<std::string> scansOf(Database& database, const std::string& sql) {
    std::vector<std::string> scans;
    Statement rows(database, "EXPLAIN QUERY PLAN " + sql);
    while (rows.next()) {
        std::int64_t id = 0, parent = 0, unused = 0;
        std::string detail;
        rows.into(id, parent, unused, detail);
        std::smatch found;
        if (std::regex_search(detail, found, std::regex("^SCAN (\\w+)")) && !tableOf(found[1], sql).empty())
            scans.push_back(detail + ": " + sql);
    }
    return scans;
}

class QueryPlan : public SmallSite {
  protected:
    void SetUp() override {
        SmallSite::SetUp();
        seenStatements.clear();
        watchStatements([](const std::string& sql) { seenStatements.insert(sql); });
    }
    void TearDown() override {
        watchStatements(nullptr);
        SmallSite::TearDown();
    }
    void expectNoScan(std::size_t atLeast) {
        watchStatements(nullptr);
        auto database = Database::open(path_, Access::ReadWrite);
        ASSERT_TRUE(database);
        std::size_t asked = 0;
        for (const std::string& sql : seenStatements) {
            if (!sql.starts_with("SELECT") && !sql.starts_with("WITH")) continue;
            ++asked;
            for (const std::string& scan : scansOf(**database, sql))
                ADD_FAILURE() << scan;
        }
        EXPECT_GE(asked, atLeast);
    }
};

// The test sees a scan where there is one, by whatever name.
TEST_F(QueryPlan, AScanIsSeen) {
    auto database = Database::open(path_, Access::ReadWrite);
    EXPECT_EQ(scansOf(**database, "SELECT count(*) FROM recording").size(), 1u);
    EXPECT_EQ(scansOf(**database, "SELECT t.time FROM trend AS t WHERE t.peak_g > 1").size(), 1u);
    EXPECT_EQ(scansOf(**database, "SELECT max(time) FROM recording").size(), 0u);
    EXPECT_EQ(scansOf(**database, "SELECT tag FROM machine").size(), 0u);
}

TEST_F(QueryPlan, TheRoundReadsNoHistoryThrough) {
    const KeptRound kept = opened();
    ASSERT_TRUE(listNow(*fleet_, kUntil));
    ASSERT_TRUE(currentRound(*fleet_));
    ASSERT_TRUE(dueOf(*fleet_, kept.list));
    ASSERT_TRUE(listPromise(*fleet_, kept.list));
    ASSERT_TRUE(nodesOf(*fleet_, kUntil));
    ASSERT_TRUE(siteReliability(*fleet_));
    ASSERT_TRUE(siteRecord(*fleet_));
    ASSERT_TRUE(jobRows(*fleet_, "", kUntil));
    expectNoScan(15);
}

TEST_F(QueryPlan, TheRegisterAndWhatIsStillOpenReadNoHistoryThrough) {
    ASSERT_TRUE(registerAsCsv(*fleet_));
    const auto machines = fleet_->machines().all().value();
    for (const MachineEntry& machine : machines) {
        ASSERT_TRUE(fleet_->machines().history(machine.tag));
        ASSERT_TRUE(fleet_->recordings().newest(machine.id));
        ASSERT_TRUE(fleet_->recordings().first(machine.id));
        ASSERT_TRUE(fleet_->trends().channels(machine.id));
        ASSERT_TRUE(fleet_->trends().measures(machine.id));
        ASSERT_TRUE(asksOf(*fleet_, machine.tag));
    }
    ASSERT_TRUE(fleet_->recordings().newest());
    ASSERT_TRUE(fleet_->recordings().count());
    ASSERT_TRUE(fleet_->log().events(""));
    ASSERT_TRUE(fleet_->log().feedback());
    ASSERT_TRUE(fleet_->log().jobs());
    ASSERT_TRUE(fleet_->log().refusals(true));
    ASSERT_TRUE(fleet_->jobs().steps());
    ASSERT_TRUE(fleet_->requests().list());
    ASSERT_TRUE(fleet_->workshop().list());
    ASSERT_TRUE(asksOf(*fleet_));
    ASSERT_TRUE(answerAsks(*fleet_));
    expectNoScan(12);
}

// A history of one machine goes by its keys as well.
TEST_F(QueryPlan, AHistoryGoesByItsKeys) {
    const std::int64_t machine = fleet_->machines().byTag("A-RACE")->id;
    const std::int64_t channel = fleet_->trends().channels(machine)->at(0).id;
    const Instant from{}, until = *parseUtc("2030-01-01T00:00:00Z");
    ASSERT_TRUE(fleet_->trends().trend(channel, Quantity::Peak, from, until));
    ASSERT_TRUE(fleet_->trends().values(channel, from, until));
    ASSERT_TRUE(fleet_->trends().latest(channel));
    ASSERT_TRUE(fleet_->trends().spectra(channel, WaterfallKind::Velocity, from, until));
    ASSERT_TRUE(fleet_->trends().spans(channel, WaterfallKind::Velocity, from, until, 1600));
    const auto measures = fleet_->trends().measures(machine).value();
    for (const MeasureSeries& series : measures)
        ASSERT_TRUE(fleet_->trends().measured(series, from, until));
    ASSERT_TRUE(fleet_->recordings().list(machine, from, until));
    ASSERT_TRUE(fleet_->recordings().weights(machine, from, until));
    ASSERT_TRUE(fleet_->recordings().examinations(machine, from, until));
    ASSERT_TRUE(fleet_->recordings().recording(1));
    expectNoScan(8);
}

}  // namespace
}  // namespace fettle::fleet_test
