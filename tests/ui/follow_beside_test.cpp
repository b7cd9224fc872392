// `follow` in a program of its own beside the open window: what comes in is seen, and the reader's place
// stays.
#include <QItemSelectionModel>
#include <QSignalSpy>
#include <QTableView>
#include <cstdlib>

#include "tests/cli/run_program.h"
#include "tests/ui/desk_fixture.h"
#include "ui/work/fleet_pulse.h"

namespace fettle::desk_test {
namespace {

class FollowBesideTest : public Desk {
  protected:
    void sendOne(const std::string& tag, const std::string& day) {
        const auto sent =
            intake_test::sent(made::setupOf(made::machineOf(fleet_test::description(tag)), 11, 1));
        intake_test::Said said;
        said.machine = tag;
        said.time = day + "T06:20:00Z";
        said.scale = sent.scale;
        intake_test::send(folder_ / "later", tag + day, sent.wav, said);
    }
    std::string newestOf(const std::string& tag) {
        for (const RoundMachine& machine : roundPage().round().list.machines)
            if (machine.tag == tag && machine.newest) return formatUtc(*machine.newest);
        return "";
    }
};

TEST_F(FollowBesideTest, WhatComesInIsShownAndThePlaceStays) {
    openWindow();
    auto* ledger = part<QTableView>("ledger");
    roundPage().goTo(QStringLiteral("B-SOUND"));
    const QString chosen = roundPage().currentTag();
    ASSERT_EQ(chosen, QStringLiteral("B-SOUND"));
    const auto selected = ledger->selectionModel()->selectedRows().size();
    sendOne("D-MUTE", "2026-05-09");
    const auto ran = made::run({"follow", path_, folder_ / "later", "--once", "--settle", "0"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_EQ(ran.out, "1 stored, 0 already there, 0 late, 0 refused, 0 parked\n");
    EXPECT_TRUE(waitFor([&] { return newestOf("D-MUTE") == "2026-05-09T06:20:00Z"; }));
    settle();
    EXPECT_EQ(roundPage().currentTag(), chosen);
    EXPECT_EQ(ledger->selectionModel()->selectedRows().size(), selected);
    EXPECT_EQ(window_->trouble(), QString());
}

// One's own writing is no news; another connection's is, once for each. Each step follows on a question just
// asked, so that the next one comes long after it.
TEST_F(FollowBesideTest, ThePulseTellsOfOthersAlone) {
    constexpr std::chrono::milliseconds kAsk{500};
    const std::string path = folder_ / "pulse.fettle";
    const auto other = intake_test::newFleet(path);
    ASSERT_TRUE(other);
    FleetWork work(path);
    FleetPulse pulse(path, nullptr, {kAsk, std::chrono::milliseconds(0)});
    QObject::connect(&work, &FleetWork::changedFleet, &pulse, &FleetPulse::noteOwn);
    QSignalSpy told(&pulse, &FleetPulse::othersWrote), own(&work, &FleetWork::changedFleet);
    const auto note = [](FleetFile& fleet, const char* text) {
        return fleet.log().addEvent(
            {0, "T-1", intake_test::at("2026-05-08T08:00:00Z"), "note", "", text, "test"});
    };
    QTest::qWait(int(kAsk.count()));  // it has asked once
    ASSERT_TRUE(note(*other, "another program"));
    ASSERT_TRUE(waitFor([&] { return told.count() == 1; }));
    work.write<std::int64_t>(
        &work, [&](FleetFile& fleet) { return note(fleet, "this window"); },
        [](Result<std::int64_t> done) { EXPECT_TRUE(done); });
    ASSERT_TRUE(waitFor([&] { return own.count() == 1; }));
    QTest::qWait(int(3 * kAsk.count()));
    EXPECT_EQ(told.count(), 1) << "once for each, and not of this window's own";
    ASSERT_TRUE(note(*other, "once more"));
    EXPECT_TRUE(waitFor([&] { return told.count() == 2; }));
}

}  // namespace
}  // namespace fettle::desk_test
