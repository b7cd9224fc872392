// The findings sheet as data: what a planner reads must be whole, and its numbers those of the verdict.
// Truth: what the simulator put into the recordings; 1.25 x A/B as cured: common practice, no source; A/B of
// ISO 20816-3 group 2 rigid 1.4 mm/s: resources/tables/severity_limits.json.
#include "core/fleet/sheet_content.h"

#include <cmath>

#include "core/base/text.h"
#include "core/fleet/advice.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "tests/exchange/schema_check.h"
#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

class Sheet : public SmallSite {
  protected:
    SheetContent sheetOf(const std::string& tag, std::size_t finding = 0, const std::string& today = "") {
        auto sheet = sheetContent(*fleet_, {tag, finding, {}, today});
        EXPECT_TRUE(sheet) << (sheet ? "" : sheet.error().sentence());
        return sheet ? std::move(*sheet) : SheetContent{};
    }
    void SetUp() override {
        SmallSite::SetUp();
        opened();
    }
};

// Every text a page shows, with the name of its place; those that may be empty are left out.
std::vector<std::pair<std::string, std::string>> wordsOf(const SheetContent& s) {
    std::vector<std::pair<std::string, std::string>> words{{"first line", s.firstLine},
                                                           {"tag", s.tag},
                                                           {"service", s.service},
                                                           {"criticality", s.criticality},
                                                           {"job", s.job},
                                                           {"round", s.round},
                                                           {"made on", s.madeOn},
                                                           {"engine", s.engine},
                                                           {"fault name", s.faultName},
                                                           {"urgency", s.urgency},
                                                           {"urgency words", s.urgencyWords},
                                                           {"verdict", s.verdict},
                                                           {"how sure", s.howSure},
                                                           {"site record", s.siteRecord},
                                                           {"proved on", s.provedOn},
                                                           {"how bad", s.howBad},
                                                           {"priority", s.priority},
                                                           {"lead time", s.leadTime},
                                                           {"rows note", s.rowsNote},
                                                           {"machine state", s.need.machineState},
                                                           {"trades", s.need.trades},
                                                           {"lifting", s.need.lifting},
                                                           {"access", s.need.access},
                                                           {"need note", s.need.note},
                                                           {"isolation note", s.isolation.note},
                                                           {"as of", s.asOf},
                                                           {"place", s.atWords},
                                                           {"until then", s.untilThen},
                                                           {"stop", s.stopAtOnceIf},
                                                           {"left", s.ifLeft},
                                                           {"measure", s.measureAfter},
                                                           {"cured", s.cured},
                                                           {"blind note", s.blindNote},
                                                           {"trend", s.trend.title},
                                                           {"trend unit", s.trend.unit},
                                                           {"trend caption", s.trend.caption},
                                                           {"spectrum caption", s.spectrum.caption}};
    for (const SheetDate& d : s.dates)
        words.insert(words.end(), {{"date label", d.label}, {"date words", d.words}});
    for (const SheetStep& step : s.steps)
        words.insert(words.end(), {{"step", step.text}, {"step source", step.source}});
    for (const SheetPart& part : s.parts)
        words.insert(words.end(), {{"part", part.what}, {"part note", part.note}});
    for (const SheetBlind& blind : s.blind)
        words.insert(words.end(), {{"blind", blind.what}, {"blind why", blind.why}});
    for (const std::string& caution : s.cautions)
        words.push_back({"caution", caution});
    for (const SheetField& field : s.fields)
        words.push_back({"field", field.label});
    return words;
}

TEST_F(Sheet, NoTextIsEmptyAndNoBraceIsLeft) {
    for (const char* tag : {"A-RACE", "C-SHAKE"})
        for (const auto& [place, text] : wordsOf(sheetOf(tag))) {
            EXPECT_FALSE(trimmed(text).empty()) << tag << ": " << place;
            EXPECT_THAT(text, Not(HasSubstr("{"))) << tag << ": " << place;
        }
}

