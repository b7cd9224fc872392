// What the fleet file knows of retention: rules, what is kept of a recording, taking away with a note, and
// space given back.
#include <gmock/gmock.h>

#include <filesystem>

#include "core/store/database.h"
#include "core/store/packed_recording.h"
#include "tests/store/every_recording.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class RetentionStoreTest : public StoreTest {
  protected:
    void put(int count, std::size_t samples = 4096) {
        std::vector<NewRecording> all;
        for (int i = 0; i < count; ++i)
            all.push_back(newRecording(machine_,
                                       formatUtc(at("2026-05-04T00:00:00Z") + std::chrono::hours(i)),
                                       std::uint64_t(i), samples));
        ASSERT_TRUE(fleet_->recordings().putAll(all));
    }
    // Of the newest so many days what is left is asked in one go.
    KeptOfMachine keptOf(int lately) {
        auto kept =
            fleet_->retention().kept(machine_, fleet_->retention().stillThere().value(), lately).value();
        for (KeptRecording& one : kept.recordings)
            EXPECT_TRUE(fleet_->retention().rank(machine_, one));
        return kept;
    }
    std::vector<KeptRecording> keptNow() { return keptOf(30).recordings; }
    void thin(const std::vector<Thinning>& list) {
        const auto done = fleet_->together([&]() -> Status {
            const auto run = fleet_->retention().beginRun("test", "all for a day");
            if (!run) return fail(run.error());
            return fleet_->retention().thin(*run, list);
        });
        ASSERT_TRUE(done) << done.error().sentence();
    }
    void thinFirst(int count) {
        std::vector<Thinning> list;
        for (int i = 1; i <= count; ++i)
            list.push_back({i, {true, true, true}});
        thin(list);
    }
};

TEST_F(RetentionStoreTest, RulesAsShippedAndAsSet) {
    EXPECT_EQ(fleet_->retention().rules().value(), RetentionRules());
    RetentionRules rules;
    rules.rule(KeptKind::Waveform) = {5, 30, 700};
    ASSERT_TRUE(fleet_->retention().setRules(rules));
    reopen();
    EXPECT_EQ(fleet_->retention().rules().value(), rules);
    EXPECT_THAT(fleet_->retention().standing().value(), HasSubstr("[\"waveforms\",5,30,700]"));
}

TEST_F(RetentionStoreTest, WhatIsKeptWithItsRank) {
    put(2);
    const auto kept = keptNow();
    ASSERT_EQ(kept.size(), 2u);
    EXPECT_EQ(kept[1].time, at("2026-05-04T01:00:00Z"));
    EXPECT_EQ(kept[1].evidenceDban, 13.5);
    EXPECT_EQ(kept[1].levelMmS, 1.0 / 16);
    for (const KeptKind kind : kAllKept)
        EXPECT_TRUE(kept[1].has(kind));
    EXPECT_EQ(kept[1].bytes[std::size_t(KeptKind::Spectra)], 2 * 800);
}

TEST_F(RetentionStoreTest, EachKindGoesByItself) {
    put(4);
    thin({{1, {true, false, false}}, {2, {false, true, false}}, {3, {false, false, true}}});
    std::vector<std::string> left;
    const auto kept = store_test::everyRecording(path_, machine_);
    for (const KeptRecording& one : kept) {
        std::string text;
        for (const KeptKind kind : kAllKept)
            text += one.has(kind) ? '+' : '-';
        left.push_back(text);
    }
    EXPECT_THAT(left, ElementsAre("-++", "+-+", "++-", "+++"));
    EXPECT_EQ(fleet_->recordings().recording(1).error().kind, ErrorKind::NotFound);
    EXPECT_TRUE(fleet_->recordings().recording(2));
    EXPECT_THAT(fleet_->recordings().examinationJson(3).error().sentence(),
                HasSubstr("was thinned by retention on "));
    EXPECT_EQ(fleet_->recordings().count().value(), 4u);
    expectClean();
}

// However it is asked, what still holds something is found with the same facts as by reading everything.
TEST_F(RetentionStoreTest, WhatIsStillThereIsFoundWithoutReadingTheRest) {
    put(60);
    std::vector<Thinning> list;
    for (int i = 1; i <= 55; ++i)
        list.push_back({i, {i % 2 != 0, i % 3 != 0, i % 5 != 0}});
    thin(list);
    std::vector<KeptRecording> wanted;
    for (const KeptRecording& one : store_test::everyRecording(path_, machine_))
        if (one.has(KeptKind::Waveform) || one.has(KeptKind::Spectra) || one.has(KeptKind::Examination))
            wanted.push_back(one);
    ASSERT_EQ(wanted.size(), 45u)
        << "15 of the 55 numbers are divided by none of 2, 3 and 5: nothing is left";
    for (const int lately : {0, 1, 30}) {
        const KeptOfMachine kept = keptOf(lately);
        ASSERT_EQ(kept.recordings.size(), wanted.size()) << lately;
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            EXPECT_EQ(kept.recordings[i].id, wanted[i].id);
            EXPECT_EQ(kept.recordings[i].time, wanted[i].time);
            EXPECT_EQ(kept.recordings[i].point, wanted[i].point);
            EXPECT_EQ(kept.recordings[i].running, wanted[i].running);
            EXPECT_EQ(kept.recordings[i].file, wanted[i].file);
            EXPECT_EQ(kept.recordings[i].bytes, wanted[i].bytes);
            EXPECT_EQ(kept.recordings[i].evidenceDban, wanted[i].evidenceDban);
            EXPECT_EQ(kept.recordings[i].levelMmS, wanted[i].levelMmS);
        }
        EXPECT_EQ(kept.last, at("2026-05-04T00:00:00Z") + std::chrono::hours(59));
        EXPECT_EQ(kept.lately, lately == 0 ? 0u : lately == 1 ? 24u : 60u);
    }
}

