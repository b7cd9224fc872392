#include "core/base/file_system.h"

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>

#include "core/base/file_system_fake.h"
#include "tests/base/scratch_folder.h"

namespace fettle {
namespace {

TEST(WithExtension, ReplacesTheLastExtensionOnly) {
    EXPECT_EQ(withExtension("a/b.c.wav", ".json"), "a/b.c.json");
    EXPECT_EQ(withExtension("rec", ".json"), "rec.json");
    EXPECT_EQ(withExtension("a.d/rec", ".json"), "a.d/rec.json");
    EXPECT_EQ(withExtension("a.d/.hidden", ".json"), "a.d/.hidden.json");
    EXPECT_EQ(withExtension(".hidden", ".json"), ".hidden.json");
    EXPECT_EQ(withExtension("rec.", ".json"), "rec.json");
    EXPECT_EQ(withExtension("", ".json"), ".json");
}

TEST(ExtensionOf, IsLowerCaseWithoutTheDot) {
    EXPECT_EQ(extensionOf("a/b.c.WAV"), "wav");
    EXPECT_EQ(extensionOf("a.d/rec"), "");
    EXPECT_EQ(extensionOf(".wav"), "");
    EXPECT_EQ(extensionOf("rec."), "");
}

TEST(FileNameOf, IsWhatFollowsTheLastSlash) {
    EXPECT_EQ(fileNameOf("a/b/c.wav"), "c.wav");
    EXPECT_EQ(fileNameOf("c.wav"), "c.wav");
    EXPECT_EQ(fileNameOf("a/"), "");
}

std::string bytesOf(char letter, std::size_t count) {
    return std::string(count, letter);
}

TEST(RealFileSystem, ReadsBackWhatItWrote) {
    const ScratchFolder folder;
    RealFileSystem files;
    const std::string bytes = std::string("a\0b\n", 4) + bytesOf('x', 100000);
    ASSERT_TRUE(files.writeSafely(folder / "a.bin", bytes));
    EXPECT_EQ(files.read(folder / "a.bin").value(), bytes);
    ASSERT_TRUE(files.writeSafely(folder / "a.bin", ""));
    EXPECT_EQ(files.read(folder / "a.bin").value(), "");
    EXPECT_EQ(files.list(folder.path()).value(), std::vector<std::string>{"a.bin"});
}

TEST(RealFileSystem, SaysWhyItCannotRead) {
    const ScratchFolder folder;
    const RealFileSystem files;
    const auto missing = files.read(folder / "none.wav");
    ASSERT_FALSE(missing);
    EXPECT_EQ(missing.error().kind, ErrorKind::NotFound);
    EXPECT_EQ(missing.error().file, folder / "none.wav");
    EXPECT_FALSE(missing.error().rule.empty());
    EXPECT_EQ(files.read(folder.path()).error().kind, ErrorKind::Unreadable);
    EXPECT_EQ(files.read("/dev/null").error().kind, ErrorKind::Unreadable);
}

TEST(RealFileSystem, DoesNotWaitForAPipe) {
    const ScratchFolder folder;
    ASSERT_EQ(::mkfifo((folder / "pipe").c_str(), 0600), 0);
    EXPECT_EQ(RealFileSystem().read(folder / "pipe").error().kind, ErrorKind::Unreadable);
}

TEST(RealFileSystem, RefusesMoreThanAskedForBeforeReading) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_TRUE(files.writeSafely(folder / "a", "12345"));
    EXPECT_EQ(files.read(folder / "a", 5).value(), "12345");
    EXPECT_EQ(files.read(folder / "a", 4).error().kind, ErrorKind::Unsupported);
    // A file with a hole: 1 TB long, no room taken.
    ASSERT_EQ(::truncate((folder / "a").c_str(), off_t(1) << 40), 0);
    EXPECT_EQ(files.read(folder / "a").error().kind, ErrorKind::Unsupported);
}

TEST(RealFileSystem, ListsNamesSorted) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_TRUE(files.makeFolders(folder / "b/deep"));
    ASSERT_TRUE(files.makeFolders(folder / "b/deep"));
    ASSERT_TRUE(files.writeSafely(folder / "b/inner", "1"));
    ASSERT_TRUE(files.writeSafely(folder / "c", "1"));
    ASSERT_TRUE(files.writeSafely(folder / "a", "1"));
    EXPECT_EQ(files.list(folder.path()).value(), (std::vector<std::string>{"a", "b", "c"}));
    EXPECT_EQ(files.list(folder / "none").error().kind, ErrorKind::Unreadable);
    EXPECT_TRUE(files.exists(folder / "b"));
    EXPECT_FALSE(files.exists(folder / "d"));
    EXPECT_EQ(files.makeFolders(folder / "a/under").error().kind, ErrorKind::Unwritable);
}

TEST(WriteSafely, LeavesNothingBehindWhereItCannotWrite) {
    const ScratchFolder folder;
    RealFileSystem files;
    EXPECT_EQ(files.writeSafely(folder / "none/a", "x").error().kind, ErrorKind::Unwritable);
    ASSERT_TRUE(files.makeFolders(folder / "taken/by"));
    EXPECT_EQ(files.writeSafely(folder / "taken", "x").error().kind, ErrorKind::Unwritable);
    EXPECT_EQ(files.list(folder.path()).value(), std::vector<std::string>{"taken"});
}

