// Sentences of the sheet for cases the small site does not have. Dates and shares: the tables' own; common
// practice, no source.
#include "core/fleet/sheet_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

#include "core/base/file_system.h"
#include "core/fleet/advice.h"
#include "core/fleet/sheet_dates.h"
#include "core/fleet/sheet_figures.h"
#include "core/fleet/sheet_work.h"
#include "tests/base/scratch_folder.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using testing::HasSubstr;
using testing::Not;

SheetCase bearingCase(const std::string& stage, const std::string& criticality) {
    SheetCase sheet;
    sheet.machine = std::make_shared<Machine>(made::fanSet());
    sheet.period.firstDay = "2026-05-04";
    sheet.period.lastDay = "2026-05-10";
    sheet.row.tag = "T-2";
    sheet.row.criticality = criticality;
    Hypothesis& h = sheet.told.finding;
    h.fault = "bearing_outer_race";
    h.at = "driver DE";
    h.weightDban = 30;
    h.severity = {"stage", stage, {}, {}, "", ""};
    h.urgency = stage == "late" ? "act" : stage == "developed" ? "plan" : "watch";
    sheet.finding = h;
    sheet.row.findings = {sheet.told};
    return sheet;
}

// From 20 answers on a share of the fault's own, else of all; before that words only.
TEST(SheetWords, DatesInSentencesAreSpelledOut) {
    EXPECT_EQ(withSpelledDates("since about 2026-05-18, from 2026-04-06 to 2026-05-17"),
              "since about 18 May 2026, from 6 April 2026 to 17 May 2026");
    EXPECT_EQ(withSpelledDates("part 2026-05-181, 12-2026"), "part 2026-05-181, 12-2026");
}

TEST(SiteRecordWords, CountTheFaultsOwnWhereThereAreEnough) {
    const auto words = [](std::size_t own, std::size_t all) {
        return siteRecordWords({all, all - 5}, {own, own - 3}, "inner-race defect");
    };
    EXPECT_THAT(words(20, 40), HasSubstr("17 of 20 findings of this fault (inner-race defect)"));
    EXPECT_THAT(words(19, 40),
                HasSubstr("35 of 40 findings that were opened were confirmed; too few of this"));
    EXPECT_THAT(words(10, 19), HasSubstr("Too few findings"));
    EXPECT_THAT(words(10, 19), Not(HasSubstr("19")));
}

// 4 poles: pole pass 2 x 50 - 4 x 1484 / 60 = 1.067 Hz.
TEST(SheetSpectrum, RotorBarsAreShownInFluxAboutTheMains) {
    SheetCase sheet = bearingCase("early", "B");
    sheet.told.finding.fault = sheet.finding.fault = "rotor_bar";
    sheet.week.emplace();
    RecordingFacts facts;
    facts.channels = {{"x", "M", "horizontal", "acceleration", 1000, 32000},
                      {"flux", "M", "", "flux", 1000, 32000}};
    facts.speed.rpm = 1484;
    facts.mains = MainsFacts{50, 0.002, "flux"};
    facts.measures = {{"rotor_bar", "driver", "pole-pass sidebands of 1x", "dB", 0, -50},
                      {"rotor_bar", "driver", "lower pole-pass sideband of mains", "dB", 1, -38}};
    sheet.week->recordings = {facts};
    const SheetSpectrum flux = spectrumOf(sheet);
    EXPECT_EQ(flux.channel, "flux");
    EXPECT_EQ(flux.view, "own");
    EXPECT_EQ(flux.carrierHz, 50);
    ASSERT_EQ(flux.marks.size(), 3u);
    EXPECT_NEAR(flux.marks[0].hz, 50 - 1.067, 0.001);
    EXPECT_NEAR(flux.toHz - flux.fromHz, 8 * 1.067, 0.01);
    EXPECT_THAT(flux.caption, HasSubstr("M flux: stray flux about the mains"));
    sheet.week->recordings[0].measures.pop_back();
    EXPECT_EQ(spectrumOf(sheet).channel, "x");
    EXPECT_NEAR(spectrumOf(sheet).carrierHz, 1484 / 60.0, 1e-9);
    sheet.week->recordings[0].measures.clear();
    EXPECT_EQ(spectrumOf(sheet).carrierHz, 0);
}

