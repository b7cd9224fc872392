// Requests off the window's thread: counted, gated, overtaken. Rules: those of the header, *no source*.
#include "ui/work/fleet_work.h"

#include <gtest/gtest.h>

#include <QSemaphore>
#include <QTest>
#include <atomic>
#include <memory>
#include <thread>

#include "tests/base/scratch_folder.h"
#include "ui/work/long_work.h"

namespace fettle {
namespace {

constexpr int kPatienceMs = 60000;

bool waitFor(const std::function<bool()>& state) {
    return QTest::qWaitFor(state, kPatienceMs);
}

class FleetWorkTest : public testing::Test {
  protected:
    void SetUp() override {
        auto made = FleetFile::create(path_, {"Test works", "UTC", 0.1});
        ASSERT_TRUE(made) << made.error().sentence();
        work_ = std::make_unique<FleetWork>(std::move(*made));
    }
    void settle() {
        ASSERT_TRUE(waitFor([this] { return work_->waiting() == 0; }));
    }
    // Holds both reading threads until `gate` is released twice.
    void holdReaders(QSemaphore& gate, QSemaphore& begun) {
        for (int i = 0; i < 2; ++i)
            work_->ask<int>(
                nullptr, "",
                [&](FleetFile&, const CancelToken&) -> Result<int> {
                    begun.release();
                    gate.acquire();
                    return 0;
                },
                [](Result<int>) {});
        begun.acquire(2);
    }

