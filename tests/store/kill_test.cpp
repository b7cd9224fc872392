#include <gmock/gmock.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <filesystem>
#include <functional>
#include <thread>

#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

// Writers in processes of their own, ended without warning; and several at once.
class Kill : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        fleet_.reset();
    }

    static NewRecording recordingOf(std::int64_t machine, int number) {
        const auto time = at("2026-05-04T00:00:00Z") + std::chrono::minutes(number);
        return newRecording(machine, formatUtc(time), std::uint64_t(number), 3000);
    }

    // Puts recordings from `first` on in twos, and tells each number once it is acknowledged.
    [[noreturn]] void writeUntilKilled(int first, int pipe) {
        auto fleet = FleetFile::open(path_);
        if (!fleet) ::_exit(1);
        for (int number = first;; number += 2) {
            if (!(*fleet)->recordings().putAll(
                    {recordingOf(machine_, number), recordingOf(machine_, number + 1)}))
                ::_exit(1);
            if (::write(pipe, &number, sizeof number) != sizeof number) ::_exit(1);
        }
    }

    // The last number acknowledged by a child that is killed after `acknowledged` of them and a while.
    int killAfter(int first, int acknowledged, int microseconds) {
        int ends[2];
        EXPECT_EQ(::pipe(ends), 0);
        const pid_t child = ::fork();
        if (child == 0) {
            ::close(ends[0]);
            writeUntilKilled(first, ends[1]);
        }
        ::close(ends[1]);
        int last = first - 2, number = 0;
        for (int i = 0; i < acknowledged && ::read(ends[0], &number, sizeof number) == sizeof number; ++i)
            last = number;
        ::usleep(useconds_t(microseconds));
        ::kill(child, SIGKILL);
        while (::read(ends[0], &number, sizeof number) == sizeof number)
            last = number;
        ::waitpid(child, nullptr, 0);
        ::close(ends[0]);
        return last;
    }
};

TEST_F(Kill, WhatWasAcknowledgedIsThereAndNothingHalf) {
    int next = 0;
    Nonsense noise(11);
    for (int round = 0; round < 8; ++round) {
        const int last = killAfter(next, 1 + round % 3, noise.below(30000));
        ASSERT_GE(last, next) << "the writer did not come to write";
        reopen();
        expectClean();
        const std::size_t count = fleet_->recordings().count().value();
        EXPECT_GE(int(count), last + 2);
        EXPECT_EQ(count % 2, 0u) << "two go in together or not at all";
        for (int number = 0; number < last + 2; ++number)
            EXPECT_TRUE(fleet_->recordings().knows(recordingOf(machine_, number).key).value()) << number;
        // Started again it doubles nothing.
        EXPECT_EQ(fleet_->recordings().put(recordingOf(machine_, last)).value(), PutRecording::AlreadyThere);
        next = int(count);
        fleet_.reset();
    }
}

TEST_F(Kill, TwoWritersAndAReaderAtOnce) {
    std::atomic<bool> writing{true};
    const auto write = [&](int first) {
        auto fleet = FleetFile::open(path_).value();
        for (int number = first; number < first + 15; ++number)
            EXPECT_TRUE(fleet->recordings().put(recordingOf(machine_, number)));
    };
    std::size_t most = 0;
    std::thread reader([&] {
        auto fleet = FleetFile::open(path_, OpenMode::ReadOnly).value();
        while (writing) {
            const auto list = fleet->recordings().list(machine_, Instant::min(), Instant::max());
            ASSERT_TRUE(list) << list.error().sentence();
            EXPECT_GE(list->size(), most) << "what was seen once stays";
            most = list->size();
            for (const RecordingEntry& entry : *list)
                EXPECT_EQ(entry.channels.size(), 3u) << "never half a recording";
        }
    });
    std::thread a(write, 0), b(write, 100);
    a.join();
    b.join();
    writing = false;
    reader.join();
    reopen();
    EXPECT_EQ(fleet_->recordings().count().value(), 30u);
    expectClean();
}

// The last to close a file takes its -wal away; a program that lost its locks without knowing would lose what
// it writes from then on. Opening and closing a second connection must not cost the first one its locks.
TEST_F(Kill, ASecondConnectionTakesNoLocksAway) {
    int go[2], done[2];
    ASSERT_EQ(::pipe(go) | ::pipe(done), 0);
    const pid_t child = ::fork();
    char byte = 'x';
    if (child == 0) {
        ::close(go[1]);
        const bool told = ::read(go[0], &byte, 1) == 1;
        if (told) {
            auto second = FleetFile::open(path_);
            if (second) (void)(*second)->machines().all();
        }
        ::_exit(::write(done[1], &byte, 1) == 1 ? 0 : 1);
    }
    auto first = FleetFile::open(path_).value();
    ASSERT_TRUE(first->recordings().put(recordingOf(machine_, 1)));
    for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::ReadOnly})
        EXPECT_TRUE(FleetFile::open(path_, mode));
    ASSERT_EQ(::write(go[1], &byte, 1), 1);
    ASSERT_EQ(::read(done[0], &byte, 1), 1);
    ::waitpid(child, nullptr, 0);
    EXPECT_TRUE(std::filesystem::exists(path_ + "-wal")) << "taken away under an open connection";
    ASSERT_TRUE(first->recordings().put(recordingOf(machine_, 2)));
    first.reset();
    reopen();
    EXPECT_EQ(fleet_->recordings().count().value(), 2u);
    for (const int end : {go[0], go[1], done[0], done[1]})
        ::close(end);
}

TEST_F(Kill, AFileBeingMadeIsNeverSeenHalf) {
    for (int i = 0; i < 12; ++i) {
        ScratchFolder folder;
        const std::string path = folder / "new.fettle";
        const pid_t child = ::fork();
        if (child == 0) {
            (void)FleetFile::create(path, kSite);
            ::_exit(0);
        }
        ::usleep(useconds_t(i * 4000));
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        if (std::filesystem::exists(path)) {
            const auto opened = FleetFile::open(path);
            EXPECT_TRUE(opened) << opened.error().sentence();
        } else {
            const auto made = FleetFile::create(path, kSite);
            EXPECT_TRUE(made) << made.error().sentence();
        }
    }
}

}  // namespace
}  // namespace fettle
