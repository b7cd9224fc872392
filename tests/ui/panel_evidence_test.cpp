// The evidence panel: rows add up as printed, for to the right and against to the left, the cursor goes both
// ways, nothing that was weighed or left out is hidden. common practice, no source, where nothing else is
// said.
#include "ui/panels/evidence_panel.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QHeaderView>
#include <QLabel>
#include <QRegularExpression>

#include "core/exchange/examination_json.h"
#include "core/exchange/examination_text.h"
#include "tests/ui/plot_support.h"
#include "ui/panels/evidence_model.h"
#include "ui/panels/evidence_view.h"
#include "ui/panels/fault_list.h"
#include "ui/panels/nameplate_line.h"

namespace fettle {

using namespace test;
using testing::HasSubstr;

namespace {

struct Stage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    EvidencePanel panel{theme, selection, nullptr};

    explicit Stage(Examination examination = madeExamination()) {
        auto content = std::make_shared<PanelContent>();
        for (std::size_t i = 0; i < examination.recordings.size(); ++i) {
            content->times.push_back(toInstantOf(double(i)));
            content->recordings.push_back(std::int64_t(i) + 1);
        }
        content->examination = std::move(examination);
        content->basis = "Week";
        selection.setFault("bearing_outer_race", "driver DE");
        panel.resize(520, 900);
        panel.setContent(content);
        panel.show();
        settle();
    }
    static Instant toInstantOf(double day) {
        return Instant(std::chrono::milliseconds(std::int64_t(kStartMs + day * kDayMs)));
    }
    EvidenceView& view() { return *panel.findChild<EvidenceView*>("evidenceTable"); }
    QString cell(int row, int column) { return view().model()->index(row, column).data().toString(); }
    QString text(const char* name) { return panel.findChild<QLabel*>(name)->text(); }
    bool shows(const char* name) { return panel.findChild<QWidget*>(name)->isVisible(); }
};

}  // namespace

TEST(Evidence, ThePrintedRowsAddUpToThePrintedWeight) {
    for (const int recordings : {1, 3}) {
        Stage stage(madeExamination(recordings));
        const int rows = stage.view().model()->rowCount();
        ASSERT_EQ(rows, 12 + 2 + (recordings > 1));
        long tenths = 0;
        for (int row = 0; row + 1 < rows; ++row)
            tenths += std::lround(stage.cell(row, EvidenceModel::Decibans).toDouble() * 10);
        EXPECT_EQ(tenths, std::lround(stage.cell(rows - 1, EvidenceModel::Decibans).toDouble() * 10));
        EXPECT_EQ(stage.cell(rows - 1, EvidenceModel::Name), "weight");
    }
}

// What the round lists by change against the baseline is no "no finding" here: it leads, in the round's
// words.
TEST(Evidence, AFindingByChangeLeadsWithTheRoundsWordsAndNoArithmetic) {
    RoundFinding change;
    change.finding.fault = "dry_bearing";
    change.finding.at = "driven DE";
    change.finding.weightDban = 33.4;
    change.finding.urgency = "plan";
    change.finding.sentence = "High band at P-DE x rose from 0.12 g to 0.75 g.";
    change.change = ChangeFacts{"high band", "P-DE", "x",   "horizontal", "g",   0.12, 0.75,
                                16.3,        42,     20458, 20499,        20619, {}};
    Examination examination = madeExamination();
    examination.findings = {change.finding};
    Stage stage(std::move(examination));
    auto content = std::make_shared<PanelContent>(*stage.panel.content());
    content->changes = {change};
    stage.panel.setContent(content);
    stage.selection.setFault("dry_bearing", "driven DE");
    settle();
    const FaultEntry& first = stage.panel.findChild<FaultList*>()->entries().front();
    EXPECT_EQ(first.fault, "dry_bearing");
    EXPECT_TRUE(first.found && first.byChange);
    EXPECT_EQ(first.since, "15 June 2026");  // day 20619 since 1970
    EXPECT_EQ(stage.panel.verdict().toStdString(), change.finding.sentence);
    EXPECT_FALSE(stage.shows("evidenceTable"));
    stage.selection.setFault("bearing_outer_race", "driver DE");
    settle();
    EXPECT_TRUE(stage.shows("evidenceTable"));
}

