// Readers beside the writer: a second and third connection ask for what stands in the fleet file while
// recordings come in, are weighed again and are followed, each on a thread of its own as in the desktop. What
// a reader sees is always whole: no count ever falls, every examination can be read. Under the thread
// sanitizer (DEVELOPERS.md, "Test") this is where core's threads meet.
#include <gtest/gtest.h>

#include <fmt/format.h>

#include <atomic>
#include <thread>

#include "core/exchange/examination_json.h"
#include "core/intake/follow.h"
#include "core/intake/re_examine.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

// Asks again and again on a connection of its own.
class Reader {
  public:
    explicit Reader(const std::string& path) : thread_([this, path] { read(path); }) {}
    ~Reader() { finish(); }
    void finish() {
        done_ = true;
        if (thread_.joinable()) thread_.join();
    }
    int rounds() const { return rounds_; }
    void awaitOneMore() const {
        const int from = rounds_;
        while (rounds_ < from + 2 && !failed_)
            std::this_thread::yield();
    }

  private:
    void read(const std::string& path) {
        auto fleet = FleetFile::open(path);
        if (!fleet) {
            failed_ = true;
            FAIL() << fleet.error().sentence();
        }
        std::size_t before = 0;
        do {
            const auto count = (*fleet)->recordings().count();
            failed_ = !count || *count < before || !everyVerdict(**fleet);
            ASSERT_FALSE(failed_);
            before = *count;
            ++rounds_;
        } while (!done_);
    }
    static bool everyVerdict(FleetFile& fleet) {
        const auto machine = fleet.machines().byTag("T-1");
        if (!machine) return false;
        const auto all = fleet.recordings().examinations(machine->id, at("2026-05-01T00:00:00Z"), kNow);
        if (!all) return false;
        for (const auto& one : *all)
            if (!examinationFromText(one.json, "stored")) return false;
        return fleet.trends().channels(machine->id).has_value();
    }

    std::atomic<bool> done_ = false, failed_ = false;
    std::atomic<int> rounds_ = 0;
    std::thread thread_;
};

class Beside : public IntakeTest {
  protected:
    void sendDays(int from, int count) {
        for (int day = from; day < from + count; ++day) {
            Said said;
            said.time = fmt::format("2026-05-{:02}T06:20:00Z", day);
            sendNoise(fmt::format("r{}", day), said, std::uint64_t(day));
        }
    }
};

TEST_F(Beside, ReadersSeeAWholeFileWhileItIsWritten) {
    sendDays(1, 8);
    Reader one(path_), two(path_);
    options_.batch = 2;
    options_.acknowledged = [&](const auto&) { one.awaitOneMore(); };
    EXPECT_EQ(taken().stored, 8u);
    options_.evenCurrent = true;
    const auto again = reExamine(*fleet_, "", options_);
    ASSERT_TRUE(again) << again.error().sentence();
    EXPECT_EQ(again->weighed, 8u);
    one.finish();
    two.finish();
    EXPECT_GT(one.rounds(), 4);
    expectClean();
}

TEST_F(Beside, ReadersAndFollowShareTheFile) {
    sendDays(1, 4);
    Reader reader(path_);
    FollowOptions follows;
    follows.once = true;
    follows.poll = true;
    follows.settle = std::chrono::milliseconds(0);
    follows.import.now = kNow;
    follows.import.threads = 2;
    const auto report = follow(*fleet_, in_, follows);
    ASSERT_TRUE(report) << report.error().sentence();
    EXPECT_EQ(report->stored, 4u);
    reader.awaitOneMore();
    reader.finish();
    expectClean();
}

}  // namespace
}  // namespace fettle::intake_test