// A rotor whose velocity is low is urgent by its sidebands, and the sheet says by which.
TEST(HowBad, OfRotorBarsIsToldByTheirSidebands) {
    SheetCase sheet = bearingCase("early", "A");
    Hypothesis& h = sheet.told.finding;
    h.fault = "rotor_bar";
    h.severity = {"db_below_carrier", "probable", 35, 36, "dB", "figures for motor current"};
    h.urgency = "act";
    sheet.governing.title = "M-DE x velocity r.m.s.";
    sheet.governing.level = 0.8;
    const std::string words = howBadWords(sheet);
    EXPECT_THAT(words, HasSubstr("35 dB below it in flux: probable, the mark for that is 36 dB"));
    EXPECT_THAT(words, HasSubstr("With criticality A that is act."));
    EXPECT_THAT(words, HasSubstr("0.8 mm/s"));
}

TEST(VerdictWords, SayNoLackOfABaselineThatThereIs) {
    SheetCase sheet = bearingCase("early", "A");
    Hypothesis& h = sheet.told.finding;
    h.at = "driven";
    h.sentence =
        "Possible looseness: 5.3 of 6.0 mm/s. No baseline yet; a check of bolts decides. 2x rose. "
        "Most like looseness; a check of bolts decides.";
    EXPECT_THAT(verdictWords(sheet), HasSubstr("No baseline yet; a check"));
    sheet.past.baseline.emplace();
    EXPECT_EQ(verdictWords(sheet),
              "Possible looseness: 5.3 of 6.0 mm/s. 2x rose. "
              "Most like looseness; a check of bolts decides.");
    h.sentence = "Possible looseness: 5.3 of 6.0 mm/s. No baseline yet; a check of bolts decides.";
    EXPECT_EQ(verdictWords(sheet), "Possible looseness: 5.3 of 6.0 mm/s. A check of bolts decides.");
}

// 20 teeth on the driver's shaft at 1480 r/min mesh at 493.3 Hz (kinematics).
TEST(SheetSpectrum, AGearThatChangedIsShownWithItsMesh) {
    SheetCase sheet = bearingCase("early", "B");
    auto machine = std::make_shared<Machine>(*sheet.machine);
    machine->gears.push_back(Gear{"G1", "S1", "S2", "spur", {20, 61}, {}, ""});
    sheet.machine = machine;
    sheet.told.finding.fault = sheet.finding.fault = "gear_mesh";
    sheet.told.finding.at = sheet.finding.at = "G1";
    sheet.told.finding.weightDban.reset();
    sheet.finding.weightDban.reset();
    sheet.told.change =
        ChangeFacts{"mesh 1-3 x", "G-IN", "x", "radial", "g", 0.07, 0.16, 7.2, 42, 20000, 20041, {}, {}};
    sheet.changeDays = {{20100, 0.07, 1}, {20101, 0.16, 1}};
    sheet.week.emplace();
    RecordingFacts facts;
    facts.channels = {{"x", "G-IN", "radial", "acceleration", 12800, 51200}};
    facts.speed.rpm = 1480;
    sheet.week->recordings = {facts};
    const SheetSpectrum spectrum = spectrumOf(sheet);
    ASSERT_EQ(spectrum.marks.size(), 3u);
    EXPECT_NEAR(spectrum.marks[0].hz, 20 * 1480 / 60.0, 1e-9);
    EXPECT_EQ(spectrum.marks[2].name, "3 x mesh");
    EXPECT_THAT(spectrum.caption, HasSubstr("G-IN x: acceleration"));
    const SheetTrend trend = trendOf(sheet);
    EXPECT_EQ(trend.title, "G-IN x mesh 1-3 x");
    EXPECT_EQ(trend.unit, "g");
    EXPECT_EQ(trend.days.size(), 2u);
    sheet.week->recordings[0].channels[0].point = "M-DE";
    EXPECT_THAT(spectrumOf(sheet).caption, HasSubstr("velocity"));
}

