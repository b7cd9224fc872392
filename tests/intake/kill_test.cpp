// An import killed at any point and started again loses nothing acknowledged and doubles nothing. The command
// program is killed without warning (SIGKILL) at random moments; the seeds are fixed, the moments are the
// machine's. Some kills with every run of the tests; a hundred by
//   FETTLE_KILLS=100 build/test_intake --gtest_filter='Kill.*'
#include <gmock/gmock.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <random>

#include "tests/intake/disturbed.h"
#include "tests/intake/fleet_content.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using Clock = std::chrono::steady_clock;

struct Child {
    pid_t pid = -1;
    int out = -1;
};

Child start(const std::vector<std::string>& arguments) {
    std::vector<char*> argv;
    for (const std::string& argument : arguments)
        argv.push_back(const_cast<char*>(argument.c_str()));
    argv.push_back(nullptr);
    int ends[2];
    EXPECT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        ::dup2(ends[1], STDOUT_FILENO);
        ::close(ends[0]);
        ::close(ends[1]);
        ::close(STDERR_FILENO);
        ::execv(argv[0], argv.data());
        ::_exit(127);
    }
    ::close(ends[1]);
    return {child, ends[0]};
}

// Whole lines only: what the child had not finished telling it had not told.
std::vector<std::string> linesUntilEnd(int from) {
    std::string text;
    char some[4096];
    for (ssize_t n = ::read(from, some, sizeof some); n > 0; n = ::read(from, some, sizeof some))
        text.append(some, std::size_t(n));
    ::close(from);
    std::vector<std::string> lines;
    for (std::size_t at = 0, end = text.find('\n'); end != text.npos; at = end + 1, end = text.find('\n', at))
        lines.push_back(text.substr(at, end - at));
    return lines;
}

struct KilledImport {
    std::vector<std::string> acknowledged;
    bool killed = false;
};

// Negative: let it finish.
KilledImport importKilledAfter(const std::string& fleet, const std::string& in, int batch,
                               std::chrono::microseconds after) {
    const Child child = start({FETTLE_CLI, "import", fleet, in, "--tell-acknowledged", "--threads", "2",
                               "--batch", std::to_string(batch)});
    if (after.count() >= 0) {
        std::this_thread::sleep_for(after);
        ::kill(child.pid, SIGKILL);
    }
    KilledImport ended{linesUntilEnd(child.out), false};
    int status = 0;
    ::waitpid(child.pid, &status, 0);
    ended.killed = WIFSIGNALED(status);
    EXPECT_FALSE(WIFEXITED(status) && WEXITSTATUS(status) > 1) << WEXITSTATUS(status);
    return ended;
}

std::chrono::microseconds undisturbedTime(const Disturbed& disturbed, const std::string& folder, int batch) {
    const std::string fleet = disturbed.newFleetFile(folder, -batch);
    const auto begun = Clock::now();
    EXPECT_EQ(
        importKilledAfter(fleet, disturbed.in(), batch, std::chrono::microseconds(-1)).acknowledged.size(),
        disturbed.stored());
    return std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - begun);
}

TEST(Kill, NothingAcknowledgedIsLostAndNothingDoubled) {
    const int kills = timesFrom("FETTLE_KILLS", 6);
    const Disturbed disturbed;
    const ScratchFolder folder;
    std::mt19937 random(20260504);
    const std::vector<int> batches{1, 5, 16};
    std::vector<std::chrono::microseconds> whole;
    for (const int batch : batches)
        whole.push_back(undisturbedTime(disturbed, folder.path(), batch));
    int killed = 0, inTheMiddle = 0;
    for (int run = 0; killed < kills && run < 3 * kills; ++run) {
        const std::size_t kind = std::size_t(run) % batches.size();
        const std::chrono::microseconds after(
            std::uniform_int_distribution<long>(0, whole[kind].count())(random));
        const std::string fleet = disturbed.newFleetFile(folder.path(), run);
        const KilledImport ended = importKilledAfter(fleet, disturbed.in(), batches[kind], after);
        killed += ended.killed;
        inTheMiddle += ended.killed && !ended.acknowledged.empty();
        SCOPED_TRACE(testing::Message() << "run " << run << ", killed after " << after.count() << " us");
        disturbed.expectWholeAndCarriedOn(fleet, ended.acknowledged);
        std::filesystem::remove(fleet);
    }
    std::printf("%d imports killed, %d of them after recordings had been acknowledged\n", killed,
                inTheMiddle);
    EXPECT_EQ(killed, kills);
}

// The same file killed again and again, as a computer with a bad power supply would.
TEST(Kill, TheSameFileOverAndOver) {
    const int kills = std::max(4, timesFrom("FETTLE_KILLS", 4) / 4);
    const Disturbed disturbed;
    const ScratchFolder folder;
    const std::string fleet = disturbed.newFleetFile(folder.path(), 0);
    std::mt19937 random(7);
    std::vector<std::string> acknowledged;
    for (int i = 0; i < kills; ++i) {
        const std::chrono::microseconds after(std::uniform_int_distribution<long>(15000, 60000)(random));
        for (const std::string& path : importKilledAfter(fleet, disturbed.in(), 2, after).acknowledged)
            acknowledged.push_back(path);
    }
    disturbed.expectWholeAndCarriedOn(fleet, acknowledged);
}

}  // namespace
}  // namespace fettle::intake_test