TEST_F(Sheet, RowsAddUpUnroundedAndAsPrinted) {
    const SheetContent sheet = sheetOf("A-RACE");
    ASSERT_GT(sheet.rows.size(), 5u);
    ASSERT_EQ(sheet.rows.back().kind, ArithmeticRow::Kind::Weight);
    double sum = 0, printed = 0;
    for (std::size_t i = 0; i + 1 < sheet.rows.size(); ++i) {
        sum += sheet.rows[i].dban;
        printed += sheet.rows[i].printed;
        EXPECT_NEAR(sheet.rows[i].printed * 10, std::round(sheet.rows[i].printed * 10), 1e-9);
    }
    EXPECT_NEAR(sum, sheet.rows.back().dban, 1e-9);
    EXPECT_NEAR(printed, sheet.rows.back().printed, 1e-9);
    EXPECT_NEAR(sheet.rows.back().printed, sheet.rows.back().dban, 0.05 + 1e-9);
}

TEST_F(Sheet, RowsAreThoseOfTheWeeksExamination) {
    const SheetContent sheet = sheetOf("A-RACE");
    const auto week = examinationOfSpan(*fleet_, "A-RACE", intake_test::at("2026-05-04T00:00:00Z"),
                                        intake_test::at("2026-05-10T23:59:59Z"));
    ASSERT_TRUE(week && *week);
    const Hypothesis& h = (*week)->examination.findings[0];
    EXPECT_EQ(sheet.fault, h.fault);
    EXPECT_EQ(sheet.at, h.at);
    EXPECT_EQ(sheet.rows.back().dban, *h.weightDban);
    for (std::size_t i = 0; i < h.best.rows.size(); ++i) {
        ASSERT_TRUE(sheet.rows[i].line);
        EXPECT_EQ(sheet.rows[i].name, h.best.rows[i].name);
        EXPECT_EQ(sheet.rows[i].dban, h.best.rows[i].weightDban);
    }
    EXPECT_EQ(sheet.spectrum.recording, (*week)->recordingIds[h.recording]);
    EXPECT_TRUE(detailOf(*fleet_, sheet.spectrum.recording, sheet.spectrum.channel, sheet.spectrum.view));
    for (const SheetMark& mark : sheet.spectrum.marks)
        EXPECT_GT(mark.hz, 0) << mark.name;
}

TEST_F(Sheet, AWeighedFindingSaysWhatToDoInShopWordsAndByWhen) {
    const SheetContent sheet = sheetOf("A-RACE");
    ASSERT_TRUE(sheet.firm) << sheet.urgency << " " << sheet.severityValue;
    EXPECT_THAT(sheet.firstLine, StartsWith("Replace the motor DE bearing of A-RACE (test motor)"));
    for (const char* unheard : {"deciban", "BPFO", "e-value", "zone"})
        EXPECT_THAT(sheet.firstLine, Not(HasSubstr(unheard)));
    ASSERT_EQ(sheet.dates.size(), 3u);
    EXPECT_THAT(sheet.firstLine, HasSubstr("2026"));
    EXPECT_LE(sheet.dates[0].date, sheet.dates[1].date);
    EXPECT_GE(sheet.dates[0].date, kUntil);
    EXPECT_GT(sheet.dates[1].date, kUntil);
    EXPECT_EQ(sheet.dates[2].date, "") << "the planner's";
    ASSERT_FALSE(sheet.parts.empty());
    EXPECT_EQ(sheet.parts[0].what, "bearing");
    EXPECT_EQ(sheet.parts[0].place, "motor DE");
    EXPECT_EQ(sheet.parts[0].designation, "") << "the register does not know it: an empty box";
    EXPECT_THAT(sheet.parts[0].note, HasSubstr("confirm on the plate before ordering"));
    EXPECT_THAT(sheet.cured, Not(HasSubstr("mm/s"))) << "velocity did not grade it";
}