TEST(PlaceWords, AreThoseOfTheShop) {
    const Machine machine = made::fanSet();
    EXPECT_EQ(placeWords(machine, "driver DE"), "motor DE");
    EXPECT_EQ(placeWords(machine, "driven NDE"), "fan NDE");
    EXPECT_EQ(placeWords(machine, "driver"), "motor");
    EXPECT_EQ(placeWords(machine, "driver DE or NDE"), "motor DE or NDE");
    EXPECT_EQ(placeWords(machine, "moon DE"), "moon DE");
}

TEST(JobDates, AWorseStageAndAMoreCriticalMachineComeSooner) {
    const JobDatesTable table = JobDatesTable::load().value();
    std::string before = "9999";
    for (const char* stage : {"early", "developed", "late"}) {
        int sooner = 100000;
        for (const char* criticality : {"C", "B", "A"}) {
            const auto days = table.runDays({"stage", stage, {}, {}, "", ""}, criticality);
            ASSERT_TRUE(days);
            EXPECT_LE(*days, sooner);
            sooner = *days;
            EXPECT_LT(table.inspectDays({"stage", stage, {}, {}, "", ""}, criticality), days);
        }
        const std::string date = datesOf(bearingCase(stage, "A"), table, true)[1].date;
        EXPECT_LT(date, before) << stage;
        before = date;
    }
    EXPECT_FALSE(table.runDays({"zone", "A", {}, {}, "", ""}, "A"));
    EXPECT_EQ(table.priority("act", "A", false), 1);
    EXPECT_EQ(table.priority("act", "A", true), 2);
    EXPECT_EQ(table.priority("leave", "C", true), 4);
}

TEST(JobDates, ALeadTimeLongerThanTheTimeLeftSaysOrderNow) {
    const JobDatesTable table = JobDatesTable::load().value();
    const auto dates = datesOf(bearingCase("late", "A"), table, true);
    EXPECT_EQ(dates[0].date, "2026-05-10");
    EXPECT_FALSE(dates[0].overdue) << "it became known today";
    EXPECT_THAT(dates[0].words, HasSubstr("longer than the time left"));
    EXPECT_THAT(firstLineOf(bearingCase("late", "A"), "Replace it", "Look at it", table, dates),
                HasSubstr("order it now"));
    const auto later = datesOf(bearingCase("developed", "B"), table, true);
    EXPECT_THAT(firstLineOf(bearingCase("developed", "B"), "Replace it", "Look at it", table, later),
                testing::MatchesRegex("Replace it before .* 2026; order it by .* 2026\\."));
}

TEST(JobDates, ALimitThatIsReachedSoonerHolds) {
    const JobDatesTable table = JobDatesTable::load().value();
    SheetCase sheet = bearingCase("developed", "C");
    sheet.told.limitDate = LimitDate{{}, 20588 + 10, {}};  // 2026-05-15 + 10 days
    const std::string soon = datesOf(sheet, table, true)[1].date;
    EXPECT_EQ(soon, "2026-05-25");
    sheet.told.limitDate = LimitDate{{}, 20000, {}};
    EXPECT_EQ(datesOf(sheet, table, true)[1].date, "2026-05-11") << "never before the round's end";
}

TEST(JobDates, APlannedStopIsThatOfAnOpenJobAndStillToCome) {
    const JobDatesTable table = JobDatesTable::load().value();
    SheetCase sheet = bearingCase("developed", "C");
    sheet.job = Job{};
    sheet.job->plannedStop = "2026-06-01";
    EXPECT_EQ(datesOf(sheet, table, true)[2].date, "2026-06-01");
    sheet.job->state = "closed";
    EXPECT_EQ(datesOf(sheet, table, true)[2].date, "");
    sheet.job->state = "issued";
    sheet.job->plannedStop = "2026-05-01";
    EXPECT_THAT(datesOf(sheet, table, true)[2].words, HasSubstr("1 May 2026 has passed"));
}

