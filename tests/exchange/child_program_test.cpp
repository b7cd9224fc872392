// A program of the user's is run without a shell, in time, and ended with its children (POSIX process
// groups); a password comes from where only its owner reads.
#include "core/exchange/child_program.h"

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <thread>

#include "core/exchange/secret.h"
#include "tests/base/scratch_folder.h"

namespace fettle {

namespace {

std::string script(const ScratchFolder& folder, const std::string& text) {
    const std::string path = folder / "program";
    std::ofstream(path) << "#!/bin/sh\n" << text;
    ::chmod(path.c_str(), 0700);
    return path;
}

std::string readAll(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

TEST(ChildProgram, HostileArgumentsAndInputStayWhatTheyAre) {
    const ScratchFolder folder;
    const std::string path =
        script(folder, "for a in \"$@\"; do printf '%s|' \"$a\"; done > '" + (folder / "seen") +
                           "'\ncat > '" + (folder / "input") + "'\n");
    const std::vector<std::string> hostile = {"$(touch " + (folder / "pwned") + ")",
                                              "; rm -rf x",
                                              "a\nb",
                                              "`id`",
                                              "' \" \\",
                                              "--help",
                                              "",
                                              "../../etc"};
    ChildProgram program;
    program.words = {path};
    program.words.insert(program.words.end(), hostile.begin(), hostile.end());
    program.input = std::string(900000, 'x') + "\n$(id)\n";
    const auto end = runChild(program);
    ASSERT_TRUE(end) << end.error().sentence();
    EXPECT_TRUE(end->good());
    std::string wanted;
    for (const std::string& word : hostile)
        wanted += word + "|";
    EXPECT_EQ(readAll(folder / "seen"), wanted);
    EXPECT_EQ(readAll(folder / "input"), program.input);
    EXPECT_FALSE(std::filesystem::exists(folder / "pwned"));
}

TEST(ChildProgram, EndedInTimeWithItsChildren) {
    const ScratchFolder folder;
    ChildProgram program;
    program.words = {script(folder, "sleep 600 & echo $! > '" + (folder / "child") + "'; echo before; wait")};
    program.allowed = std::chrono::milliseconds(700);
    const auto end = runChild(program);
    ASSERT_TRUE(end);
    EXPECT_TRUE(end->tooLate);
    EXPECT_FALSE(end->good());
    EXPECT_EQ(end->output, "before\n");
    const int child = std::stoi(readAll(folder / "child"));
    bool gone = false;
    for (int i = 0; i < 100 && !gone; ++i) {
        const std::string stat = readAll("/proc/" + std::to_string(child) + "/stat");
        gone = stat.empty() || stat.find(") Z") != stat.npos;
        if (!gone) std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    EXPECT_TRUE(gone) << "its child lives on";
}

TEST(ChildProgram, ItsEndIsTold) {
    const ScratchFolder folder;
    ChildProgram program;
    program.words = {script(folder, "echo trouble >&2; exit 7")};
    auto end = runChild(program);
    ASSERT_TRUE(end);
    EXPECT_EQ(end->status, 7);
    EXPECT_EQ(end->output, "trouble\n");
    program.withErrors = false;
    EXPECT_EQ(runChild(program)->output, "");
    program.words = {script(folder, "kill -9 $$")};
    EXPECT_EQ(runChild(program)->status, 128 + 9);
    program.words = {folder / "nosuch"};
    EXPECT_EQ(runChild(program).error().kind, ErrorKind::NotFound);
    program.words = {"program"};
    EXPECT_EQ(runChild(program).error().kind, ErrorKind::Invalid) << "not by its whole path";
    program.words = {};
    EXPECT_FALSE(runChild(program));
    CancelToken cancel;
    cancel.cancel();
    program.words = {script(folder, "sleep 600")};
    EXPECT_TRUE(runChild(program, cancel)->cancelled);
}

TEST(ChildProgram, MuchOutputNeitherBlocksNorGrows) {
    const ScratchFolder folder;
    ChildProgram program;
    program.words = {script(folder, "head -c 5000000 /dev/zero")};
    const auto end = runChild(program);
    ASSERT_TRUE(end);
    EXPECT_TRUE(end->good());
    EXPECT_EQ(end->output.size(), std::size_t(64) << 10);
}

TEST(Secret, AFileThatOthersReadIsRefused) {
    const ScratchFolder folder;
    const std::string path = folder / "password";
    std::ofstream(path) << "pa ss\xc3\xbc\nsecond line\n";
    const SecretPlace place{path, "", {}};
    for (const unsigned mode : {0644u, 0640u, 0604u, 0620u, 0602u}) {
        ::chmod(path.c_str(), mode);
        const auto read = readSecret(place);
        ASSERT_FALSE(read) << mode;
        EXPECT_EQ(read.error().sentence().find("pa ss"), std::string::npos);
    }
    ::chmod(path.c_str(), 0600);
    ASSERT_TRUE(readSecret(place)) << readSecret(place).error().sentence();
    EXPECT_EQ(*readSecret(place), "pa ss\xc3\xbc");
    EXPECT_FALSE(readSecret({folder.path(), "", {}})) << "a folder";
    EXPECT_EQ(readSecret({folder / "nosuch", "", {}}).error().kind, ErrorKind::NotFound);
    EXPECT_FALSE(readSecret({"password", "", {}})) << "not by its whole path";
    std::ofstream(path) << "\n";
    EXPECT_FALSE(readSecret(place)) << "empty";
    std::ofstream(path) << "a\tb\n";
    EXPECT_FALSE(readSecret(place)) << "a control character";
}

TEST(Secret, FromAVariableAndFromAProgram) {
    const ScratchFolder folder;
    ::setenv("FETTLE_TEST_SECRET", "of the service", 1);
    EXPECT_EQ(*readSecret({"", "FETTLE_TEST_SECRET", {}}), "of the service");
    ::unsetenv("FETTLE_TEST_SECRET");
    EXPECT_FALSE(readSecret({"", "FETTLE_TEST_SECRET", {}}));
    EXPECT_FALSE(readSecret({"", "A=B", {}}));
    const std::string path = script(folder, "echo chatter >&2; echo \"from $1\"; echo more");
    EXPECT_EQ(*readSecret({"", "", {path, "the store"}}), "from the store");
    const std::string fails = script(folder, "echo hush-hush; exit 3");
    const auto failed = readSecret({"", "", {fails}});
    ASSERT_FALSE(failed);
    EXPECT_EQ(failed.error().sentence().find("hush"), std::string::npos) << failed.error().sentence();
    EXPECT_FALSE(readSecret({"/x", "Y", {}})) << "two places";
}

}  // namespace fettle
