#include <fmt/format.h>
#include <gmock/gmock.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <functional>

#include "core/base/file_system.h"
#include "core/store/database.h"
#include "core/store/file_probe.h"
#include "core/store/schema.h"
#include "tests/store/failing_vfs.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::HasSubstr;

std::string bytesOf(const std::string& path) {
    return RealFileSystem().read(path).value();
}

std::vector<std::string> namesIn(const std::string& folder) {
    return RealFileSystem().list(folder).value();
}

class Opening : public StoreTest {
  protected:
    std::string errorOf(const std::string& path, OpenMode mode = OpenMode::ReadWrite,
                        const FleetTuning& tuning = {}) {
        const auto opened = FleetFile::open(path, mode, tuning);
        return opened ? "opened" : opened.error().sentence();
    }
    void script(const std::string& sql) {
        auto database = Database::open(path_, Access::ReadWrite);
        ASSERT_TRUE(database);
        const auto done = (*database)->script(sql);
        ASSERT_TRUE(done) << done.error().sentence();
    }
};

TEST_F(Opening, ANewFileIsOneFileAndSaysWhatItIs) {
    fleet_.reset();
    EXPECT_THAT(namesIn(folder_.path()), ElementsAre("site.fettle"));
    const std::string bytes = bytesOf(path_);
    EXPECT_EQ(bytes.substr(0, 15), "SQLite format 3");
    EXPECT_EQ(bytes.substr(68, 4), "Ftl1");
    EXPECT_EQ(bytes.size() % std::size_t(kPageSize), 0u);
    reopen();
    EXPECT_EQ(fleet_->outcome(), OpenOutcome::Current);
    EXPECT_TRUE(fleet_->writable());
    EXPECT_EQ(fleet_->word(), "");
    EXPECT_EQ(fleet_->path(), path_);
}

TEST_F(Opening, TheSiteIsKept) {
    SiteSettings site = fleet_->site().value();
    EXPECT_EQ(site.site, "Hollin Edge");
    EXPECT_EQ(site.timeZone, "Europe/London");
    EXPECT_EQ(site.alpha, 0.1);
    site.alpha = 0.05;
    site.site = "Hollin Edge, kiln \"2\"";
    ASSERT_TRUE(fleet_->setSite(site));
    reopen();
    EXPECT_EQ(fleet_->site()->alpha, 0.05);
    EXPECT_EQ(fleet_->site()->site, site.site);
    site.alpha = 1;
    EXPECT_EQ(fleet_->setSite(site).error().kind, ErrorKind::Invalid);
    site.alpha = 0.1;
    site.timeZone = "";
    EXPECT_EQ(fleet_->setSite(site).error().kind, ErrorKind::Invalid);
}

TEST_F(Opening, NothingIsOverwrittenByANewFile) {
    const std::string other = folder_ / "other";
    for (const char* taken : {"other", "other-wal", "other-journal"}) {
        std::ofstream(folder_ / taken) << "mine";
        EXPECT_THAT(FleetFile::create(other, kSite).error().sentence(), HasSubstr("is there already"));
        EXPECT_THAT(fleet_->backup(other).error().sentence(), HasSubstr("is there already"));
        EXPECT_EQ(bytesOf(folder_ / taken), "mine");
        fs::remove(folder_ / taken);
    }
    fs::create_symlink("nowhere", other);
    EXPECT_FALSE(FleetFile::create(other, kSite));
    EXPECT_EQ(FleetFile::create(folder_ / "no/such/folder", kSite).error().kind, ErrorKind::Unreadable);
}

TEST_F(Opening, APathOfStrangeLetters) {
    for (const char* name : {"a b?c#d%41.fettle", "Ofen \xc3\xb6.fettle", "file:x", "-wal"}) {
        const auto made = FleetFile::create(folder_ / name, kSite);
        ASSERT_TRUE(made) << made.error().sentence();
    }
    EXPECT_TRUE(FleetFile::open(folder_ / "a b?c#d%41.fettle"));
    EXPECT_TRUE(fs::exists(folder_ / "a b?c#d%41.fettle"));
}