// Days: 2026-05-10 and 42 days, criticality B, developed stage, lead time 14 days (job_dates.json).
TEST(JobDates, WhatHasPassedIsSaidInWordsAndKeepsItsDate) {
    const JobDatesTable table = JobDatesTable::load().value();
    SheetCase sheet = bearingCase("developed", "B");
    sheet.today = "2026-06-08";
    auto dates = datesOf(sheet, table, true);
    EXPECT_EQ(dates[0].date, "2026-06-07");
    EXPECT_THAT(dates[0].words, HasSubstr("was due 7 June 2026: look at newer recordings"));
    EXPECT_FALSE(dates[1].overdue);
    EXPECT_EQ(firstLineOf(sheet, "Replace it", "Look at it", table, dates),
              "Measured 29 days ago: look at newer recordings first. Replace it before 21 June 2026; to be "
              "ordered (was due 7 June 2026).");
    sheet.today = "2026-06-21";
    EXPECT_THAT(firstLineOf(sheet, "Replace it", "Look at it", table, datesOf(sheet, table, true)),
                HasSubstr("before 21 June 2026"));
    sheet.today = "2026-06-22";
    dates = datesOf(sheet, table, true);
    EXPECT_TRUE(dates[1].overdue);
    EXPECT_EQ(firstLineOf(sheet, "Replace it", "Look at it", table, dates),
              "Measured 43 days ago: look at newer recordings first. Replace it (was due 21 June 2026); to "
              "be ordered (was due 7 June 2026).");
    sheet.row.findings.push_back(sheet.told);
    EXPECT_THAT(otherWords(sheet, 2, table), HasSubstr("motor DE: plan, was due 21 June 2026"));
}

TEST(JobDates, AClockBeforeTheRoundChangesNothing) {
    SheetCase sheet = bearingCase("developed", "B");
    sheet.today = "2025-01-01";
    for (const SheetDate& date : datesOf(sheet, JobDatesTable::load().value(), true))
        EXPECT_FALSE(date.overdue);
    EXPECT_EQ(ageWords(sheet), "");
}

TEST(JobDates, WhatIsNotGradedHasNoDateAndSaysSo) {
    SheetCase sheet = bearingCase("developed", "A");
    sheet.told.finding.severity = {};
    const JobDatesTable table = JobDatesTable::load().value();
    const auto dates = datesOf(sheet, table, true);
    EXPECT_EQ(dates[0].date + dates[1].date, "");
    EXPECT_THAT(dates[1].words, HasSubstr("not graded"));
    EXPECT_EQ(firstLineOf(sheet, "Replace it", "Look at it", table, dates), "Replace it.");
}

// Zone C, criticality B: 42 days, half of them to an inspection: 10 May and 21 days (job_dates.json).
TEST(JobDates, TheEarliestOverTheFindingsIsShownAndNamed) {
    const JobDatesTable table = JobDatesTable::load().value();
    SheetCase sheet = bearingCase("developed", "B");
    RoundFinding other = sheet.told;
    other.finding.fault = "misalignment";
    other.finding.at = "driver";
    other.finding.weightDban.reset();
    other.finding.severity = {"zone", "C", {}, {}, "", ""};
    sheet.row.findings.push_back(other);
    const auto dates = datesOf(sheet, table, true);
    EXPECT_EQ(dates[1].date, "2026-05-31");
    EXPECT_EQ(dates[1].label, "inspect by");
    EXPECT_THAT(dates[1].words, HasSubstr("finding 2, misalignment"));
    EXPECT_THAT(firstLineOf(sheet, "Replace it", "Look at it", table, dates),
                testing::StartsWith(
                    "Misalignment, motor, inspect by 31 May 2026 (finding 2). Replace it before 21 June"));
}

