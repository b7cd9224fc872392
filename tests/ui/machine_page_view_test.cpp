// The machine page over the small site whose truth is known: what it shows is what the desk and the sheet
// say, it follows the Selection, and it says what to do where there is nothing to show.
#include "ui/pages/machine_page.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabWidget>

#include "core/fleet/sheet_content.h"
#include "tests/ui/machine_page_fixture.h"
#include "ui/panels/evidence_view.h"
#include "ui/panels/fault_list.h"
#include "ui/plot/waterfall.h"

namespace fettle {

using testing::HasSubstr;

namespace {

class MachinePageTest : public desk_test::PageOnSite {
  protected:
    EvidencePanel& panel() { return part<EvidencePanel>("evidencePanel"); }
    std::string words(const char* plot) { return part<PlotFrame>(plot).words().toStdString(); }
};

TEST_F(MachinePageTest, OpensOnTheHeaviestFaultWithItsSpectraAndMarks) {
    openPage("A-RACE");
    EXPECT_EQ(selection_.fault(), "bearing_inner_race");
    EXPECT_EQ(words("waterfall"), "");
    EXPECT_EQ(words("trend"), "");
    EXPECT_EQ(words("envelope"), "");
    EXPECT_EQ(part<Waterfall>("waterfall").data()->rows(), 3u);
    EXPECT_EQ(part<TrendPlot>("trend").data()->samples.size(), 3u);
    ASSERT_NE(panel().chosen(), nullptr);
    EXPECT_EQ(part<SpectrumPlot>("envelope").marks().size(), panel().chosen()->best.rows.size());
    EXPECT_EQ(part<QTabWidget>("recordingTabs").currentWidget(), &part<SpectrumPlot>("envelope"));
}

// Found lines must stand on peaks of the very spectrum that is drawn: power over floor as in the table.
TEST_F(MachinePageTest, TheSpectrumShownIsTheOneTheLinesWereWeighedOn) {
    openPage("A-RACE");
    const auto data = part<SpectrumPlot>("envelope").data();
    ASSERT_TRUE(data);
    int found = 0;
    for (const LineRow& row : panel().chosen()->best.rows) {
        if (row.state != LineState::Found) continue;
        ++found;
        const auto line = std::size_t(std::lround(row.foundHz / data->dfHz));
        ASSERT_LT(line, data->values.size());
        EXPECT_NEAR(data->values[line], row.aboveFloorDb, 0.1) << row.name;
    }
    EXPECT_GE(found, 3);
}

TEST_F(MachinePageTest, PanelSheetAndExaminationShowTheSameRows) {
    openPage("A-RACE");
    const ArithmeticRows& rows = panel().rows();
    ASSERT_GT(rows.size(), 5u);
    double printed = 0, exact = 0;
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
        printed += rows[i].printed;
        exact += rows[i].dban;
    }
    EXPECT_NEAR(printed, rows.back().printed, 1e-9);
    EXPECT_NEAR(exact, rows.back().dban, 1e-9);
    ASSERT_TRUE(openRound(*fleet_, fleet_test::kUntil));
    const auto sheet = sheetContent(*fleet_, {"A-RACE", 1, {}});
    ASSERT_TRUE(sheet) << sheet.error().sentence();
    ASSERT_EQ(sheet->rows.size(), rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        EXPECT_EQ(sheet->rows[i].name, rows[i].name);
        EXPECT_DOUBLE_EQ(sheet->rows[i].printed, rows[i].printed) << rows[i].name;
    }
}

TEST_F(MachinePageTest, AMomentInTheTrendLoadsThatRecordingAndTheWeekComesBack) {
    openPage("A-RACE");
    EXPECT_TRUE(panel().content()->week);
    const TrendSample first = part<TrendPlot>("trend").data()->samples.front();
    selection_.setRecording(first.recording, toInstant(first.ms));
    settle();
    EXPECT_FALSE(panel().content()->week);
    EXPECT_EQ(panel().content()->recordings, std::vector<std::int64_t>{first.recording});
    EXPECT_THAT(part<QLabel>("panelBasis").text().toStdString(), HasSubstr("5 May 2026 06:20 UTC"));
    part<QPushButton>("showWeek").click();
    settle();
    EXPECT_TRUE(panel().content()->week);
    EXPECT_FALSE(selection_.recording());
}

TEST_F(MachinePageTest, AnEarlierEndOfTheWeekCountsOnlyWhatWasThere) {
    openPage("A-RACE");
    EXPECT_EQ(panel().content()->recordings.size(), 3u);
    selection_.setRecording({}, *parseUtc("2026-05-06T12:00:00Z"));
    settle();
    EXPECT_EQ(panel().content()->recordings.size(), 2u);
    selection_.setRecording({}, *parseUtc("2026-03-06T12:00:00Z"));
    settle();
    EXPECT_THAT(part<QLabel>("panelWords").text().toStdString(),
                HasSubstr("No running recording in the week"));
    EXPECT_THAT(words("envelope"), HasSubstr("Choose another moment"));
}

TEST_F(MachinePageTest, ALineInThePanelMovesTheCursorOfThePlotsAndAPeakMarksTheLine) {
    openPage("A-RACE");
    auto& view = part<EvidenceView>("evidenceTable");
    view.selectRow(0);
    const double hz = placeHz(panel().rows()[0]);
    EXPECT_EQ(part<SpectrumPlot>("envelope").cursorPlacesHz(), std::vector<double>{hz});
    EXPECT_EQ(part<SpectrumPlot>("spectrum").cursorPlacesHz(), std::vector<double>{hz});
    std::size_t other = 1;
    while (other + 1 < panel().rows().size() && panel().rows()[other].line &&
           panel().rows()[other].line->state != LineState::Found)
        ++other;
    const double wanted = placeHz(panel().rows()[other]);
    ASSERT_GT(wanted, 0);
    selection_.setCursorHz(wanted);
    EXPECT_EQ(view.currentIndex().row(), int(other));
    EXPECT_THAT(part<QLabel>("claims").text().toStdString(), HasSubstr("inner-race defect"));
}

TEST_F(MachinePageTest, AMachineWithoutRecordingsSaysWhatToDo) {
    openPage("D-MUTE");
    for (const char* plot : {"waterfall", "trend", "spectrum", "envelope", "waveform"})
        EXPECT_THAT(words(plot), HasSubstr("Import recordings")) << plot;
    EXPECT_THAT(part<QLabel>("panelWords").text().toStdString(), HasSubstr("Import recordings"));
}

TEST_F(MachinePageTest, NoMachineAndAnUnknownOneSaySo) {
    openPage("");
    EXPECT_THAT(words("waterfall"), HasSubstr("No machine is chosen"));
    EXPECT_FALSE(part<QPushButton>("machineSheet").isEnabled());
    selection_.setMachine("NOSUCH");
    settle();
    EXPECT_THAT(words("waterfall"), HasSubstr("NOSUCH"));
}

TEST_F(MachinePageTest, ASevereUnbalanceWithoutAWeightOpensOnTheSpectrum) {
    openPage("C-SHAKE");
    EXPECT_EQ(selection_.fault(), "unbalance");
    EXPECT_EQ(part<QTabWidget>("recordingTabs").currentWidget(), &part<SpectrumPlot>("spectrum"));
    EXPECT_THAT(panel().verdict().toStdString(), HasSubstr("nbalance"));
    EXPECT_FALSE(part<EvidenceView>("evidenceTable").isVisible());
    const auto data = part<TrendPlot>("trend").data();
    ASSERT_EQ(data->limits.size(), 3u);
    EXPECT_EQ(data->limits[2].name, "C/D");
    EXPECT_GT(data->samples.back().value, data->limits[2].value);
}

TEST_F(MachinePageTest, AnotherMachineClearsWhatHungOnTheOldOne) {
    openPage("A-RACE");
    selection_.setCursorHz(100);
    selection_.setMachine("B-SOUND");
    settle();
    EXPECT_FALSE(selection_.cursorHz());
    EXPECT_EQ(panel().content()->examination.machine, "B-SOUND");
    EXPECT_TRUE(panel().content()->examination.findings.empty());
    EXPECT_THAT(panel().verdict().toStdString(), HasSubstr("does not prove the machine sound"));
}

TEST_F(MachinePageTest, SheetAndNoteNameTheMachine) {
    openPage("A-RACE");
    QSignalSpy sheet(page_.get(), &MachinePage::sheetWanted), note(page_.get(), &MachinePage::noteWanted);
    part<QPushButton>("machineSheet").click();
    part<QPushButton>("machineNote").click();
    ASSERT_EQ(sheet.size(), 1);
    ASSERT_EQ(note.size(), 1);
    EXPECT_EQ(sheet[0][0].toString(), "A-RACE");
}

// At 640 x 400 of the usual letters (1280 x 800 at 200 %) the panel moves among the tabs; on a wide screen
// all plots of a recording stand side by side.
TEST_F(MachinePageTest, PartsFindTheirPlaceByWidth) {
    openPage("A-RACE", {640, 400});
    auto& tabs = part<QTabWidget>("recordingTabs");
    EXPECT_EQ(tabs.count(), 6);  // panel, spectrum, envelope, waveform, orbit, history
    EXPECT_GE(tabs.indexOf(&panel()), 0);
    EXPECT_EQ(part<QTabWidget>("historyTabs").count(), 2);
    page_->resize(1280, 760);
    test::settle();
    EXPECT_FALSE(part<QTabWidget>("historyTabs").isVisible());
    EXPECT_TRUE(part<QWidget>("waterfall").isVisible() && part<QWidget>("trend").isVisible());
    EXPECT_EQ(tabs.count(), 5);
    EXPECT_TRUE(panel().isVisible());
    page_->resize(2400, 1100);
    test::settle();
    EXPECT_FALSE(tabs.isVisible());
    for (const char* plot : {"spectrum", "envelope", "waveform"})
        EXPECT_TRUE(part<QWidget>(plot).isVisible()) << plot;
    page_->resize(640, 400);
    test::settle();
    EXPECT_EQ(tabs.count(), 6);  // panel, spectrum, envelope, waveform, orbit, history
    EXPECT_TRUE(tabs.isVisible());
}

// Low: waterfall and trend take turns, so that either keeps the height to be read.
TEST_F(MachinePageTest, InALowWindowWaterfallAndTrendAreTabs) {
    openPage("A-RACE", {1280, 420});
    auto& history = part<QTabWidget>("historyTabs");
    ASSERT_EQ(history.count(), 2);
    EXPECT_TRUE(part<QWidget>("waterfall").isVisible());
    EXPECT_FALSE(part<QWidget>("trend").isVisible());
    history.setCurrentWidget(&part<QWidget>("trends"));
    EXPECT_TRUE(part<QWidget>("trend").isVisible());
    EXPECT_GT(part<TrendPlot>("trend").canvas()->height(), 60);
    EXPECT_EQ(part<QTabWidget>("recordingTabs").currentWidget(), &part<SpectrumPlot>("envelope"));
    page_->resize(1280, 760);
    test::settle();
    EXPECT_EQ(history.count(), 0);
    EXPECT_TRUE(part<QWidget>("waterfall").isVisible() && part<QWidget>("trend").isVisible());
}

}  // namespace
}  // namespace fettle
