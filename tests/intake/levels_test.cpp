// Tables of ready-made levels: what was written in them is in the fleet file, once, in its units. Factors: 1
// in is 25.4 mm and 1 g 9.80665 m/s2 by definition; 32 degF is 0 degC, 212 degF 100. Zone limits: those of
// the machine's own table (core/machine/severity_limits.h).
#include <gmock/gmock.h>

#include "core/intake/level_intake.h"
#include "core/intake/level_table.h"
#include "core/intake/preview.h"
#include "core/machine/severity_limits.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::StartsWith;

const std::string kLong = "time,machine,point,direction,quantity,unit,value\n";

class Levels : public IntakeTest {
  protected:
    ImportReport importOf(const std::string& text, const std::string& name = "walk.csv") {
        RealFileSystem disk;
        EXPECT_TRUE(disk.makeFolders(in_));
        EXPECT_TRUE(disk.writeSafely(in_ + "/" + name, text));
        auto report = import(*fleet_, disk, {in_ + "/" + name}, options_);
        EXPECT_TRUE(report) << report.error().sentence();
        return *report;
    }
    std::int64_t id(const std::string& tag) { return fleet_->machines().byTag(tag)->id; }
    // Of the one channel of that name; empty where there is none.
    std::vector<double> trendOf(const std::string& tag, const std::string& channel, Quantity quantity) {
        std::vector<double> values;
        const auto channels = fleet_->trends().channels(id(tag)).value();
        for (const ChannelEntry& one : channels) {
            if (one.name != channel) continue;
            const auto trend = fleet_->trends().trend(one.id, quantity, Instant{}, Instant::max()).value();
            for (const TrendPoint& point : trend)
                values.push_back(point.value);
        }
        return values;
    }
};

TEST_F(Levels, AWalkComesInOnceInTheUnitsOfTheFile) {
    const std::string walk = kLong +
                             "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,2.5\n"
                             "2026-05-04T06:20:00Z,T-1,P,horizontal,acceleration,m/s2,9.80665\n"
                             "2026-05-04T06:21:00Z,T-1,P,axial,velocity,in/s rms,0.5\n"
                             "2026-05-04T06:22:00Z,T-1,P,,temperature,\xc2\xb0"
                             "F,212\n"
                             "2026-05-05T06:20:00Z,T-1,P,horizontal,velocity,m/s,0.0075\n";
    const ImportReport first = importOf(walk);
    EXPECT_EQ(first.tables, 1u);
    EXPECT_EQ(first.levels, 5u);
    EXPECT_TRUE(first.refusals.empty()) << first.refusals[0].rule;
    EXPECT_THAT(trendOf("T-1", "horizontal", Quantity::VelocityRms), ElementsAre(2.5, 7.5));
    EXPECT_THAT(trendOf("T-1", "axial", Quantity::VelocityRms), ElementsAre(12.7));
    EXPECT_THAT(trendOf("T-1", "horizontal", Quantity::AccelerationRms), ElementsAre(1));
    EXPECT_NEAR(trendOf("T-1", "temperature", Quantity::FrameTempC).at(0), 100, 1e-12);
    const std::size_t recordings = *fleet_->recordings().count();
    const ImportReport second = importOf(walk);
    EXPECT_EQ(second.levels, 0u);
    EXPECT_EQ(second.levelsAlready, 5u);
    EXPECT_EQ(*fleet_->recordings().count(), recordings);
    EXPECT_THAT(*fleet_->check(true), testing::IsEmpty());
    EXPECT_FALSE((*fleet_->recordings().list(id("T-1"), Instant{}, Instant::max()))[0].hasWaveform);
}

