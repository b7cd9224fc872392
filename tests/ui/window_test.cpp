// The window itself: start page, opening and refusing fleets, menus, keys, scale, colours, events.
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDropEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QSettings>
#include <QUrl>

#include "core/base/file_system.h"
#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/help_dialogs.h"
#include "ui/dialogs/import_dialog.h"
#include "ui/dialogs/new_fleet_dialog.h"
#include "ui/model/shortcuts.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class WindowTest : public Desk {
  protected:
    void openEmpty(QSettings* settings = nullptr) {
        window_ = std::make_unique<MainWindow>(theme_, 1.0, settings);
        window_->show();
    }
    void trigger(const char* action) {
        auto* found = window_->findChild<QAction*>(QString::fromLatin1(action));
        ASSERT_NE(found, nullptr) << action;
        found->trigger();
    }
};

TEST_F(WindowTest, WithoutAFleetTheStartPageSaysWhatToDoFirst) {
    openEmpty();
    EXPECT_TRUE(part<QWidget>("startPage")->isVisible());
    EXPECT_FALSE(window_->findChild<QAction*>("round.start")->isEnabled());
    EXPECT_EQ(window_->windowTitle(), "Fettle");
    EXPECT_TRUE(window_->settled());
}

TEST_F(WindowTest, AFleetOpensOnItsRoundWithTheSiteInTheTitle) {
    openWindow();
    EXPECT_EQ(window_->workplace()->pageName(), "round");
    EXPECT_EQ(window_->windowTitle(), "Test works - Fettle");
    EXPECT_EQ(part<QLabel>("statusFile")->text(), "site.fettle");
}

TEST_F(WindowTest, AFleetThatCannotBeOpenedIsSaidInTheWindow) {
    const std::string file = folder_ / "foreign.fettle";
    ASSERT_TRUE(
        RealFileSystem().writeSafely(file, "this is no database, but it is long enough to look like one"));
    openEmpty();
    window_->openFleet(QString::fromStdString(file));
    ASSERT_TRUE(waitFor([this] { return window_->settled(); }));
    EXPECT_EQ(window_->workplace(), nullptr);
    EXPECT_THAT(part<QLabel>("startTrouble")->text().toStdString(), HasSubstr("foreign.fettle"));
    EXPECT_TRUE(part<QLabel>("startTrouble")->isVisible());
}

TEST_F(WindowTest, TheOldFleetStaysWhereTheNewOneDoesNotOpen) {
    openWindow();
    window_->openFleet(QString::fromStdString(folder_ / "nosuch.fettle"));
    auto* box = dialog<QMessageBox>("message");
    EXPECT_THAT(box->text().toStdString(), HasSubstr("nosuch.fettle"));
    box->button(QMessageBox::Ok)->click();
    ASSERT_NE(window_->workplace(), nullptr);
    EXPECT_EQ(window_->workplace()->work().path(), path_);
}

TEST_F(WindowTest, PlacesFromOutsideOpenTheirPage) {
    openWindow({{}, "A-RACE", "driver DE", "bearing_outer_race", {}, {}});
    EXPECT_EQ(window_->workplace()->pageName(), "machine");
    EXPECT_EQ(window_->workplace()->selection().fault(), "bearing_outer_race");
    trigger("page.register");
    EXPECT_EQ(window_->workplace()->pageName(), "register");
    trigger("page.round");
    EXPECT_EQ(window_->workplace()->pageName(), "round");
    EXPECT_EQ(window_->workplace()->selection().machine(), "A-RACE");
}

TEST_F(WindowTest, ATagThatIsNotInTheRegisterIsSaid) {
    window_ = std::make_unique<MainWindow>(theme_, 1.0, nullptr);
    window_->show();
    window_->openFleet(QString::fromStdString(path_), {{}, "NO-SUCH", {}, {}, {}, {}});
    auto* box = dialog<QMessageBox>("message");
    EXPECT_THAT(box->text().toStdString(), HasSubstr("NO-SUCH"));
    box->button(QMessageBox::Ok)->click();
}

