// What is noted of a machine, driven by object names in a real window: events with photographs and their
// correction, jobs from draft to report, a new baseline, before and after, tables of events.
#include <QAction>
#include <QApplication>
#include <QBuffer>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QScreen>
#include <QTableView>
#include <QTextBrowser>
#include <QTreeWidget>

#include "core/base/file_system.h"
#include "core/fleet/history.h"
#include "core/fleet/job_desk.h"
#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/before_after_dialog.h"
#include "ui/dialogs/event_dialog.h"
#include "ui/dialogs/job_dialogs.h"
#include "ui/dialogs/jobs_dialog.h"
#include "ui/dialogs/photo_viewer.h"
#include "ui/dialogs/rebaseline_dialog.h"
#include "ui/dialogs/return_dialog.h"
#include "ui/panels/history_list.h"
#include "ui/panels/photo_strip.h"
#include "ui/window/log_actions.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class LogDialogs : public Desk {
  protected:
    void trigger(const char* action) {
        auto* found = window_->findChild<QAction*>(QString::fromLatin1(action));
        ASSERT_NE(found, nullptr) << action;
        ASSERT_TRUE(found->isEnabled()) << action;
        found->trigger();
    }
    void openMachine(const QString& tag = "A-RACE") { openWindow({"machine", tag, {}, {}, {}, {}}); }
    template <class T>
    static void choose(T* dialog, const char* box, const char* key) {
        auto* found = dialog->template findChild<QComboBox*>(box);
        ASSERT_NE(found, nullptr) << box;
        const int at = found->findData(QString::fromLatin1(key));
        ASSERT_GE(at, 0) << key;
        found->setCurrentIndex(at);
    }
    static void say(QDialog* dialog, const char* words) {
        dialog->findChild<QPlainTextEdit*>("text")->setPlainText(QString::fromLatin1(words));
    }
    static void yes(QDialog* dialog) {
        auto* button = dialog->findChild<QAbstractButton*>("yes");
        ASSERT_TRUE(button->isEnabled()) << dialog->findChild<QLabel*>("lack")->text().toStdString();
        button->click();
    }
    static QAbstractButton* button(QDialog* dialog, const char* name) {
        return dialog->findChild<QAbstractButton*>(QString::fromLatin1(name));
    }
    static QImage picture() {
        QImage image(32, 24, QImage::Format_RGB32);
        image.fill(Qt::darkCyan);
        return image;
    }
    QString pictureFile(const char* name) {
        const QString path = QString::fromStdString(folder_ / name);
        EXPECT_TRUE(picture().save(path, "PNG"));
        return path;
    }
};

TEST_F(LogDialogs, AGreasingKeepsGramsTypeAndPhotographs) {
    openMachine();
    trigger("machine.event");
    auto* asked = dialog<EventDialog>("eventDialog");
    choose(asked, "kind", "greasing");
    EXPECT_TRUE(asked->findChild<QDoubleSpinBox*>("grams")->isVisible());
    asked->findChild<QDoubleSpinBox*>("grams")->setValue(18);
    asked->findChild<QLineEdit*>("grease")->setText("lithium complex");
    auto* strip = asked->findChild<PhotoStrip*>();
    const QString good = pictureFile("nipple.png"), bad = QString::fromStdString(folder_ / "bad.jpg");
    ASSERT_TRUE(RealFileSystem().writeSafely(folder_ / "bad.jpg", "\xFF\xD8\xFF\xE0 but no more than that"));
    strip->take(QStringList{good, bad});
    ASSERT_TRUE(waitFor([&] { return strip->photos().size() == 1 && !strip->trouble().isEmpty(); }));
    EXPECT_THAT(strip->trouble().toStdString(), HasSubstr("bad.jpg"));
    yes(asked);
    settle();
    const auto history = machineHistory(*fleet_, "A-RACE").value();
    ASSERT_EQ(history.size(), 1u);
    EXPECT_EQ(history[0].event.text, "18 g, lithium complex");
    ASSERT_EQ(history[0].photos.size(), 1u);
    EXPECT_EQ(fleet_->photos().bytes(history[0].photos[0].id).value(),
              RealFileSystem().read(good.toStdString()).value())
        << "as given";
}

