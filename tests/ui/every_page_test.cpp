// Every page and every dialog in both themes, at 1.0 and 1.5, at 1280x800 and 1920x1200: no clipped and no
// overlapping text, every control with a name and in reach of the keyboard. WCAG 2.1: 1.4.4 (text at 150 %
// without loss), 2.1.1 (keyboard), 4.1.2 (name).
#include <QApplication>
#include <QDialog>

#include "tests/ui/desk_fixture.h"
#include "tests/ui/widget_audit.h"

namespace fettle {
namespace {

struct Look {
    double scale;
    QSize size;
    ThemeChoice theme;
};
const Look kLooks[] = {{1.0, {1280, 800}, ThemeChoice::Light},
                       {1.0, {1920, 1200}, ThemeChoice::Dark},
                       {1.5, {1280, 800}, ThemeChoice::Dark},
                       {1.5, {1920, 1200}, ThemeChoice::Light}};

class EveryPage : public desk_test::Desk, public testing::WithParamInterface<Look> {
  protected:
    void SetUp() override {
        Desk::SetUp();
        theme_.choose(GetParam().theme);
        theme_.applyTo(*qApp, GetParam().scale);
    }
    void TearDown() override {
        Desk::TearDown();
        theme_.choose(ThemeChoice::Light);
        theme_.applyTo(*qApp, 1.0);
    }
    void show(const PagePlace& place) {
        openWindow(place);
        window_->resize(GetParam().size);
        settle();
        QTest::qWait(50);  // layouts that follow a resize
        settle();
    }
    static void expectSound(QWidget& root, const std::string& what) {
        const QStringList troubles = desk_test::clippedTexts(root) + desk_test::overlaps(root) +
                                     desk_test::namelessControls(root) + desk_test::unreachableControls(root);
        EXPECT_EQ(troubles.join(QChar('\n')).toStdString(), "") << what;
    }
};

TEST_P(EveryPage, ShowsAllItsWordsAndIsReached) {
    for (const char* page : {"round", "machine", "register"}) {
        PagePlace place;
        place.page = QString::fromLatin1(page);
        place.machine = QStringLiteral("A-RACE");
        show(place);
        expectSound(*window_, page);
    }
}

TEST_P(EveryPage, SoDoesEveryDialog) {
    PagePlace place;
    place.page = QStringLiteral("machine");
    place.machine = QStringLiteral("A-RACE");
    show(place);
    eachDialog([](QDialog& dialog, const std::string& name) {
        EXPECT_LE(dialog.width(), GetParam().size.width()) << name;
        EXPECT_LE(dialog.height(), GetParam().size.height()) << name;
        EXPECT_FALSE(dialog.objectName().isEmpty()) << name;
        EXPECT_FALSE(dialog.windowTitle().isEmpty()) << name;
        expectSound(dialog, name);
    });
}

INSTANTIATE_TEST_SUITE_P(Looks, EveryPage, testing::ValuesIn(kLooks));

}  // namespace
}  // namespace fettle
