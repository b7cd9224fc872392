// A preview says what an import would do, and from where each fact comes; it stores nothing. Source: the
// project's own contract; no outside figures.
#include "core/intake/preview.h"

#include <gmock/gmock.h>

#include "core/intake/discover.h"
#include "tests/cli/run_program.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::HasSubstr;

class PreviewTest : public IntakeTest {
  protected:
    Preview looked() {
        PreviewOptions options;
        options.now = kNow;
        options.recursive = true;
        const auto all = preview(*fleet_, disk_, {in_}, options);
        EXPECT_TRUE(all) << (all ? "" : all.error().sentence());
        return all ? *all : Preview{};
    }
    FilePreview one() {
        const Preview all = looked();
        EXPECT_EQ(all.files.size(), 1u);
        return all.files.empty() ? FilePreview{} : all.files[0];
    }
};

TEST_F(PreviewTest, EachFactSaysWhereItCameFrom) {
    ASSERT_TRUE(fleet_->readingRules().put({0, "*.wav", R"({ "speed_rpm": 1475 })", {}, ""}));
    sendNoise("a", {.scale = 2});
    const FilePreview file = one();
    EXPECT_EQ(file.state, FilePreview::State::Ready);
    EXPECT_EQ(file.format, "WAV");
    EXPECT_EQ(file.rateHz, 6400);
    EXPECT_NEAR(file.seconds, 0.7, 1e-3);
    EXPECT_EQ(file.machine.value, "T-1");
    EXPECT_EQ(file.machine.from, FactFrom::Sidecar);
    EXPECT_EQ(file.speedRpm.value, "1475");
    EXPECT_EQ(file.speedRpm.from, FactFrom::Rule);
    ASSERT_EQ(file.channels.size(), 2u);
    EXPECT_EQ(file.channels[0].unit.from, FactFrom::Sidecar);
    EXPECT_EQ(file.channels[0].scale.value, "2");
    EXPECT_EQ(file.channels[0].quantity.value, "acceleration");
    EXPECT_EQ(file.channels[0].quantity.from, FactFrom::Register);
    EXPECT_EQ(file.channels[0].direction.from, FactFrom::Register);
    EXPECT_FALSE(file.outline.empty());
    EXPECT_EQ(count(), 0u);
}

TEST_F(PreviewTest, AnOutlineHoldsLeastAndMostOfEachStretch) {
    std::string csv = "# sample_rate_hz: 1000\n# machine: T-1\n# time: 2026-05-04T06:20:00Z\nx [g]\n";
    for (int i = 0; i < 1600; ++i)
        csv += i == 801 ? "3\n" : i == 1599 ? "-2\n" : "0.5\n";
    ASSERT_TRUE(disk_.makeFolders(in_));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/a.csv", csv));
    const FilePreview file = one();
    ASSERT_EQ(file.outline.size(), 160u);
    EXPECT_FLOAT_EQ(file.outline[80][1], 3.0f);
    EXPECT_FLOAT_EQ(file.outline[80][0], 0.5f);
    EXPECT_FLOAT_EQ(file.outline[159][0], -2.0f);
    EXPECT_FLOAT_EQ(file.outline[0][0], 0.5f);  // not folded from zero
    EXPECT_EQ(file.channels.at(0).unit.from, FactFrom::File);
    EXPECT_THAT(file.dialect, HasSubstr("decimal point"));
}

TEST_F(PreviewTest, ReadyHereIsStoredThereAndTheRestIsNot) {
    sendNoise("ready", {}, 1);
    sendNoise("stranger", {.machine = "NO-SUCH"}, 2);
    sendNoise("noday", {.time = ""}, 3);
    ASSERT_TRUE(disk_.writeSafely(in_ + "/broken.wav", "RIFF....WAVE"));
    std::map<std::string, FilePreview::State> states;
    for (const FilePreview& file : looked().files)
        states[fileNameOf(file.path)] = file.state;
    EXPECT_EQ(states["ready.wav"], FilePreview::State::Ready);
    EXPECT_EQ(states["stranger.wav"], FilePreview::State::Refused);
    EXPECT_EQ(states["noday.wav"], FilePreview::State::Parked);
    EXPECT_EQ(states["broken.wav"], FilePreview::State::Refused);
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u);
    EXPECT_EQ(report.refusals.size(), 3u);
    for (const FilePreview& file : looked().files)
        if (fileNameOf(file.path) == "ready.wav") {
            EXPECT_EQ(file.state, FilePreview::State::Known);
        }
}

TEST_F(PreviewTest, FilesOfOneKindStandTogetherUnderAPatternThatTakesThemAll) {
    for (int i = 0; i < 6; ++i)
        send(in_ + "/day", std::to_string(i), noiseWav(std::uint64_t(i)), {.time = ""});
    for (int i = 0; i < 3; ++i) {
        Said said;
        said.time = "2026-05-0" + std::to_string(i + 1) + "T06:20:00Z";
        send(in_ + "/other", std::to_string(i), noiseWav(std::uint64_t(20 + i)), said);
    }
    const Preview all = looked();
    ASSERT_EQ(all.groups.size(), 2u);
    EXPECT_EQ(all.files[all.groups[0].files[0]].state, FilePreview::State::Parked);
    EXPECT_EQ(all.groups[0].files.size(), 6u);
    EXPECT_EQ(all.groups[1].files.size(), 3u);
    const auto pattern = PathPattern::parse(all.groups[0].pattern);
    ASSERT_TRUE(pattern);
    for (std::size_t i = 0; i < all.files.size(); ++i) {
        const bool parked = all.files[i].state == FilePreview::State::Parked;
        EXPECT_EQ(pattern->match(wholePath(all.files[i].path)).has_value(), parked) << all.files[i].path;
    }
}

TEST_F(PreviewTest, CancellingStopsBetweenFiles) {
    for (int i = 0; i < 4; ++i)
        sendNoise(std::to_string(i), {.time = "2026-05-0" + std::to_string(i + 1) + "T06:20:00Z"});
    PreviewOptions options;
    options.progress = [&](std::size_t done, std::size_t, std::string_view) {
        if (done == 1) options.cancel.cancel();
    };
    const auto all = preview(*fleet_, disk_, {in_}, options);
    ASSERT_TRUE(all);
    EXPECT_TRUE(all->cancelled);
    EXPECT_EQ(all->files.size(), 2u);
}

TEST_F(PreviewTest, ByCommandAsTableAndAsJson) {
    sendNoise("a", {});
    sendNoise("b", {.time = ""});
    fleet_.reset();
    const auto table = made::run({"import", path_, in_, "--preview"});
    EXPECT_EQ(table.status, 1);
    EXPECT_THAT(table.out, HasSubstr("1 file, ready"));
    EXPECT_THAT(table.out, HasSubstr("machine T-1 (sidecar)"));
    EXPECT_THAT(table.out, HasSubstr("/time: no time is given"));
    const Json json =
        Json::parse(made::run({"import", path_, in_, "--preview", "--json"}).out, nullptr, false);
    ASSERT_EQ(json["files"].size(), 2u);
    EXPECT_EQ(json["files"][0]["machine"]["from"], "sidecar");
    EXPECT_EQ(FleetFile::open(path_).value()->recordings().count(), 0u);
}

}  // namespace
}  // namespace fettle::intake_test