TEST_F(Sheet, ALevelWithoutAWeightAsksForAnInspection) {
    const SheetContent sheet = sheetOf("C-SHAKE");
    EXPECT_FALSE(sheet.firm);
    EXPECT_EQ(sheet.urgency, "act");
    EXPECT_THAT(sheet.firstLine, StartsWith("Check "));
    EXPECT_THAT(sheet.firstLine, HasSubstr("at once"));
    EXPECT_THAT(sheet.rows, IsEmpty());
    EXPECT_EQ(sheet.severityKind, "zone");
    EXPECT_EQ(sheet.severityValue, "D");
    EXPECT_EQ(sheet.dates[0].date, "") << "nothing is ordered before the inspection";
    EXPECT_THAT(sheet.howSure, Not(HasSubstr("deciban")));
    EXPECT_EQ(sheet.spectrum.view, "velocity");
    EXPECT_GT(sheet.spectrum.recording, 0);
    EXPECT_THAT(sheet.spectrum.caption, HasSubstr("C-SHAKE P x: velocity"));
    EXPECT_EQ(sheet.trend.limits.size(), 3u);
    EXPECT_EQ(sheet.trend.days.size(), 3u);
}

// The day of making: dates keep, the words change.
TEST_F(Sheet, ADateThatHasPassedIsSaidToHavePassed) {
    const SheetContent before = sheetOf("A-RACE"), after = sheetOf("A-RACE", 0, "2027-01-31");
    EXPECT_EQ(before.madeOn, kUntil) << "no day given: the round's last";
    EXPECT_EQ(before.ageNote, "");
    EXPECT_EQ(after.madeOn, "2027-01-31");
    EXPECT_EQ(after.asOf, kUntil);
    EXPECT_EQ(after.round, before.round);
    for (int i = 0; i < 2; ++i) {
        EXPECT_EQ(after.dates[i].date, before.dates[i].date);
        EXPECT_FALSE(before.dates[i].overdue) << i;
        EXPECT_TRUE(after.dates[i].overdue) << i;
        EXPECT_THAT(after.dates[i].words, StartsWith("was due ")) << i;
    }
    EXPECT_THAT(after.dates[0].words, HasSubstr("look at newer recordings"));
    EXPECT_THAT(after.firstLine, StartsWith("Measured 266 days ago"));
    EXPECT_THAT(after.firstLine, Not(HasSubstr("now (")));
    EXPECT_THAT(after.firstLine, Not(HasSubstr("before")));
    EXPECT_THAT(after.ageNote, HasSubstr("266 days old")) << "10 May 2026 to 31 January 2027";
}

TEST_F(Sheet, TheDayBeforeTheDateNothingHasPassed) {
    const std::string due = sheetOf("A-RACE").dates[1].date;
    EXPECT_FALSE(sheetOf("A-RACE", 0, due).dates[1].overdue);
    const SheetContent late = sheetOf("A-RACE", 0, datePlus(due, 1).value());
    EXPECT_TRUE(late.dates[1].overdue);
}

TEST_F(Sheet, AJobSaysWhatItTakesAndLeavesTheSiteItsBoxes) {
    const SheetContent sheet = sheetOf("A-RACE");
    ASSERT_TRUE(sheet.need.heads && sheet.need.hoursLow && sheet.need.hoursHigh);
    EXPECT_GT(*sheet.need.hoursHigh, *sheet.need.hoursLow);
    EXPECT_FALSE(sheet.need.tools.empty());
    EXPECT_FALSE(sheet.need.permits.empty());
    EXPECT_THAT(sheet.need.note, HasSubstr("site")) << "it decides";
    EXPECT_GE(sheet.isolation.rows, 3);
    EXPECT_THAT(sheet.partBoxes, testing::ElementsAre("stock number", "on hand", "lead time"));
    EXPECT_EQ(sheet.parts[0].quantity, 1);
    const auto part = [&](const char* what) {
        return std::find_if(sheet.parts.begin(), sheet.parts.end(),
                            [&](const SheetPart& p) { return p.what == what; });
    };
    for (const char* what : {"grease", "coupling element", "shims", "spare motor"})
        EXPECT_NE(part(what), sheet.parts.end()) << what;
    EXPECT_THAT(part("grease")->blanks, testing::ElementsAre("type", "grams"));
    std::string boxes;
    for (const SheetField& field : sheet.fields)
        boxes += field.label + "\n";
    for (const char* asked : {"ISO 14224", "ISO 15243", "kept and tagged", "photo", "hours",
                              "alignment before", "alignment after"})
        EXPECT_THAT(boxes, HasSubstr(asked));
}

