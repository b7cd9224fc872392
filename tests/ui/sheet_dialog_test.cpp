// The sheet's dialog as a user meets it: opened from the machine's page and from the round, what is seen is
// what is saved. Truth: the small site (tests/fleet/small_site.h).
#include "ui/dialogs/sheet_dialog.h"

#include <QComboBox>
#include <QLabel>
#include <QSignalSpy>
#include <QToolButton>

#include "tests/ui/desk_fixture.h"

namespace fettle::desk_test {
namespace {

class SheetOnDesk : public Desk {
  protected:
    void SetUp() override {
        Desk::SetUp();
        opened();
    }
    SheetDialog* open(const char* tag) {
        openWindow({QStringLiteral("machine"), QString::fromLatin1(tag), {}, {}, {}, {}});
        window_->workplace()->showSheet(QString::fromLatin1(tag));
        auto* found = dialog<SheetDialog>("sheetDialog");
        EXPECT_TRUE(waitFor([this] { return window_->settled(); }));
        return found;
    }
    // Of all its pages one under the other, paper of this size.
    static double ratioOf(SheetDialog& dialog, PaperSize size) {
        const double count = double(SheetPainter(*dialog.sheet(), size).pages().size());
        const QSizeF paper = paperMm(size);
        return (count * paper.height() + (count - 1) * kBetweenPagesMm) / paper.width();
    }
    static QSizeF pageSize(SheetDialog& dialog) {
        const QPixmap picture = dialog.findChild<QLabel*>(QStringLiteral("page"))->pixmap(Qt::ReturnByValue);
        return picture.deviceIndependentSize();
    }
};

TEST_F(SheetOnDesk, ShowsThePageOfTheMachine) {
    SheetDialog* sheet = open("A-RACE");
    ASSERT_NE(sheet, nullptr);
    ASSERT_NE(sheet->sheet(), nullptr);
    EXPECT_EQ(sheet->sheet()->content.tag, "A-RACE");
    EXPECT_TRUE(sheet->sheet()->detail);
    EXPECT_NEAR(pageSize(*sheet).height() / pageSize(*sheet).width(), ratioOf(*sheet, PaperSize::A4), 0.01);
}

TEST_F(SheetOnDesk, PaperAndZoomChangeThePicture) {
    SheetDialog* sheet = open("A-RACE");
    ASSERT_NE(sheet, nullptr);
    sheet->findChild<QComboBox*>(QStringLiteral("paper"))->setCurrentIndex(1);
    EXPECT_NEAR(pageSize(*sheet).height() / pageSize(*sheet).width(), ratioOf(*sheet, PaperSize::Letter),
                0.01);
    sheet->setZoom(1);
    const double before = pageSize(*sheet).width();
    sheet->findChild<QToolButton*>(QStringLiteral("larger"))->click();
    EXPECT_NEAR(pageSize(*sheet).width(), 1.25 * before, 2);
    sheet->setZoom(1000);
    EXPECT_LE(sheet->zoom(), 4);
}

TEST_F(SheetOnDesk, SavesWhatIsSeen) {
    SheetDialog* sheet = open("C-SHAKE");
    ASSERT_NE(sheet, nullptr);
    QSignalSpy saved(sheet, &SheetDialog::saved);
    sheet->savePdf(QString::fromStdString(folder_ / "shake.pdf"));
    ASSERT_TRUE(waitFor([&] { return saved.count() == 1; }));
    const auto pdf = RealFileSystem().read(folder_ / "shake.pdf");
    ASSERT_TRUE(pdf);
    EXPECT_EQ(pdf->substr(0, 5), "%PDF-");
}

TEST_F(SheetOnDesk, AFolderThatCannotBeWrittenIsSaid) {
    SheetDialog* sheet = open("C-SHAKE");
    ASSERT_NE(sheet, nullptr);
    sheet->savePdf(QString::fromStdString(folder_ / "not/there/shake.pdf"));
    auto* trouble = sheet->findChild<QLabel*>(QStringLiteral("trouble"));
    ASSERT_TRUE(waitFor([&] { return trouble->isVisible(); }));
    EXPECT_TRUE(trouble->text().contains(QStringLiteral("shake.pdf")));
}

// Writing there would end the fleet: the file, its other names and what SQLite keeps beside it.
TEST_F(SheetOnDesk, TheFleetFileItselfIsLeftAsItIs) {
    SheetDialog* sheet = open("A-RACE");
    ASSERT_NE(sheet, nullptr);
    auto* trouble = sheet->findChild<QLabel*>(QStringLiteral("trouble"));
    for (const std::string& target : {path_, path_ + "-wal", folder_ / "./site.fettle"}) {
        sheet->savePdf(QString::fromStdString(target));
        ASSERT_TRUE(waitFor([&] { return trouble->isVisible() && window_->settled(); }));
        EXPECT_TRUE(trouble->text().contains(QStringLiteral("is the fleet file")))
            << target << ": " << trouble->text().toStdString();
    }
    EXPECT_TRUE(sheet->findChild<QWidget*>(QStringLiteral("save"))->isEnabled());
    EXPECT_EQ(FleetFile::open(path_, OpenMode::ReadOnly).value()->recordings().count(), 12u);
}

TEST_F(SheetOnDesk, AMachineWithoutAFindingIsASentence) {
    SheetDialog* sheet = open("B-SOUND");
    ASSERT_NE(sheet, nullptr);
    EXPECT_EQ(sheet->sheet(), nullptr);
    auto* trouble = sheet->findChild<QLabel*>(QStringLiteral("trouble"));
    EXPECT_TRUE(trouble->text().contains(QStringLiteral("B-SOUND"))) << trouble->text().toStdString();
    EXPECT_FALSE(sheet->findChild<QWidget*>(QStringLiteral("save"))->isEnabled());
}

TEST_F(SheetOnDesk, TheButtonOfTheMachinePageOpensIt) {
    openWindow({QStringLiteral("machine"), QStringLiteral("A-RACE"), {}, {}, {}, {}});
    press("machineSheet");
    EXPECT_NE(dialog<SheetDialog>("sheetDialog"), nullptr);
}

}  // namespace
}  // namespace fettle::desk_test
