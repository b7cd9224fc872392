// What the fuzzers have found worth keeping goes through every reader again, so that a finding stays mended;
// and what the project writes is taken by the project. With FETTLE_FUZZ_SEEDS=FOLDER that is kept there for
// the fuzzers to start from.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

#include "core/base/file_system.h"
#include "tests/fuzz/seeds.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

const std::string kCorpus = std::string(FETTLE_SOURCE_DIR) + "/tests/fuzz/corpus/";

void keep(const std::string& target, std::size_t number, const std::string& bytes) {
    const char* folder = std::getenv("FETTLE_FUZZ_SEEDS");
    if (!folder) return;
    RealFileSystem disk;
    const std::string path = folder + ("/" + target);
    ASSERT_TRUE(disk.makeFolders(path) && disk.writeSafely(path + "/made_" + std::to_string(number), bytes));
}

TEST(Seeds, EveryTargetTakesWhatTheProjectWrites) {
    for (const Target& target : targets()) {
        const auto made = madeSeeds().find(target.name);
        ASSERT_NE(made, madeSeeds().end()) << target.name << " has no seeds";
        EXPECT_GE(made->second.size(), 2u) << target.name;
        for (std::size_t i = 0; i < made->second.size(); ++i) {
            const std::string& seed = made->second[i];
            keep(target.name, i, seed);
            EXPECT_NO_THROW(EXPECT_TRUE(target.run(seed)) << target.name << ", seed " << i) << target.name;
        }
    }
    EXPECT_EQ(madeSeeds().size(), targets().size());
}

// A promise that is broken throws and fails here; a crash ends the program.
TEST(Corpus, EveryInputKeptIsMet) {
    const RealFileSystem disk;
    for (const Target& target : targets()) {
        const auto names = disk.list(kCorpus + target.name);
        ASSERT_TRUE(names && !names->empty()) << target.name << " has no corpus";
        std::size_t taken = 0;
        for (const std::string& name : *names) {
            const auto bytes = disk.read(kCorpus + target.name + "/" + name);
            ASSERT_TRUE(bytes);
            EXPECT_NO_THROW(taken += target.run(*bytes)) << target.name << "/" << name;
        }
        EXPECT_GT(taken, 0u) << "nothing of " << target.name << " gets past its door";
    }
}

TEST(Corpus, ABrokenPromiseIsSeen) {
    EXPECT_THROW(require(false, "it holds"), std::logic_error);
    Recording recording;
    EXPECT_THROW(requireSound(recording), std::logic_error);
}

}  // namespace
}  // namespace fettle::fuzz
