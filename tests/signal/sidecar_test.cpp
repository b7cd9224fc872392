#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/signal/reader.h"
#include "core/signal/sidecar.h"
#include "tests/signal/sound_bytes.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

// Two channels of a 16 bit file.
Recording asRead() {
    Recording recording;
    recording.file = "a.wav";
    for (const char* name : {"1", "2"}) {
        Channel channel;
        channel.name = name;
        channel.sampleRateHz = 12800;
        channel.samples = {0.5, -0.25};
        channel.fullScale = 1;
        recording.channels.push_back(channel);
    }
    return recording;
}

const char* kEveryKey = R"({
    "machine": "KL-ID-01", "point": "M-DE", "time": "2026-05-04T06:20:00Z", "time_source": "node",
    "received": "2026-05-04T06:20:09Z", "capture": "0417-99812", "simultaneous": true, "speed_rpm": 1483.2,
    "output_hz": null, "frame_temp_c": 61.5, "ambient_temp_c": 24.0, "operating": { "load_pct": 80 },
    "channels": [ { "name": "x", "unit": "g", "scale": 16.0 },
                  { "name": "flux", "unit": "1", "scale": -0.5, "point": "M-NDE" } ] })";

TEST(ApplySidecar, TakesEveryKey) {
    Recording recording = asRead();
    const auto applied = applySidecar(recording, kEveryKey, "a.json");
    ASSERT_TRUE(applied) << applied.error().sentence();
    EXPECT_EQ(recording.machine, "KL-ID-01");
    EXPECT_EQ(recording.point, "M-DE");
    EXPECT_EQ(recording.time, parseUtc("2026-05-04T06:20:00Z"));
    EXPECT_EQ(recording.timeSource, "node");
    EXPECT_EQ(recording.received, parseUtc("2026-05-04T06:20:09Z"));
    EXPECT_EQ(recording.capture, "0417-99812");
    EXPECT_EQ(recording.simultaneous, Simultaneous::Yes);
    EXPECT_EQ(recording.speedRpm, 1483.2);
    EXPECT_FALSE(recording.outputHz);
    EXPECT_EQ(recording.frameTempC, 61.5);
    EXPECT_EQ(recording.ambientTempC, 24.0);
    EXPECT_EQ(recording.loadPct, 80);
    EXPECT_TRUE(recording.warnings.empty());
}

TEST(ApplySidecar, ScalesSamplesAndFullScale) {
    Recording recording = asRead();
    ASSERT_TRUE(applySidecar(recording, kEveryKey, "a.json"));
    EXPECT_EQ(recording.channels[0].name, "x");
    EXPECT_EQ(recording.channels[0].unit, "g");
    EXPECT_THAT(recording.channels[0].samples, ElementsAre(8, -4));
    EXPECT_EQ(recording.channels[0].fullScale, 16);
    EXPECT_THAT(recording.channels[1].samples, ElementsAre(-0.25, 0.125));
    EXPECT_EQ(recording.channels[1].fullScale, 0.5);
}

TEST(ApplySidecar, ChannelsWithoutAPointAreAtTheRecordings) {
    Recording recording = asRead();
    ASSERT_TRUE(applySidecar(recording, kEveryKey, "a.json"));
    EXPECT_EQ(recording.channels[0].point, "M-DE");
    EXPECT_EQ(recording.channels[1].point, "M-NDE");
}

TEST(ApplySidecar, LeavesAloneWhatItDoesNotName) {
    Recording recording = asRead();
    ASSERT_TRUE(applySidecar(recording, R"({"channels": [{}, {"unit": "g"}]})", "a.json"));
    EXPECT_EQ(recording.channels[0].name, "1");
    EXPECT_THAT(recording.channels[0].samples, ElementsAre(0.5, -0.25));
    EXPECT_EQ(recording.channels[0].fullScale, 1);
    EXPECT_EQ(recording.simultaneous, Simultaneous::Unknown);
    ASSERT_TRUE(applySidecar(recording, "{}", "a.json"));
}

TEST(ApplySidecar, TakesAllThreeWordsForSimultaneous) {
    Recording recording = asRead();
    ASSERT_TRUE(applySidecar(recording, R"({"simultaneous": false})", "a.json"));
    EXPECT_EQ(recording.simultaneous, Simultaneous::No);
    recording = asRead();
    ASSERT_TRUE(applySidecar(recording, R"({"simultaneous": "unknown"})", "a.json"));
    EXPECT_EQ(recording.simultaneous, Simultaneous::Unknown);
}

TEST(ApplySidecar, WarnsOfUnknownKeys) {
    Recording recording = asRead();
    const char* text = R"({"speed": 1, "operating": {"valve": 2}, "channels": [{}, {"gain": 3}]})";
    ASSERT_TRUE(applySidecar(recording, text, "a.json"));
    EXPECT_THAT(recording.warnings, ElementsAre(HasSubstr("/operating/valve"), HasSubstr("/channels/1/gain"),
                                                HasSubstr("a.json: /speed: unknown key")));
}

TEST(ApplySidecar, SaysWhereItOverrulesTheFile) {
    Recording recording = asRead();
    recording.speedRpm = 1500;
    recording.machine = "KL-ID-01";
    ASSERT_TRUE(applySidecar(recording, kEveryKey, "a.json"));
    EXPECT_EQ(recording.speedRpm, 1483.2);
    EXPECT_THAT(recording.warnings, ElementsAre("a.json: speed_rpm: 1483.2 holds, a.wav says 1500"));
}

struct WrongSidecar {
    const char* text;
    const char* place;
    const char* rulePart;
};

