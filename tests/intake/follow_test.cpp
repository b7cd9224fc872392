// Recordings taken in as they arrive. Each test writes as a node, a copying program or a share would, and
// waits for what must come of it (at most half a minute; nothing is timed).
#include "core/intake/follow.h"

#include <gmock/gmock.h>

#include <filesystem>
#include <fstream>
#include <mutex>
#include <thread>

#include "core/intake/folder_watch.h"
#include "core/store/database.h"
#include "tests/intake/intake_fixture.h"
#include "tests/store/failing_vfs.h"

namespace fettle::intake_test {
namespace {

namespace fs = std::filesystem;
using std::chrono::milliseconds;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

// Follows on a thread and a connection of its own.
class Following {
  public:
    Following(std::string fleet, std::string folder, FollowOptions options) : options_(std::move(options)) {
        options_.import.now = kNow;
        options_.import.threads = 1;
        options_.import.acknowledged = [this](const std::vector<std::string>& paths) {
            const std::lock_guard hold(mutex_);
            for (const std::string& path : paths)
                taken_.push_back(fileNameOf(path));
        };
        options_.import.refused = [this](const Refusal& refusal) {
            const std::lock_guard hold(mutex_);
            refused_.push_back(fileNameOf(refusal.path) + ": " + refusal.rule);
        };
        options_.say = [this](const std::string& sentence) {
            const std::lock_guard hold(mutex_);
            said_.push_back(sentence);
        };
        thread_ = std::thread([this, fleet, folder] {
            auto opened = FleetFile::open(fleet);
            ASSERT_TRUE(opened) << opened.error().sentence();
            const auto report = follow(**opened, folder, options_);
            EXPECT_TRUE(report) << (report ? "" : report.error().sentence());
            if (report) report_ = *report;
        });
    }
    ~Following() { stop(); }
    FollowReport stop() {
        options_.import.cancel.cancel();
        if (thread_.joinable()) thread_.join();
        return report_;
    }
    std::vector<std::string> taken() { return copyOf(taken_); }
    std::vector<std::string> refused() { return copyOf(refused_); }
    std::vector<std::string> said() { return copyOf(said_); }
    template <class Condition>
    bool comes(Condition condition) {
        for (int i = 0; i < 1500; ++i) {
            if (condition()) return true;
            std::this_thread::sleep_for(milliseconds(20));
        }
        return false;
    }
    bool takes(const std::string& name) {
        return comes([&] {
            const auto all = taken();
            return std::count(all.begin(), all.end(), name) > 0;
        });
    }

