// The round's report on paper: one page a planner acts on, then tables with repeated heads; nothing outside
// the margins, nothing over something else, no letter under 7.5 pt, every page numbered, on A4 and Letter,
// for a quiet round as for one with sixty jobs. Sizes and margins: common practice, no source. Inches: 25.4
// mm, exact.
#include "ui/sheet/report_layout.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ui/model/round_words.h"
#include "ui/model/unit_words.h"
#include "ui/sheet/page_flow.h"

namespace fettle {
namespace {

using testing::HasSubstr;

ReportJob job(int place, const std::string& urgency) {
    ReportJob one;
    one.place = place;
    one.tag = fmt::format("KL-PU-{:02}", place);
    one.service = "slurry pump of the second line";
    one.area = "kiln";
    one.urgency = urgency;
    one.firstLine = fmt::format(
        "Replace the motor DE bearing of KL-PU-{:02} (slurry pump of the second line) before 12 June 2026; "
        "order it by 28 May 2026.",
        place);
    one.finding = "outer-race defect, motor DE";
    one.firm = true;
    one.doBy = "2026-06-12";
    one.doByLabel = "do not run beyond";
    one.doByWords = "12 June 2026";
    one.orderWords = "28 May 2026, allowing 14 days";
    one.job = "no job yet";
    one.untilThen = "Watch once a day: level, temperature, noise.";
    one.stopAtOnceIf = "the level goes above 5.6 mm/s (1.25 x the C/D limit)";
    one.changed = "Level from 4.1 mm/s to 6.2 mm/s (+51 %).";
    one.decided = "accepted";
    one.howBad = "Developed stage. M-DE x velocity r.m.s. is 6.2 mm/s, zone D by ISO 20816-3 group 2 rigid.";
    one.effort = {1, "mechanical fitter", "stopped", 2, 6.0, 16.0, 12.0, 32.0};
    return one;
}

RoundReport reportOf(int jobs) {
    RoundReport report;
    report.site = "Hollin Edge Lime Works";
    report.from = "2026-05-04";
    report.until = "2026-05-10";
    report.madeOn = "2026-05-12";
    report.engine = "0.1.0 0123456789abcdef";
    report.state = "closed on 11 May 2026 by mk";
    report.machines = std::size_t(jobs) + 100;
    for (int i = 1; i <= jobs; ++i)
        report.work.push_back(job(i, i <= jobs / 3 ? "act" : "plan"));
    EffortSums urgencies, areas;
    for (const ReportJob& one : report.work) {
        urgencies.add(one.urgency, one.place, one.doBy, one.effort);
        areas.add(one.place % 2 ? "kiln" : "packing", one.place, one.doBy, one.effort);
    }
    report.byUrgency = urgencies.all();
    report.byArea = areas.all();
    report.watched = {{"HY-MX-01", "hydrator mixer", "hydration", "watch", "worn gear mesh", "No change."}};
    report.disputed = {
        {"QY-CV-03", "belt conveyor", "quarry", "plan", "bearing", "disputed: changed in April"}};
    for (int i = 0; i < jobs / 2; ++i)
        report.notSeen.push_back({fmt::format("PK-CV-{:02}", i), "packing conveyor", "packing", "silent",
                                  "no recording since 2026-04-20", "whoever keeps the sensors", "", false});
    report.due = {{"KL-ID-01", "verify", "2026-05-02",
                   "job 3 is done: verify that it cured; running in since 2026-05-02"}};
    report.promise = "of the 9 listed on evidence, at most 1 in 10 on average over rounds is chance";
    report.record = {"bearings: confirmed 14 of 17, too few to give a rate"};
    report.leaveWords = "92 machines are on leave.";
    report.blind = {{"rotor_bar", "broken or cracked rotor bars", 7, 9, 1, "a recording of 32 s"}};
    report.limits = {"Leave proves no machine sound.", "Windings are not judged here."};
    report.cautions = {"Before a guard comes off: isolate.", "Site rules come first. No permit to work."};
    return report;
}

struct Case {
    std::string name;
    std::vector<SheetPage> pages;
};

const std::vector<Case>& cases() {
    static const std::vector<Case> all = [] {
        std::vector<Case> made;
        for (const PaperSize size : {PaperSize::A4, PaperSize::Letter})
            for (const int jobs : {0, 1, 8, 60})
                made.push_back({fmt::format("{} jobs", jobs), layOutReport(reportOf(jobs), size)});
        RoundReport odd = reportOf(3);
        odd.work[0].firstLine = odd.work[0].tag = odd.site = std::string(300, 'W');
        made.push_back({"one unbroken word", layOutReport(odd, PaperSize::A4)});
        return made;
    }();
    return all;
}

std::string allText(const SheetPage& page) {
    std::string all;
    for (const PlacedText& text : page.texts)
        all += text.text.toStdString() + "\n";
    return all;
}

bool crossing(const QRectF& a, const QRectF& b) {
    const QRectF both = a.intersected(b);
    return both.width() > 2 && both.height() > 2;  // hundredths of a millimetre
}

TEST(ReportLayout, NothingLeavesThePageAndNothingStandsOverAnother) {
    for (const Case& c : cases())
        for (const SheetPage& page : c.pages) {
            SCOPED_TRACE(c.name);
            for (std::size_t i = 0; i < page.texts.size(); ++i) {
                const PlacedText& text = page.texts[i];
                EXPECT_TRUE(page.area().adjusted(-20, -1, 20, 1).contains(text.rect))
                    << text.text.left(60).toStdString();
                EXPECT_GE(text.pt, kLeastPt);
                for (std::size_t k = i + 1; k < page.texts.size(); ++k)
                    EXPECT_FALSE(crossing(text.rect, page.texts[k].rect))
                        << text.text.left(50).toStdString() << " / "
                        << page.texts[k].text.left(50).toStdString();
                for (const PlacedDisc& disc : page.discs)
                    EXPECT_FALSE(crossing(text.rect, disc.rect)) << text.text.left(50).toStdString();
            }
        }
}

TEST(ReportLayout, TheFirstPageHoldsTheSummaryHoweverMuchWorkThereIs) {
    for (const Case& c : cases()) {
        SCOPED_TRACE(c.name);
        const std::string first = allText(c.pages.front());
        for (const char* part : {"What needs work", "Not seen", "Promised, and due", "What changed",
                                 "How often the list was right here", "What this list cannot tell"})
            EXPECT_THAT(first, HasSubstr(part));
    }
    const std::string few = allText(layOutReport(reportOf(8), PaperSize::A4).front());
    for (int i = 1; i <= 8; ++i)
        EXPECT_THAT(few, HasSubstr(fmt::format("KL-PU-{:02} (slurry", i)));
    EXPECT_THAT(allText(layOutReport(reportOf(60), PaperSize::A4).front()), HasSubstr("more, in the tables"));
}

std::string firstOf(const RoundReport& report) {
    std::string text = allText(layOutReport(report, PaperSize::A4).front());
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

// 8 jobs of 12 to 32 person-hours: 2 to act on, 6 to plan for; four in each of two areas.
TEST(ReportLayout, APlannerReadsPeopleHoursAndSumsOnTheFirstPage) {
    const std::string text = firstOf(reportOf(8));
    EXPECT_THAT(text, HasSubstr("2 people, 6 to 16 h; machine stopped"));
    EXPECT_THAT(text, HasSubstr("act: 24 to 64 person-hours (2 machines, machine stopped for 2)"));
    EXPECT_THAT(text, HasSubstr("plan: 72 to 192 person-hours (6 machines"));
    EXPECT_THAT(text, HasSubstr("KL-PU-01 (no. 1), KL-PU-03 (no. 3)"));
    EXPECT_THAT(text, HasSubstr("48 to 128 person-hours"));
    EXPECT_THAT(firstOf(reportOf(1)), testing::Not(HasSubstr("by area"))) << "one area needs no table";
}

TEST(ReportLayout, TheHeadlineOfAnOldRoundSaysOfWhichDayItSpeaks) {
    RoundReport report = reportOf(8);
    EXPECT_THAT(firstOf(report), HasSubstr("2 to act on now, 6 to plan for."));
    report.ageNote = "This round is 200 days old.";
    EXPECT_THAT(firstOf(report), HasSubstr("On 10 May 2026: 2 to act on, 6 to plan for."));
    EXPECT_THAT(firstOf(report), testing::Not(HasSubstr("act on now")));
}

TEST(ReportLayout, WhatCouldNotBeSeenSaysWhere) {
    EXPECT_THAT(firstOf(reportOf(1)),
                HasSubstr("could be seen at no place of 7, and at some places only of 1, "
                          "of the 9 listed machines it concerns."));
    std::string all;
    for (const SheetPage& page : layOutReport(reportOf(1), PaperSize::A4))
        all += allText(page);
    EXPECT_THAT(all, HasSubstr("a recording of 32 s"));
}

TEST(ReportLayout, TheTablesHoldAllOfItWithTheirHeadsRepeatedAndPagesCounted) {
    const std::vector<SheetPage> pages = layOutReport(reportOf(60), PaperSize::Letter);
    ASSERT_GT(pages.size(), 3u);
    std::string tables;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        EXPECT_THAT(allText(pages[i]), HasSubstr(fmt::format("{} of {}", i + 1, pages.size())));
        if (i > 0) tables += allText(pages[i]);
    }
    for (int i = 1; i <= 60; ++i)
        EXPECT_THAT(tables, HasSubstr(fmt::format("KL-PU-{:02} (slurry", i)));
    EXPECT_THAT(allText(pages[2]), HasSubstr("The work in full, in its order, continued"));
    EXPECT_THAT(allText(pages[2]), HasSubstr("by when"));
    EXPECT_THAT(tables, HasSubstr("disputed: changed in April"));
    EXPECT_THAT(tables, HasSubstr("no recording since 20 April 2026"));  // dates are spelled out
}

TEST(ReportLayout, InchesStandBesideMillimetresWhereTheyAreAskedFor) {
    std::string plain, both;
    for (const SheetPage& page : layOutReport(reportOf(1), PaperSize::A4))
        plain += allText(page);
    for (const SheetPage& page : layOutReport(reportOf(1), PaperSize::Letter, {true, false, false}))
        both += allText(page);
    EXPECT_THAT(plain, testing::Not(HasSubstr("in/s")));
    EXPECT_THAT(both, HasSubstr("6.2 mm/s (0.244 in/s)"));
}

TEST(UnitWords, StandBesideTheStoredOneOnceAndWithTheirSign) {
    const Units inches{true, false, false}, both{true, false, true};
    const auto said = [](const char* text, const Units& units) {
        return withUnitsBeside(QString::fromUtf8(text), units).toStdString();
    };
    EXPECT_EQ(said("25.4 mm/s is zone D", inches), "25.4 mm/s (1.00 in/s) is zone D");
    EXPECT_EQ(said("changing by +0.50 mm/s a week", inches), "changing by +0.50 mm/s (+0.0197 in/s) a week");
    EXPECT_EQ(said("61 °C, 12 K above", both), "61 °C (142 °F), 12 K above");
    EXPECT_EQ(said("6.2 mm/s (0.244 in/s)", inches), "6.2 mm/s (0.244 in/s)");
    EXPECT_EQ(said("6.2 mm/s", {}), "6.2 mm/s");
    EXPECT_EQ(said("shaft 25.4 mm, 3 mm/s2", inches), "shaft 25.4 mm, 3 mm/s2");
}

TEST(ComparisonLayout, TellsEveryMoveWithItsReason) {
    RoundComparison both;
    both.beforeUntil = "2026-05-03";
    both.afterUntil = "2026-05-10";
    for (int i = 0; i < 80; ++i)
        both.moves.push_back({fmt::format("M-{:02}", i), "pump", "kiln", RoundMove::Up, "plan", "act", "belt",
                              "belt", "Level up since 2026-05-01.", "accepted", ""});
    const std::vector<SheetPage> pages = layOutComparison(both, "Hollin Edge", PaperSize::A4);
    ASSERT_GT(pages.size(), 1u);
    std::string all;
    for (const SheetPage& page : pages)
        all += allText(page);
    EXPECT_THAT(all, HasSubstr("Round to 10 May 2026 against round to 3 May 2026"));
    EXPECT_THAT(all, HasSubstr("more urgent: plan, now act"));
    EXPECT_THAT(all, HasSubstr("M-79"));
    EXPECT_THAT(all, HasSubstr("Level up since 1 May 2026."));
}

}  // namespace
}  // namespace fettle