// What a newcomer reads above the table comes to the weight as well: the numbers with a sign, and their sum.
TEST(Evidence, TheWordsAboveTheTableAddUpToTheWeight) {
    for (const int recordings : {1, 3}) {
        Stage stage(madeExamination(recordings));
        const QString words = stage.text("evidenceSum");
        ASSERT_TRUE(stage.shows("evidenceSum"));
        long tenths = 0;
        int parts = 0;
        for (auto at = QRegularExpression("(?:: )([+-]?\\d+\\.\\d)").globalMatch(words); at.hasNext();
             ++parts)
            tenths += std::lround(at.next().captured(1).toDouble() * 10);
        EXPECT_EQ(parts, recordings > 1 ? 4 : 3) << words.toStdString();
        const int last = stage.view().model()->rowCount() - 1;
        EXPECT_EQ(tenths, std::lround(stage.cell(last, EvidenceModel::Decibans).toDouble() * 10))
            << words.toStdString();
        EXPECT_TRUE(words.contains(stage.cell(last, EvidenceModel::Decibans)));
    }
}

TEST(Evidence, AVerdictDoesNotDenyABaselineThatIsDrawnBesideIt) {
    Examination examination = madeExamination();
    for (auto* list : {&examination.findings, &examination.considered})
        for (Hypothesis& h : *list)
            h.sentence = "Possible looseness: 5.3 mm/s. No baseline yet; a check of bolts decides.";
    Stage stage(examination);
    EXPECT_EQ(stage.text("verdict"),
              "Possible looseness: 5.3 mm/s. Weighed without a baseline; a check of bolts decides.");
}

// The same hypothesis on the panel, in the JSON (unrounded) and in the text report.
TEST(Evidence, PanelJsonAndTextSayTheSameSum) {
    Stage stage;
    const Examination examination = madeExamination();
    const Json json = toJson(examination);
    const Json& finding = json["findings"][0];
    double sum = finding["search_dban"].get<double>();
    for (const Json& line : finding["lines"])
        sum += line["weight_dban"].get<double>();
    EXPECT_NEAR(sum, finding["weight_dban"].get<double>(), 1e-9);
    const int last = stage.view().model()->rowCount() - 1;
    EXPECT_NEAR(stage.cell(last, EvidenceModel::Decibans).toDouble(), sum, 0.05 + 1e-9);
    const std::string report = asText(examination);
    for (int row = 0; row <= last; ++row) {
        const std::string name = stage.cell(row, EvidenceModel::Name).toStdString();
        const std::string value = stage.cell(row, EvidenceModel::Decibans).toStdString();
        const std::size_t at = report.find("     " + name + " ");
        ASSERT_NE(at, std::string::npos) << name;
        EXPECT_THAT(report.substr(at, report.find('\n', at) - at), HasSubstr(" " + value)) << name;
    }
}

TEST(Evidence, ForIsDrawnToTheRightOfTheZeroLineAgainstToTheLeft) {
    Stage stage;
    const QImage image = pictureOf(*stage.view().viewport());
    const auto inked = [&](int row, Role role) {
        const QRect cell = stage.view().visualRect(stage.view().model()->index(row, EvidenceModel::Bar));
        std::pair<int, int> ends{image.width(), -1};
        for (int x = cell.left(); x < std::min(cell.right(), image.width()); ++x)
            if (image.pixel(x, cell.center().y()) == stage.theme.colour(role).rgb())
                ends = {std::min(ends.first, x), std::max(ends.second, x)};
        return ends;
    };
    const auto found = inked(0, Role::For), absent = inked(6, Role::Against);
    ASSERT_GE(found.second, 0);
    ASSERT_GE(absent.second, 0);
    EXPECT_LE(absent.second, found.first);
}