TEST_F(LogDialogs, ThePastedPictureIsTakenAndShownLarge) {
    ASSERT_TRUE(fleet_->log().addEvent(
        {0, "A-RACE", intake_test::at("2026-05-06T08:00:00Z"), "inspection", "driver DE", "looked", "kim"}));
    openMachine();
    trigger("machine.event");
    auto* asked = dialog<EventDialog>("eventDialog");
    asked->findChild<PhotoStrip*>()->take(picture());
    ASSERT_TRUE(waitFor([&] { return asked->findChild<PhotoStrip*>()->photos().size() == 1; }));
    say(asked, "seen on the walk");
    yes(asked);
    settle();
    const auto photos = fleet_->photos().ofMachine("A-RACE").value();
    ASSERT_EQ(photos.size(), 1u);
    window_->workplace()->log().showPhoto("A-RACE", photos[0].id);
    auto* viewer = dialog<PhotoViewer>("photoViewer");
    ASSERT_TRUE(waitFor([&] { return !viewer->findChild<QLabel*>("picture")->pixmap().isNull(); }));
    viewer->saveAs(QString::fromStdString(folder_ / "out.png"));
    settle();
    EXPECT_EQ(RealFileSystem().read(folder_ / "out.png").value(),
              fleet_->photos().bytes(photos[0].id).value());
}

TEST_F(LogDialogs, TheHistoryIsListedCorrectedAndMovesTheMoment) {
    const Instant time = intake_test::at("2026-05-06T08:00:00Z");
    ASSERT_TRUE(fleet_->log().addEvent({0, "A-RACE", time, "greasing", "driver DE", "20 g", "kim"}));
    openMachine();
    trigger("machine.history");
    auto* shownNow = dialog<QDialog>("historyDialog");
    auto* tree = shownNow->findChild<QTreeWidget*>("history");
    ASSERT_TRUE(waitFor([&] { return tree->topLevelItemCount() == 1; }));
    tree->setCurrentItem(tree->topLevelItem(0));
    emit tree->itemActivated(tree->topLevelItem(0), 0);
    EXPECT_EQ(window_->workplace()->selection().time(), time);
    button(shownNow, "historyCorrect")->click();
    auto* asked = dialog<EventDialog>("eventDialog");
    EXPECT_FALSE(asked->findChild<QComboBox*>("kind")->isEnabled());
    say(asked, "40 g: both strokes");
    yes(asked);
    settle();
    const auto history = machineHistory(*fleet_, "A-RACE").value();
    ASSERT_EQ(history.size(), 1u);
    EXPECT_EQ(history[0].event.text, "20 g");
    ASSERT_EQ(history[0].corrections.size(), 1u);
    ASSERT_TRUE(waitFor([&] {
        return tree->topLevelItemCount() == 1 &&
               tree->topLevelItem(0)->child(tree->topLevelItem(0)->childCount() - 1)->text(3) ==
                   "40 g: both strokes";
    }));
}

// common practice, no source: what was typed is not asked for twice.
TEST(JobDraft, AnAnswerThatCouldNotBeKeptComesBackAsItWasGiven) {
    Theme theme(ThemeChoice::Light);
    JobDraft draft;
    draft.machine = "A-RACE";
    draft.week = "2026-05-03";
    for (const char* fault : {"bearing_inner_race", "unbalance"}) {
        DraftFinding finding;
        finding.key = std::string(fault) + " @ driver DE";
        finding.name = fault;
        finding.urgency = "plan";
        draft.findings.push_back(finding);
    }
    JobDraftDialog dialog(theme, draft, nullptr);
    JobMove move;
    move.workOrder = "WO-9";
    move.plannedStop = "2026-06-01";
    move.text = "with the next stop";
    dialog.setAnswer({2}, move);
    EXPECT_EQ(dialog.numbers(), std::vector<std::size_t>{2});
    EXPECT_EQ(dialog.findChild<QLineEdit*>("workOrder")->text(), "WO-9");
    JobMove again;
    QObject::connect(&dialog, &JobDraftDialog::drafted,
                     [&](const Job&, const JobMove& given) { again = given; });
    dialog.accept();
    EXPECT_EQ(again.workOrder, move.workOrder);
    EXPECT_EQ(again.plannedStop, move.plannedStop);
    EXPECT_EQ(again.text, move.text);
}

