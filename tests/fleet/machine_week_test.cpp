// A machine's week from the stores: which days it has, which description held, which channel may speak.
// Sources: summer time in the United Kingdom as directive 2000/84/EC, article 2 and 3 (last Sunday of March,
// 01:00 UTC); in the United States as the Energy Policy Act of 2005, section 110 (second Sunday of March,
// 02:00 local).
#include "core/fleet/machine_week.h"

#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/severity_limits.h"
#include "core/round/zone_findings.h"
#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using intake_test::at;
using testing::ElementsAre;

class MachineWeekTest : public SmallSite {
  protected:
    void setZone(const std::string& zone) {
        SiteSettings site = fleet_->site().value();
        site.timeZone = zone;
        ASSERT_TRUE(fleet_->setSite(site));
    }
    Period period(const std::string& until) { return periodTo(fleet_->site().value(), until).value(); }
    MachineWeek week(const std::string& tag, const std::string& until) {
        const auto machine = fleet_->machines().byTag(tag).value();
        const Period p = period(until);
        auto week = machineWeek(*fleet_, machine, p, p.from);
        EXPECT_TRUE(week) << (week ? "" : week.error().sentence());
        return week ? std::move(*week) : MachineWeek{};
    }
    Governing governing(const std::string& tag, const std::string& until) {
        const auto machine = fleet_->machines().byTag(tag).value();
        const Period p = period(until);
        auto found = governingOf(*fleet_, machine, **fleet_->machines().describedOn(tag, p.lastDay), p);
        EXPECT_TRUE(found);
        return found.value_or(Governing{});
    }
    // Short recordings of noise at these moments.
    void hear(const std::string& tag, const std::vector<std::string>& times) {
        const std::string folder = folder_ / ("from " + times[0].substr(0, 10));
        intake_test::Said said;
        said.machine = tag;
        for (std::size_t i = 0; i < times.size(); ++i) {
            said.time = times[i];
            intake_test::send(folder, tag + std::to_string(i), intake_test::noiseWav(i + 1), said);
        }
        ImportOptions options;
        options.now = intake_test::kNow;
        const auto report = import(*fleet_, RealFileSystem(), {folder}, options);
        ASSERT_TRUE(report);
        ASSERT_EQ(report->stored, times.size());
    }
    // The point with one sensor, fitted from the beginning until `to`.
    static std::string withNode(const std::string& tag, const std::string& to) {
        std::string text = description(tag);
        const std::string point = "\"id\": \"P\",";
        const std::string node = R"( "node": [ { "id": "n1", "from": "2025-01-01", "to": ")" + to + "\" } ],";
        text.insert(text.find(point) + point.size(), node);
        return text;
    }
};

// Five minutes before and after either end of the week in which the clock goes forward, which has an hour
// less.
TEST_F(MachineWeekTest, TheWeekOfSummerTimeEndsAtTheSitesMidnight) {
    struct Case {
        const char *zone, *last;
        std::vector<std::string> times;
    };
    for (const Case& c : {Case{"Europe/London",
                               "2026-03-29",
                               {"2026-03-22T23:55:00Z", "2026-03-23T00:05:00Z", "2026-03-29T22:55:00Z",
                                "2026-03-29T23:05:00Z"}},
                          Case{"America/New_York",
                               "2026-03-08",
                               {"2026-03-02T04:55:00Z", "2026-03-02T05:05:00Z", "2026-03-09T03:55:00Z",
                                "2026-03-09T04:05:00Z"}}}) {
        setZone(c.zone);
        hear("D-MUTE", c.times);
        const MachineWeek w = week("D-MUTE", c.last);
        EXPECT_EQ(w.recordings, 2u) << c.zone;
        EXPECT_EQ(w.newest, at(c.times[2])) << c.zone;
        EXPECT_EQ(week("D-MUTE", datePlus(c.last, 7).value()).recordings, 1u) << c.zone;
        EXPECT_EQ(week("D-MUTE", datePlus(c.last, -7).value()).newest, at(c.times[0])) << c.zone;
        EXPECT_EQ(period(c.last).end - period(c.last).from, std::chrono::hours(7 * 24 - 1));
    }
}

// 06:20 UTC is the evening before in Honolulu (UTC-10, IANA table).
TEST_F(MachineWeekTest, DailyMediansAreOfTheSitesDays) {
    const auto daysIn = [&](const std::string& zone) {
        setZone(zone);
        std::vector<std::string> days;
        for (const DayValue& day : week("C-SHAKE", "2026-05-10").days)
            days.push_back(dateOfDay(day.day));
        return days;
    };
    EXPECT_THAT(daysIn("UTC"), ElementsAre("2026-05-05", "2026-05-06", "2026-05-07"));
    EXPECT_THAT(daysIn("Pacific/Honolulu"), ElementsAre("2026-05-04", "2026-05-05", "2026-05-06"));
    EXPECT_EQ(week("C-SHAKE", "2026-05-05").recordings, 2u);
}