TEST(Evidence, ChoosingARowSetsTheCursorAndACursorMarksItsRow) {
    Stage stage;
    stage.view().selectRow(2);
    ASSERT_TRUE(stage.selection.cursorHz());
    EXPECT_NEAR(*stage.selection.cursorHz(), 3 * 88.3 + 0.2, 1e-9);  // where it was found
    stage.view().selectRow(6);
    EXPECT_NEAR(*stage.selection.cursorHz(), 7 * 88.3, 1e-9);  // absent: where it was expected
    stage.selection.setCursorHz(88.3 * 4 + 0.3);
    EXPECT_EQ(stage.view().currentIndex().row(), 3);
    EXPECT_NEAR(*stage.selection.cursorHz(), 88.3 * 4 + 0.3, 1e-9) << "the answer must not move the cursor";
    stage.selection.setCursorHz(20);
    EXPECT_TRUE(stage.view().selectionModel()->selectedRows().isEmpty());
}

TEST(Evidence, APeakSaysWhichFamiliesClaimIt) {
    Stage stage;
    stage.selection.setCursorHz(88.4);
    EXPECT_THAT(stage.text("claims").toStdString(), HasSubstr("BPFO of outer-race defect, driver DE"));
    stage.selection.setCursorHz(135.7);
    EXPECT_THAT(stage.text("claims").toStdString(), HasSubstr("cage defect"));
    EXPECT_THAT(stage.text("claims").toStdString(), HasSubstr("inner-race defect"));
    stage.selection.setCursorHz(17);
    EXPECT_THAT(stage.text("claims").toStdString(), HasSubstr("no family"));
}

TEST(Evidence, ClaimsComeHeaviestFirst) {
    const auto claims = claimsAt(madeExamination(), 135.7, 0.5);
    ASSERT_EQ(claims.size(), 2u);
    EXPECT_EQ(claims[0].fault, "bearing_inner_race");
    EXPECT_GT(*claims[0].weightDban, *claims[1].weightDban);
}

TEST(Evidence, FaultsStandByWeightAndThoseWithoutOneLast) {
    const auto entries = faultEntries(madeExamination());
    ASSERT_EQ(entries.size(), 4u);
    EXPECT_TRUE(entries[0].found);
    EXPECT_EQ(entries[1].fault, "bearing_inner_race");
    EXPECT_EQ(entries[2].fault, "bearing_cage");
    EXPECT_EQ(entries[3].fault, "unbalance");
    EXPECT_FALSE(entries[3].weightDban);
    Stage stage;
    auto* list = stage.panel.findChild<FaultList*>("faultList");
    ASSERT_EQ(list->topLevelItemCount(), 5);
    EXPECT_EQ(list->topLevelItem(1)->text(0), "considered and not found: 3 (hide)");
    EXPECT_THAT(list->topLevelItem(0)->text(0).toStdString(), HasSubstr("plan"));
}

// In a low window the lines of the chosen fault need the room; the head unfolds the rest, by mouse or key.
TEST(Evidence, InALowWindowWhatWasNotFoundIsFoldedAwayUntilAskedFor) {
    Stage stage;
    auto* list = stage.panel.findChild<FaultList*>("faultList");
    const int tall = list->sizeHint().height();
    stage.panel.resize(520, 500);
    settle();
    EXPECT_TRUE(list->folded());
    EXPECT_TRUE(list->topLevelItem(2)->isHidden());
    EXPECT_FALSE(list->topLevelItem(0)->isHidden());
    EXPECT_LT(list->sizeHint().height(), tall);
    stage.selection.setFault("bearing_cage", "driver DE");  // the chosen one is seen
    EXPECT_FALSE(list->topLevelItem(3)->isHidden());
    emit list->itemActivated(list->topLevelItem(1), 0);
    EXPECT_FALSE(list->folded());
    EXPECT_EQ(list->sizeHint().height(), tall);
    EXPECT_EQ(list->topLevelItem(1)->text(0), "considered and not found: 3 (hide)");
}

TEST(Evidence, WithoutAFindingNothingIsFolded) {
    Examination sound = madeExamination();
    sound.findings.clear();
    Stage stage(sound);
    stage.panel.resize(520, 300);
    settle();
    EXPECT_FALSE(stage.panel.findChild<FaultList*>("faultList")->folded());
}

