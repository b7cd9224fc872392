// The weekly list as a person reads it: the urgent first, nothing left out, no name can forge a line.
#include "core/exchange/round_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

#include "core/base/text.h"
#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;
using ::testing::HasSubstr;
using ::testing::Not;

RoundList mixed(const std::string& name = "kiln fan") {
    MachineWeek bearing =
        with(plain("KL-CV-01"), {staged("bearing_outer_race", "driver DE", 60, "developed")});
    bearing.service = name;
    MachineWeek grows = inZone(with(plain("KL-ID-01"), {cause("unbalance", "D", 5.0, 0.9)}), "D", 5.0, 4.5);
    MachineWeek fan = inZone(plain("KL-FN-04"), "C", 3.82, 4.5);
    fan.days = days(3.0, 3.82, 42);
    MachineWeek silent = plain("PK-PU-06");
    silent.newest = parseUtc("2026-04-20T06:00:00Z");
    silent.recordings = silent.turning = 0;
    silent.week.reset();
    std::vector<MachineWeek> weeks = {bearing, grows, fan, silent};
    for (int i = 0; i < 40; ++i)
        weeks.push_back(plain("QY-PU-" + std::to_string(10 + i)));
    RoundList list = round(weeks);
    drawSample(list, 1);
    return list;
}

std::size_t at(const std::string& text, const std::string& part) {
    const std::size_t found = text.find(part);
    EXPECT_NE(found, std::string::npos) << part << "\n" << text;
    return found;
}

TEST(RoundText, GroupsInTheOrderOfUrgencyWithDiscAndWord) {
    const std::string text = asText(mixed());
    std::size_t last = 0;
    for (const char* group : {"● act", "◑ plan", "◌ unseen", "○ leave"}) {
        EXPECT_GT(at(text, group), last);
        last = at(text, group);
    }
    EXPECT_THAT(text, Not(HasSubstr("◔")));
    EXPECT_LT(at(text, "KL-ID-01"), at(text, "KL-CV-01"));
    EXPECT_LT(at(text, "KL-CV-01"), at(text, "PK-PU-06"));
}

TEST(RoundText, WhatWasPutThereByHandKeepsItsNoteUnseen) {
    MachineWeek week = plain("A");
    week.newest = parseUtc("2026-04-20T06:00:00Z");
    week.byHand = true;
    week.byHandWhy = "the operators ask";
    EXPECT_THAT(asText(round({week})), HasSubstr("    by hand: the operators ask\n"));
}

TEST(RoundText, LeaveWithoutAWeightShowsItsLevel) {
    MachineWeek week = plain("A");
    EXPECT_THAT(asText(round({week})), Not(HasSubstr("mm/s")));
    week.week->considered.clear();
    EXPECT_THAT(asText(round({week})), HasSubstr("by level alone, without a weight: A 2.0 mm/s, zone B"));
}

TEST(RoundText, OneRecordingCameLateAndAGrowthOfNothingIsNone) {
    MachineWeek week = inZone(plain("A"), "C", 3.82, 4.5);
    week.days = days(3.82, 3.82, 42);
    week.lateRecordings = 1;
    RoundList list = round({week});
    ASSERT_FALSE(list.machines[0].findings.empty());
    list.machines[0].findings[0].growthPerWeek = -0.001;
    EXPECT_THAT(asText(list), HasSubstr("1 recording came late"));
    EXPECT_THAT(asText(list), HasSubstr("No growth."));
    EXPECT_THAT(asText(list), Not(HasSubstr("-0.00")));
}

TEST(RoundText, EveryMachineIsInIt) {
    const RoundList list = mixed();
    const std::string text = asText(list);
    for (const RoundMachine& m : list.machines) {
        EXPECT_THAT(text, HasSubstr(m.tag));
        EXPECT_EQ(text.find(m.tag + "*") != std::string::npos, m.inSample) << m.tag;
    }
    EXPECT_THAT(text, HasSubstr("44 machines: 1 act, 2 plan, 1 unseen, 40 leave"));
}

TEST(RoundText, SaysThePromiseTheReasonAndTheCaution) {
    const std::string text = asText(mixed());
    EXPECT_THAT(text, HasSubstr("1 listed on evidence: at most 1 in 10 of such entries"));
    EXPECT_THAT(text, HasSubstr("no recording since 2026-04-20"));
    EXPECT_THAT(text, HasSubstr("Growth +0.14 mm/s a week; at this pace 4.5 mm/s about 2026-06-1"));
    EXPECT_THAT(text, HasSubstr("isolate, lock and tag out"));
    EXPECT_THAT(text, HasSubstr("First round: level"));
    EXPECT_THAT(text, HasSubstr("* of the sample"));
}

std::size_t columns(std::string_view line) {
    return std::size_t(std::count_if(line.begin(), line.end(),
                                     [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; }));
}

void expectTidy(const std::string& text) {
    EXPECT_TRUE(isUtf8(text));
    for (const std::string_view line : split(text, '\n'))
        EXPECT_LE(columns(line), 110u) << line;
}

TEST(RoundText, FitsIntoItsColumns) {
    expectTidy(asText(mixed()));
    expectTidy(asText(round({})));
    RoundList wide = mixed();
    for (RoundMachine& m : wide.machines) {
        m.tag += "-with-a-name-that-nobody-can-remember-who-gave-it";
        m.service += " of the hydrated lime plant's third and last conveyor, lower end";
        m.changed += std::string(300, 'w');
    }
    expectTidy(asText(wide));
}

TEST(RoundText, NoNameForgesALine) {
    for (const std::string& name : {std::string("a\nb\r\n● act"), std::string("\xff\xfe"),
                                    std::string(5000, 'n'), std::string("\x1b[31m")}) {
        RoundList list = mixed(name);
        list.machines[0].tag = name;
        list.machines[0].changed = name;
        list.machines.back().tag = name;
        const std::string text = asText(list);
        expectTidy(text);
        EXPECT_EQ(text.find("\n● act"), text.rfind("\n● act"));
        EXPECT_EQ(text.find('\x1b'), std::string::npos);
    }
}

TEST(RoundText, TheStripRisesAndShowsWhereThereWasNothing) {
    RoundList list = mixed();
    list.machines[0].strip = {0.1, 2, 4, std::numeric_limits<double>::quiet_NaN(), 8};
    list.machines[0].limit = 4;
    EXPECT_THAT(asText(list), HasSubstr("▁▃▅·█"));
    list.machines[0].strip.assign(26, std::numeric_limits<double>::quiet_NaN());
    EXPECT_THAT(asText(list), HasSubstr("··························"));
    list.machines[0].strip.clear();
    expectTidy(asText(list));
}

TEST(RoundText, TellsTheIntervalOfADate) {
    RoundList list = mixed();
    for (RoundMachine& m : list.machines)
        for (RoundFinding& f : m.findings)
            if (f.limitDate) f.limitDate = LimitDate{20610, 20600, std::nullopt};
    EXPECT_THAT(asText(list), HasSubstr("about 2026-06-06 (2026-05-27 or much later)"));
}

}  // namespace
}  // namespace fettle