// What is asked for is a look at a running machine: nobody parts a coupling for it.
TEST_F(Sheet, AnInspectionTakesLessThanTheRepair) {
    const SheetContent sheet = sheetOf("C-SHAKE");
    ASSERT_FALSE(sheet.firm);
    const AdviceTable table = AdviceTable::load().value();
    const Advice& row = table.of(sheet.fault);
    EXPECT_EQ(sheet.need.hoursHigh, row.inspectNeed.hoursHigh);
    EXPECT_THAT(sheet.need.note, HasSubstr("inspection"));
}

TEST_F(Sheet, ThePlaceIsInShopWordsAndTheTwinsKeepTheKey) {
    const SheetContent sheet = sheetOf("A-RACE");
    EXPECT_EQ(sheet.at, "driver DE");
    EXPECT_EQ(sheet.atWords, "motor DE");
    EXPECT_THAT(sheet.verdict, Not(HasSubstr("driver DE")));
    EXPECT_EQ(toJson(sheet)["finding"]["at"], "driver DE");
    EXPECT_EQ(toJson(sheet)["finding"]["at_words"], "motor DE");
}

// A gateway that writes every day under one name: the recording shown is the one whose lines are told.
class OneName : public SmallSite {
  protected:
    void take(const std::string& kind, double severity, int day) {
        auto setup = made::setupOf(made::machineOf(description("D-MUTE")), std::uint64_t(day), 3);
        if (!kind.empty()) setup = made::with(setup, kind, "driver DE", severity);
        const auto sent = intake_test::sent(setup);
        intake_test::Said said;
        said.machine = "D-MUTE";
        said.time = "2026-05-0" + std::to_string(day) + "T06:20:00Z";
        sent.tell(said);
        const std::string file = intake_test::send(folder_ / "gate", "now", sent.wav, said);
        ImportOptions options;
        options.now = intake_test::kNow;
        const auto report = import(*fleet_, RealFileSystem(), {file}, options);
        ASSERT_TRUE(report && report->stored == 1) << day;
    }
    void SetUp() override {
        SmallSite::SetUp();
        take("bearing_inner_race", 0.8, 5);
        take("bearing_inner_race", 0.6, 6);
        take("", 0, 7);
    }
    std::vector<RecordingEntry> entries() {
        const auto id = fleet_->machines().byTag("D-MUTE")->id;
        return fleet_->recordings()
            .list(id, intake_test::at("2026-05-04T00:00:00Z"), intake_test::at("2026-05-10T23:59:59Z"))
            .value();
    }
};

TEST_F(OneName, TheRecordingWhoseLinesAreToldIsShown) {
    const auto all = entries();
    ASSERT_EQ(all.size(), 3u);
    ASSERT_EQ(all[0].file, all[2].file) << "one name for all";
    const auto week = examinationOfSpan(*fleet_, "D-MUTE", intake_test::at("2026-05-04T00:00:00Z"),
                                        intake_test::at("2026-05-10T23:59:59Z"));
    ASSERT_TRUE(week) << week.error().sentence();
    ASSERT_TRUE(*week) << "running state: " << all[0].running << ", " << all[1].running;
    const Hypothesis& h = (*week)->examination.findings[0];
    ASSERT_TRUE(h.weightDban);
    const std::int64_t strongest = (*week)->recordingIds[h.recording];
    ASSERT_NE(strongest, all[2].id) << "the sound day is not the strongest";
    const RoundList now = listNow(*fleet_, kUntil).value();
    const auto open = sheetContent(*fleet_, now, std::nullopt, {"D-MUTE", 1, {}});
    ASSERT_TRUE(open) << open.error().sentence();
    EXPECT_EQ(open->spectrum.recording, strongest);
    opened();
    const auto kept = sheetContent(*fleet_, {"D-MUTE", 1, {}});
    ASSERT_TRUE(kept) << kept.error().sentence();
    EXPECT_EQ(kept->spectrum.recording, strongest) << "out of the kept round, by facts";
    EXPECT_EQ(kept->spectrum.time, formatUtc((*week)->times[h.recording]));
}