TEST_F(LogDialogs, AJobGoesFromItsFindingToThePlannersReport) {
    opened();
    openMachine();
    trigger("machine.jobs");
    auto* jobs = dialog<JobsDialog>("jobsDialog");
    settle();
    EXPECT_THAT(jobs->findChild<QTextBrowser*>("jobDetail")->toPlainText().toStdString(),
                HasSubstr("No job yet"));
    EXPECT_FALSE(button(jobs, "moveJob")->isEnabled());
    button(jobs, "newJob")->click();
    auto* draft = dialog<JobDraftDialog>("jobDraftDialog");
    EXPECT_GT(draft->findChild<QListWidget*>("findings")->count(), 0);
    draft->findChild<QLineEdit*>("workOrder")->setText("WO-7");
    yes(draft);
    settle();
    ASSERT_EQ(fleet_->log().jobs("A-RACE")->size(), 1u);
    Job job = fleet_->log().jobs("A-RACE")->front();
    EXPECT_EQ(job.workOrder, "WO-7");
    EXPECT_THAT(job.findings[0], HasSubstr("bearing_inner_race @ "));
    EXPECT_FALSE(job.runUntil.empty());
    auto* table = jobs->findChild<QTableView*>("jobs");
    ASSERT_TRUE(waitFor([&] { return table->model()->rowCount() == 1 && table->currentIndex().isValid(); }));

    button(jobs, "moveJob")->click();
    auto* move = dialog<JobMoveDialog>("jobMoveDialog");
    EXPECT_FALSE(move->findChild<QWidget*>("on")->isVisible());
    choose(move, "state", "done");
    EXPECT_TRUE(move->findChild<QWidget*>("on")->isVisible());
    EXPECT_FALSE(button(move, "yes")->isEnabled()) << "what was done is needed";
    choose(move, "kind", "part");
    say(move, "bearing fitted");
    yes(move);
    settle();
    EXPECT_EQ(fleet_->jobs().get(job.id)->state, "done");
    const auto events = fleet_->log().events("A-RACE").value();
    ASSERT_EQ(events.size(), 1u);
    EXPECT_EQ(events[0].kind, "part");
    ASSERT_TRUE(waitFor(
        [&] { return jobs->findChild<QTextBrowser*>("jobDetail")->toPlainText().contains("Verification"); }));

    button(jobs, "reportJob")->click();
    auto* half = dialog<ReturnDialog>("returnDialog");
    choose(half, "outcome", "another_fault");
    EXPECT_FALSE(button(half, "yes")->isEnabled());
    choose(half, "outcome", "confirmed");
    choose(half, "damage", "fatigue");
    say(half, "spall of 8 mm");
    yes(half);
    settle();
    const auto reports = fleet_->log().feedback().value();
    ASSERT_EQ(reports.size(), 1u);
    EXPECT_EQ(reports[0].fault, "bearing_inner_race");
    EXPECT_EQ(reports[0].code, "fatigue");
    EXPECT_EQ(siteRecord(*fleet_)->confirmed, 1u) << "counts at once";
}

