// What a recording is compared with, on the machine page over the small site whose truth is known: its
// machines are of one build, so each is the others' twin; A-RACE has an inner race spalled at the driver's
// DE.
#include "ui/pages/recording_bench.h"

#include <QAction>
#include <QComboBox>
#include <QCompleter>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QScrollBar>
#include <QSettings>
#include <QSplitter>
#include <QTabWidget>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QToolButton>

#include "tests/ui/machine_page_fixture.h"
#include "ui/pages/compare_strip.h"
#include "ui/pages/machine_page.h"
#include "ui/pages/side_spectra.h"
#include "ui/plot/spectrum_plot.h"

namespace fettle {

using testing::HasSubstr;

namespace {

class Bench : public desk_test::PageOnSite {
  protected:
    SpectrumPlot& spectrum() { return part<SpectrumPlot>("spectrum"); }
    SpectrumPlot& envelope() { return part<SpectrumPlot>("envelope"); }
    void press(int key, Qt::KeyboardModifiers with = {}) {
        envelope().canvas()->setFocus();
        QTest::keyClick(envelope().canvas(), Qt::Key(key), with);
        settle();
    }
    void choose(const char* action) {
        QMenu& menu = *envelope().overlayButton().menu();
        emit menu.aboutToShow();
        QAction* found = menu.findChild<QAction*>(QString::fromLatin1(action));
        if (!found)
            for (QMenu* below : menu.findChildren<QMenu*>())
                if (!found) found = below->findChild<QAction*>(QString::fromLatin1(action));
        ASSERT_NE(found, nullptr) << action;
        found->trigger();
        settle();
    }
};

TEST_F(Bench, OneKeyShowsWhereItIsLargestAndLaysTheTwinOver) {
    openPage("C-SHAKE");
    auto& strip = part<CompareStrip>("compareStrip");
    EXPECT_FALSE(strip.isVisible());
    press(Qt::Key_T);
    ASSERT_TRUE(strip.isVisible());
    ASSERT_GE(strip.rows().size(), 3u);
    // Unbalance far above the others: largest here.
    EXPECT_EQ(strip.rows()[0].tag, "C-SHAKE");
    EXPECT_THAT(part<QLabel>("compareWords").text().toStdString(), HasSubstr("Largest"));
    ASSERT_TRUE(spectrum().reference());
    const QString first = spectrum().reference()->name;
    press(Qt::Key_T);
    ASSERT_TRUE(spectrum().reference());
    EXPECT_NE(spectrum().reference()->name, first);
    press(Qt::Key_T, Qt::ShiftModifier);
    EXPECT_EQ(spectrum().reference()->name, first);
    QTest::keyClick(&part<QTableWidget>("compareTable"), Qt::Key_Escape);
    settle();
    EXPECT_FALSE(strip.isVisible());
    EXPECT_FALSE(spectrum().reference());
}

TEST_F(Bench, OneKeyShowsTheTwinsBelowEachOtherTheOneLookedAtOnTop) {
    openPage("C-SHAKE");
    press(Qt::Key_Y);
    auto* below = page_->findChild<SideSpectra*>("sideSpectra");
    ASSERT_TRUE(below && below->isVisible());
    auto* lanes = below->findChild<LanesPlot*>("lanesPlot");
    ASSERT_GE(lanes->lanes().size(), 3u);
    EXPECT_FALSE(lanes->lanes()[0].name.contains("A-RACE"));
    EXPECT_FALSE(lanes->lanes()[0].name.contains("B-SOUND"));
    for (const Lane& lane : lanes->lanes())
        EXPECT_EQ(lane.data->unit, lanes->lanes()[0].data->unit);
    EXPECT_TRUE(lanes->words().isEmpty()) << lanes->words().toStdString();
    selection_.setMachine("B-SOUND");
    settle();
    EXPECT_FALSE(page_->findChild<SideSpectra*>("sideSpectra")) << "of the machine left";
}

TEST_F(Bench, TheTableOfWhereItIsLargestFitsItsRoom) {
    openPage("C-SHAKE");
    press(Qt::Key_T);
    auto& table = part<QTableWidget>("compareTable");
    ASSERT_GT(table.rowCount(), 2);
    EXPECT_EQ(table.horizontalScrollBar()->maximum(), 0);
    for (const int numbers : {0, 1})
        EXPECT_FALSE(table.isColumnHidden(numbers));
    EXPECT_GT(table.columnWidth(2), 3 * table.fontMetrics().averageCharWidth()) << "where";
    EXPECT_THAT(table.item(0, 0)->toolTip().toStdString(), HasSubstr(table.item(0, 4)->text().toStdString()));
}

TEST_F(Bench, TheOverlayMenuDoesNotGrowWithEveryOpening) {
    openPage("A-RACE");
    QMenu& menu = *envelope().overlayButton().menu();
    for (int times = 0; times < 3; ++times)
        emit menu.aboutToShow();
    EXPECT_EQ(menu.findChildren<QMenu*>().size(), 1);
    EXPECT_EQ(menu.findChildren<QLineEdit*>("bearingDesignation").size(), 1);
}

TEST_F(Bench, ADesignationIsCompletedFromTheRegisterFirstThenTheTable) {
    openPage("A-RACE");
    QMenu& menu = *envelope().overlayButton().menu();
    emit menu.aboutToShow();
    auto* box = menu.findChild<QLineEdit*>("bearingDesignation");
    ASSERT_TRUE(box && box->completer());
    box->completer()->setCompletionPrefix("320");
    EXPECT_GT(box->completer()->completionCount(), 0) << "of the table alone";
    Machine machine = *fleet_->machines().describedAt("A-RACE").value();
    machine.bearings.front().bearing.designation = "6205 of this site";
    const QStringList known = RecordingBench::knownDesignations(&machine);
    EXPECT_EQ(known.front(), "6205 of this site");
    EXPECT_EQ(known.mid(1), RecordingBench::knownDesignations(nullptr));
    box->setText("no such bearing");
    QTest::keyClick(box, Qt::Key_Return);
    EXPECT_THAT(envelope().readout().toStdString(), HasSubstr("no such bearing is not in the table"));
}

// common practice, no source: side by side no plot of a recording is squeezed for the sake of another.
TEST_F(Bench, InAWideWindowSpectraAndWaveformShareTheWidthAlike) {
    openPage("A-RACE", {1900, 1100});
    const QList<int> widths = part<QSplitter>("recordingBeside").sizes();
    ASSERT_EQ(widths.size(), 3);
    EXPECT_GT(std::min(widths[0], widths[1]), 0.5 * widths[2]) << widths[0] << " " << widths[1];
}

TEST_F(Bench, ReturnGoesToThePlaceChosen) {
    openPage("C-SHAKE");
    press(Qt::Key_T);
    auto& strip = part<CompareStrip>("compareStrip");
    const SideRow chosen = strip.rows()[std::size_t(strip.chosen())];
    emit strip.goTo(strip.chosen());
    settle();
    EXPECT_EQ(selection_.machine().toStdString(), chosen.tag);
    EXPECT_EQ(selection_.recording(), chosen.recording);
}

TEST_F(Bench, AReferenceIsLaidOverTheOtherRecordingsOfItsMachineAndNoOther) {
    openPage("A-RACE");
    press(Qt::Key_K);
    EXPECT_FALSE(envelope().reference());  // over itself it says nothing
    const auto entry = fleet_->machines().byTag("A-RACE").value();
    const auto all = fleet_->recordings().list(entry.id, Instant{}, intake_test::kNow).value();
    ASSERT_EQ(all.size(), 3u);
    for (const RecordingEntry& one : all) {
        selection_.setRecording(one.id, one.time);
        settle();
    }
    selection_.setRecording(all[0].id, all[0].time);
    settle();
    const bool first = envelope().reference() != nullptr;
    selection_.setRecording(all[1].id, all[1].time);
    settle();
    EXPECT_TRUE(first || envelope().reference());  // one of the two is not the reference itself
    selection_.setMachine("B-SOUND");
    settle();
    EXPECT_FALSE(envelope().reference());
}

// common practice, no source: what was kept holds next time, for its machine and point alone.
TEST_F(Bench, TheReferenceIsThereNextTimeAndCanBeTakenBack) {
    QTemporaryDir folder;
    QSettings settings(folder.filePath("settings.ini"), QSettings::IniFormat);
    const QString fleet = QString::fromStdString(fleet_->path());
    openPage("A-RACE");
    page_->bench().setReferences(ReferenceBook(&settings, fleet));
    press(Qt::Key_K);
    const auto entry = fleet_->machines().byTag("A-RACE").value();
    const auto all = fleet_->recordings().list(entry.id, Instant{}, intake_test::kNow).value();
    const auto kept = ReferenceBook(&settings, fleet).of("A-RACE", QString::fromStdString(all[0].point));
    ASSERT_TRUE(kept);
    EXPECT_FALSE(ReferenceBook(&settings, fleet).of("B-SOUND", QString::fromStdString(all[0].point)));
    EXPECT_FALSE(ReferenceBook(&settings, folder.filePath("another.fettle"))
                     .of("A-RACE", QString::fromStdString(all[0].point)));
    page_.reset();
    openPage("A-RACE");
    page_->bench().setReferences(ReferenceBook(&settings, fleet));
    const RecordingEntry& other = all[0].id == kept->recording ? all[1] : all[0];
    selection_.setRecording(other.id, other.time);
    settle();
    ASSERT_TRUE(envelope().reference());
    choose("removeReference");
    EXPECT_FALSE(envelope().reference());
    EXPECT_FALSE(ReferenceBook(&settings, fleet).of("A-RACE", QString::fromStdString(all[0].point)));
}

TEST_F(Bench, ARecordingOfAnotherMomentIsNotTakenForTheReference) {
    openPage("A-RACE");
    const auto entry = fleet_->machines().byTag("A-RACE").value();
    const auto all = fleet_->recordings().list(entry.id, Instant{}, intake_test::kNow).value();
    ReferenceBook book;
    book.keep("A-RACE", QString::fromStdString(all[0].point), {all[0].id, all[1].time});
    page_->bench().setReferences(book);
    selection_.setRecording(all[1].id, all[1].time);
    settle();
    EXPECT_FALSE(spectrum().reference());
    EXPECT_THAT(spectrum().readout().toStdString(), HasSubstr("kept as reference"));
}

// Kinematics: the line found of the inner race lies within the range said for it.
TEST_F(Bench, RangesOfABearingOfTheTrainHoldTheLineThatWasFound) {
    openPage("A-RACE");
    choose("bearing0");
    const auto& ranges = envelope().ranges();
    ASSERT_FALSE(ranges.empty());
    const auto bpfi = std::find_if(ranges.begin(), ranges.end(),
                                   [](const DefectBand& range) { return range.name == "BPFI"; });
    ASSERT_NE(bpfi, ranges.end());
    double found = 0;
    for (const LineMark& mark : envelope().marks())
        if (mark.name == "BPFI") found = mark.at;
    EXPECT_GE(found, bpfi->fromHz);
    EXPECT_LE(found, bpfi->untilHz);
    EXPECT_LT(bpfi->fromHz, bpfi->likelyFromHz);
    EXPECT_LT(bpfi->likelyUntilHz, bpfi->untilHz);
    choose("bearingNone");
    EXPECT_TRUE(envelope().ranges().empty());
}

// 6205, 9 balls of 7.938 mm on 38.5 mm: BPFO 3.572 x by rolling without slip.
TEST_F(Bench, AnyDesignationOfTheTableHasItsRanges) {
    openPage("B-SOUND");
    auto* bench = page_->findChild<RecordingBench*>();
    ASSERT_NE(bench, nullptr);
    ASSERT_TRUE(bench->showDesignation("6205-2RS"));
    const double shaftHz = envelope().data()->shaftHz;
    const auto& ranges = envelope().ranges();
    const auto bpfo = std::find_if(ranges.begin(), ranges.end(),
                                   [](const DefectBand& range) { return range.name == "BPFO"; });
    ASSERT_NE(bpfo, ranges.end());
    EXPECT_LT(bpfo->likelyFromHz, 3.572 * shaftHz);
    EXPECT_GT(bpfo->likelyUntilHz, 3.572 * shaftHz);
    EXPECT_FALSE(bench->showDesignation("no such bearing"));
    EXPECT_TRUE(envelope().ranges().empty());
}

TEST_F(Bench, DisplacementIsVelocityOverTwoPiF) {
    openPage("C-SHAKE");
    auto& box = part<QComboBox>("spectrumKind");
    const auto velocity = spectrum().data();
    box.setCurrentIndex(box.findData(QStringLiteral("displacement")));
    emit box.activated(box.currentIndex());
    const auto displacement = spectrum().data();
    ASSERT_EQ(displacement->unit, QString("µm r.m.s."));
    const auto line = std::size_t(std::lround(velocity->shaftHz / velocity->dfHz));
    const double hz = double(line) * velocity->dfHz;
    EXPECT_NEAR(displacement->values[line], velocity->values[line] * 1000 / (kTwoPi * hz),
                1e-4 * displacement->values[line]);
}

TEST_F(Bench, TheOrbitIsThereOrSaysWhyNot) {
    openPage("C-SHAKE");
    auto& orbit = part<OrbitPlot>("orbit");
    if (orbit.data())
        EXPECT_FALSE(orbit.limits().isEmpty());
    else
        EXPECT_THAT(orbit.words().toStdString(), HasSubstr("No orbit"));
}

TEST_F(Bench, WithoutABaselineTheBandSaysWhy) {
    openPage("A-RACE");
    choose("showBand");
    EXPECT_THAT(spectrum().readout().toStdString(), HasSubstr("No band of the sound machine"));
}

}  // namespace
}  // namespace fettle