TEST_F(Sheet, CautionsSayWhatCanHurt) {
    const std::string all = joined(sheetOf("C-SHAKE").cautions, "\n");
    for (const char* word : {"lock", "tag out", "dead", "Stored energy", "springs", "pressure", "capacitors",
                             "draught", "hot", "guard", "authorised", "local codes", "no permit to work"})
        EXPECT_THAT(all, HasSubstr(word));
}

TEST_F(Sheet, TheSitesRecordIsANumberFrom20AnswersOn) {
    const auto report = [&](const char* outcome) {
        ASSERT_TRUE(fleet_->log().addFeedback({0, "A-RACE", "bearing_inner_race", "driver DE", outcome, "",
                                               "", "t", intake_test::at("2026-05-12T08:00:00Z")}));
    };
    for (int i = 0; i < 19; ++i)
        report(i < 14 ? "confirmed" : "not_found");
    report("not_opened");
    EXPECT_THAT(sheetOf("A-RACE").siteRecord, Not(HasSubstr("14")));
    report("confirmed");
    EXPECT_THAT(sheetOf("A-RACE").siteRecord, HasSubstr("15 of 20"));
}

TEST_F(Sheet, AJobStandsInTheHead) {
    EXPECT_EQ(sheetOf("A-RACE").job, "no job yet");
    Job job;
    job.machine = "A-RACE";
    job.findings = {"bearing_inner_race @ driver DE"};
    job.workOrder = "WO-77";
    job.plannedStop = "2026-06-01";
    job.revision = 2;
    ASSERT_TRUE(fleet_->log().putJob(job));
    const SheetContent sheet = sheetOf("A-RACE");
    EXPECT_THAT(sheet.job, HasSubstr("revision 2"));
    EXPECT_THAT(sheet.job, HasSubstr("WO-77"));
    EXPECT_EQ(sheet.dates[2].date, "2026-06-01");
    EXPECT_THAT(sheetOf("C-SHAKE").job, HasSubstr("no job"));
}

TEST_F(Sheet, WhatHasNoFindingHasNoSheet) {
    for (const char* tag : {"B-SOUND", "D-MUTE", "NO-SUCH"}) {
        const auto sheet = sheetContent(*fleet_, {tag, 0, {}});
        ASSERT_FALSE(sheet) << tag;
        EXPECT_EQ(sheet.error().kind, ErrorKind::NotFound);
        EXPECT_THAT(sheet.error().sentence(), HasSubstr(tag));
    }
    EXPECT_FALSE(sheetContent(*fleet_, {"A-RACE", 99, {}}));
    EXPECT_FALSE(sheetContent(*fleet_, {"A-RACE", 1, 99}));
}

TEST_F(Sheet, AMachineOnTheListByHandHasOne) {
    ASSERT_TRUE(fleet_->machines().setByHand("B-SOUND", true, "operators hear a knock"));
    const RoundList now = listNow(*fleet_, kUntil).value();
    const auto sheet = sheetContent(*fleet_, now, std::nullopt, {"B-SOUND", 0, {}});
    ASSERT_TRUE(sheet) << sheet.error().sentence();
    EXPECT_THAT(sheet->verdict, HasSubstr("operators hear a knock"));
    for (const auto& [place, text] : wordsOf(*sheet)) {
        EXPECT_TRUE(place == "place" || !trimmed(text).empty()) << place;
        for (const char* claimed : {"shakes", "raised vibration", "level and pattern", "more than it should"})
            EXPECT_THAT(text, Not(HasSubstr(claimed))) << place << ": nobody measured that";
    }
    EXPECT_THAT(sheet->urgencyWords, HasSubstr("a person"));
    EXPECT_THAT(sheet->urgencyWords, Not(HasSubstr("nothing asks for work")));
    EXPECT_FALSE(sheet->firm);
}