TEST(FirstLine, AWatchedFindingAsksForNoRepair) {
    const SheetCase sheet = bearingCase("early", "B");
    EXPECT_FALSE(sheet.firm());
    const JobDatesTable table = JobDatesTable::load().value();
    const auto dates = datesOf(sheet, table, true);
    const std::string line = firstLineOf(sheet, "Replace it", "Look at it", table, dates);
    EXPECT_THAT(line, HasSubstr("Look at it at the next planned stop"));
    EXPECT_THAT(line, HasSubstr("no repair is asked for yet"));
}

TEST(FirstLine, ByHandSaysWhoAsksAndNoMore) {
    SheetCase sheet = bearingCase("early", "B");
    sheet.told.finding = {};
    sheet.told.finding.provedOn = kByHand;
    sheet.row.byHandWhy = "the operators ask";
    const JobDatesTable table = JobDatesTable::load().value();
    const auto dates = datesOf(sheet, table, true);
    EXPECT_EQ(firstLineOf(sheet, "Replace it", "Look at it", table, dates),
              "Look at T-2: put on the list by hand: the operators ask.");
}

TEST(LimitDateWords, SayTheInterval) {
    RoundFinding told;
    EXPECT_EQ(limitDateWords(told, "2026-05-10"), "");
    told.limitDate = LimitDate{20588, 20578, 20600};
    EXPECT_THAT(limitDateWords(told, "2026-05-10"), HasSubstr("15 May 2026"));
    EXPECT_THAT(limitDateWords(told, "2026-05-10"), HasSubstr("5 May 2026 to 27 May 2026"));
    EXPECT_THAT(limitDateWords(told, "2026-05-16"), HasSubstr("would have reached")) << "the day after";
    told.limitDate->to.reset();
    EXPECT_THAT(limitDateWords(told, "2026-05-10"), HasSubstr("or later"));
}

// C/D of ISO 20816-3 group 2 rigid: 4.5 mm/s; 1.25 x 4.5 = 5.6.
TEST(StopAtOnce, NeverNamesALevelThatWasPassedAsStillToCome) {
    Governing governing;
    EXPECT_THAT(worseWords(governing), HasSubstr("doubles"));
    governing.limits = ZoneLimits{};
    governing.limits->velocity[2] = 4.5;
    governing.level = 4.8;
    EXPECT_THAT(worseWords(governing), HasSubstr("goes above 5.6 mm/s"));
    for (const double level : {5.62, 5.64, 6.2}) {  // the trip 5.625 prints as 5.6
        governing.level = level;
        EXPECT_THAT(worseWords(governing), Not(HasSubstr("goes above"))) << level;
        EXPECT_THAT(worseWords(governing), HasSubstr("rises further")) << level;
    }
    EXPECT_THAT(agreeWords(governing), HasSubstr("if nobody agrees, stop it. It shakes at 6.2 mm/s"));
}

TEST(SheetWords, AStageWithoutLinesSaysByWhatItWasGraded) {
    SheetCase sheet = bearingCase("developed", "B");
    EXPECT_THAT(howBadWords(sheet), HasSubstr("Developed stage: harmonics with sidebands"));
    sheet.told.finding.fault = "bearing_dry_or_worn";
    sheet.told.finding.severity.basis = "high band against own baseline";
    EXPECT_THAT(howBadWords(sheet), HasSubstr("Developed stage: high band against own baseline"));
    EXPECT_THAT(howBadWords(sheet), Not(HasSubstr("sidebands")));
}

