// The findings sheet as data: what a planner reads must be whole, and its numbers those of the verdict.
// Truth: what the simulator put into the recordings; 1.25 x A/B as cured: common practice, no source; A/B of
// ISO 20816-3 group 2 rigid 1.4 mm/s: resources/tables/severity_limits.json.
#include "core/fleet/sheet_content.h"

#include <cmath>

#include "core/base/text.h"
#include "core/fleet/machine_desk.h"
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
    SheetContent sheetOf(const std::string& tag, std::size_t finding = 0) {
        auto sheet = sheetContent(*fleet_, {tag, finding, {}});
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
                                                           {"machine state", s.machineState},
                                                           {"trades", s.trades},
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
    EXPECT_THAT(sheet.cured, HasSubstr("1.8 mm/s")) << "1.25 x 1.4, to a tenth";
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
    for (const auto& [place, text] : wordsOf(*sheet))
        EXPECT_FALSE(trimmed(text).empty()) << place;
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
    EXPECT_EQ(cells[0], "'=HYPERLINK(\"http://x\",\"click\")");
    EXPECT_THAT(cells[2], StartsWith("'+1 \"fan\", kiln"));
}

}  // namespace
}  // namespace fettle::fleet_test