TEST_F(Opening, ALinkLeadsToTheFile) {
    fleet_.reset();
    fs::create_directory(folder_ / "elsewhere");
    fs::create_symlink(path_, folder_ / "elsewhere/link.fettle");
    auto opened = FleetFile::open(folder_ / "elsewhere/link.fettle");
    ASSERT_TRUE(opened) << opened.error().sentence();
    EXPECT_TRUE((*opened)->machines().put(machineJson("B"), "b.json"));
    EXPECT_THAT(namesIn(folder_ / "elsewhere"), ElementsAre("link.fettle"));
    opened->reset();
    reopen();
    EXPECT_EQ(fleet_->machines().all()->size(), 2u);
}

TEST_F(Opening, WhatIsNoFleetFileIsRefusedAndLeftAlone) {
    std::ofstream(folder_ / "text") << "Dear all, the kiln stops on Monday.";
    std::ofstream(folder_ / "empty");
    fs::create_directory(folder_ / "folder");
    sqlite3* other = nullptr;
    sqlite3_open((folder_ / "foreign").c_str(), &other);
    sqlite3_exec(other, "CREATE TABLE t(a); PRAGMA application_id=7; PRAGMA user_version=1", nullptr, nullptr,
                 nullptr);
    sqlite3_close(other);
    const auto before = namesIn(folder_.path());
    EXPECT_THAT(errorOf(folder_ / "text"), HasSubstr("text: byte 0: is not a fleet file"));
    EXPECT_THAT(errorOf(folder_ / "empty"), HasSubstr("empty: is empty; a fleet file never is"));
    EXPECT_THAT(errorOf(folder_ / "folder"), HasSubstr("is not a regular file"));
    EXPECT_THAT(errorOf(folder_ / "nowhere"), HasSubstr("No such file"));
    EXPECT_THAT(errorOf("/dev/null"), HasSubstr("is not a regular file"));
    EXPECT_THAT(errorOf(folder_ / "foreign"), HasSubstr("database of another program"));
    EXPECT_EQ(FleetFile::open(folder_ / "foreign").error().kind, ErrorKind::Unsupported);
    EXPECT_EQ(FleetFile::open(folder_ / "nowhere").error().kind, ErrorKind::NotFound);
    EXPECT_EQ(namesIn(folder_.path()), before);
    EXPECT_EQ(fs::file_size(folder_ / "empty"), 0u);
}

TEST_F(Opening, ForReadingOnlyWhenAsked) {
    reopen(OpenMode::ReadOnly);
    EXPECT_EQ(fleet_->outcome(), OpenOutcome::ReadOnly);
    EXPECT_FALSE(fleet_->writable());
    EXPECT_EQ(fleet_->word(), "cannot be changed: it is opened for reading only, as asked");
    EXPECT_EQ(fleet_->machines().all()->size(), 1u);
    const auto refused = fleet_->machines().put(machineJson("B"), "b.json");
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().kind, ErrorKind::Unwritable);
    EXPECT_THAT(refused.error().sentence(), HasSubstr("reading only"));
}

