#include "core/store/register_store.h"

#include <gmock/gmock.h>

#include "core/base/json_object.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class RegisterStoreTest : public StoreTest {
  protected:
    RegisterStore& machines() { return fleet_->machines(); }
    std::string serviceAt(const std::string& day) {
        const auto machine = machines().describedOn("KL-ID-01", day);
        return machine ? (*machine)->service : machine.error().sentence();
    }
    std::vector<std::string> days() {
        std::vector<std::string> all;
        const auto history = machines().history("KL-ID-01").value();
        for (const DescriptionEntry& entry : history)
            all.push_back(entry.from);
        return all;
    }
};

TEST_F(RegisterStoreTest, TheEntrySaysWhatTheDescriptionSays) {
    const MachineEntry entry = machines().byTag("KL-ID-01").value();
    EXPECT_EQ(entry.service, "fan");
    EXPECT_EQ(entry.site, "Hollin Edge");
    EXPECT_EQ(entry.area, "kiln");
    EXPECT_EQ(entry.criticality, "A");
    EXPECT_FALSE(entry.standby || entry.byHand);
    EXPECT_EQ(entry.removedOn, "");
    const auto history = machines().history("KL-ID-01").value();
    ASSERT_EQ(history.size(), 1u);
    EXPECT_EQ(history[0].json, machineJson("KL-ID-01"));
    EXPECT_TRUE(parseUtc(history[0].recordedAt));
}

TEST_F(RegisterStoreTest, WhatWasFittedWhen) {
    EXPECT_EQ(machines().put(machineJson("KL-ID-01", "new bearing"), "m.json", "2026-05-04", "6316 for 6314"),
              PutMachine::Changed);
    EXPECT_EQ(serviceAt("2026-05-03"), "fan");
    EXPECT_EQ(serviceAt("2026-05-04"), "new bearing");
    EXPECT_EQ(machines().describedAt("KL-ID-01").value()->service, "new bearing");
    EXPECT_EQ(machines().byTag("KL-ID-01")->service, "new bearing");
    EXPECT_EQ(machines().history("KL-ID-01")->back().note, "6316 for 6314");
    // One that is entered later for an earlier day goes between.
    EXPECT_EQ(machines().put(machineJson("KL-ID-01", "rebuilt"), "m.json", "2025-01-01"),
              PutMachine::Changed);
    EXPECT_THAT(days(), ElementsAre("", "2025-01-01", "2026-05-04"));
    EXPECT_EQ(serviceAt("2024-12-31"), "fan");
    EXPECT_EQ(serviceAt("2025-06-01"), "rebuilt");
    EXPECT_EQ(serviceAt("2026-06-01"), "new bearing");
    EXPECT_EQ(machines().byTag("KL-ID-01")->service, "new bearing") << "columns are of the newest";
}

TEST_F(RegisterStoreTest, ACorrectionReplacesTheNewest) {
    ASSERT_TRUE(machines().put(machineJson("KL-ID-01", "second"), "m.json", "2026-05-04"));
    EXPECT_EQ(machines().put(machineJson("KL-ID-01", "corrected"), "m.json"), PutMachine::Changed);
    EXPECT_THAT(days(), ElementsAre("", "2026-05-04"));
    EXPECT_EQ(serviceAt("2026-05-03"), "fan");
    EXPECT_EQ(serviceAt("2026-05-05"), "corrected");
    // The same day again: a correction of that one.
    EXPECT_EQ(machines().put(machineJson("KL-ID-01", "again"), "m.json", "2026-05-04"), PutMachine::Changed);
    EXPECT_THAT(days(), ElementsAre("", "2026-05-04"));
    EXPECT_EQ(serviceAt("2026-05-05"), "again");
    expectClean();
}

// What was written out before a change and comes back says what held before it.
TEST_F(RegisterStoreTest, AnEntryOfAHistoryWithoutADayIsFromTheBeginning) {
    ASSERT_TRUE(machines().put(machineJson("KL-ID-01", "second"), "m.json", "2026-05-04"));
    EXPECT_EQ(machines().putHistory(machineJson("KL-ID-01"), "m.json", ""), PutMachine::Unchanged);
    EXPECT_EQ(serviceAt("2026-05-05"), "second");
    EXPECT_EQ(machines().putHistory(machineJson("KL-ID-01", "first"), "m.json", ""), PutMachine::Changed);
    EXPECT_EQ(serviceAt("2026-05-03"), "first");
    EXPECT_EQ(serviceAt("2026-05-05"), "second");
    EXPECT_EQ(machines().byTag("KL-ID-01")->service, "second");
    ASSERT_TRUE(machines().remove("KL-ID-01", "2026-06-01", "scrapped"));
    EXPECT_EQ(machines().putHistory(machineJson("KL-ID-01", "second"), "m.json", "2026-05-04"),
              PutMachine::Unchanged);
    EXPECT_EQ(machines().byTag("KL-ID-01")->removedOn, "2026-06-01");
    expectClean();
}

