// A disk that fills while import, follow or re-examination writes: a clear word, everything acknowledged
// stays, nothing is doubled. The disk is SQLite's own way to it, made to refuse from a random write on; some
// runs with every run of the tests, fifty by
//   FETTLE_FULL_DISKS=50 build/test_intake --gtest_filter='FullDisk.*'
// and on a real small file system (one of some 8 MB, nothing else on it), where the room is taken by ballast:
//   FETTLE_FULL_DISKS=50 FETTLE_SMALL_DISK=/mnt/small build/test_intake --gtest_filter='FullDisk.*'
#include <gmock/gmock.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>

#include "core/intake/follow.h"
#include "core/intake/re_examine.h"
#include "tests/intake/disturbed.h"
#include "tests/intake/fleet_content.h"
#include "tests/intake/intake_fixture.h"
#include "tests/store/failing_vfs.h"

namespace fettle::intake_test {
namespace {

using testing::HasSubstr;

struct Ended {
    std::vector<std::string> acknowledged;
    std::optional<Error> error;
};

Ended importInto(FleetFile& fleet, const std::string& in, std::size_t batch) {
    Ended ended;
    ImportOptions options;
    options.now = kNow;
    options.threads = 2;
    options.batch = batch;
    options.acknowledged = [&](const std::vector<std::string>& paths) {
        ended.acknowledged.insert(ended.acknowledged.end(), paths.begin(), paths.end());
    };
    const auto report = import(fleet, RealFileSystem(), {in}, options);
    if (!report) ended.error = report.error();
    return ended;
}

void expectClearWord(const Error& error, const std::string& fleet) {
    EXPECT_EQ(error.kind, ErrorKind::Unwritable) << error.sentence();
    EXPECT_EQ(error.file, fleet);
    EXPECT_THAT(error.rule, HasSubstr("disk"));
    EXPECT_THAT(error.rule, HasSubstr("start it again for the rest"));
}

Ended followInto(FleetFile& fleet, const std::string& in, std::size_t batch) {
    Ended ended;
    FollowOptions options;
    options.once = true;
    options.settle = options.patience = options.pause = std::chrono::milliseconds(0);
    options.import.now = kNow;
    options.import.threads = 2;
    options.import.batch = batch;
    options.import.acknowledged = [&](const std::vector<std::string>& paths) {
        ended.acknowledged.insert(ended.acknowledged.end(), paths.begin(), paths.end());
    };
    const auto report = follow(fleet, in, options);
    if (!report) ended.error = report.error();
    return ended;
}

Ended reExamineIn(FleetFile& fleet, const std::string&, std::size_t batch) {
    Ended ended;
    ImportOptions options;
    options.threads = 2;
    options.batch = batch;
    options.acknowledged = [&](const std::vector<std::string>& names) {
        ended.acknowledged.insert(ended.acknowledged.end(), names.begin(), names.end());
    };
    const auto report = reExamine(fleet, "", options);
    if (!report) ended.error = report.error();
    return ended;
}

// `Source` makes fleet files and judges them; `work` is what meets the full disk.
template <class Source, class Work>
void fillAtRandom(const char* what, unsigned seed, const Source& source, const std::string& in, Work work) {
    const int runs = timesFrom("FETTLE_FULL_DISKS", timesFrom("FETTLE_KILLS", 6));
    const ScratchFolder folder;
    FailingVfs disk;
    std::mt19937 random(seed);
    const std::vector<std::size_t> batches{1, 5, 16};
    int filled = 0, inTheMiddle = 0, most = 400;
    for (int run = 0; filled < runs && run < 5 * runs; ++run) {
        const std::string path = source.newFleetFile(folder.path(), run);
        FleetTuning tuning;
        tuning.vfs = disk.name();
        auto fleet = FleetFile::open(path, OpenMode::ReadWrite, tuning);
        ASSERT_TRUE(fleet) << fleet.error().sentence();
        disk.writes = 0;
        disk.writesLeft = std::uniform_int_distribution<int>(0, most)(random);
        const int after = disk.writesLeft;
        const Ended ended = work(**fleet, in, batches[std::size_t(run) % batches.size()]);
        if (!ended.error) most = std::min(most, disk.writes);
        fleet->reset();
        disk.writesLeft = -1;
        SCOPED_TRACE(testing::Message() << "run " << run << ", full after " << after << " writes");
        if (ended.error) expectClearWord(*ended.error, path);
        filled += ended.error.has_value();
        inTheMiddle += ended.error && !ended.acknowledged.empty();
        source.expectWholeAndCarriedOn(path, ended.acknowledged);
        std::filesystem::remove(path);
    }
    std::printf("%s: %d met a full disk, %d of them after recordings had been acknowledged\n", what, filled,
                inTheMiddle);
    EXPECT_EQ(filled, runs);
}

TEST(FullDisk, WhatImportAcknowledgedStays) {
    const Disturbed disturbed;
    fillAtRandom("import", 20260505, disturbed, disturbed.in(), importInto);
}

TEST(FullDisk, WhatFollowAcknowledgedStays) {
    const Disturbed disturbed;
    fillAtRandom("follow", 20260509, disturbed, disturbed.in(), followInto);
}

TEST(FullDisk, WhatReExaminationAcknowledgedStays) {
    fillAtRandom("re-examination", 20260510, WeighedLongAgo(), "", reExamineIn);
}

// Bytes on the small disk that are taken away, so that only so many are free.
class Ballast {
  public:
    Ballast(std::string folder, std::uintmax_t leave) : path_(folder + "/ballast") {
        const auto space = std::filesystem::space(folder);
        std::string zeros(space.available > leave ? space.available - leave : 0, '\0');
        std::ofstream(path_, std::ios::binary) << zeros;
    }
    ~Ballast() { std::filesystem::remove(path_); }
    Ballast(const Ballast&) = delete;
    Ballast& operator=(const Ballast&) = delete;

  private:
    std::string path_;
};

TEST(FullDisk, OnASmallFileSystem) {
    const char* small = std::getenv("FETTLE_SMALL_DISK");
    if (!small) GTEST_SKIP() << "FETTLE_SMALL_DISK names no folder on a small file system";
    const int runs = timesFrom("FETTLE_FULL_DISKS", 6);
    const Disturbed disturbed;
    std::mt19937 random(20260506);
    int filled = 0, inTheMiddle = 0;
    std::uintmax_t most = 1 << 20;
    for (int run = 0; filled < runs && run < 5 * runs; ++run) {
        const std::string path = disturbed.newFleetFile(small, run);
        auto fleet = FleetFile::open(path);
        ASSERT_TRUE(fleet) << fleet.error().sentence();
        const auto leave = std::uniform_int_distribution<std::uintmax_t>(0, most)(random);
        Ended ended;
        {
            const Ballast ballast(small, leave);
            ended = importInto(**fleet, disturbed.in(), 1 + std::size_t(run) % 8);
            if (!ended.error) most = std::min(most, leave);
            fleet->reset();
        }
        SCOPED_TRACE(testing::Message() << "run " << run << ", " << leave << " bytes free");
        if (ended.error) expectClearWord(*ended.error, path);
        filled += ended.error.has_value();
        inTheMiddle += ended.error && !ended.acknowledged.empty();
        disturbed.expectWholeAndCarriedOn(path, ended.acknowledged);
        for (const char* rest : {"", "-wal", "-shm"})
            std::filesystem::remove(path + rest);
    }
    std::printf("%d imports met a full disk, %d of them after recordings had been acknowledged\n", filled,
                inTheMiddle);
    EXPECT_EQ(filled, runs);
}

}  // namespace
}  // namespace fettle::intake_test