TEST_F(LogDialogs, ARevisionSaysWhyAndReplaces) {
    Job job;
    job.machine = "A-RACE";
    job.findings = {"bearing_inner_race @ driver DE"};
    job.plannedStop = "2026-01-02";
    const Job old = keepDraft(*fleet_, job).value();
    openWindow();
    trigger("round.jobs");
    auto* jobs = dialog<JobsDialog>("jobsDialog");
    auto* table = jobs->findChild<QTableView*>("jobs");
    ASSERT_TRUE(waitFor([&] { return table->model()->rowCount() == 1; }));
    EXPECT_THAT(jobs->findChild<QLabel*>("jobCount")->text().toStdString(), HasSubstr("1 overdue"));
    EXPECT_THAT(table->model()->index(0, JobModel::Due).data().toString().toStdString(),
                HasSubstr(", overdue"));
    button(jobs, "reviseJob")->click();
    auto* asked = dialog<JobMoveDialog>("jobMoveDialog");
    EXPECT_FALSE(button(asked, "yes")->isEnabled());
    say(asked, "the coupling as well");
    yes(asked);
    settle();
    const auto all = fleet_->log().jobs("A-RACE").value();
    ASSERT_EQ(all.size(), 2u);
    EXPECT_EQ(all[1].replaces, old.id);
    EXPECT_EQ(all[1].revision, 2);
    ASSERT_TRUE(waitFor([&] { return table->model()->rowCount() == 1; }));
    EXPECT_EQ(table->model()->index(0, 0).data().toString().toStdString(),
              std::to_string(all[1].id) + ", R2");
}

TEST_F(LogDialogs, ANewBaselineSaysWhatItDoesAsksWhyAndShowsBeforeAndAfter) {
    openMachine("C-SHAKE");
    trigger("machine.rebaseline");
    auto* asked = dialog<RebaselineDialog>("rebaselineDialog");
    EXPECT_FALSE(button(asked, "yes")->isEnabled());
    asked->findChild<QPlainTextEdit*>("reason")->setPlainText("new base");
    yes(asked);
    auto* compared = dialog<BeforeAfterDialog>("beforeAfterDialog");
    settle();
    const auto events = fleet_->log().events("C-SHAKE").value();
    ASSERT_EQ(events.size(), 1u);
    EXPECT_EQ(events[0].kind, "rebaseline");
    EXPECT_EQ(events[0].text, "new base");
    EXPECT_EQ(compared->findChild<QComboBox*>("event")->count(), 1);
    EXPECT_FALSE(compared->findChild<QLabel*>("verdict")->text().isEmpty());
}

TEST_F(LogDialogs, EventsOfATableAreTakenAndWhatIsRefusedIsSaid) {
    ASSERT_TRUE(RealFileSystem().writeSafely(
        folder_ / "list.csv",
        "machine,time,kind,text\nA-RACE,2026-05-06,greasing,12 g\nNO-SUCH,2026-05-06,repair,\n"));
    openMachine();
    window_->workplace()->log().takeEventTable(QString::fromStdString(folder_ / "list.csv"));
    auto* box = dialog<QDialog>("eventTableResult");
    settle();
    EXPECT_EQ(fleet_->log().events("A-RACE")->size(), 1u);
    box->reject();
}

TEST_F(LogDialogs, ALongFormScrollsWhereTheScreenIsLowAndItsButtonsStayInSight) {
    openMachine();
    theme_.applyTo(*qApp, 2);
    ReturnDialog half(window_->workplace()->work(), theme_, "A-RACE", 0,
                      {{"bearing_inner_race", "driver DE"}}, window_.get());
    half.setAttribute(Qt::WA_DeleteOnClose, false);
    half.show();
    const int room = half.screen()->availableSize().height();
    half.resize(half.width(), room);
    EXPECT_LE(half.height(), room) << "it would not shrink to the screen";
    const QWidget* yes = half.findChild<QAbstractButton*>("yes");
    EXPECT_LE(yes->mapTo(&half, QPoint(0, yes->height())).y(), room);
    theme_.applyTo(*qApp, 1);
}

TEST_F(LogDialogs, HistoryStandsBesideThePlots) {
    openMachine();
    auto* list = window_->findChild<HistoryList*>();
    ASSERT_NE(list, nullptr);
    EXPECT_THAT(list->findChild<QLabel*>("historyWords")->text().toStdString(),
                HasSubstr("Nothing is noted"));
}

}  // namespace
}  // namespace fettle::desk_test