    ScratchFolder folder_;
    std::string path_ = folder_ / "site.fettle";
    std::unique_ptr<FleetWork> work_;
    QObject here_;
};

TEST_F(FleetWorkTest, TheJobRunsElsewhereAndItsAnswerComesBackHere) {
    std::thread::id worked, answered;
    std::string site;
    work_->ask<SiteSettings>(
        &here_, "site",
        [&](FleetFile& fleet, const CancelToken&) {
            worked = std::this_thread::get_id();
            return fleet.site();
        },
        [&](Result<SiteSettings> read) {
            answered = std::this_thread::get_id();
            site = read ? read->site : read.error().sentence();
        });
    EXPECT_EQ(work_->waiting(), 1);
    settle();
    EXPECT_EQ(site, "Test works");
    EXPECT_EQ(answered, std::this_thread::get_id());
    EXPECT_NE(worked, std::this_thread::get_id());
}

TEST_F(FleetWorkTest, ANewerRequestOfOneKeyCancelsTheOlderWhoseAnswerNeverComes) {
    QSemaphore begun, gate;
    bool cancelled = false, olderAnswered = false, newerAnswered = false;
    work_->ask<int>(
        &here_, "page",
        [&](FleetFile&, const CancelToken& token) -> Result<int> {
            begun.release();
            gate.acquire();
            cancelled = token.cancelled();
            return 1;
        },
        [&](Result<int>) { olderAnswered = true; });
    begun.acquire();
    work_->ask<int>(
        &here_, "page", [](FleetFile&, const CancelToken&) -> Result<int> { return 2; },
        [&](Result<int> answer) { newerAnswered = answer && *answer == 2; });
    gate.release();
    settle();
    EXPECT_TRUE(cancelled);
    EXPECT_FALSE(olderAnswered);
    EXPECT_TRUE(newerAnswered);
}

TEST_F(FleetWorkTest, OvertakenRequestsThatHadNotBegunAreNeverRun) {
    QSemaphore begun, gate;
    holdReaders(gate, begun);
    std::atomic<int> ran = 0;
    int answer = 0;
    for (int i = 1; i <= 50; ++i)
        work_->ask<int>(
            &here_, "drag",
            [&ran, i](FleetFile&, const CancelToken&) -> Result<int> {
                ++ran;
                return i;
            },
            [&](Result<int> got) { answer = got.value_or(-1); });
    EXPECT_EQ(work_->waiting(), 3);
    gate.release(2);
    settle();
    EXPECT_EQ(ran, 1);
    EXPECT_EQ(answer, 50);
}

TEST_F(FleetWorkTest, OneKeyOfTwoReceiversAreTwoRequests) {
    QObject other;
    int answers = 0;
    for (QObject* receiver : {&here_, &other})
        work_->ask<int>(
            receiver, "trend", [](FleetFile&, const CancelToken&) -> Result<int> { return 1; },
            [&](Result<int>) { ++answers; });
    settle();
    EXPECT_EQ(answers, 2);
}

TEST_F(FleetWorkTest, TheNewestOfWaitingRequestsIsServedFirst) {
    QSemaphore begun, gate;
    holdReaders(gate, begun);
    std::vector<int> order;
    std::mutex mutex;
    for (int i = 0; i < 4; ++i)
        work_->ask<int>(
            &here_, QString::number(i),
            [&, i](FleetFile&, const CancelToken&) -> Result<int> {
                const std::lock_guard lock(mutex);
                order.push_back(i);
                return i;
            },
            [](Result<int>) {});
    gate.release(1);  // one reader goes on alone
    ASSERT_TRUE(waitFor([&] { return work_->waiting() == 1; }));
    gate.release(1);
    settle();
    EXPECT_EQ(order, (std::vector<int>{3, 2, 1, 0}));
}

TEST_F(FleetWorkTest, WritesRunInOrderNoneIsDroppedAndEachSuccessIsAnnounced) {
    std::vector<int> order;
    int announced = 0;
    QObject::connect(work_.get(), &FleetWork::changedFleet, &here_, [&] { ++announced; });
    for (int i = 0; i < 100; ++i)
        work_->write<int>(
            &here_,
            [&order, i](FleetFile&) -> Result<int> {
                order.push_back(i);
                if (i == 50) return fail(ErrorKind::Invalid, "", "", "the fiftieth fails");
                return i;
            },
            [](Result<int>) {});
    settle();
    ASSERT_EQ(order.size(), 100u);
    for (int i = 0; i < 100; ++i)
        EXPECT_EQ(order[std::size_t(i)], i);
    EXPECT_EQ(announced, 99);
}

TEST_F(FleetWorkTest, AnAnswerForAReceiverThatIsGoneIsDropped) {
    bool answered = false;
    auto receiver = std::make_unique<QObject>();
    QSemaphore gate;
    work_->ask<int>(
        receiver.get(), "x",
        [&](FleetFile&, const CancelToken&) -> Result<int> {
            gate.acquire();
            return 1;
        },
        [&](Result<int>) { answered = true; });
    receiver.reset();
    gate.release();
    settle();
    EXPECT_FALSE(answered);
}

TEST_F(FleetWorkTest, WhatIsThrownComesBackAsAnError) {
    std::string rule;
    work_->ask<int>(
        &here_, "x",
        [](FleetFile&, const CancelToken&) -> Result<int> { throw std::runtime_error("out of paper"); },
        [&](Result<int> answer) { rule = answer ? "" : answer.error().rule; });
    settle();
    EXPECT_EQ(rule, "out of paper");
}

TEST_F(FleetWorkTest, AFleetThatDoesNotOpenAnswersEveryRequestWithItsError) {
    FleetWork work(folder_ / "nosuch.fettle");
    ASSERT_TRUE(work.trouble());
    EXPECT_EQ(work.trouble()->kind, ErrorKind::NotFound);
    EXPECT_FALSE(work.writable());
    int refused = 0;
    work.ask<int>(
        &here_, "x", [](FleetFile&, const CancelToken&) -> Result<int> { return 1; },
        [&](Result<int> answer) { refused += answer ? 0 : 1; });
    work.write<int>(
        &here_, [](FleetFile&) -> Result<int> { return 1; },
        [&](Result<int> answer) { refused += answer ? 0 : 1; });
    ASSERT_TRUE(waitFor([&] { return work.waiting() == 0; }));
    EXPECT_EQ(refused, 2);
}

TEST_F(FleetWorkTest, WhatWaitsToBeWrittenIsWrittenBeforeTheEnd) {
    for (int i = 0; i < 20; ++i)
        work_->write<void>(
            &here_,
            [i](FleetFile& fleet) {
                return fleet.log().putRefusal({0, std::to_string(i), "", "rule", "refused", {}, {}});
            },
            [](Status) {});
    work_.reset();
    auto fleet = FleetFile::open(path_);
    ASSERT_TRUE(fleet);
    EXPECT_EQ((*fleet)->log().refusals()->size(), 20u);
}

TEST_F(FleetWorkTest, IdleIsSaidOnceAllIsAnsweredAndWhatAnswersAskCounts) {
    int idle = 0, answers = 0;
    QObject::connect(work_.get(), &FleetWork::idle, &here_, [&] { ++idle; });
    const auto one = [](FleetFile&, const CancelToken&) -> Result<int> { return 1; };
    work_->ask<int>(&here_, "first", one, [&](Result<int>) {
        ++answers;
        work_->ask<int>(&here_, "second", one, [&](Result<int>) { ++answers; });
    });
    settle();
    EXPECT_EQ(answers, 2);
    EXPECT_EQ(idle, 1);
}

TEST_F(FleetWorkTest, LongWorkTellsHowFarItIsRefusesASecondAndStopsWhenAsked) {
    LongWork work(path_);
    QSemaphore begun;
    std::vector<qulonglong> told;
    bool cancelled = false, finished = false;
    QObject::connect(&work, &LongWork::progressed, &here_, [&](qulonglong done) { told.push_back(done); });
    QObject::connect(&work, &LongWork::finished, &here_, [&] { finished = true; });
    const auto untilStopped = [&](FleetFile&, const Progress& progress,
                                  const CancelToken& token) -> Result<int> {
        progress(3, 3, "all");
        begun.release();
        while (!token.cancelled())
            std::this_thread::yield();
        cancelled = true;
        return fail(ErrorKind::Cancelled, "", "", "stopped");
    };
    EXPECT_TRUE(work.start<int>(untilStopped, [](Result<int>) {}));
    begun.acquire();
    EXPECT_FALSE(work.start<int>(untilStopped, [](Result<int>) {}));
    EXPECT_TRUE(work.running());
    work.cancel();
    ASSERT_TRUE(waitFor([&] { return finished; }));
    EXPECT_TRUE(cancelled);
    EXPECT_FALSE(work.running());
    EXPECT_EQ(told, (std::vector<qulonglong>{3}));
}

}  // namespace
}  // namespace fettle