// A rename would put a file in the place of a device or a link (POSIX.1-2017, rename).
TEST(WriteSafely, ReplacesFilesAlone) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_EQ(::mkfifo((folder / "pipe").c_str(), 0600), 0);
    EXPECT_EQ(files.writeSafely(folder / "pipe", "x").error().kind, ErrorKind::Unwritable);
    EXPECT_EQ(files.kindOf(folder / "pipe"), PathKind::Other);
    ASSERT_TRUE(files.writeSafely(folder / "target", "old"));
    std::filesystem::create_symlink("target", folder / "link");
    std::filesystem::create_symlink("nothing", folder / "loose");
    ASSERT_TRUE(files.writeSafely(folder / "link", "new"));
    ASSERT_TRUE(files.writeSafely(folder / "loose", "made"));
    EXPECT_TRUE(std::filesystem::is_symlink(folder / "link"));
    EXPECT_EQ(files.read(folder / "target").value(), "new");
    EXPECT_EQ(files.read(folder / "nothing").value(), "made");
    std::filesystem::permissions(folder / "target", std::filesystem::perms(0444));
    EXPECT_EQ(files.writeSafely(folder / "link", "again").error().kind, ErrorKind::Unwritable);
    EXPECT_EQ(files.read(folder / "target").value(), "new");
}

constexpr std::size_t kOldBytes = 1000, kNewBytes = 1000000, kRoom = 100000;

// Writes in a child process whose files may not grow beyond kRoom. With `killed` the system kills it within
// the write that crosses that line (POSIX setrlimit, RLIMIT_FSIZE and SIGXFSZ), else that write fails.
int writeWithoutRoom(const std::string& path, bool killed) {
    const pid_t child = ::fork();
    if (child == 0) {
        const rlimit room{kRoom, kRoom}, none{0, 0};
        ::setrlimit(RLIMIT_CORE, &none);
        ::setrlimit(RLIMIT_FSIZE, &room);
        ::signal(SIGXFSZ, killed ? SIG_DFL : SIG_IGN);
        const Status written = RealFileSystem().writeSafely(path, bytesOf('n', kNewBytes));
        ::_exit(!written && written.error().kind == ErrorKind::Unwritable ? 7 : 0);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return status;
}

TEST(WriteSafely, KeepsTheOldFileWhenTheProgramIsKilledInTheMiddle) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_TRUE(files.writeSafely(folder / "a", bytesOf('o', kOldBytes)));
    const int status = writeWithoutRoom(folder / "a", true);
    ASSERT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGXFSZ);
    EXPECT_EQ(files.read(folder / "a").value(), bytesOf('o', kOldBytes));
}

TEST(WriteSafely, KeepsTheOldFileWhenTheDiskIsFull) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_TRUE(files.writeSafely(folder / "a", bytesOf('o', kOldBytes)));
    const int status = writeWithoutRoom(folder / "a", false);
    ASSERT_TRUE(WIFEXITED(status));
    EXPECT_EQ(WEXITSTATUS(status), 7);
    EXPECT_EQ(files.read(folder / "a").value(), bytesOf('o', kOldBytes));
    EXPECT_EQ(files.list(folder.path()).value(), std::vector<std::string>{"a"});
}

TEST(MemoryFileSystem, AnswersLikeTheRealOne) {
    const ScratchFolder folder;
    RealFileSystem real;
    MemoryFileSystem memory;
    ASSERT_TRUE(memory.makeFolders(folder.path()));
    for (FileSystem* files : {static_cast<FileSystem*>(&real), static_cast<FileSystem*>(&memory)}) {
        ASSERT_TRUE(files->makeFolders(folder / "sub"));
        ASSERT_TRUE(files->writeSafely(folder / "sub/a", "12345"));
        EXPECT_EQ(files->read(folder / "sub/a").value(), "12345");
        EXPECT_EQ(files->read(folder / "sub/a", 4).error().kind, ErrorKind::Unsupported);
        EXPECT_EQ(files->read(folder / "none").error().kind, ErrorKind::NotFound);
        EXPECT_EQ(files->read(folder / "sub").error().kind, ErrorKind::Unreadable);
        EXPECT_EQ(files->writeSafely(folder / "sub", "x").error().kind, ErrorKind::Unwritable);
        EXPECT_EQ(files->list(folder.path()).value(), std::vector<std::string>{"sub"});
        EXPECT_EQ(files->list(folder / "none").error().kind, ErrorKind::Unreadable);
        EXPECT_EQ(files->makeFolders(folder / "sub/a").has_value(), false);
        EXPECT_TRUE(files->exists(folder / "sub"));
        EXPECT_FALSE(files->exists(folder / "none"));
    }
}

TEST(FailingFileSystem, FailsOnDemandAndPassesTheRestOn) {
    MemoryFileSystem memory;
    FailingFileSystem files(memory);
    ASSERT_TRUE(files.writeSafely("a", "old"));
    files.failWritesAfter(1);
    EXPECT_TRUE(files.writeSafely("b", "1"));
    EXPECT_EQ(files.writeSafely("a", "new").error().kind, ErrorKind::Unwritable);
    EXPECT_EQ(files.read("a").value(), "old");
    files.failReadsAfter(0);
    EXPECT_EQ(files.read("a").error().kind, ErrorKind::Unreadable);
    EXPECT_TRUE(files.exists("a"));
}

TEST(FailingFileSystem, FailsAtOnePath) {
    MemoryFileSystem memory;
    FailingFileSystem files(memory);
    files.failAt("bad");
    EXPECT_EQ(files.writeSafely("bad", "x").error().kind, ErrorKind::Unwritable);
    EXPECT_TRUE(files.writeSafely("good", "x"));
    EXPECT_EQ(files.read("bad").error().kind, ErrorKind::Unreadable);
}

}  // namespace
}  // namespace fettle