// Permissions do not bind root, so a child process gives them up first. Exit status: 0 as expected.
int asNobody(const std::function<bool()>& expected) {
    const pid_t child = ::fork();
    if (child == 0) {
        if (::getuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) ::_exit(77);
        ::_exit(expected() ? 0 : 1);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 99;
}

bool opensReadOnly(const std::string& path, const std::string& word, std::size_t machines) {
    auto opened = FleetFile::open(path);
    if (!opened) {
        std::fprintf(stderr, "%s\n", opened.error().sentence().c_str());
        return false;
    }
    const auto all = (*opened)->machines().all();
    const auto refused = (*opened)->machines().put(machineJson("C"), "c.json");
    const bool expected =
        (*opened)->outcome() == OpenOutcome::ReadOnly && (*opened)->word().find(word) != std::string::npos &&
        all && all->size() == machines && !refused && refused.error().kind == ErrorKind::Unwritable;
    if (!expected)
        std::fprintf(stderr, "word \"%s\", machines: %s, writing: %s\n", (*opened)->word().c_str(),
                     all ? std::to_string(all->size()).c_str() : all.error().sentence().c_str(),
                     refused ? "accepted" : refused.error().sentence().c_str());
    return expected;
}

#define EXPECT_AS_NOBODY(...)                                                       \
    do {                                                                            \
        const int status = asNobody([&] { return __VA_ARGS__; });                   \
        if (status == 77) GTEST_SKIP() << "this system lets nobody give up rights"; \
        EXPECT_EQ(status, 0);                                                       \
    } while (false)

TEST_F(Opening, AFileOrFolderThatMayNotBeWritten) {
    fleet_.reset();
    ::chmod(path_.c_str(), 0444);
    ::chmod(folder_.path().c_str(), 0777);
    EXPECT_AS_NOBODY(opensReadOnly(path_, "the file may not be written", 1));
    ::chmod(folder_.path().c_str(), 0555);
    EXPECT_AS_NOBODY(opensReadOnly(path_, "the file may not be written", 1));
    ::chmod(path_.c_str(), 0666);
    EXPECT_AS_NOBODY(opensReadOnly(path_, "its folder may not be written", 1));
    EXPECT_THAT(namesIn(folder_.path()), ElementsAre("site.fettle"));
    EXPECT_AS_NOBODY(!FleetFile::create(folder_ / "new.fettle", kSite));
    ::chmod(path_.c_str(), 0000);
    EXPECT_AS_NOBODY(FleetFile::open(path_).error().kind == ErrorKind::Unreadable);
    ::chmod(folder_.path().c_str(), 0755);
}

// A writer is at work and the reader may not write: it reads along.
TEST_F(Opening, AReaderWithoutRightsBesideAWriter) {
    fleet_.reset();
    int ready[2], done[2];
    ASSERT_EQ(::pipe(ready) | ::pipe(done), 0);
    const pid_t writer = ::fork();
    if (writer == 0) {
        ::close(done[1]);
        auto opened = FleetFile::open(path_);
        const bool put = opened && (*opened)->machines().put(machineJson("B"), "b.json");
        for (const char* ending : {"", "-wal", "-shm"})
            ::chmod((path_ + ending).c_str(), 0444);
        ::chmod(folder_.path().c_str(), 0555);
        char byte = put ? 'y' : 'n';
        const bool told = ::write(ready[1], &byte, 1) == 1;
        ::_exit(told && ::read(done[0], &byte, 1) == 0 ? 0 : 1);
    }
    ::close(done[0]);
    char byte = 'n';
    EXPECT_EQ(::read(ready[0], &byte, 1), 1);
    EXPECT_EQ(byte, 'y');
    const int status = asNobody([&] { return opensReadOnly(path_, "the file may not be written", 2); });
    ::close(done[1]);
    ::waitpid(writer, nullptr, 0);
    ::close(ready[0]);
    ::close(ready[1]);
    ::chmod(folder_.path().c_str(), 0755);
    if (status == 77) GTEST_SKIP() << "this system lets nobody give up rights";
    EXPECT_EQ(status, 0);
}

// Killed while writing, then put on a read-only medium: what is in the -wal cannot be had, and that is said.
TEST_F(Opening, UnfinishedWritingInAFolderThatMayNotBeWritten) {
    ASSERT_TRUE(fleet_->machines().put(machineJson("B"), "b.json"));
    fs::create_directory(folder_ / "medium");
    for (const char* ending : {"", "-wal"})
        fs::copy_file(path_ + ending, folder_ / ("medium/site.fettle" + std::string(ending)));
    ::chmod(folder_.path().c_str(), 0755);
    ::chmod((folder_ / "medium").c_str(), 0555);
    EXPECT_AS_NOBODY([&] {
        const auto opened = FleetFile::open(folder_ / "medium/site.fettle");
        return !opened &&
               opened.error().sentence().find("has unfinished writing beside it") != std::string::npos;
    }());
    ::chmod((folder_ / "medium").c_str(), 0755);
    // In a folder of one's own it is had.
    auto recovered = FleetFile::open(folder_ / "medium/site.fettle");
    ASSERT_TRUE(recovered) << recovered.error().sentence();
    EXPECT_EQ((*recovered)->machines().all()->size(), 2u);
}

TEST_F(Opening, NetworkDrivesAreToldByName) {
    // linux/magic.h: NFS_SUPER_MAGIC, SMB2_SUPER_MAGIC, EXT4_SUPER_MAGIC, TMPFS_MAGIC
    EXPECT_EQ(networkDriveName(0x6969), "NFS");
    EXPECT_EQ(networkDriveName(0xfe534d42), "SMB2");
    EXPECT_EQ(networkDriveName(0xef53), "");
    EXPECT_EQ(networkDriveName(0x01021994), "");
    EXPECT_EQ(networkDriveOf("/proc/self"), "");
}

TEST_F(Opening, OnANetworkDriveForReadingOnly) {
    FleetTuning tuning;
    tuning.networkDrive = [](const std::string&) { return "NFS"; };
    EXPECT_THAT(errorOf(path_, OpenMode::ReadWrite, tuning),
                HasSubstr("is being written, or was not closed"));
    fleet_.reset();
    auto opened = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
    ASSERT_TRUE(opened) << opened.error().sentence();
    EXPECT_EQ((*opened)->outcome(), OpenOutcome::ReadOnly);
    EXPECT_THAT((*opened)->word(), HasSubstr("network drive (NFS)"));
    EXPECT_EQ((*opened)->machines().all()->size(), 1u);
    EXPECT_THAT(namesIn(folder_.path()), ElementsAre("site.fettle"));
    EXPECT_THAT(FleetFile::create(folder_ / "new", kSite, tuning).error().sentence(),
                HasSubstr("network drive (NFS)"));
}

TEST_F(Opening, ADriveWithoutLocksIsToldAndTheFileLeftAlone) {
    fleet_.reset();
    const std::string before = bytesOf(path_);
    FailingVfs vfs;
    FleetTuning tuning;
    tuning.vfs = vfs.name();
    vfs.locksFail = true;
    EXPECT_THAT(errorOf(path_, OpenMode::ReadWrite, tuning),
                HasSubstr("cannot be locked; on a network drive"));
    vfs.locksFail = false;
    vfs.sharedMemoryFails = true;
    EXPECT_THAT(errorOf(path_, OpenMode::ReadWrite, tuning),
                HasSubstr("cannot be locked; on a network drive"));
    vfs.sharedMemoryFails = false;
    vfs.readsFail = true;
    EXPECT_THAT(errorOf(path_, OpenMode::ReadWrite, tuning), HasSubstr("the disk could not read it"));
    EXPECT_EQ(bytesOf(path_), before);
}

TEST_F(Opening, WritingThatTheSystemDoesNotGrant) {
    fleet_.reset();
    FailingVfs vfs;
    vfs.readOnly = true;
    FleetTuning tuning;
    tuning.vfs = vfs.name();
    auto opened = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
    ASSERT_TRUE(opened) << opened.error().sentence();
    EXPECT_EQ((*opened)->outcome(), OpenOutcome::ReadOnly);
    EXPECT_THAT((*opened)->word(), HasSubstr("the system opens it for reading only"));
    EXPECT_EQ((*opened)->machines().put(machineJson("B"), "b.json").error().kind, ErrorKind::Unwritable);
}

int today() {
    return int(migrations().size());
}

// One or two steps after today's, as they might come; the second cannot be read by today's program.
std::vector<Migration> stepsAfterToday(int count) {
    std::vector<Migration> steps = migrations();
    const int next = today() + 1;
    steps.push_back({next, "colours", "ALTER TABLE machine ADD COLUMN colour TEXT NOT NULL DEFAULT ''", 1});
    steps.push_back({next + 1, "moods", "CREATE TABLE mood (text TEXT NOT NULL) STRICT", next + 1});
    steps.resize(std::size_t(today() + count));
    return steps;
}

class Versions : public Opening {
  protected:
    Result<std::unique_ptr<FleetFile>> openWith(const std::vector<Migration>& steps,
                                                OpenMode mode = OpenMode::ReadWrite) {
        steps_ = steps;
        FleetTuning tuning;
        tuning.steps = &steps_;
        return FleetFile::open(path_, mode, tuning);
    }
    std::vector<Migration> steps_;
};

TEST_F(Versions, TodaysStepsAreNumberedFromOne) {
    int version = 0;
    for (const Migration& step : migrations()) {
        EXPECT_EQ(step.version, ++version);
        EXPECT_GE(step.minReader, 1);
        EXPECT_LE(step.minReader, step.version);
        EXPECT_STRNE(step.description, "");
    }
}

TEST_F(Versions, AnOlderFileIsUpgradedAndKeepsWhatItHolds) {
    ASSERT_TRUE(fleet_->recordings().put(newRecording(machine_, "2026-05-04T06:20:00Z")));
    fleet_.reset();
    auto opened = openWith(stepsAfterToday(2));
    ASSERT_TRUE(opened) << opened.error().sentence();
    EXPECT_EQ((*opened)->outcome(), OpenOutcome::Upgraded);
    EXPECT_EQ((*opened)->word(), fmt::format("upgraded from file form {} to {}", today(), today() + 2));
    EXPECT_TRUE((*opened)->writable());
    EXPECT_TRUE((*opened)->recordings().recording(1));
    EXPECT_TRUE((*opened)->check(true)->empty());
    opened->reset();
    opened = openWith(stepsAfterToday(2));
    EXPECT_EQ((*opened)->outcome(), OpenOutcome::Current);
}

// Every form that was ever shipped comes up to today's, with all it holds, and takes what is new in it.
TEST_F(Versions, AFileOfTheFirstFormIsUpgraded) {
    fleet_.reset();
    fs::remove(path_);
    steps_ = {migrations()[0]};
    FleetTuning first;
    first.steps = &steps_;
    {
        auto made = FleetFile::create(path_, kSite, first);
        ASSERT_TRUE(made) << made.error().sentence();
        ASSERT_TRUE((*made)->machines().put(machineJson("KL-ID-01"), "m.json"));
    }
    reopen();
    EXPECT_EQ(fleet_->outcome(), OpenOutcome::Upgraded);
    EXPECT_EQ(fleet_->word(), fmt::format("upgraded from file form 1 to {}", today()));
    const std::int64_t machine = fleet_->machines().byTag("KL-ID-01")->id;
    auto recording = newRecording(machine, "2026-05-04T06:20:00Z");
    recording.measures = {{"x", "M-DE", "gear_mesh", "G1", "mesh 1-3 x", "g", 0.25}};
    ASSERT_TRUE(fleet_->recordings().put(recording));
    EXPECT_EQ(fleet_->trends().measures(machine)->size(), 1u);
    expectClean();
    reopen();
    EXPECT_EQ(fleet_->outcome(), OpenOutcome::Current);
}

TEST_F(Versions, AStepThatFailsLeavesTheFileAtTheStepBefore) {
    fleet_.reset();
    auto steps = stepsAfterToday(2);
    steps.back().sql = "CREATE TABLE mood (text TEXT NOT NULL) STRICT; CREATE TABLE machine (again TEXT)";
    const auto failed = openWith(steps);
    ASSERT_FALSE(failed);
    EXPECT_THAT(failed.error().sentence(), HasSubstr("moods"));
    auto opened = openWith(stepsAfterToday(1));
    ASSERT_TRUE(opened) << opened.error().sentence();
    EXPECT_EQ((*opened)->outcome(), OpenOutcome::Current);
}

TEST_F(Versions, AnOlderFileThatMayNotBeWrittenIsRefusedWithTheReason) {
    fleet_.reset();
    const std::string before = bytesOf(path_);
    const auto refused = openWith(stepsAfterToday(1), OpenMode::ReadOnly);
    ASSERT_FALSE(refused);
    EXPECT_THAT(
        refused.error().sentence(),
        HasSubstr("made by an older program and must be upgraded once, but it is opened for reading only"));
    EXPECT_EQ(bytesOf(path_), before);
}

TEST_F(Versions, AnOlderFileIsReadAsItIsWhereThatIsAskedFor) {
    ASSERT_TRUE(fleet_->recordings().put(newRecording(machine_, "2026-05-04T06:20:00Z")));
    fleet_.reset();
    const std::string before = bytesOf(path_);
    auto steps = stepsAfterToday(1);
    steps.back().sql =
        "CREATE TABLE mood (text TEXT NOT NULL, recording INTEGER REFERENCES recording) STRICT;"
        "CREATE INDEX mood_by_text ON mood(text);"
        "CREATE TRIGGER glad BEFORE DELETE ON recording BEGIN SELECT RAISE(ABORT, 'stays'); END;"
        "INSERT INTO mood SELECT 'calm', id FROM recording;";
    auto opened = openWith(steps, OpenMode::ReadAnyForm);
    ASSERT_TRUE(opened) << opened.error().sentence();
    EXPECT_EQ((*opened)->outcome(), OpenOutcome::OlderFile);
    EXPECT_FALSE((*opened)->writable());
    EXPECT_THAT((*opened)->word(),
                HasSubstr(fmt::format("file form {}, this one writes {}", today(), today() + 1)));
    EXPECT_EQ((*opened)->recordings().count().value(), 1u);
    const auto refused = (*opened)->setSite(kSite);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().kind, ErrorKind::Unwritable);
    opened->reset();
    EXPECT_TRUE(bytesOf(path_) == before);
    // A step that changes what is there already cannot be stood in for.
    for (const char* sql : {"ALTER TABLE machine ADD COLUMN mood TEXT", "DELETE FROM recording",
                            "CREATE VIEW moods AS SELECT 1",

                            "CREATE INDEX recording_by_tag ON recording(tag)"}) {
        steps.back().sql = sql;
        const auto unread = openWith(steps, OpenMode::ReadAnyForm);
        ASSERT_FALSE(unread) << sql;
        EXPECT_THAT(unread.error().sentence(), HasSubstr("must be upgraded once"));
        EXPECT_TRUE(bytesOf(path_) == before) << sql;
    }
}