  private:
    std::vector<std::string> copyOf(const std::vector<std::string>& list) {
        const std::lock_guard hold(mutex_);
        return list;
    }
    FollowOptions options_;
    std::mutex mutex_;
    std::vector<std::string> taken_, refused_, said_;
    FollowReport report_;
    std::thread thread_;
};

class FollowTest : public IntakeTest {
  protected:
    void SetUp() override {
        IntakeTest::SetUp();
        ASSERT_TRUE(disk_.makeFolders(in_));
        quick_.settle = milliseconds(50);
        quick_.lookEvery = milliseconds(50);
        quick_.pause = milliseconds(20);
    }
    std::string sendDay(int day, const std::string& folder = "") {
        Said said;
        said.time = "2026-05-0" + std::to_string(day) + "T06:20:00Z";
        return send(folder.empty() ? in_ : folder, "r" + std::to_string(day), noiseWav(std::uint64_t(day)),
                    said);
    }
    static void writePlainly(const std::string& path, const std::string& bytes) {
        std::ofstream(path, std::ios::binary) << bytes;
    }
    void expectCountAndClean(std::size_t recordings) {
        EXPECT_EQ(count(), recordings);
        expectClean();
    }
    FollowOptions quick_;
};

TEST_F(FollowTest, WhatLiesThereFirstAndAgainFromWhereItEnded) {
    for (int day = 1; day <= 7; ++day)
        sendDay(day);
    quick_.once = true;
    quick_.mostWaiting = 2;  // the rest is found by looking again
    quick_.import = options_;
    const auto first = follow(*fleet_, in_, quick_);
    ASSERT_TRUE(first) << first.error().sentence();
    EXPECT_EQ(first->stored, 7u);
    EXPECT_GT(first->looks, 3u);
    EXPECT_FALSE(first->cancelled);
    const auto second = follow(*fleet_, in_, quick_);
    EXPECT_EQ(second->stored, 0u);
    EXPECT_EQ(second->already, 7u);
    expectCountAndClean(7);
}

TEST_F(FollowTest, ArrivesWhileFollowing) {
    sendDay(1);
    Following following(path_, in_, quick_);
    EXPECT_TRUE(following.takes("r1.wav"));
    sendDay(2);
    EXPECT_TRUE(following.takes("r2.wav"));
    EXPECT_FALSE(following.stop().polled);
    expectCountAndClean(2);
}

TEST_F(FollowTest, ByLookingWhereTheSystemDoesNotTell) {
    quick_.poll = true;
    Following following(path_, in_, quick_);
    sendDay(1);
    EXPECT_TRUE(following.takes("r1.wav"));
    sendDay(2);
    EXPECT_TRUE(following.takes("r2.wav"));
    const FollowReport report = following.stop();
    EXPECT_TRUE(report.polled);
    EXPECT_TRUE(report.cancelled);
    expectCountAndClean(2);
}

// The head promises more than is there: waited for, and no refusal when it comes.
TEST_F(FollowTest, HalfAFileIsWaitedFor) {
    const std::string whole = disk_.read(sendDay(1, folder_ / "elsewhere")).value();
    fs::copy_file(folder_ / "elsewhere" + "/r1.json", in_ + "/r1.json");
    Following following(path_, in_, quick_);
    writePlainly(in_ + "/r1.wav", whole.substr(0, whole.size() / 2));
    std::this_thread::sleep_for(milliseconds(700));
    EXPECT_THAT(following.refused(), IsEmpty());
    EXPECT_THAT(following.taken(), IsEmpty());
    writePlainly(in_ + "/r1.wav", whole);
    EXPECT_TRUE(following.takes("r1.wav"));
    EXPECT_EQ(following.stop().refused, 0u);
    expectCountAndClean(1);
}

// In the end it is refused with its reason, once, and tried again when it changes.
TEST_F(FollowTest, WhatStaysHalfIsRefusedUntilItChanges) {
    const std::string whole = disk_.read(sendDay(1, folder_ / "elsewhere")).value();
    fs::copy_file(folder_ / "elsewhere" + "/r1.json", in_ + "/r1.json");
    quick_.patience = milliseconds(300);
    Following following(path_, in_, quick_);
    writePlainly(in_ + "/r1.wav", whole.substr(0, whole.size() / 2));
    EXPECT_TRUE(following.comes([&] { return !following.refused().empty(); }));
    EXPECT_THAT(following.refused(), Contains(testing::StartsWith("r1.wav: ")));
    EXPECT_TRUE(following.comes([&] { return fleet_->log().refusals()->size() == 1; }));
    writePlainly(in_ + "/r1.wav", whole);
    EXPECT_TRUE(following.takes("r1.wav"));
    EXPECT_EQ(following.stop().refused, 1u);
    EXPECT_THAT(*fleet_->log().refusals(), IsEmpty());
    expectCountAndClean(1);
}

TEST_F(FollowTest, ALateSidecarIsNoMistake) {
    sendDay(1);
    const std::string wav = disk_.read(sendDay(2, folder_ / "elsewhere")).value();
    Following following(path_, in_, quick_);
    EXPECT_TRUE(following.takes("r1.wav"));
    writePlainly(in_ + "/r2.wav", wav);
    std::this_thread::sleep_for(milliseconds(400));
    fs::copy_file(folder_ / "elsewhere" + "/r2.json", in_ + "/r2.json");
    EXPECT_TRUE(following.takes("r2.wav"));
    const FollowReport report = following.stop();
    EXPECT_EQ(report.parked + report.refused, 0u);
    expectCountAndClean(2);
}

TEST_F(FollowTest, FoldersMadeLater) {
    quick_.recursive = true;
    sendDay(4);
    Following following(path_, in_, quick_);
    EXPECT_TRUE(following.takes("r4.wav"));
    sendDay(1, in_ + "/later/deeper");
    EXPECT_TRUE(following.takes("r1.wav"));
    sendDay(2, folder_ / "made");
    fs::rename(folder_ / "made", in_ + "/moved in");
    EXPECT_TRUE(following.takes("r2.wav"));
    sendDay(3, in_ + "/moved in");
    EXPECT_TRUE(following.takes("r3.wav"));
    EXPECT_FALSE(following.stop().polled);
    expectCountAndClean(4);
}

// As a share that is not mounted for a while.
TEST_F(FollowTest, TheFolderGoesAndComesBack) {
    sendDay(1);
    Following following(path_, in_, quick_);
    EXPECT_TRUE(following.takes("r1.wav"));
    fs::rename(in_, folder_ / "away");
    EXPECT_TRUE(following.comes([&] { return !following.said().empty(); }));
    EXPECT_THAT(following.said(), Contains(HasSubstr("is not there any more")));
    sendDay(2, folder_ / "away");
    fs::rename(folder_ / "away", in_);
    EXPECT_TRUE(following.takes("r2.wav"));
    sendDay(3);
    EXPECT_TRUE(following.takes("r3.wav"));
    following.stop();
    EXPECT_EQ(following.said().size(), 2u) << "gone, and there again: once each";
    expectCountAndClean(3);
}

TEST_F(FollowTest, NoSuchFolder) {
    const auto report = follow(*fleet_, folder_ / "nosuch", quick_);
    ASSERT_FALSE(report);
    EXPECT_EQ(report.error().kind, ErrorKind::NotFound);
}

TEST_F(FollowTest, WaitsWhileAnotherProgramWrites) {
    auto other = Database::open(path_, Access::ReadWrite);
    ASSERT_TRUE(other);
    auto held = std::make_unique<Transaction>(**other);
    ASSERT_TRUE(held->begun());
    sendDay(1);
    Following following(path_, in_, quick_);
    std::this_thread::sleep_for(milliseconds(500));
    EXPECT_THAT(following.taken(), IsEmpty());
    held.reset();
    EXPECT_TRUE(following.takes("r1.wav"));
    following.stop();
    expectCountAndClean(1);
}

// A full disk is told once and waited out.
TEST_F(FollowTest, AFullDiskIsWaitedOut) {
    for (int day = 1; day <= 3; ++day)
        sendDay(day);
    fleet_.reset();
    FailingVfs disk;
    FleetTuning tuning;
    tuning.vfs = disk.name();
    auto fleet = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
    ASSERT_TRUE(fleet) << fleet.error().sentence();
    std::vector<std::string> said;
    quick_.import = options_;
    quick_.say = [&](const std::string& sentence) {
        said.push_back(sentence);
        disk.writesLeft = -1;  // somebody made room
    };
    quick_.progress = [&](const FollowReport& report, std::size_t) {
        if (report.stored + report.already == 3) quick_.import.cancel.cancel();
    };
    disk.writesLeft = 3;
    const auto report = follow(**fleet, in_, quick_);
    ASSERT_TRUE(report) << report.error().sentence();
    ASSERT_EQ(said.size(), 1u);
    EXPECT_THAT(said[0], HasSubstr("disk"));
    EXPECT_THAT(said[0], HasSubstr("new files wait, trying again"));
    fleet->reset();
    fleet_ = std::move(*FleetFile::open(path_));
    expectCountAndClean(3);
}

// What it calls after a batch: its error is said and ends nothing.
TEST_F(FollowTest, TheRulesAreAskedAfterEachBatch) {
    sendDay(1);
    quick_.once = true;
    quick_.import = options_;
    int asked = 0;
    std::vector<std::string> said;
    quick_.afterwards = [&](FleetFile&) -> Status {
        ++asked;
        return fail(ErrorKind::Unreadable, "rules", "", "are not there");
    };
    quick_.say = [&](const std::string& sentence) { said.push_back(sentence); };
    const auto report = follow(*fleet_, in_, quick_);
    ASSERT_TRUE(report);
    EXPECT_EQ(report->stored, 1u);
    EXPECT_EQ(asked, 1);
    EXPECT_THAT(said, testing::ElementsAre("rules: are not there"));
}

// More happened than the system keeps: usually 16,384 words, inotify(7).
TEST_F(FollowTest, WhatTheSystemCouldNotKeepIsSaid) {
    int most = 0;
    std::ifstream("/proc/sys/fs/inotify/max_queued_events") >> most;
    if (most <= 0 || most > 100000) GTEST_SKIP() << "the system keeps " << most << " words";
    auto watch = FolderWatch::open(in_, false);
    ASSERT_TRUE(watch) << watch.error().sentence();
    for (int i = 0; i < most + 1000; ++i)
        writePlainly(in_ + (i % 2 ? "/a.wav" : "/b.wav"), "");
    bool lost = false;
    for (int i = 0; i < 100 && !lost; ++i)
        lost = (*watch)->wait(milliseconds(100)).lost;
    EXPECT_TRUE(lost);
}

// The desktop and `follow` at once: both write, and the one sees that the other has.
TEST_F(FollowTest, TwoProgramsWriteAtOnce) {
    for (int day = 1; day <= 6; ++day)
        sendDay(day);
    const std::int64_t before = fleet_->changesByOthers().value();
    Event own;
    own.machine = "T-1";
    own.kind = "note";
    own.time = at("2026-05-04T06:20:00Z");
    own.text = "before";
    ASSERT_TRUE(fleet_->log().addEvent(own));
    EXPECT_EQ(fleet_->changesByOthers().value(), before) << "one's own writing is no news";
    Following following(path_, in_, quick_);
    for (int i = 0; i < 50; ++i) {
        own.text = "note " + std::to_string(i);
        ASSERT_TRUE(fleet_->log().addEvent(own));
    }
    EXPECT_TRUE(following.takes("r6.wav"));
    following.stop();
    EXPECT_NE(fleet_->changesByOthers().value(), before);
    EXPECT_EQ(fleet_->log().events("T-1")->size(), 51u);
    expectCountAndClean(6);
}

}  // namespace
}  // namespace fettle::intake_test
