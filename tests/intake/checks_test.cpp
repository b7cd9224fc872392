// Each rule by which a recording is refused or parked, one row a rule. Source: the project's rules of node
// data (a time that was not set, lies in the future or is local is parked and listed, never guessed); units:
// ISO 80000-3:2019 for mm/s and m/s2, the rest common practice, no source.
#include <gmock/gmock.h>

#include "core/intake/checks.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::HasSubstr;

struct Rule {
    const char* name;
    std::function<void(Json&)> spoil;  // the sidecar
    const char *kind, *place, *words;
};

std::ostream& operator<<(std::ostream& out, const Rule& rule) {
    return out << rule.name;
}

const std::vector<Rule>& rules() {
    static const std::vector<Rule> all = {
        {"NoMachine", [](Json& s) { s.erase("machine"); }, "parked", "/machine", "no machine is named"},
        {"UnknownMachine", [](Json& s) { s["machine"] = "KL-99"; }, "refused", "/machine",
         "\"KL-99\", which is not in the register"},
        {"NoTime", [](Json& s) { s.erase("time"); }, "parked", "/time", "no time is given"},
        {"ClockNotSet", [](Json& s) { s["time"] = "1970-01-01T00:03:20Z"; }, "parked", "a.json /time",
         "before 1980"},
        {"DayBefore1980", [](Json& s) { s["time"] = "1979-12-31T23:59:59Z"; }, "parked", "a.json /time",
         "before 1980"},
        {"MoreThanADayAhead", [](Json& s) { s["time"] = "2026-06-02T12:00:01Z"; }, "parked", "/time",
         "in the future"},
        {"After2100", [](Json& s) { s["time"] = "2105-01-01T00:00:00Z"; }, "parked", "a.json /time",
         "after 2100"},
        {"LocalTime", [](Json& s) { s["time"] = "2026-05-04T06:20:00"; }, "parked", "a.json /time",
         "must be UTC"},
        {"OtherZone", [](Json& s) { s["time"] = "2026-05-04T06:20:00+02:00"; }, "parked", "a.json /time",
         "must be UTC"},
        {"Epoch", [](Json& s) { s["time"] = 1777875600; }, "parked", "a.json /time", "text"},
        {"AfterItWasReceived", [](Json& s) { s["received"] = "2026-05-03T06:19:59Z"; }, "parked", "/time",
         "after it was received"},
        {"ReceivedLocal", [](Json& s) { s["received"] = "2026-05-04 06:20"; }, "parked", "a.json /received",
         "must be UTC"},
        {"UnknownPoint", [](Json& s) { s["point"] = "P9"; }, "refused", "/point",
         "\"P9\", the description of T-1 has P"},
        {"UnknownPointOfAChannel", [](Json& s) { s["channels"][1]["point"] = "P9"; }, "refused",
         "/channels/1/point", "has P"},
        {"PointNotNamedAmongSeveral",
         [](Json& s) {
             s["machine"] = "T-2";
             s.erase("point");
         },
         "parked", "/point", "no measuring point is named, T-2 has M, F"},
        {"VelocityWhereAccelerationIsDescribed", [](Json& s) { s["channels"][0]["unit"] = "mm/s"; },
         "refused", "/channels/0/unit", "\"x\" is in \"mm/s\", the description says acceleration (g)"},
        {"UnknownUnit", [](Json& s) { s["channels"][1]["unit"] = "mm/s2"; }, "refused", "/channels/1/unit",
         "units for that: g, mg, m/s2"},
        {"AccelerationWhereVelocityIsDescribed",
         [](Json& s) {
             s["machine"] = "T-2", s["point"] = "M";
             s["channels"][1]["name"] = "v";
         },
         "refused", "/channels/1/unit", "the description says velocity (mm/s)"},
        {"ChannelThatNobodyDescribes",
         [](Json& s) { s["channels"][0]["name"] = "i1", s["channels"][0]["unit"] = "A"; }, "refused",
         "/channels/0/unit", "point P has no channel \"i1\" and its unit is \"A\""},
        {"ChannelThatNobodyDescribesWithoutUnit",
         [](Json& s) {
             s["channels"][0]["name"] = "i1";
             s["channels"][0].erase("unit");
         },
         "refused", "/channels/0/unit", "no unit is given"},
        {"SidecarOfAnotherFile", [](Json& s) { s["channels"].erase(1); }, "refused", "a.json /channels",
         "names 1 channels, the recording has 2"},
        {"SpeedThatIsNone", [](Json& s) { s["speed_rpm"] = -1; }, "refused", "a.json /speed_rpm", "0"},
        {"SidecarThatIsAList", [](Json& s) { s = Json::array(); }, "refused", "a.json", "object"},
    };
    return all;
}

class RuleTest : public IntakeTest, public testing::WithParamInterface<Rule> {};

TEST_P(RuleTest, IsToldAndKept) {
    const std::string path = sendNoise("a", {});
    Json sidecar = sidecarOf({});
    GetParam().spoil(sidecar);
    ASSERT_TRUE(disk_.writeSafely(in_ + "/a.json", sidecar.dump()));
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 0u);
    EXPECT_EQ(count(), 0u);
    ASSERT_EQ(report.refusals.size(), 1u);
    const Refusal& told = report.refusals[0];
    EXPECT_EQ(told.path, path);
    EXPECT_EQ(told.kind, GetParam().kind);
    EXPECT_THAT(told.place, HasSubstr(GetParam().place));
    EXPECT_THAT(told.rule, HasSubstr(GetParam().words));
    const auto kept = fleet_->log().refusals();
    ASSERT_TRUE(kept);
    ASSERT_EQ(kept->size(), 1u);
    EXPECT_EQ((*kept)[0].kind, told.kind);
    EXPECT_EQ((*kept)[0].rule, told.rule);
}