TEST_F(RegisterStoreTest, TheSameAgainIsUnchangedWhateverItsOrder) {
    auto json = parseJson(machineJson("KL-ID-01"), "").value();
    Json turned = Json::object();
    for (auto item = json.rbegin(); item != json.rend(); ++item)
        turned[item.key()] = item.value();
    ASSERT_NE(turned.dump(), json.dump());
    EXPECT_EQ(machines().put(turned.dump(), "m.json"), PutMachine::Unchanged);
    turned["service"] = "other";
    EXPECT_EQ(machines().put(turned.dump(), "m.json"), PutMachine::Changed);
}

TEST_F(RegisterStoreTest, TheSameAgainIsUnchangedWhateverItsBlanks) {
    EXPECT_EQ(machines().put(machineJson("KL-ID-01"), "m.json"), PutMachine::Unchanged);
    EXPECT_EQ(machines().put(machineJson("KL-ID-01") + "\n", "m.json"), PutMachine::Unchanged);
    EXPECT_EQ(machines().put(machineJson("KL-ID-01"), "m.json", "2026-05-04"), PutMachine::Unchanged);
    EXPECT_THAT(days(), ElementsAre(""));
}

TEST_F(RegisterStoreTest, RemovedMachinesStayKnownAndMayComeBack) {
    ASSERT_TRUE(machines().remove("KL-ID-01", "2026-05-04", "scrapped"));
    EXPECT_EQ(machines().byTag("KL-ID-01")->removedOn, "2026-05-04");
    EXPECT_EQ(machines().all()->size(), 1u);
    EXPECT_EQ(machines().put(machineJson("KL-ID-01"), "m.json"), PutMachine::Changed);
    EXPECT_EQ(machines().byTag("KL-ID-01")->removedOn, "");
    EXPECT_EQ(machines().remove("KL-ID-01", "", "").error().kind, ErrorKind::Invalid);
    EXPECT_EQ(machines().remove("KL-ID-01", "May", "").error().kind, ErrorKind::Invalid);
}

TEST_F(RegisterStoreTest, OnTheListByHandUntilTakenOff) {
    ASSERT_TRUE(machines().setByHand("KL-ID-01", true, "sounds odd"));
    EXPECT_TRUE(machines().byTag("KL-ID-01")->byHand);
    EXPECT_EQ(machines().byTag("KL-ID-01")->byHandWhy, "sounds odd");
    ASSERT_TRUE(machines().setByHand("KL-ID-01", false, "sounds well"));
    EXPECT_FALSE(machines().byTag("KL-ID-01")->byHand);
    EXPECT_EQ(machines().byTag("KL-ID-01")->byHandWhy, "");
}

TEST_F(RegisterStoreTest, MachinesAreListedByTag) {
    for (const char* tag : {"ZZ-1", "AA-1"})
        EXPECT_EQ(machines().put(machineJson(tag), "m.json"), PutMachine::Added);
    const auto all = machines().all().value();
    ASSERT_EQ(all.size(), 3u);
    EXPECT_EQ(all[0].tag, "AA-1");
    EXPECT_EQ(all[2].tag, "ZZ-1");
}

TEST_F(RegisterStoreTest, WhatIsWrongIsNamedAndNotStored) {
    const auto bad = machines().put(R"({"tag": "X", "mains_hz": 50})", "x.json");
    ASSERT_FALSE(bad);
    EXPECT_THAT(bad.error().sentence(), HasSubstr("x.json"));
    EXPECT_EQ(machines().put("{", "x.json").error().kind, ErrorKind::Damaged);
    EXPECT_EQ(machines().put(machineJson("X"), "x.json", "2026-02-30").error().kind, ErrorKind::Invalid);
    EXPECT_THAT(machines().put(machineJson("X"), "x.json", "4 May").error().sentence(),
                HasSubstr("must be a day as in 2026-05-04"));
    EXPECT_EQ(machines().all()->size(), 1u);
    EXPECT_EQ(machines().byTag("X").error().kind, ErrorKind::NotFound);
    EXPECT_EQ(machines().history("X").error().kind, ErrorKind::NotFound);
    EXPECT_EQ(machines().describedAt("X").error().kind, ErrorKind::NotFound);
    EXPECT_EQ(machines().setByHand("X", true, "").error().kind, ErrorKind::NotFound);
    EXPECT_EQ(machines().remove("X", "2026-05-04", "").error().kind, ErrorKind::NotFound);
}

TEST_F(RegisterStoreTest, BeforeTheFirstDescriptionNothingIsGuessed) {
    ASSERT_TRUE(machines().put(machineJson("NEW"), "m.json", "2026-05-04"));
    EXPECT_TRUE(machines().describedOn("NEW", "2026-05-04"));
    const auto before = machines().describedOn("NEW", "2026-05-03");
    ASSERT_FALSE(before);
    EXPECT_THAT(before.error().sentence(),
                HasSubstr("machine NEW: has no description that holds on 2026-05-03"));
}

}  // namespace
}  // namespace fettle