TEST(Advice, EveryFaultHasARowThatIsWhole) {
    const auto table = AdviceTable::load();
    ASSERT_TRUE(table) << table.error().sentence();
    for (const char* fault : {"unbalance",
                              "misalignment",
                              "bent_shaft",
                              "looseness",
                              "soft_foot",
                              "resonance",
                              "rub",
                              "bearing_outer_race",
                              "bearing_inner_race",
                              "bearing_rolling_element",
                              "bearing_cage",
                              "bearing_dry_or_worn",
                              "bearing_unknown",
                              "bearing_current",
                              "gear_mesh",
                              "gear_tooth",
                              "belt",
                              "blade_pass",
                              "cavitation",
                              "flow",
                              "rotor_bar",
                              "electrical_2x_mains",
                              "air_gap",
                              "supply_unbalance",
                              "overheating",
                              "sensor"}) {
        const Advice& row = table->of(fault);
        EXPECT_NE(row.faults[0], "*") << fault;
        for (const std::string& text :
             {row.job, row.inspect, row.need.state, row.need.trades, row.need.lifting, row.need.access,
              row.inspectNeed.state, row.until, row.stop, row.left, row.measure, row.cured})
            EXPECT_FALSE(text.empty()) << fault;
        for (const AdviceNeed& need : {row.need, row.inspectNeed}) {
            ASSERT_TRUE(need.heads && need.hoursLow && need.hoursHigh) << fault;
            EXPECT_LT(*need.hoursLow, *need.hoursHigh) << fault;
            EXPECT_FALSE(need.tools.empty() || need.permits.empty()) << fault;
        }
        EXPECT_LE(*row.inspectNeed.hoursHigh, *row.need.hoursHigh) << fault;
        for (const AdviceStep& step : row.steps)
            EXPECT_FALSE(step.text.empty() || step.source.empty()) << fault;
    }
    EXPECT_EQ(table->of("something else").faults[0], "*");
    EXPECT_EQ(table->of("").faults[0], "*");
}

TEST(Advice, WorkThatCanHurtSaysTheStateOfTheMachine) {
    const AdviceTable table = AdviceTable::load().value();
    for (const char* fault :
         {"bearing_outer_race", "unbalance", "misalignment", "looseness", "gear_mesh", "belt"})
        EXPECT_THAT(table.of(fault).need.state, HasSubstr("locked out")) << fault;
    for (const char* fault : {"rotor_bar", "electrical_2x_mains", "bearing_current"})
        EXPECT_THAT(table.of(fault).need.trades, HasSubstr("qualified electrician")) << fault;
}

TEST(Advice, ABrokenTableOfTheSiteIsNamedNotUsed) {
    const ScratchFolder folder;
    ::setenv("FETTLE_RESOURCES", folder.path().c_str(), 1);
    RealFileSystem files;
    ASSERT_TRUE(files.writeSafely(folder / "advice.json",
                                  R"({ "default_source": "x", "rows": [ { "faults": ["*"] } ] })"));
    const auto advice = AdviceTable::load();
    ASSERT_TRUE(files.writeSafely(folder / "job_dates.json", R"({ "lead_days": "two weeks" })"));
    const auto dates = JobDatesTable::load();
    ::unsetenv("FETTLE_RESOURCES");
    ASSERT_FALSE(advice);
    EXPECT_THAT(advice.error().sentence(), HasSubstr("advice.json"));
    EXPECT_THAT(advice.error().sentence(), HasSubstr("/rows/0"));
    ASSERT_FALSE(dates);
    EXPECT_THAT(dates.error().sentence(), HasSubstr("/lead_days"));
}

// A table that a site edited before there was need, part_boxes or by_hand.
TEST(Advice, AnOlderTableOfTheSiteStillHolds) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_TRUE(files.writeSafely(folder / "advice.json", R"({ "default_source": "x", "rows": [ {
        "faults": ["*"], "job": "a", "inspect": "b", "state": "stopped", "trades": "fitter", "parts": [],
        "steps": ["s"], "until": "u", "stop": "t", "left": "l", "measure": "m", "cured": "c" } ] })"));
    ::setenv("FETTLE_RESOURCES", folder.path().c_str(), 1);
    const auto advice = AdviceTable::load();
    ::unsetenv("FETTLE_RESOURCES");
    ASSERT_TRUE(advice) << advice.error().sentence();
    EXPECT_EQ(advice->of("belt").need.state, "stopped");
    EXPECT_FALSE(advice->of("belt").need.heads) << "a box";
    EXPECT_EQ(advice->byHand().job, "Look at {machine}");
    EXPECT_EQ(advice->partBoxes().size(), 3u);
}