TEST_F(WindowTest, ANewFleetIsMadeAndOpened) {
    openEmpty();
    trigger("file.new");
    auto* asked = dialog<NewFleetDialog>("newFleetDialog");
    auto* yes = asked->findChild<QAbstractButton*>("yes");
    EXPECT_FALSE(yes->isEnabled());
    asked->findChild<QLineEdit*>("site")->setText("Far Quarry");
    asked->findChild<QComboBox*>("zone")->setEditText("Nowhere/Atall");
    asked->findChild<QLineEdit*>("path")->setText(QString::fromStdString(folder_ / "far.fettle"));
    EXPECT_FALSE(yes->isEnabled());
    asked->findChild<QComboBox*>("zone")->setEditText("Europe/London");
    ASSERT_TRUE(yes->isEnabled()) << asked->findChild<QLabel*>("lack")->text().toStdString();
    yes->click();
    ASSERT_TRUE(waitFor([this] { return window_->workplace() && window_->settled(); }));
    EXPECT_EQ(window_->windowTitle(), "Far Quarry - Fettle");
    EXPECT_THAT(part<QLabel>("roundEmpty")->text().toStdString(), HasSubstr("register is empty"));
    EXPECT_EQ(FleetFile::open(folder_ / "far.fettle").value()->site()->timeZone, "Europe/London");
}

TEST_F(WindowTest, HelpShowsEveryKeyThatAnActionHas) {
    openWindow();
    int checked = 0;
    for (const Shortcut& row : shortcuts()) {
        const QAction* action = window_->findChild<QAction*>(QString::fromLatin1(row.id));
        ASSERT_NE(action, nullptr) << row.id;
        EXPECT_EQ(action->shortcuts(), row.keys) << row.id;
        ++checked;
    }
    EXPECT_GT(checked, 20);
    trigger("help.shortcuts");
    const QString keys = dialog<ShortcutsDialog>("shortcutsDialog")->findChild<QLabel*>("keys")->text();
    EXPECT_TRUE(keys.contains("Next undecided"));
    EXPECT_TRUE(keys.contains("Ctrl+O"));
}

TEST_F(WindowTest, EveryActionOfAMenuCanBeReachedAndEveryButtonHasAName) {
    openWindow();
    for (const auto* button : window_->findChildren<QAbstractButton*>()) {
        if (!button->isVisible() || button->inherits("QTableCornerButton")) continue;
        EXPECT_FALSE(button->text().isEmpty() && button->accessibleName().isEmpty() &&
                     button->toolTip().isEmpty())
            << button->metaObject()->className() << " in " << button->parent()->objectName().toStdString();
    }
}

TEST_F(WindowTest, AboutNamesWhatTheProgramStandsOn) {
    openEmpty();
    trigger("help.about");
    const QString about = dialog<AboutDialog>("aboutDialog")->findChild<QLabel*>("about")->text();
    EXPECT_TRUE(about.contains(qVersion()));
    EXPECT_TRUE(about.contains("SQLite"));
    EXPECT_TRUE(about.contains("General Public License"));
}

TEST_F(WindowTest, ScaleGoesFromOneToTwoAndNoFarther) {
    openEmpty();
    const double before = QApplication::font().pointSizeF();
    trigger("view.normal");
    const double one = QApplication::font().pointSizeF();
    for (int i = 0; i < 20; ++i)
        trigger("view.larger");
    EXPECT_NEAR(QApplication::font().pointSizeF(), 2 * one, 0.01);
    trigger("view.smaller");
    EXPECT_NEAR(QApplication::font().pointSizeF(), 1.9 * one, 0.01);
    trigger("view.normal");
    EXPECT_GT(before, 0);
}

TEST_F(WindowTest, DarkAndLightAreChosenFromTheMenu) {
    openEmpty();
    trigger("theme.2");
    EXPECT_TRUE(theme_.isDark());
    EXPECT_LT(QApplication::palette().color(QPalette::Window).lightness(), 128);
    trigger("theme.1");
    EXPECT_FALSE(theme_.isDark());
}