TEST(Evidence, ChoosingAFaultShowsItsVerdictAndArithmetic) {
    Stage stage;
    auto* list = stage.panel.findChild<FaultList*>("faultList");
    list->setCurrentItem(list->topLevelItem(2));
    EXPECT_EQ(stage.selection.fault(), "bearing_inner_race");
    EXPECT_THAT(stage.text("verdict").toStdString(), HasSubstr("3.1 decibans; a finding needs 20"));
    EXPECT_THAT(stage.text("verdict").toStdString(), HasSubstr("does not prove the machine sound"));
    EXPECT_THAT(stage.text("evidenceHead").toStdString(), HasSubstr("Best chance fit"));
    list->setCurrentItem(list->topLevelItem(4));
    EXPECT_THAT(stage.text("verdict").toStdString(), HasSubstr("no baseline"));
    EXPECT_FALSE(stage.shows("evidenceTable"));
}

TEST(Evidence, LinesLeftOutStandWithTheirReasonAndBlindSpotsWithTheirCure) {
    Stage stage;
    EXPECT_TRUE(stage.shows("leftOut"));
    EXPECT_THAT(stage.text("leftOut").toStdString(), HasSubstr("shared with order 5 of the shaft: 5 x BPFO"));
    EXPECT_THAT(stage.text("blindSpots").toStdString(), HasSubstr("record too short"));
    EXPECT_THAT(stage.text("blindSpots").toStdString(), HasSubstr("Cure: record 4 s"));
    EXPECT_EQ(stage.cell(4, EvidenceModel::Decibans), "0.0");
}

TEST(Evidence, WithoutAContentTheWordsSayWhatToDo) {
    Stage stage;
    stage.panel.setWords("Import recordings first.");
    EXPECT_EQ(stage.text("panelWords"), "Import recordings first.");
    EXPECT_FALSE(stage.shows("faultList"));
    EXPECT_FALSE(stage.shows("evidenceTable"));
    EXPECT_FALSE(stage.shows("blindSpots"));
}

TEST(Evidence, HostileTextOfARecordingStaysText) {
    Examination e = madeExamination();
    e.recordings[0].quality.push_back({"clipped", "<b>x</b>", "<img src='file:///etc/passwd'>"});
    Stage stage(e);
    EXPECT_THAT(stage.text("notes").toStdString(), HasSubstr("&lt;img"));
}

TEST(Nameplate, NamesEveryBearingAndPointOnceFromDriverToDriven) {
    Machine m;
    m.tag = "KL-ID-01";
    m.coupling = "flexible";
    m.driver.powerKw = 90;
    m.driver.poles = 4;
    m.driven.kind = "fan";
    m.driven.known = true;
    m.driven.blades = 12;
    m.shafts = {{"driver", "driver", 1, 0}};
    m.bearings = {{"driver DE", 0, "driver", {"6316", "deep_groove", 1, TurningRing::Inner, {}, ""}},
                  {"driven DE", 0, "driven", {"22218", "spherical_roller", 2, TurningRing::Inner, {}, ""}}};
    Point point;
    point.id = "M-DE";
    point.at = "driver DE";
    m.points = {point};
    const auto parts = nameplateParts(m);
    QStringList keys;
    QString all;
    for (const NameplatePart& part : parts) {
        if (!part.key.isEmpty()) keys << part.key;
        all += part.text;
    }
    EXPECT_EQ(keys, QStringList({"driver DE", "M-DE", "driven DE"}));
    EXPECT_THAT(all.toStdString(), HasSubstr("90 kW 4 poles"));
    EXPECT_THAT(all.toStdString(), HasSubstr("fan 12 blades"));
    const Theme theme(ThemeChoice::Light);
    NameplateLine line(theme, nullptr);
    line.setMachine(std::make_shared<const Machine>(m));
    QString picked;
    QObject::connect(&line, &NameplateLine::bearingPicked, [&](const QString& at) { picked = at; });
    line.findChild<QAbstractButton*>("train/driven DE")->click();
    EXPECT_EQ(picked, "driven DE");
    EXPECT_THAT(line.accessibleName().toStdString(), HasSubstr("22218"));
}

}  // namespace fettle
