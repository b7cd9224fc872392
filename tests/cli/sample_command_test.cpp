// `fettle-cli sample` and `compare`: the same samples whatever the number of threads and the file format, and
// verdicts of any week.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <map>

#include "core/base/file_system.h"
#include "core/base/json_object.h"
#include "core/signal/reader.h"
#include "tests/cli/run_program.h"

namespace fettle {
namespace {

using made::Ran;
using made::run;
using ::testing::HasSubstr;

const std::string kScenario = std::string(FETTLE_SOURCE_DIR) + "/sample_fleet";

Ran sampled(const std::string& folder, std::vector<std::string> more) {
    std::vector<std::string> arguments{"sample", folder, "--scenario", kScenario};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return run(arguments);
}

// Every file below a folder by its path there.
std::map<std::string, std::string> filesIn(const std::string& folder) {
    std::map<std::string, std::string> all;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.is_regular_file())
            all[std::filesystem::relative(entry.path(), folder).string()] =
                made::contentOf(entry.path().string());
    return all;
}

TEST(SampleCommand, ThreadsChangeNothing) {
    const ScratchFolder folder;
    const std::vector<std::string> one{"--machine", "PK-PU-06", "--weeks", "4"};
    for (const char* threads : {"1", "5"}) {
        auto more = one;
        more.insert(more.end(), {"--threads", threads});
        ASSERT_EQ(sampled(folder / threads, more).status, 0);
    }
    const auto first = filesIn(folder / "1");
    EXPECT_EQ(first, filesIn(folder / "5"));
    EXPECT_EQ(first.size(), 2 * 29u + 3);  // 28 days and a copy, each with a sidecar; machine, events, truth
}

TEST(SampleCommand, WavHoldsTheSameSamples) {
    const ScratchFolder folder;
    const std::vector<std::string> one{"--machine", "CW-FN-01", "--weeks", "1", "--per-week", "1"};
    ASSERT_EQ(sampled(folder / "flac", one).status, 0);
    auto more = one;
    more.push_back("--wav");
    ASSERT_EQ(sampled(folder / "wav", more).status, 0);
    const RealFileSystem files;
    for (const auto& [path, bytes] : filesIn(folder / "flac")) {
        if (extensionOf(path) != "flac") continue;
        const auto flac = readRecording(files, folder / ("flac/" + path));
        const auto wav = readRecording(files, folder / ("wav/" + withExtension(path, ".wav")));
        ASSERT_TRUE(flac && wav);
        ASSERT_EQ((*flac)->channels.size(), 3u);
        for (std::size_t c = 0; c < 3; ++c)
            EXPECT_EQ((*flac)->channels[c].samples, (*wav)->channels[c].samples);
        return;
    }
    FAIL() << "no recording";
}

TEST(CompareCommand, AnyWeekAndEveryWeek) {
    const ScratchFolder folder;
    const std::string made = folder / "fleet";
    ASSERT_EQ(sampled(made, {"--machine", "KL-PA-02", "--weeks", "2", "--per-week", "3"}).status, 0);
    const Ran earlier = run({"compare", made, "--until", "2026-06-28"});
    EXPECT_EQ(earlier.status, 0) << earlier.err;
    EXPECT_THAT(earlier.out, HasSubstr("from 2026-06-22 to 2026-06-28"));
    EXPECT_THAT(earlier.out, HasSubstr("(recordings 3"));
    const Ran every = run({"compare", made, "--every-week"});
    EXPECT_EQ(every.status, 0) << every.err;
    EXPECT_THAT(every.out, HasSubstr("2026-06-29 to 2026-07-05: 1 stories at work"));
    EXPECT_THAT(every.out, HasSubstr("2 machine-weeks"));
    EXPECT_EQ(run({"compare", made, "--until", "yesterday"}).status, 2);
    EXPECT_EQ(run({"compare", made, "--until", "2026-06-28", "--every-week"}).status, 2);
}

}  // namespace
}  // namespace fettle
