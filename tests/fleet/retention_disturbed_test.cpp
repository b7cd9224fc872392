// Retention killed at any point, or met by a full disk at any write, leaves a whole file from which nothing
// is gone that was to stay; carried on it ends where an undisturbed one ends. The seeds are fixed, the
// moments of kills are the machine's. Some with every run of the tests; a hundred by
//   FETTLE_KILLS=100 FETTLE_FULL_DISKS=100 build/test_fleet --gtest_filter='RetentionDisturbed.*'
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <random>
#include <thread>

#include "tests/fleet/retention_site.h"
#include "tests/store/failing_vfs.h"

namespace fettle::fleet_test {
namespace {

using std::chrono::microseconds;
using testing::HasSubstr;

int timesOf(const char* variable, int usual) {
    const char* said = std::getenv(variable);
    return said ? std::atoi(said) : usual;
}

class RetentionDisturbed : public RetentionSite {
  protected:
    void SetUp() override {
        RetentionSite::SetUp();
        tell("FN-01", "2026-04-14T07:00:00Z", "inspection");
        path_ = fleet_->path();
        model_ = path_ + ".model";
        ASSERT_TRUE(fleet_->backup(model_));
        start_ = content();
        apply();
        end_ = content();
        fleet_.reset();
        putDownAnew();
    }
    void putDownAnew() {
        fleet_.reset();
        for (const char* ending : {"-wal", "-shm"})
            std::filesystem::remove(path_ + ending);
        std::filesystem::copy_file(model_, path_, std::filesystem::copy_options::overwrite_existing);
    }
    // Whole, with all that was to stay; then carried on to the end.
    void expectWholeAndCarriedOn() {
        auto opened = FleetFile::open(path_);
        ASSERT_TRUE(opened) << opened.error().sentence();
        fleet_ = std::move(*opened);
        expectClean();
        const std::string now = content();
        ASSERT_EQ(now.size(), end_.size());
        for (std::size_t i = 0; i < end_.size(); ++i)
            ASSERT_TRUE(now[i] == end_[i] || (now[i] == '+' && end_[i] == '-'))
                << "gone, but was to stay: " << i;
        apply();
        EXPECT_EQ(content(), end_);
        expectClean();
        fleet_.reset();
    }

    static RetentionOptions smallSteps() {
        RetentionOptions options;
        options.batch = 6;
        return options;
    }

    std::string path_, model_, start_, end_;
};

TEST_F(RetentionDisturbed, KilledAtAnyMoment) {
    const int kills = timesOf("FETTLE_KILLS", 6);
    std::mt19937 random(20260601);
    microseconds whole{0};
    int killed = 0, inTheMiddle = 0;
    for (int run = 0; run <= 4 * kills && killed < kills; ++run) {
        putDownAnew();
        const auto begun = std::chrono::steady_clock::now();
        const pid_t child = ::fork();
        if (child == 0) {
            auto fleet = FleetFile::open(path_);
            ::_exit(fleet && applyRetention(**fleet, smallSteps()) ? 0 : 1);
        }
        if (run > 0) {
            std::this_thread::sleep_for(
                microseconds(std::uniform_int_distribution<long>(0, whole.count())(random)));
            ::kill(child, SIGKILL);
        }
        int status = 0;
        ::waitpid(child, &status, 0);
        if (run == 0) {
            ASSERT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
            whole = std::chrono::duration_cast<microseconds>(std::chrono::steady_clock::now() - begun);
            continue;
        }
        killed += WIFSIGNALED(status);
        fleet_ = FleetFile::open(path_).value();
        inTheMiddle += WIFSIGNALED(status) && content() != start_ && content() != end_;
        fleet_.reset();
        SCOPED_TRACE(testing::Message() << "run " << run);
        expectWholeAndCarriedOn();
    }
    std::printf("%d runs of retention killed, %d of them half way\n", killed, inTheMiddle);
    EXPECT_EQ(killed, kills);
}

TEST_F(RetentionDisturbed, ADiskFullAtAnyWrite) {
    const int runs = timesOf("FETTLE_FULL_DISKS", 6);
    std::mt19937 random(20260602);
    FailingVfs disk;
    FleetTuning tuning;
    tuning.vfs = disk.name();
    int filled = 0, most = 0;
    for (int run = 0; run <= 4 * runs && filled < runs; ++run) {
        putDownAnew();
        auto fleet = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
        ASSERT_TRUE(fleet) << fleet.error().sentence();
        disk.writes = 0;
        disk.writesLeft = run == 0 ? -1 : std::uniform_int_distribution<int>(0, most)(random);
        const auto done = applyRetention(**fleet, smallSteps());
        if (run == 0) most = disk.writes;
        fleet->reset();
        disk.writesLeft = -1;
        SCOPED_TRACE(testing::Message() << "run " << run);
        if (!done) {
            ++filled;
            EXPECT_EQ(done.error().kind, ErrorKind::Unwritable) << done.error().sentence();
            EXPECT_THAT(done.error().sentence(), HasSubstr("disk"));
            EXPECT_THAT(done.error().sentence(), HasSubstr("nothing of this step was kept"));
        }
        expectWholeAndCarriedOn();
    }
    std::printf("%d runs of retention met a full disk, of %d writes\n", filled, most);
    EXPECT_EQ(filled, runs);
}

// Compacting is one transaction: killed or out of room it leaves the file as it was.
TEST_F(RetentionDisturbed, CompactingKilledOrOutOfRoom) {
    const int runs = timesOf("FETTLE_KILLS", 4);
    std::mt19937 random(20260603);
    fleet_ = FleetFile::open(path_).value();
    apply();
    fleet_.reset();
    std::filesystem::copy_file(path_, model_, std::filesystem::copy_options::overwrite_existing);
    for (int run = 0; run < runs; ++run) {
        putDownAnew();
        const pid_t child = ::fork();
        if (child == 0) {
            auto fleet = FleetFile::open(path_);
            ::_exit(fleet && (*fleet)->retention().compact({}) ? 0 : 1);
        }
        std::this_thread::sleep_for(microseconds(std::uniform_int_distribution<long>(0, 60000)(random)));
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        expectWholeAndCarriedOn();
        FailingVfs disk;
        FleetTuning tuning;
        tuning.vfs = disk.name();
        auto fleet = FleetFile::open(path_, OpenMode::ReadWrite, tuning).value();
        disk.writesLeft = std::uniform_int_distribution<int>(0, 40)(random);
        const auto done = fleet->retention().compact({});
        if (!done) {
            EXPECT_THAT(done.error().sentence(), HasSubstr("disk"));
        }
        fleet.reset();
        disk.writesLeft = -1;
        expectWholeAndCarriedOn();
        for (const auto& entry : std::filesystem::directory_iterator(folder_.path()))
            EXPECT_THAT(entry.path().filename().string(), testing::StartsWith("site.fettle"));
    }
}

}  // namespace
}  // namespace fettle::fleet_test