TEST(Advice, HoursThatRunBackwardsAreNamed) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_TRUE(files.writeSafely(folder / "advice.json", R"({ "default_source": "x", "rows": [ {
        "faults": ["*"], "job": "a", "inspect": "b", "state": "stopped", "trades": "fitter", "parts": [],
        "need": { "hours": [6, 2] },
        "steps": ["s"], "until": "u", "stop": "t", "left": "l", "measure": "m", "cured": "c" } ] })"));
    ::setenv("FETTLE_RESOURCES", folder.path().c_str(), 1);
    const auto advice = AdviceTable::load();
    ::unsetenv("FETTLE_RESOURCES");
    ASSERT_FALSE(advice);
    EXPECT_THAT(advice.error().sentence(), HasSubstr("/rows/0/need/hours"));
}

TEST(Parts, AFanBearingNeedsNoSpareMotorAndABeltDriveNoCoupling) {
    const AdviceTable table = AdviceTable::load().value();
    const auto has = [&](const SheetCase& sheet, const char* what) {
        const auto parts = partsOf(sheet, table.of("bearing_outer_race"));
        return std::any_of(parts.begin(), parts.end(), [&](const SheetPart& p) { return p.what == what; });
    };
    SheetCase sheet = bearingCase("developed", "A");
    EXPECT_TRUE(has(sheet, "spare motor"));
    EXPECT_TRUE(has(sheet, "coupling element"));
    sheet.finding.at = sheet.told.finding.at = "driven DE";
    EXPECT_FALSE(has(sheet, "spare motor"));
    Machine machine = *sheet.machine;
    machine.coupling.clear();
    machine.belts.push_back({});
    sheet.machine = std::make_shared<Machine>(machine);
    EXPECT_FALSE(has(sheet, "coupling element"));
}

TEST(Parts, BothEndsWhereTheyCannotBeToldApart) {
    SheetCase sheet = bearingCase("developed", "A");
    sheet.finding.at = sheet.told.finding.at = "driver DE or NDE";
    const auto parts = partsOf(sheet, AdviceTable::load().value().of("bearing_outer_race"));
    ASSERT_GE(parts.size(), 2u);
    EXPECT_EQ(parts[0].place, "motor DE");
    EXPECT_EQ(parts[1].place, "motor NDE");
    EXPECT_THAT(parts[0].note, HasSubstr("have both at hand"));
}

TEST(Parts, TheDesignationComesFromTheRegister) {
    SheetCase sheet = bearingCase("developed", "A");
    Machine machine = *sheet.machine;
    for (BearingPlace& place : machine.bearings)
        if (place.at == "driver DE") place.bearing.designation = "6316";
    sheet.machine = std::make_shared<Machine>(machine);
    const auto parts = partsOf(sheet, AdviceTable::load().value().of("bearing_outer_race"));
    EXPECT_EQ(parts[0].designation, "6316");
    EXPECT_THAT(parts[0].note, HasSubstr("confirm on the plate"));
    EXPECT_THAT(filledIn("{at} of {machine}, {cured}", sheet), Not(HasSubstr("{")));
}

TEST(JobWords, TellWhatIsReplaced) {
    Job job;
    job.id = 7;
    job.revision = 2;
    job.replaces = 3;
    EXPECT_THAT(jobWords(job), HasSubstr("revision 2, replaces revision 1 (job 3)"));
    EXPECT_EQ(jobWords(std::nullopt), "no job yet");
}

}  // namespace
}  // namespace fettle
