// Import, follow and re-examination killed at any point and started again lose nothing acknowledged and
// double nothing. The command program is killed without warning (SIGKILL) at random moments; the seeds are
// fixed, the moments are the machine's. Some kills with every run of the tests; a hundred of each by
//   FETTLE_KILLS=100 build/test_intake --gtest_filter='Kill.*'
#include <gmock/gmock.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <functional>
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

struct Killed {
    std::vector<std::string> acknowledged;
    bool killed = false;
};

// Negative: let it finish.
Killed killedAfter(const std::vector<std::string>& command, std::chrono::microseconds after) {
    const Child child = start(command);
    if (after.count() >= 0) {
        std::this_thread::sleep_for(after);
        ::kill(child.pid, SIGKILL);
    }
    Killed ended{linesUntilEnd(child.out), false};
    int status = 0;
    ::waitpid(child.pid, &status, 0);
    ended.killed = WIFSIGNALED(status);
    EXPECT_FALSE(WIFEXITED(status) && WEXITSTATUS(status) > 1) << WEXITSTATUS(status);
    return ended;
}

// What is killed: a command on a fleet file.
using CommandOf = std::function<std::vector<std::string>(const std::string& fleet, int batch)>;
// A fresh fleet file, and what must hold of it after.
using FreshOf = std::function<std::string(int run)>;
using WholeOf = std::function<void(const std::string& fleet, const std::vector<std::string>& acknowledged)>;

void killAtRandom(const char* what, unsigned seed, std::size_t all, const CommandOf& command,
                  const FreshOf& fresh, const WholeOf& expectWhole) {
    const int kills = timesFrom("FETTLE_KILLS", 6);
    std::mt19937 random(seed);
    const std::vector<int> batches{1, 5, 16};
    std::vector<std::chrono::microseconds> whole;
    for (const int batch : batches) {
        const std::string fleet = fresh(-batch);
        const auto begun = Clock::now();
        EXPECT_EQ(killedAfter(command(fleet, batch), std::chrono::microseconds(-1)).acknowledged.size(), all);
        whole.push_back(std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - begun));
    }
    int killed = 0, inTheMiddle = 0;
    for (int run = 0; killed < kills && run < 3 * kills; ++run) {
        const std::size_t kind = std::size_t(run) % batches.size();
        const std::chrono::microseconds after(
            std::uniform_int_distribution<long>(0, whole[kind].count())(random));
        const std::string fleet = fresh(run);
        const Killed ended = killedAfter(command(fleet, batches[kind]), after);
        killed += ended.killed;
        inTheMiddle += ended.killed && !ended.acknowledged.empty();
        SCOPED_TRACE(testing::Message() << "run " << run << ", killed after " << after.count() << " us");
        expectWhole(fleet, ended.acknowledged);
        std::filesystem::remove(fleet);
    }
    std::printf("%s: %d killed, %d of them after recordings had been acknowledged\n", what, killed,
                inTheMiddle);
    EXPECT_EQ(killed, kills);
}

std::vector<std::string> importOf(const std::string& fleet, const std::string& in, int batch) {
    return {FETTLE_CLI,           "import", fleet, in, "--tell-acknowledged", "--threads", "2", "--batch",
            std::to_string(batch)};
}

TEST(Kill, ImportLosesAndDoublesNothing) {
    const Disturbed disturbed;
    const ScratchFolder folder;
    killAtRandom(
        "import", 20260504, disturbed.stored(),
        [&](const std::string& fleet, int batch) { return importOf(fleet, disturbed.in(), batch); },
        [&](int run) { return disturbed.newFleetFile(folder.path(), run); },
        [&](const std::string& fleet, const std::vector<std::string>& acknowledged) {
            disturbed.expectWholeAndCarriedOn(fleet, acknowledged);
        });
}

TEST(Kill, FollowLosesAndDoublesNothing) {
    const Disturbed disturbed;
    const ScratchFolder folder;
    killAtRandom(
        "follow", 20260507, disturbed.stored(),
        [&](const std::string& fleet, int batch) -> std::vector<std::string> {
            return {FETTLE_CLI,  "follow",
                    fleet,       disturbed.in(),
                    "--once",    "--settle",
                    "0",         "--wait",
                    "0",         "--tell-acknowledged",
                    "--threads", "2",
                    "--batch",   std::to_string(batch)};
        },
        [&](int run) { return disturbed.newFleetFile(folder.path(), run); },
        [&](const std::string& fleet, const std::vector<std::string>& acknowledged) {
            disturbed.expectWholeAndCarriedOn(fleet, acknowledged);
        });
}

TEST(Kill, ReExaminationLosesAndDoublesNothing) {
    const WeighedLongAgo old;
    const ScratchFolder folder;
    killAtRandom(
        "re-examination", 20260508, old.recordings(),
        [&](const std::string& fleet, int batch) -> std::vector<std::string> {
            return {FETTLE_CLI,  "re-examine", fleet,     "--tell-acknowledged",
                    "--threads", "2",          "--batch", std::to_string(batch)};
        },
        [&](int run) { return old.newFleetFile(folder.path(), run); },
        [&](const std::string& fleet, const std::vector<std::string>& acknowledged) {
            old.expectWholeAndCarriedOn(fleet, acknowledged);
        });
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
        for (const std::string& path : killedAfter(importOf(fleet, disturbed.in(), 2), after).acknowledged)
            acknowledged.push_back(path);
    }
    disturbed.expectWholeAndCarriedOn(fleet, acknowledged);
}

}  // namespace
}  // namespace fettle::intake_test