TEST_F(Levels, BadRowsAreToldWithTheirLinesAndTheRestGoesOn) {
    const ImportReport report = importOf(kLong +
                                         "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,1\n"
                                         "2026-05-04T06:21:00Z,T-9,P,H,velocity,mm/s,1\n"
                                         "2026-05-04T06:22:00Z,T-1,Q,H,velocity,mm/s,1\n"
                                         "2026-05-04T06:23:00Z,T-1,P,H,velocity,g,1\n"
                                         "2026-05-04T06:24:00Z,T-1,P,H,velocity,mm/s pk,1\n"
                                         "2026-05-04 08:25,T-1,P,H,velocity,mm/s,1\n"
                                         "2026-05-04T06:26:00Z,T-1,P,H,velocity,mm/s,NaN\n"
                                         "2026-05-04T06:27:00Z,T-1,P,H,gloss,1,1\n"
                                         "2026-05-04T06:28:00Z,T-1,P,sideways,velocity,mm/s,1\n"
                                         "2026-05-04T06:29:00Z,T-1,P,H,velocity,mm/s\n"
                                         "2027-05-04T06:29:00Z,T-1,P,H,velocity,mm/s,1\n"
                                         "2026-05-04T06:30:00Z,T-9,P,H,velocity,mm/s,1\n"
                                         "2026-05-04T06:31:00Z,T-1,P,H,velocity,mm/s,2\n");
    EXPECT_EQ(report.levels, 2u);
    EXPECT_EQ(report.levelRowsRefused, 11u);
    std::map<std::string, std::string> told;
    for (const Refusal& refusal : report.refusals)
        told[refusal.place] = refusal.rule;
    EXPECT_THAT(told["lines 3, 13"], HasSubstr("machine \"T-9\" is not in the register"));
    EXPECT_THAT(told["line 4"], HasSubstr("point \"Q\" is not in the description of T-1"));
    EXPECT_THAT(told["line 5"], HasSubstr("velocity in \"g\"; units for it: mm/s, m/s, in/s"));
    EXPECT_THAT(told["line 6"], HasSubstr("a peak value tells its r.m.s. only of a sine"));
    EXPECT_THAT(told["line 7"], HasSubstr("must be UTC"));
    EXPECT_THAT(told["line 8"], HasSubstr("value \"NaN\" is no number"));
    EXPECT_THAT(told["line 9"], HasSubstr("quantity \"gloss\""));
    EXPECT_THAT(told["line 10"], HasSubstr("direction \"sideways\""));
    EXPECT_THAT(told["line 11"], HasSubstr("6 fields, the head names 7 columns"));
    EXPECT_THAT(told["line 12"], HasSubstr("in the future"));
    const auto kept = fleet_->log().refusals(true);
    ASSERT_TRUE(kept && kept->size() == 1) << "one word a file";
    for (const auto& [place, rule] : told) {
        EXPECT_THAT((*kept)[0].place + (*kept)[0].rule, HasSubstr(place));
        EXPECT_THAT((*kept)[0].rule, HasSubstr(rule));
    }
}

// -459.67 degF is -273.15 degC by definition; the tops are common practice, no source.
TEST_F(Levels, WhatNoMachineCanHaveIsRefused) {
    const ImportReport report = importOf(kLong +
                                         "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,-3\n"
                                         "2026-05-04T06:21:00Z,T-1,P,H,velocity,mm/s,99999999999\n"
                                         "2026-05-04T06:22:00Z,T-1,P,H,acceleration,g,-0.1\n"
                                         "2026-05-04T06:23:00Z,T-1,P,,speed,r/min,-1480\n"
                                         "2026-05-04T06:24:00Z,T-1,P,,temperature,F,-459.7\n"
                                         "2026-05-04T06:25:00Z,T-1,P,,temperature,C,5000\n"
                                         "2026-05-04T06:26:00Z,T-1,P,H,velocity,mm/s,0\n"
                                         "2026-05-04T06:27:00Z,T-1,P,,temperature,C,-160\n"
                                         "2026-05-04T06:28:00Z,T-1,P,,load,%,-40\n");
    EXPECT_EQ(report.levels, 3u);
    EXPECT_EQ(report.levelRowsRefused, 6u);
    std::map<std::string, std::string> told;
    for (const Refusal& refusal : report.refusals)
        told[refusal.place] = refusal.rule;
    EXPECT_THAT(told["lines 2, 3"], HasSubstr("velocity_rms_mm_s cannot be: must be 0 to 10000 mm/s"));
    EXPECT_THAT(told["line 4"], HasSubstr("acceleration_rms_g"));
    EXPECT_THAT(told["line 5"], HasSubstr("speed_rpm cannot be: must be 0 to 200000 r/min"));
    EXPECT_THAT(told["lines 6, 7"], HasSubstr("frame_temp_c cannot be: must be -273.15 to 500"));
    const ImportReport wide = importOf(
        "time,machine,point,velocity_rms_mm_s,speed_rpm\n2026-05-04T07:20:00Z,T-1,P,2,-1\n", "wide.csv");
    EXPECT_EQ(wide.levels, 0u);
    EXPECT_THAT(wide.refusals.at(0).rule, HasSubstr("speed_rpm cannot be"));
}

// Whoever deletes what is acknowledged would lose the rows that were not taken.
TEST_F(Levels, ATableWithBadRowsIsNotAcknowledged) {
    std::vector<std::string> safe;
    options_.acknowledged = [&](const std::vector<std::string>& paths) {
        safe.insert(safe.end(), paths.begin(), paths.end());
    };
    importOf(kLong + "2026-05-04T06:20:00Z,T-1,P,H,peak,g p-p,4\n2026-05-04T06:21:00Z,T-1,P,H,peak,g pk,2\n");
    EXPECT_TRUE(safe.empty());
    EXPECT_EQ(importOf(kLong + "2026-05-04T06:21:00Z,T-1,P,H,peak,g pk,2\n").levelsAlready, 1u);
    EXPECT_EQ(safe.size(), 1u);
}

