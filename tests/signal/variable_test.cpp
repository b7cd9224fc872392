// MAT and HDF5 files, written here by their own libraries; the program that reads them, and what a hostile
// file might make it do. Facts: what this test wrote. The rules of choice are the program's own, stated in
// core/signal/variable_choice.h.
#include "core/signal/variable_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/file_system.h"
#include "core/base/file_system_fake.h"
#include "core/signal/contained_program.h"
#include "core/signal/variable_choice.h"
#include "tests/signal/sound_bytes.h"
#include "tests/signal/variable_bytes.h"

namespace fettle {
namespace {

using testing::Contains;
using testing::HasSubstr;

std::vector<double> ramp(std::size_t count, double from = 0) {
    std::vector<double> numbers;
    for (std::size_t i = 0; i < count; ++i)
        numbers.push_back(from + 0.25 * double(i));
    return numbers;
}

std::string noChoice(const Result<Recording>& read) {
    return read ? "was read" : read.error().sentence();
}

TEST(VariableFile, ReadsAVectorWithTheRateBesideIt) {
    for (const bool compressed : {false, true}) {
        const std::string mat = bytes::mat({{"x", ramp(100)}, {"fs", {12800}}}, compressed);
        const auto read = readMat(mat, "a.mat");
        ASSERT_TRUE(read) << noChoice(read);
        ASSERT_EQ(read->channels.size(), 1u);
        EXPECT_EQ(read->channels[0].name, "x");
        EXPECT_EQ(read->channels[0].samples, ramp(100));
        EXPECT_EQ(read->channels[0].sampleRateHz, 12800);
        EXPECT_THAT(read->warnings,
                    Contains(HasSubstr("samples taken from x (100 x 1), the only variable that fits")));
        EXPECT_THAT(read->warnings, Contains(HasSubstr("sample rate 12800 Hz taken from fs")));
    }
    const auto read =
        readHdf5(bytes::hdf5({{{"run/x", ramp(100), {{"unit", "g"}}, {{"sample_rate", 25600}}}}}), "a.h5");
    ASSERT_TRUE(read) << noChoice(read);
    EXPECT_EQ(read->channels[0].name, "x");
    EXPECT_EQ(read->channels[0].unit, "g");
    EXPECT_EQ(read->channels[0].samples, ramp(100));
    EXPECT_EQ(read->channels[0].sampleRateHz, 25600);
}

// As the workspace of a function handle is kept: what is beside it is read, and by its own place.
TEST(VariableFile, AVariableWithoutANameIsPassedOver) {
    const std::string mat = bytes::mat({{"w", ramp(32, 5)}, {"x", ramp(64)}, {"fs", {1000}}});
    std::string nameless = mat;
    const std::string name("\x01\x00\x01\x00w\x00\x00\x00", 8);  // one signed byte, in the short form
    ASSERT_NE(nameless.find(name), nameless.npos);
    nameless.replace(nameless.find(name), 8, std::string("\x01\x00\x00\x00\x00\x00\x00\x00", 8));
    const auto read = readMat(nameless, "a.mat");
    ASSERT_TRUE(read) << noChoice(read);
    EXPECT_EQ(read->channels[0].name, "x");
    EXPECT_EQ(read->channels[0].samples, ramp(64));
}

TEST(VariableFile, AMatrixIsChannelsAlongItsShortSide) {
    std::vector<double> columns = ramp(64), rows;
    for (const double x : ramp(64, 100))
        columns.push_back(x);
    for (std::size_t i = 0; i < 64; ++i)
        rows.push_back(columns[i]), rows.push_back(columns[64 + i]);
    const std::string tall =
        bytes::mat({{"x", columns, {64, 2}}, {"fs", {1000}}});  // the first index is the fastest
    const std::string wide = bytes::mat({{"x", rows, {2, 64}}, {"fs", {1000}}});
    for (const auto& read :
         {readMat(tall, "a.mat"), readMat(wide, "a.mat"),
          readHdf5(bytes::hdf5({{{"x", rows, {}, {{"fs", 1000}}, {64, 2}}}}), "a.h5"),
          readHdf5(bytes::hdf5({{{"x", columns, {}, {{"fs", 1000}}, {2, 64}}}}), "a.h5")}) {
        ASSERT_TRUE(read) << noChoice(read);
        ASSERT_EQ(read->channels.size(), 2u);
        EXPECT_EQ(read->channels[0].name, "x_1");
        EXPECT_EQ(read->channels[0].samples, ramp(64));
        EXPECT_EQ(read->channels[1].samples, ramp(64, 100));
    }
}

TEST(VariableFile, OfSeveralNoneIsGuessed) {
    const std::string mat =
        bytes::mat({{"X097_DE_time", ramp(64)}, {"X097_FE_time", ramp(64, 9)}, {"X097RPM", {1796}}});
    const auto none = readMat(mat, "a.mat");
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().place, "/samples");
    EXPECT_THAT(none.error().rule,
                HasSubstr("X097_DE_time (64 x 1), X097_FE_time (64 x 1); name them in the sidecar"));
    const auto rateless = readMatAs(mat, "a.mat", {{"*_FE_time"}, {}});
    ASSERT_FALSE(rateless);
    EXPECT_EQ(rateless.error().place, "/sample_rate_hz");
    const auto both = readMatAs(mat, "a.mat", {{"*_FE_time", "*_DE_time"}, 12000.0});
    ASSERT_TRUE(both) << noChoice(both);
    ASSERT_EQ(both->channels.size(), 2u);
    EXPECT_EQ(both->channels[0].name, "X097_FE_time");
    EXPECT_EQ(both->channels[0].samples, ramp(64, 9));
    EXPECT_EQ(both->channels[1].sampleRateHz, 12000);
    EXPECT_THAT(noChoice(readMatAs(mat, "a.mat", {{"X0*"}, {}})),
                HasSubstr("2 variables of samples are named \"X0*\""));
    EXPECT_THAT(noChoice(readMatAs(mat, "a.mat", {{"y"}, {}})),
                HasSubstr("0 variables of samples are named \"y\""));
}

TEST(VariableFile, TheSidecarNamesThem) {
    MemoryFileSystem files;
    files.put("a.mat", bytes::mat({{"x", ramp(64)}, {"y", ramp(64, 9)}}));
    files.put(
        "a.json",
        R"({"samples": "y", "sample_rate_hz": 2560, "channels": [{"name": "z", "unit": "g", "scale": 2}]})");
    const auto read = readRecording(files, "a.mat");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ((*read)->channels[0].name, "z");
    EXPECT_EQ((*read)->channels[0].samples[1], 18.5);
    EXPECT_EQ((*read)->channels[0].sampleRateHz, 2560);
    files.put("a.json", R"({"samples": [5]})");
    EXPECT_EQ(readRecording(files, "a.mat").error().place, "/samples");
}

TEST(VariableFile, AVectorOfTimeTellsTheRate) {
    std::vector<double> time;
    for (int i = 0; i < 64; ++i)
        time.push_back(i / 3200.0);
    const auto even = readMat(bytes::mat({{"t", time}, {"x", ramp(64)}}), "a.mat");
    ASSERT_TRUE(even) << noChoice(even);
    EXPECT_EQ(even->channels[0].sampleRateHz, 3200);
    time[30] += 0.5 / 3200;
    EXPECT_THAT(noChoice(readMat(bytes::mat({{"t", time}, {"x", ramp(64)}}), "a.mat")),
                HasSubstr("even steps (number 31)"));
}

TEST(VariableFile, RatesThatContradictEachOtherAreRefused) {
    const std::string mat = bytes::mat({{"x", ramp(64)}, {"fs", {1000}}, {"dt", {0.01}}});
    EXPECT_THAT(noChoice(readMat(mat, "a.mat")),
                HasSubstr("/sample_rate_hz: fs says 1000 Hz, dt says 100 Hz"));
}

TEST(VariableFile, FactsStandUnderTheKeysOfASidecar) {
    bytes::Hdf5File file{{{"x", ramp(64), {}, {{"fs", 1000}}}},
                         {{"machine", "KL-ID-01"}, {"time", "2026-05-04T06:20:00Z"}, {"samples", "x"}},
                         {{"speed_rpm", 1483.2}}};
    const auto read = readHdf5(bytes::hdf5(file), "a.h5");
    ASSERT_TRUE(read) << noChoice(read);
    EXPECT_EQ(read->machine, "KL-ID-01");
    EXPECT_EQ(read->time, parseUtc("2026-05-04T06:20:00Z"));
    EXPECT_EQ(read->speedRpm, 1483.2);
    file.texts[1].second = "2026-05-04 08:20";
    EXPECT_EQ(readHdf5(bytes::hdf5(file), "a.h5").error().place, "/time");
}

TEST(VariableFile, RefusesWhatIsNoNumber) {
    std::vector<double> numbers = ramp(64);
    numbers[40] = std::nan("");
    EXPECT_THAT(noChoice(readMat(bytes::mat({{"x", numbers}, {"fs", {1000}}}), "a.mat")),
                HasSubstr("channel 1, sample 41: is NaN"));
    EXPECT_THAT(noChoice(readMat(bytes::mat({{"x", ramp(64)}, {"fs", {0.1}}}), "a.mat")),
                HasSubstr("0.1 Hz"));
    EXPECT_THAT(noChoice(readMat(bytes::mat({{"fs", {1000}}}), "a.mat")),
                HasSubstr("no variable could be samples"));
}

// Data of a file that stand in another file would be read from wherever its maker says.
TEST(VariableFile, ReadsNoOtherFile) {
    const auto read = readHdf5(bytes::hdf5Elsewhere(), "a.h5");
    ASSERT_FALSE(read);
    EXPECT_THAT(read.error().rule, HasSubstr("\"x\" stands in another file and is not read"));
}

TEST(VariableFile, MatFilesOfVersion73AreReadAsWell) {
    const auto read = readMat(bytes::mat73({{"x", ramp(64)}, {"fs", {1000}}}), "a.mat");
    ASSERT_TRUE(read) << noChoice(read);
    EXPECT_EQ(read->channels[0].samples, ramp(64));
}

Result<ContainedAnswer> attempt(const std::string& what, ContainedLimits limits = {}) {
    return runContained("bytes", {"try", what}, "a.h5", limits);
}

TEST(ContainedProgram, AnswersWithNumbers) {
    const auto answered = attempt("numbers");
    ASSERT_TRUE(answered) << answered.error().sentence();
    EXPECT_EQ(answered->numbers, (std::vector<double>{1, 2, 3}));
}

TEST(ContainedProgram, ACrashIsARefusedFile) {
    for (const char* what : {"crash", "answer, then crash"}) {
        const auto answered = attempt(what);
        ASSERT_FALSE(answered) << what;
        EXPECT_EQ(answered.error().kind, ErrorKind::Damaged);
        EXPECT_EQ(answered.error().sentence(),
                  "a.h5: byte 0: the reader of such files crashed on it (signal 6)");
    }
}

TEST(ContainedProgram, AHangIsARefusedFile) {
    ContainedLimits limits;
    limits.time = std::chrono::milliseconds(300);
    for (const char* what : {"hang", "answer, then hang"}) {
        const auto answered = attempt(what, limits);
        ASSERT_FALSE(answered) << what;
        EXPECT_THAT(answered.error().rule, HasSubstr("it took too long")) << what;
    }
}

TEST(ContainedProgram, ABombIsARefusedFile) {
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
    GTEST_SKIP() << "no limit of memory under the sanitizers, which reserve more than they use";
#endif
    ContainedLimits limits;
    limits.memoryBytes = std::uint64_t(256) << 20;
    const auto answered = attempt("memory", limits);
    ASSERT_FALSE(answered);
    EXPECT_THAT(answered.error().rule, HasSubstr("needs more memory than it may have"));
}

TEST(ContainedProgram, NonsenseIsARefusedFile) {
    for (const char* what : {"flood", "silence", "lie", "count", "no json"}) {
        const auto answered = attempt(what);
        ASSERT_FALSE(answered) << what;
        EXPECT_EQ(answered.error().kind, ErrorKind::Damaged) << what;
    }
}

TEST(ContainedProgram, ItsAbsenceIsSaid) {
    const auto answered =
        runContained("bytes", {"try", "numbers"}, "a.h5", {}, "/nonexistent/fettle-variables");
    ASSERT_FALSE(answered);
    EXPECT_THAT(answered.error().rule, HasSubstr("fettle-variables, is not beside this one"));
}

TEST(MatchesName, StarsStandForAnyLetters) {
    EXPECT_TRUE(matchesName("x", "x"));
    EXPECT_TRUE(matchesName("*_DE_*", "X097_DE_time"));
    EXPECT_TRUE(matchesName("*", ""));
    EXPECT_TRUE(matchesName("a*b*b", "abbb"));
    EXPECT_FALSE(matchesName("a*b", "abc"));
    EXPECT_FALSE(matchesName("", "a"));
}

}  // namespace
}  // namespace fettle
