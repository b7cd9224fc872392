#include "core/intake/discover.h"

#include <gmock/gmock.h>
#include <unistd.h>

#include "core/base/file_system_fake.h"
#include "tests/base/scratch_folder.h"

namespace fettle {
namespace {

using testing::ElementsAre;

std::vector<std::string> pathsOf(const Found& found) {
    std::vector<std::string> paths;
    for (const FoundFile& file : found.files)
        paths.push_back(file.path);
    return paths;
}

MemoryFileSystem someFiles() {
    MemoryFileSystem files;
    for (const char* path :
         {"in/b.wav", "in/a.flac", "in/a.json", "in/C.WAV", "in/m/z.csv", "in/m/deep/y.wav", "in/readme.md"})
        files.put(path, "");
    return files;
}

TEST(Discover, SortedByNameFoldersWhereTheirNamesFall) {
    const MemoryFileSystem files = someFiles();
    EXPECT_THAT(pathsOf(discover(files, {"in"}, false)), ElementsAre("in/C.WAV", "in/a.flac", "in/b.wav"));
    const Found deep = discover(files, {"in"}, true);
    EXPECT_THAT(pathsOf(deep),
                ElementsAre("in/C.WAV", "in/a.flac", "in/b.wav", "in/m/deep/y.wav", "in/m/z.csv"));
    EXPECT_EQ(deep.passedOver, 2u);
    for (const FoundFile& file : deep.files)
        EXPECT_FALSE(file.named);
}

TEST(Discover, NamedFilesAreTakenWhateverTheirName) {
    const Found found = discover(someFiles(), {"in/readme.md", "in/b.wav"}, false);
    EXPECT_THAT(pathsOf(found), ElementsAre("in/readme.md", "in/b.wav"));
    EXPECT_TRUE(found.files[0].named);
}

TEST(Discover, WhatIsNotThereIsAProblemBesideTheRest) {
    const Found found = discover(someFiles(), {"nosuch", "in/b.wav"}, false);
    EXPECT_EQ(found.files.size(), 1u);
    ASSERT_EQ(found.problems.size(), 1u);
    EXPECT_EQ(found.problems[0].file, "nosuch");
}

// A link to the folder above would be walked for ever.
TEST(Discover, LinksToFoldersEndAWalk) {
    const ScratchFolder folder;
    RealFileSystem disk;
    ASSERT_TRUE(disk.makeFolders(folder / "in/sub"));
    ASSERT_TRUE(disk.writeSafely(folder / "in/sub/a.wav", "x"));
    ASSERT_EQ(::symlink("..", (folder / "in/sub/up").c_str()), 0);
    ASSERT_EQ(::symlink("a.wav", (folder / "in/sub/linked.wav").c_str()), 0);
    ASSERT_EQ(::symlink("gone.wav", (folder / "in/sub/dangling.wav").c_str()), 0);
    ASSERT_EQ(::symlink((folder / "in/sub").c_str(), (folder / "shortcut").c_str()), 0);
    EXPECT_THAT(pathsOf(discover(disk, {folder / "in"}, true)),
                ElementsAre(folder / "in/sub/a.wav", folder / "in/sub/linked.wav"));
    // Named, a link is followed.
    EXPECT_EQ(discover(disk, {folder / "shortcut"}, false).files.size(), 2u);
}

// Closing any second descriptor of a file ends its POSIX locks (fcntl, IEEE Std 1003.1).
TEST(Discover, TheFleetFileIsNoRecordingUnderWhateverName) {
    const ScratchFolder folder;
    RealFileSystem disk;
    ASSERT_TRUE(disk.makeFolders(folder / "in/sub"));
    ASSERT_TRUE(disk.writeSafely(folder / "site.fettle", "x"));
    ASSERT_EQ(::symlink((folder / "site.fettle").c_str(), (folder / "in/a.wav").c_str()), 0);
    const Found met = discover(disk, {folder / "in"}, false, folder / "site.fettle");
    EXPECT_TRUE(met.files.empty());
    EXPECT_TRUE(met.problems.empty());
    EXPECT_EQ(met.foldersLeftOut, 1u);
    const Found named = discover(disk, {folder / "in/a.wav"}, false, folder / "site.fettle");
    EXPECT_TRUE(named.files.empty());
    ASSERT_EQ(named.problems.size(), 1u);
}

TEST(Discover, AFolderThatCannotBeReadIsToldOf) {
    MemoryFileSystem files = someFiles();
    FailingFileSystem failing(files);
    failing.failReadsAfter(1);  // seen to be a folder, then not listed
    const Found found = discover(failing, {"in"}, false);
    EXPECT_TRUE(found.files.empty());
    ASSERT_EQ(found.problems.size(), 1u);
    EXPECT_EQ(found.problems[0].kind, ErrorKind::Unreadable);
}

}  // namespace
}  // namespace fettle