// Thinning is told from damage: the same hole without its note is a fault.
TEST_F(RetentionStoreTest, AnExaminationThatIsGoneWithoutANoteIsAFault) {
    put(2);
    thin({{1, {false, false, true}}});
    expectClean();
    auto database = Database::open(path_, Access::ReadWrite).value();
    ASSERT_TRUE(database->script("DELETE FROM examination WHERE recording = 2"));
    EXPECT_THAT(fleet_->check(true).value(), ElementsAre(HasSubstr("recordings 2: have no examination")));
}

TEST_F(RetentionStoreTest, WeighedAgainItIsNoLongerThinned) {
    put(1);
    thin({{1, {false, true, true}}});
    NewRecording again = newRecording(machine_, "2026-05-04T00:00:00Z", 7);
    ASSERT_TRUE(fleet_->recordings().replaceExamination(1, packComputed(again)));
    EXPECT_EQ(fleet_->recordings().examinationJson(1).value(), again.examinationJson);
    auto database = Database::open(path_, Access::ReadWrite).value();
    EXPECT_EQ(database->one<int>("SELECT count(*) FROM thinned WHERE examination IS NOT NULL").value(), 0);
    expectClean();
}

TEST_F(RetentionStoreTest, SpansOutliveTheirSpectra) {
    put(6);
    const auto channel = fleet_->trends().channels(machine_).value().at(1).id;
    const auto spans = [&] {
        return fleet_->trends()
            .spans(channel, WaterfallKind::Velocity, at("2026-05-01T00:00:00Z"), at("2026-06-01T00:00:00Z"),
                   1)
            .value()
            .spans.size();
    };
    const std::size_t before = spans();
    ASSERT_GT(before, 0u);
    thinFirst(6);
    EXPECT_EQ(spans(), before);
    expectClean();
}

TEST_F(RetentionStoreTest, SpaceGoesBackToTheDisk) {
    put(40, 20000);
    const auto before = fleet_->retention().space().value();
    EXPECT_TRUE(before.givesBack) << "files made from now on";
    thinFirst(39);
    EXPECT_GT(fleet_->retention().space()->freeBytes, before.bytes / 2);
    ASSERT_TRUE(fleet_->retention().giveBack({}, {}));
    const auto after = fleet_->retention().space().value();
    EXPECT_EQ(after.freeBytes, 0u);
    EXPECT_LT(after.bytes, before.bytes / 2);
    EXPECT_LT(std::filesystem::file_size(path_), before.bytes / 2);
    expectClean();
}

TEST_F(RetentionStoreTest, AnOlderFileIsCompactedOnce) {
    put(40, 20000);
    fleet_.reset();
    {
        auto database = Database::open(path_, Access::ReadWrite).value();
        ASSERT_TRUE(database->script("PRAGMA auto_vacuum=NONE; VACUUM;"));
    }
    reopen();
    thinFirst(39);
    const auto before = fleet_->retention().space().value();
    ASSERT_FALSE(before.givesBack);
    ASSERT_TRUE(fleet_->retention().giveBack({}, {}));
    EXPECT_EQ(fleet_->retention().space()->bytes, before.bytes) << "it cannot, bit by bit";
    const auto done = fleet_->retention().compact({});
    ASSERT_TRUE(done) << done.error().sentence();
    const auto after = fleet_->retention().space().value();
    EXPECT_TRUE(after.givesBack);
    EXPECT_EQ(after.freeBytes, 0u);
    EXPECT_LT(std::filesystem::file_size(path_), before.bytes / 2);
    EXPECT_TRUE(fleet_->recordings().recording(40));
    expectClean();
}

TEST_F(RetentionStoreTest, CompactingIsStoppedAndLeavesAllAsItWas) {
    put(20, 20000);
    const CancelToken cancel;
    cancel.cancel();
    const auto done = fleet_->retention().compact(cancel);
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().kind, ErrorKind::Cancelled);
    expectClean();
    EXPECT_TRUE(fleet_->recordings().recording(20));
}

// Somebody who reads meanwhile is not disturbed, and writes afterwards.
TEST_F(RetentionStoreTest, CompactingBesideAReader) {
    put(20, 20000);
    auto other = FleetFile::open(path_).value();
    ASSERT_TRUE(other->recordings().recording(3));
    thinFirst(2);
    ASSERT_TRUE(fleet_->retention().compact({}));
    EXPECT_TRUE(other->recordings().recording(3));
    EXPECT_TRUE(other->recordings().put(newRecording(machine_, "2026-07-01T00:00:00Z", 99)));
    EXPECT_EQ(fleet_->recordings().count().value(), 21u);
    expectClean();
}

}  // namespace
}  // namespace fettle
