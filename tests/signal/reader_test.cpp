#include "core/signal/reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/file_system_fake.h"
#include "core/signal/recording_limits.h"
#include "tests/signal/sound_bytes.h"

namespace fettle {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const std::string kWav = bytes::wav({}, bytes::little(1, 2) + bytes::little(2, 2));
const std::string kFlac = bytes::flac({std::vector<int>(32, 5)}, 16, 12800);
const std::string kCsv = "# sample_rate_hz: 12800\n# point: M-DE\nx [g]\n1\n2\n3\n";

Result<RecordingPtr> readOne(const std::string& path, const std::string& bytes,
                             const std::string& sidecar = "{}") {
    MemoryFileSystem files;
    files.put(path, bytes);
    files.put(withExtension(path, ".json"), sidecar);
    return readRecording(files, path);
}

TEST(ReadRecording, ReadsEveryFormatWithItsSidecar) {
    const std::string sidecar = R"({"machine": "KL-ID-01", "channels": [{"name": "z", "scale": 2}]})";
    for (const auto& [path, bytes, samples] :
         {std::tuple{"in/a.wav", kWav, 2u}, {"in/a.flac", kFlac, 32u}, {"in/a.csv", kCsv, 3u}}) {
        const auto read = readOne(path, bytes, sidecar);
        ASSERT_TRUE(read) << read.error().sentence();
        EXPECT_EQ((*read)->file, path);
        EXPECT_EQ((*read)->machine, "KL-ID-01");
        EXPECT_EQ((*read)->channels[0].name, "z");
        EXPECT_EQ((*read)->channels[0].samples.size(), samples);
        EXPECT_EQ((*read)->channels[0].sampleRateHz, 12800);
        EXPECT_EQ((*read)->seconds(), samples / 12800.0);
        EXPECT_THAT((*read)->warnings, Not(Contains(HasSubstr("sidecar"))));
    }
}

TEST(ReadRecording, GoesByTheFirstBytesBeforeTheName) {
    EXPECT_TRUE(readOne("a.csv", kWav));
    EXPECT_TRUE(readOne("a.wav", kFlac));
    EXPECT_TRUE(readOne("a.dat", kCsv));
    EXPECT_TRUE(readOne("a", kWav));
}

TEST(ReadRecording, ThenByTheName) {
    EXPECT_TRUE(readOne("a.CSV", "t [s],x\n0,1\n0.5,2\n"));
    const auto read = readOne("a.wav", "%PDF-1.7 and so on");
    ASSERT_FALSE(read);
    EXPECT_THAT(read.error().rule, HasSubstr("taken for WAV by its name"));
}

TEST(ReadRecording, NamesWhatIsNoRecording) {
    const auto read = readOne("notes.doc", "Dear colleague");
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().kind, ErrorKind::Unsupported);
    EXPECT_EQ(read.error().sentence(),
              "notes.doc: byte 0: not a recording of a known kind (WAV, FLAC, CSV, UFF, MAT, HDF5)");
    EXPECT_THAT(readOne("a.xlsx", "PK\x03\x04....").error().rule, HasSubstr("a ZIP archive or spreadsheet"));
    EXPECT_THAT(readOne("a.w64", "riff......").error().rule, HasSubstr("W64"));
}

TEST(ReadRecording, MissingSidecarIsAWarningThatNamesIt) {
    MemoryFileSystem files;
    files.put("in/0417.a.csv", kCsv);
    const auto read = readRecording(files, "in/0417.a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_THAT((*read)->warnings, Contains(HasSubstr("in/0417.a.json: no such sidecar")));
    EXPECT_EQ((*read)->channels[0].point, "M-DE");
}

TEST(ReadRecording, PointOfTheSidecarHoldsOverThatOfTheFile) {
    const auto read = readOne("a.csv", kCsv, R"({"point": "F-DE"})");
    ASSERT_TRUE(read);
    EXPECT_EQ((*read)->channels[0].point, "F-DE");
}

TEST(ReadRecording, BrokenSidecarIsAnErrorOfTheSidecar) {
    const auto read = readOne("a.wav", kWav, R"({"channels": [{}, {}]})");
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().file, "a.json");
    EXPECT_EQ(read.error().place, "/channels");
}

TEST(ReadRecording, PassesOnWhatTheDiskSays) {
    MemoryFileSystem memory;
    memory.put("a.wav", kWav);
    memory.put("a.json", "{}");
    FailingFileSystem files(memory);
    EXPECT_EQ(readRecording(files, "none.wav").error().kind, ErrorKind::NotFound);
    files.failReadsAfter(1);
    const auto sidecar = readRecording(files, "a.wav");
    ASSERT_FALSE(sidecar);
    EXPECT_EQ(sidecar.error().kind, ErrorKind::Unreadable);
    EXPECT_EQ(sidecar.error().file, "a.json");
    EXPECT_EQ(readRecording(files, "a.wav").error().file, "a.wav");
}

// Answers as a disk with one huge file would, without holding it.
class HugeFile final : public FileSystem {
  public:
    Result<std::string> read(const std::string& path, std::uint64_t most) const override {
        asked = most;
        return fail(ErrorKind::Unsupported, path, "", "is too large");
    }
    Status writeSafely(const std::string&, const std::string&) override { return {}; }
    bool exists(const std::string&) const override { return true; }
    Status makeFolders(const std::string&) override { return {}; }
    Result<std::vector<std::string>> list(const std::string&) const override {
        return std::vector<std::string>{};
    }
    mutable std::uint64_t asked = 0;
};

TEST(ReadRecording, AsksForNoMoreThanTwoGibibytes) {
    const HugeFile files;
    EXPECT_EQ(readRecording(files, "a.wav").error().kind, ErrorKind::Unsupported);
    EXPECT_EQ(files.asked, 2147483648u);
}

TEST(ReaderRegistry, EveryRowIsComplete) {
    for (const ReaderRow& row : readerRegistry()) {
        EXPECT_THAT(row.name, Not(IsEmpty()));
        EXPECT_THAT(row.extensions, Not(IsEmpty()));
        for (const std::string& extension : row.extensions)
            EXPECT_EQ(extensionOf("a." + extension), extension);
        EXPECT_FALSE(row.recognises(""));
        EXPECT_FALSE(row.recognises("x"));
    }
}

}  // namespace
}  // namespace fettle