TEST_F(WindowTest, TheLastPlaceAndTheRecentFilesAreRemembered) {
    QSettings settings(QString::fromStdString(folder_ / "settings.ini"), QSettings::IniFormat);
    openEmpty(&settings);
    window_->openFleet(QString::fromStdString(path_), {"register", "C-SHAKE", {}, {}, {}, {}});
    ASSERT_TRUE(waitFor([this] { return window_->workplace() && window_->settled(); }));
    window_->close();
    openEmpty(&settings);
    EXPECT_EQ(window_->findChildren<QLabel*>("recentFile").size(), 1);
    window_->openFleet(QString::fromStdString(path_));
    ASSERT_TRUE(waitFor([this] { return window_->workplace() && window_->settled(); }));
    EXPECT_EQ(window_->workplace()->pageName(), "register");
    EXPECT_EQ(window_->workplace()->selection().machine(), "C-SHAKE");
}

TEST_F(WindowTest, AnEventOfTheChosenMachineIsKept) {
    openWindow({"machine", "A-RACE", {}, {}, {}, {}});
    trigger("machine.event");
    auto* asked = dialog<AnswerDialog>("eventDialog");
    auto* kind = asked->findChild<QComboBox*>("kind");
    auto* yes = asked->findChild<QAbstractButton*>("yes");
    EXPECT_FALSE(yes->isEnabled());  // a note needs words
    kind->setCurrentIndex(kind->findData("greasing"));
    ASSERT_TRUE(waitFor([&] { return asked->findChild<QComboBox*>("at")->findText("driver DE") >= 0; }));
    asked->findChild<QComboBox*>("at")->setEditText("driver DE");
    asked->findChild<QPlainTextEdit*>("text")->setPlainText("20 g EP2");
    yes->click();
    settle();
    const auto events = fleet_->log().events("A-RACE");
    ASSERT_EQ(events->size(), 1u);
    EXPECT_EQ(events->front().kind, "greasing");
    EXPECT_EQ(events->front().at, "driver DE");
    EXPECT_EQ(events->front().text, "20 g EP2");
}

// The checks are those of the command: a place the machine has not is refused, and what was typed comes back.
TEST_F(WindowTest, AnEventAtAPlaceTheMachineHasNotIsRefusedAndNotLost) {
    openWindow({"machine", "A-RACE", {}, {}, {}, {}});
    trigger("machine.event");
    auto* asked = dialog<AnswerDialog>("eventDialog");
    auto* kind = asked->findChild<QComboBox*>("kind");
    kind->setCurrentIndex(kind->findData("repair"));
    asked->findChild<QComboBox*>("at")->setEditText("cellar");
    asked->findChild<QPlainTextEdit*>("text")->setPlainText("new bearing");
    asked->findChild<QAbstractButton*>("yes")->click();
    auto* box = dialog<QMessageBox>("message");
    EXPECT_THAT(box->text().toStdString(), HasSubstr("\"cellar\" is no place of A-RACE"));
    box->button(QMessageBox::Ok)->click();
    settle();
    EXPECT_TRUE(fleet_->log().events("A-RACE")->empty());
    auto* again = dialog<AnswerDialog>("eventDialog");
    EXPECT_EQ(again->findChild<QComboBox*>("kind")->currentData().toString(), "repair");
    EXPECT_EQ(again->findChild<QComboBox*>("at")->currentText(), "cellar");
    EXPECT_EQ(again->findChild<QPlainTextEdit*>("text")->toPlainText(), "new bearing");
}

TEST_F(WindowTest, ABackupIsMadeWhileTheFleetIsOpen) {
    openWindow();
    const std::string copy = folder_ / "copy.fettle";
    window_->workplace()->backUp(QString::fromStdString(copy));
    settle();
    const auto again = FleetFile::open(copy);
    ASSERT_TRUE(again) << again.error().sentence();
    EXPECT_EQ((*again)->recordings().count(), 12u);
}

TEST_F(WindowTest, AFleetFileDroppedOnTheWindowIsOpened) {
    openEmpty();
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(QString::fromStdString(path_))});
    QDragEnterEvent enter(QPoint(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window_.get(), &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window_.get(), &drop);
    ASSERT_TRUE(waitFor([this] { return window_->workplace() && window_->settled(); }));
}

}  // namespace
}  // namespace fettle::desk_test