const WrongSidecar kWrongs[] = {
    {R"({"machine": 7})", "/machine", "a text"},
    {R"({"point": ["M-DE"]})", "/point", "a text"},
    {R"({"time_source": true})", "/time_source", "a text"},
    {R"({"capture": 99812})", "/capture", "a text"},
    {R"({"time": 1777875600})", "/time", "a text"},
    {R"({"time": "2026-05-04T06:20:00"})", "/time", "must be UTC"},
    {R"({"time": "2026-05-04T08:20:00+02:00"})", "/time", "must be UTC"},
    {R"({"time": "2026-02-30T06:20:00Z"})", "/time", "must be UTC"},
    {R"({"time": ""})", "/time", "must be UTC"},
    {R"({"time": "1970-01-01T00:00:07Z"})", "/time", "before 1980"},
    {R"({"time": "1979-12-31T23:59:59Z"})", "/time", "before 1980"},
    {R"({"time": "2101-01-01T00:00:00Z"})", "/time", "after 2100"},
    {R"({"received": "yesterday"})", "/received", "must be UTC"},
    {R"({"simultaneous": "yes"})", "/simultaneous", "true or false"},
    {R"({"simultaneous": 1})", "/simultaneous", "true or false"},
    {R"({"speed_rpm": "1483"})", "/speed_rpm", "a number"},
    {R"({"speed_rpm": -1})", "/speed_rpm", "from 0 to 200000"},
    {R"({"speed_rpm": 200001})", "/speed_rpm", "from 0 to 200000"},
    {R"({"output_hz": -50})", "/output_hz", "from 0"},
    {R"({"frame_temp_c": 1e6})", "/frame_temp_c", "from -100"},
    {R"({"ambient_temp_c": false})", "/ambient_temp_c", "a number"},
    {R"({"operating": 80})", "/operating", "an object"},
    {R"({"operating": {"load_pct": "80"}})", "/operating/load_pct", "a number"},
    {R"({"channels": {}})", "/channels", "a list"},
    {R"({"channels": []})", "/channels", "names 0 channels, the recording has 2"},
    {R"({"channels": [{}]})", "/channels", "names 1 channels, the recording has 2"},
    {R"({"channels": [{}, {}, {}]})", "/channels", "names 3 channels, the recording has 2"},
    {R"({"channels": [{}, "y"]})", "/channels/1", "an object"},
    {R"({"channels": [{"name": "x"}, {"name": "x"}]})", "/channels/1/name", "two channels"},
    {R"({"channels": [{"name": 1}, {}]})", "/channels/0/name", "a text"},
    {R"({"channels": [{}, {"scale": 0}]})", "/channels/1/scale", "is 0"},
    {R"({"channels": [{}, {"scale": -0.0}]})", "/channels/1/scale", "is 0"},
    {R"({"channels": [{}, {"scale": "1"}]})", "/channels/1/scale", "a number"},
    {R"({"channels": [{}, {"scale": 1e300}]})", "/channels/1/scale", "from"},
    {R"([])", "/", "an object"},
    {R"("x")", "/", "an object"},
    {R"({"point": "a", "point": "b"})", "/point", "given twice"},
    {R"({"speed_rpm": NaN})", "byte 15", "not valid JSON"},
    {R"({"speed_rpm": Infinity})", "byte 15", "not valid JSON"},
    {R"({"speed_rpm": 1e999})", "byte 19", "too large"},
    {"", "byte 0", "empty"},
    {"{", "byte 2", "not valid JSON"},
};

// Nothing of a refused sidecar stays in the recording.
void expectRefused(const std::string& text, const testing::Matcher<const std::string&>& place,
                   const char* rulePart) {
    Recording recording = asRead();
    const auto applied = applySidecar(recording, text, "a.json");
    ASSERT_FALSE(applied);
    EXPECT_EQ(applied.error().file, "a.json");
    EXPECT_FALSE(applied.error().rule.empty());
    EXPECT_THAT(applied.error().place, place) << applied.error().sentence();
    EXPECT_THAT(applied.error().rule, HasSubstr(rulePart));
    EXPECT_TRUE(recording.machine.empty());
    EXPECT_EQ(recording.channels[0].samples, asRead().channels[0].samples);
    EXPECT_TRUE(recording.warnings.empty());
}

TEST(ApplySidecar, NamesPlaceAndRuleOfEveryWrongValue) {
    for (const WrongSidecar& wrong : kWrongs) {
        SCOPED_TRACE(wrong.text);
        expectRefused(wrong.text, wrong.place, wrong.rulePart);
    }
}

TEST(ApplySidecar, RefusesEveryTruncation) {
    const std::string whole = kEveryKey;
    for (std::size_t length = 0; length < whole.size(); length += 64) {
        SCOPED_TRACE(length);
        expectRefused(whole.substr(0, length), Not(IsEmpty()), "");
    }
}

TEST(ApplySidecar, RefusesSingleBytesAndNonsense) {
    for (int byte = 0; byte < 256; ++byte)
        expectRefused(std::string(1, char(byte)), Not(IsEmpty()), "");
    for (std::uint32_t start = 1; start <= 20; ++start)
        expectRefused(bytes::nonsense(start, 5000), Not(IsEmpty()), "");
}

TEST(SidecarPath, IsThePathWithItsExtensionReplaced) {
    EXPECT_EQ(sidecarPath("in/0417.2026.wav"), "in/0417.2026.json");
    EXPECT_EQ(sidecarPath("in.d/0417"), "in.d/0417.json");
}

}  // namespace
}  // namespace fettle