TEST_F(Versions, ANewerFileThatSaysSoIsReadAndNotChanged) {
    fleet_.reset();
    ASSERT_TRUE(openWith(stepsAfterToday(1)));
    const std::string before = bytesOf(path_);
    reopen();
    EXPECT_EQ(fleet_->outcome(), OpenOutcome::NewerFile);
    EXPECT_FALSE(fleet_->writable());
    EXPECT_EQ(fleet_->word(),
              fmt::format("made by a newer program (file form {}, this one writes {}): reading only",
                          today() + 1, today()));
    EXPECT_EQ(fleet_->machines().all()->size(), 1u);
    EXPECT_EQ(fleet_->machines().put(machineJson("B"), "b.json").error().kind, ErrorKind::Unwritable);
    expectClean();
    fleet_.reset();
    EXPECT_EQ(bytesOf(path_), before);
}

TEST_F(Versions, ANewerFileThatCannotBeReadIsRefusedAndNotChanged) {
    fleet_.reset();
    ASSERT_TRUE(openWith(stepsAfterToday(2)));
    const std::string before = bytesOf(path_);
    for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::ReadOnly})
        EXPECT_THAT(errorOf(path_, mode),
                    HasSubstr(fmt::format(
                        "was made by a newer program (file form {}, this one reads up to {}); update",
                        today() + 2, today())));
    EXPECT_EQ(FleetFile::open(path_).error().kind, ErrorKind::Unsupported);
    EXPECT_EQ(bytesOf(path_), before);
    EXPECT_THAT(namesIn(folder_.path()), ElementsAre("site.fettle"));
}

TEST_F(Versions, ATableThatIsMissingOrAnotherIsDamage) {
    fleet_.reset();
    script("CREATE INDEX of_my_own ON recording(file)");  // what a user adds is not minded
    EXPECT_EQ(errorOf(path_), "opened");
    script("DROP TABLE weight");
    EXPECT_THAT(errorOf(path_), HasSubstr("table weight: is not as a fleet file has it"));
    EXPECT_EQ(FleetFile::open(path_).error().kind, ErrorKind::Damaged);
}

TEST_F(Versions, AFileWithoutAVersionIsDamage) {
    fleet_.reset();
    script("PRAGMA user_version=0");
    EXPECT_THAT(errorOf(path_), HasSubstr("states no version"));
    script("PRAGMA user_version=9; UPDATE meta SET value='soon' WHERE key='min_reader'");
    EXPECT_THAT(errorOf(path_), HasSubstr("table meta: does not say which programs may read"));
}

}  // namespace
}  // namespace fettle