TEST_F(Levels, AnotherValueForAMomentIsAnObjection) {
    importOf(kLong + "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,2.5\n");
    const ImportReport again =
        importOf(kLong + "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,2.6\n", "other.csv");
    EXPECT_EQ(again.levels, 0u);
    ASSERT_EQ(again.refusals.size(), 1u);
    EXPECT_THAT(again.refusals[0].rule, HasSubstr("another value than the one kept"));
    const ImportReport within = importOf(
        kLong +
            "2026-05-06T06:20:00Z,T-1,P,H,velocity,mm/s,1\n2026-05-06T06:20:00Z,T-1,P,H,velocity,mm/s,2\n",
        "c.csv");
    EXPECT_EQ(within.levels, 1u);
    EXPECT_EQ(within.refusals.at(0).place, "line 3");
    EXPECT_THAT(trendOf("T-1", "horizontal", Quantity::VelocityRms), ElementsAre(2.5, 1));
}

TEST_F(Levels, VelocityIsGradedByTheLimitsOfItsPoint) {
    importOf(
        kLong +
        "2026-05-04T06:20:00Z,T-2,M,H,velocity,mm/s,100\n2026-05-05T06:20:00Z,T-2,M,V,velocity,mm/s,0.01\n");
    const auto description = fleet_->machines().describedOn("T-2", "2026-05-04");
    const auto limits = limitsFor(**description, *(*description)->pointById("M"));
    ASSERT_FALSE(limits->sets.empty());
    const auto channels = fleet_->trends().channels(id("T-2")).value();
    for (const ChannelEntry& channel : channels) {
        const auto row = fleet_->trends().latest(channel.id);
        ASSERT_TRUE(row && *row);
        EXPECT_EQ((*row)->zone, channel.name == "horizontal" ? "D" : "A");
        EXPECT_EQ((*row)->running, "running");
        if (channel.name == "vertical") {
            EXPECT_EQ((*row)->nextLimitMmS, limits->sets[0].velocity[0]);
        }
    }
}

TEST_F(Levels, SemicolonsAndDecimalCommasAreRead) {
    const ImportReport report = importOf(
        "Time;Machine;Point;Quantity;Unit;Value;Running\n2026-05-04T06:20:00Z;T-1;;Crest "
        "factor;;4,5;stopped\n");
    EXPECT_EQ(report.levels, 1u);
    EXPECT_THAT(trendOf("T-1", "acceleration", Quantity::CrestFactor), ElementsAre(4.5));
}

TEST_F(Levels, MetInAFolderATableIsToldFromOtherText) {
    RealFileSystem disk;
    ASSERT_TRUE(disk.makeFolders(in_));
    ASSERT_TRUE(
        disk.writeSafely(in_ + "/walk.csv", kLong + "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,2.5\n"));
    ASSERT_TRUE(disk.writeSafely(in_ + "/notes.csv", "time,machine,remark\n2026,T-1,hot\n"));
    const auto seen = preview(*fleet_, disk, {in_});
    ASSERT_TRUE(seen);
    ASSERT_EQ(seen->files.size(), 1u);
    EXPECT_EQ(seen->files[0].format, "LEVELS");
    EXPECT_EQ(seen->files[0].state, FilePreview::State::Ready);
    EXPECT_THAT(seen->files[0].notes.at(0), StartsWith("1 levels to come in, 0 already there"));
    EXPECT_EQ(*fleet_->recordings().count(), 0u) << "a preview stores nothing";
    const auto report = import(*fleet_, disk, {in_}, options_);
    EXPECT_EQ(report->levels, 1u);
    EXPECT_EQ(report->passedOver, 1u);
}

TEST_F(Levels, AHeadWithoutRowsAndABrokenEnd) {
    EXPECT_EQ(importOf(kLong).levels, 0u);
    const ImportReport cut = importOf(kLong + "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,2", "cut.csv");
    EXPECT_EQ(cut.levels, 0u);
    ASSERT_EQ(cut.refusals.size(), 1u) << "the last digits may be missing";
    const ImportReport twice = importOf("time,machine,point,quantity,unit,value,value\n", "twice.csv");
    EXPECT_THAT(twice.refusals.at(0).rule, HasSubstr("two columns are named \"value\""));
}

}  // namespace
}  // namespace fettle::intake_test