INSTANTIATE_TEST_SUITE_P(All, RuleTest, testing::ValuesIn(rules()),
                         [](const auto& one) { return std::string(one.param.name); });

// What stands beside each rule and is taken in.
struct Fine {
    const char* name;
    std::function<void(Json&)> change;
};

class FineTest : public IntakeTest, public testing::WithParamInterface<Fine> {};

TEST_P(FineTest, IsTakenIn) {
    sendNoise("a", {});
    Json sidecar = sidecarOf({});
    GetParam().change(sidecar);
    ASSERT_TRUE(disk_.writeSafely(in_ + "/a.json", sidecar.dump()));
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u) << (report.refusals.empty() ? "" : report.refusals[0].rule);
}

INSTANTIATE_TEST_SUITE_P(
    All, FineTest,
    testing::Values(Fine{"ADayAhead", [](Json& s) { s["time"] = "2026-06-02T12:00:00Z"; }},
                    Fine{"FirstDayOf1980", [](Json& s) { s["time"] = "1980-01-01T00:00:00Z"; }},
                    Fine{"ReceivedADayBefore", [](Json& s) { s["received"] = "2026-05-03T06:20:00Z"; }},
                    Fine{"OnlyPointNotNamed", [](Json& s) { s.erase("point"); }},
                    Fine{"MetresPerSecondSquared", [](Json& s) { s["channels"][0]["unit"] = "m/s2"; }},
                    Fine{"MilliG", [](Json& s) { s["channels"][0]["unit"] = "mg"; }},
                    Fine{"UnitLeftToTheDescription", [](Json& s) { s["channels"][0].erase("unit"); }},
                    Fine{"ChannelBesideTheDescriptionInKnownUnit",
                         [](Json& s) { s["channels"][1]["name"] = "y"; }}),
    [](const auto& one) { return std::string(one.param.name); });

// A CSV file says the same things in its first lines.
TEST_F(IntakeTest, CsvTimesAreParkedToo) {
    const auto csv = [](const std::string& time) {
        std::string text =
            "# machine: T-1\n# point: P\n# sample_rate_hz: 2000\n# time: " + time + "\nx [g];z [g]\n";
        for (int i = 0; i < 2000; ++i)
            text += std::to_string(i * 37 % 101 - 50) + ";" + std::to_string(i * 53 % 89 - 44) + "\n";
        return text;
    };
    ASSERT_TRUE(disk_.makeFolders(in_));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/a.csv", csv("2026-05-04T06:20:00Z")));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/b.csv", csv("1970-01-01T00:00:00Z")));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/c.csv", csv("04.05.2026 06:20")));
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u);
    ASSERT_EQ(report.refusals.size(), 2u);
    for (const Refusal& refusal : report.refusals) {
        EXPECT_EQ(refusal.kind, "parked");
        EXPECT_THAT(refusal.place, HasSubstr("line 4"));
    }
}

// 8 May begins in New York at 04:00 UTC, in Brisbane on the 7th at 14:00 UTC.
TEST_F(IntakeTest, AMachineLeavesTheRegisterOnTheSitesDay) {
    ASSERT_TRUE(fleet_->machines().remove("T-1", "2026-05-08", "sold"));
    const auto stored = [&](const std::string& zone, const std::string& time) {
        SiteSettings site = fleet_->site().value();
        site.timeZone = zone;
        EXPECT_TRUE(fleet_->setSite(site));
        const std::string folder = folder_ / ("at " + time.substr(11, 2));
        send(folder, "a", noiseWav(1), {.time = time});
        return taken({folder}).stored;
    };
    EXPECT_EQ(stored("America/New_York", "2026-05-08T03:30:00Z"), 1u);
    EXPECT_EQ(stored("America/New_York", "2026-05-08T04:30:00Z"), 0u);
    EXPECT_EQ(stored("Australia/Brisbane", "2026-05-07T13:30:00Z"), 1u);
    EXPECT_EQ(stored("Australia/Brisbane", "2026-05-07T14:30:00Z"), 0u);
}

TEST(Notes, WholeNumbersWithoutAScaleAndUnknownChannelsAreTold) {
    const Machine machine = made::machineOf(made::motorText());
    Recording recording;
    recording.point = "P";
    recording.channels.resize(2);
    recording.channels[0].name = "x";
    recording.channels[0].bits = 24;
    recording.channels[1].name = "nosuch";
    recording.channels[1].unit = "g";
    const auto notes = notesOn(recording, machine);
    ASSERT_EQ(notes.size(), 2u);
    EXPECT_NE(notes[0].find("whole numbers without a scale"), std::string::npos) << notes[0];
    EXPECT_NE(notes[1].find("\"nosuch\" of T-1 is not in the description"), std::string::npos) << notes[1];
    recording.channels[0].scale = 16;
    recording.channels.pop_back();
    EXPECT_TRUE(notesOn(recording, machine).empty());
}

}  // namespace
}  // namespace fettle::intake_test