// The day of 7 May in New York ends on 8 May at 04:00 UTC; in Brisbane (UTC+10) 8 May begins on the 7th at
// 14:00.
TEST_F(MachineWeekTest, TheDescriptionOfTheSitesDayHolds) {
    ASSERT_TRUE(fleet_->machines().put(withNode("C-SHAKE", "2025-12-31"), "c.json", "2026-05-08", "removed"));
    const auto described = [&](const char* time) {
        return (*describedAt(*fleet_, "C-SHAKE", at(time)))->points[0].nodes.empty() ? "old" : "new";
    };
    setZone("America/New_York");
    EXPECT_TRUE(week("C-SHAKE", "2026-05-07").fitted);
    EXPECT_FALSE(week("C-SHAKE", "2026-05-08").fitted);
    EXPECT_STREQ(described("2026-05-08T03:59:00Z"), "old");
    EXPECT_STREQ(described("2026-05-08T04:01:00Z"), "new");
    setZone("Australia/Brisbane");
    EXPECT_STREQ(described("2026-05-07T13:59:00Z"), "old");
    EXPECT_STREQ(described("2026-05-07T14:01:00Z"), "new");
}

// A sensor taken off before the week cannot have heard it; one taken off within it has.
TEST_F(MachineWeekTest, ARetiredChannelGivesNoZone) {
    ASSERT_EQ(governing("C-SHAKE", kUntil).zone, "D");
    ASSERT_TRUE(fleet_->machines().put(withNode("C-SHAKE", "2026-05-03"), "c.json"));
    const Governing retired = governing("C-SHAKE", kUntil);
    EXPECT_TRUE(retired.retired);
    EXPECT_EQ(retired.zone, "");
    EXPECT_FALSE(retired.limit);
    EXPECT_TRUE(retired.level) << "what it heard is still shown";
    EXPECT_EQ(week("C-SHAKE", kUntil).zone, "");
    ASSERT_TRUE(fleet_->machines().put(withNode("C-SHAKE", "2026-05-06"), "c.json"));
    EXPECT_EQ(governing("C-SHAKE", kUntil).zone, "D");
}

// A fitted channel speaks before a louder one whose point is no longer described.
TEST_F(MachineWeekTest, AFittedChannelGovernsBeforeARetiredLouderOne) {
    std::string text = description("C-SHAKE");
    text.replace(text.find("\"id\": \"P\""), 9, "\"id\": \"Q\"");
    ASSERT_TRUE(fleet_->machines().put(text, "c.json", "2026-05-08", "another place"));
    const auto quiet = made::setupOf(made::machineOf(description("C-SHAKE")), 9, 3);
    const auto sent = intake_test::sent(quiet);
    intake_test::Said said;
    said.machine = "C-SHAKE";
    said.point = "Q";
    said.time = "2026-05-09T06:20:00Z";
    said.scale = sent.scale;
    intake_test::send(folder_ / "moved", "q", sent.wav, said);
    ImportOptions options;
    options.now = intake_test::kNow;
    const auto report = import(*fleet_, RealFileSystem(), {folder_ / "moved"}, options);
    ASSERT_TRUE(report && report->stored == 1);
    const Governing g = governing("C-SHAKE", kUntil);
    EXPECT_EQ(g.point, "Q");
    EXPECT_NE(g.zone, "D");
    EXPECT_FALSE(g.retired);
}

// Ready-made levels have no examination: what their zone stands on is what the description says.
TEST_F(MachineWeekTest, AZoneOfReadyMadeLevelsSaysWhatItStandsOn) {
    const std::string table = folder_ / "walk.csv";
    RealFileSystem disk;
    ASSERT_TRUE(disk.writeSafely(table,
                                 "time,machine,point,direction,quantity,unit,value\n"
                                 "2026-05-06T06:20:00Z,D-MUTE,P,horizontal,velocity,mm/s,30\n"));
    ImportOptions options;
    options.now = intake_test::kNow;
    ASSERT_TRUE(import(*fleet_, disk, {table}, options));
    const MachineWeek heard = week("D-MUTE", "2026-05-10");
    ASSERT_EQ(heard.zone, "D");
    const std::string basis =
        limitsFor(made::machineOf(description("D-MUTE")), made::machineOf(description("D-MUTE")).points[0])
            ->sets[0]
            .basis;
    ASSERT_FALSE(basis.empty());
    EXPECT_EQ(zoneNoteOf(heard).basis, basis);
    const auto findings = zoneFindings(heard, {}, {}, UrgencyRule());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_NE(findings[0].finding.sentence.find(basis), std::string::npos) << findings[0].finding.sentence;
    EXPECT_EQ(findings[0].finding.severity.basis, basis);
}

}  // namespace
}  // namespace fettle::fleet_test
