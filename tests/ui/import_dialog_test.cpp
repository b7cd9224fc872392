// Recordings taken in from the window: counts, refusals with file, place and rule, kept until answered.
#include "ui/dialogs/import_dialog.h"

#include <QApplication>
#include <QDropEvent>
#include <QLabel>
#include <QMimeData>
#include <QTableView>
#include <QUrl>

#include "core/base/file_system.h"
#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/refusals_dialog.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class ImportDialogTest : public Desk {
  protected:
    // One good recording of B-SOUND, one broken file, one of a machine that is not in the register.
    void send() {
        auto setup = made::setupOf(made::machineOf(fleet_test::description("B-SOUND")), 9, 1);
        const auto sent = intake_test::sent(setup);
        intake_test::Said said;
        said.machine = "B-SOUND";
        said.time = "2026-05-08T06:20:00Z";
        said.scale = sent.scale;
        intake_test::send(folder_ / "more", "good", sent.wav, said);
        said.machine = "NO-SUCH";
        said.time = "2026-05-08T07:20:00Z";
        intake_test::send(folder_ / "more", "stranger", sent.wav, said);
        ASSERT_TRUE(RealFileSystem().writeSafely(folder_ / "more/broken.wav", "RIFF....WAVE"));
    }
    ImportDialog& takeIn() {
        window_->workplace()->importPaths({QString::fromStdString(folder_ / "more")});
        auto* found = window_->findChild<ImportDialog*>("importDialog");
        EXPECT_TRUE(waitFor([&] { return !found->running() && window_->settled(); }));
        return *found;
    }
};

TEST_F(ImportDialogTest, TakesWhatIsSoundAndNamesWhatIsNot) {
    send();
    openWindow();
    ImportDialog& dialog = takeIn();
    const std::string counts = dialog.findChild<QLabel*>("importCounts")->text().toStdString();
    EXPECT_THAT(counts, HasSubstr("1 taken"));
    EXPECT_THAT(counts, HasSubstr("2 refused or parked"));
    auto* refusals = dialog.findChild<QTableView*>("importRefusals")->model();
    ASSERT_EQ(refusals->rowCount(), 2);
    std::string all;
    for (int row = 0; row < 2; ++row)
        for (int column = 0; column < 3; ++column)
            all += refusals->index(row, column).data().toString().toStdString() + " ";
    EXPECT_THAT(all, HasSubstr("broken.wav"));
    EXPECT_THAT(all, HasSubstr("NO-SUCH"));
    EXPECT_EQ(fleet_->recordings().count(), 13u);
}

TEST_F(ImportDialogTest, ASecondTimeNothingIsDoubled) {
    send();
    openWindow();
    takeIn();
    const std::string counts = takeIn().findChild<QLabel*>("importCounts")->text().toStdString();
    EXPECT_THAT(counts, HasSubstr("0 taken"));
    EXPECT_THAT(counts, HasSubstr("1 already there"));
    EXPECT_EQ(fleet_->recordings().count(), 13u);
}

TEST_F(ImportDialogTest, TheListOfRefusedFilesIsKeptUntilAnswered) {
    send();
    openWindow();
    takeIn();
    window_->workplace()->showDialog("refused");
    auto* kept = dialog<RefusalsDialog>("refusalsDialog");
    settle();
    auto* table = kept->findChild<QTableView*>("refusals");
    ASSERT_EQ(table->model()->rowCount(), 2);
    table->setCurrentIndex(table->model()->index(0, 0));
    kept->findChild<QAbstractButton*>("answerRefusal")->click();
    settle();
    EXPECT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(fleet_->log().refusals()->size(), 1u);
    EXPECT_EQ(fleet_->log().refusals(true)->size(), 2u);
}

TEST_F(ImportDialogTest, AFolderDroppedOnTheWindowIsTakenInAndTheRoundReadAgain) {
    send();
    openWindow();
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(QString::fromStdString(folder_ / "more"))});
    QDragEnterEvent enter(QPoint(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window_.get(), &enter);
    ASSERT_TRUE(enter.isAccepted());
    QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window_.get(), &drop);
    ASSERT_TRUE(waitFor([this] { return window_->settled() && roundPage().round().recordings == 13; }));
}

TEST_F(ImportDialogTest, ClosingTheDialogLetsTheImportGoOn) {
    send();
    openWindow();
    window_->workplace()->importPaths({QString::fromStdString(folder_ / "more")});
    auto* found = window_->findChild<ImportDialog*>("importDialog");
    found->close();
    EXPECT_FALSE(found->isVisible());
    EXPECT_TRUE(waitFor([&] { return !found->running() && window_->settled(); }));
    EXPECT_EQ(fleet_->recordings().count(), 13u);
}

}  // namespace
}  // namespace fettle::desk_test