// An unseen machine: neither ill nor sound is claimed.
TEST_F(Sheet, ByHandAndUnseenSaysThatNothingCouldBeJudged) {
    ASSERT_TRUE(fleet_->machines().setByHand("D-MUTE", true, "smells hot"));
    const RoundList now = listNow(*fleet_, kUntil).value();
    const auto sheet = sheetContent(*fleet_, now, std::nullopt, {"D-MUTE", 0, {}});
    ASSERT_TRUE(sheet) << sheet.error().sentence();
    EXPECT_THAT(sheet->firstLine, HasSubstr("smells hot"));
    EXPECT_THAT(sheet->urgencyWords, HasSubstr("could be judged"));
    EXPECT_THAT(sheet->howSure, HasSubstr("none says that it is sound"));
    EXPECT_EQ(sheet->spectrum.recording, 0);
    EXPECT_GE(sheet->steps.size(), 3u);
}

TEST_F(Sheet, AKeptRoundGivesTheSameSheetAfterMoreRecordings) {
    const auto before = toJson(sheetOf("A-RACE"));
    ASSERT_TRUE(fleet_->machines().setByHand("B-SOUND", true, "x"));
    EXPECT_EQ(toJson(sheetOf("A-RACE")).dump(), before.dump());
}

TEST_F(Sheet, JsonTwinFitsItsSchemaAndAddsUp) {
    const auto text =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/sheet.schema.json");
    ASSERT_TRUE(text);
    const Json schema = Json::parse(*text);
    for (const char* tag : {"A-RACE", "C-SHAKE"}) {
        const Json json = toJson(sheetOf(tag));
        EXPECT_THAT(made::SchemaCheck(schema).faultsOf(json), IsEmpty()) << tag;
        double sum = 0;
        for (const Json& row : json["lines"])
            sum += row["weight_dban"].get<double>() * (row["kind"] == "weight" ? -1 : 1);
        EXPECT_NEAR(sum, 0, 1e-9);
    }
}

// Splits a line of RFC 4180 as a reader would.
std::vector<std::string> cellsOf(const std::string& line) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"')
            cells.back() += line[i++];
        else if (line[i] == '"')
            quoted = !quoted;
        else if (line[i] == ',' && !quoted)
            cells.emplace_back();
        else
            cells.back() += line[i];
    }
    return cells;
}

TEST_F(Sheet, CsvTwinIsOneRowThatStartsNoFormula) {
    SheetContent sheet = sheetOf("A-RACE");
    sheet.tag = "=HYPERLINK(\"http://x\",\"click\")";
    sheet.service = "+1 \"fan\", kiln\r\n@home";
    sheet.asset = "-2";
    sheet.area = "@SUM(A1)";
    const std::string header = sheetCsvHeader(), row = sheetCsvRow(sheet);
    EXPECT_EQ(std::count(row.begin(), row.end(), '\n'), 1);
    const auto names = cellsOf(header.substr(0, header.size() - 2));
    const auto cells = cellsOf(row.substr(0, row.size() - 2));
    ASSERT_EQ(names.size(), cells.size());
    for (const std::string& cell : cells)
        EXPECT_TRUE(cell.empty() || std::string("=+-@").find(cell[0]) == std::string::npos) << cell;
    EXPECT_EQ(names[0], "tag");
    EXPECT_EQ(names[20], "made_on") << "columns are appended, never moved";
    const auto cell = [&](const char* name) {
        return cells[std::size_t(std::find(names.begin(), names.end(), name) - names.begin())];
    };
    EXPECT_EQ(cell("at"), "driver DE");
    EXPECT_EQ(cell("at_words"), "motor DE");
    EXPECT_EQ(cell("heads"), "2");
    EXPECT_EQ(cell("do_overdue"), "no");
    EXPECT_EQ(cells[0], "'=HYPERLINK(\"http://x\",\"click\")");
    EXPECT_THAT(cells[2], StartsWith("'+1 \"fan\", kiln"));
}

}  // namespace
}  // namespace fettle::fleet_test
