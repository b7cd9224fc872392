// Preferences are kept for the person, hold at once, and change nothing that is stored.
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QSettings>
#include <QSpinBox>

#include "core/fleet/who.h"
#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/page_preview.h"
#include "ui/dialogs/preferences_dialog.h"

namespace fettle::desk_test {
namespace {

class PreferencesTest : public Desk {
  protected:
    void TearDown() override {
        Desk::TearDown();
        signWith({});
        preferPaper({});
        theme_.choose(ThemeChoice::Light);
        theme_.applyTo(*qApp, 1);
    }
    QString file() { return QString::fromStdString(folder_ / "settings.ini"); }
    void choose(QDialog* dialog, const char* box, const QVariant& key) {
        auto* found = dialog->findChild<QComboBox*>(QString::fromLatin1(box));
        ASSERT_GE(found->findData(key), 0) << box;
        found->setCurrentIndex(found->findData(key));
    }
};

TEST_F(PreferencesTest, HoldAtOnceAndAtTheNextStart) {
    QSettings settings(file(), QSettings::IniFormat);
    window_ = std::make_unique<MainWindow>(theme_, 1.0, &settings);
    window_->show();
    window_->openFleet(QString::fromStdString(path_));
    ASSERT_TRUE(waitFor([this] { return window_->workplace() && window_->settled(); }));
    window_->findChild<QAction*>("file.preferences")->trigger();
    auto* asked = dialog<PreferencesDialog>("preferencesDialog");
    choose(asked, "velocity", true);
    choose(asked, "frequency", true);
    choose(asked, "temperature", true);
    choose(asked, "paper", true);
    choose(asked, "theme", int(ThemeChoice::Dark));
    asked->findChild<QSpinBox*>("scale")->setValue(120);
    asked->findChild<QLineEdit*>("name")->setText("R. Hale");
    asked->findChild<QAbstractButton*>("yes")->click();
    const Units wanted{true, true, true};
    EXPECT_EQ(window_->workplace()->selection().units(), wanted);
    EXPECT_TRUE(theme_.isDark());
    EXPECT_DOUBLE_EQ(window_->scale(), 1.2);
    EXPECT_EQ(orLoginName({}), "R. Hale");
    EXPECT_EQ(usualPaper(false), PaperSize::Letter);
    const Preferences kept = Preferences::read(&settings);
    EXPECT_EQ(kept.units, wanted);
    EXPECT_EQ(kept.name, "R. Hale");
    EXPECT_EQ(kept.theme, ThemeChoice::Dark);
    EXPECT_DOUBLE_EQ(kept.scale, 1.2);

    window_ = std::make_unique<MainWindow>(theme_, kept.scale, &settings);
    window_->openFleet(QString::fromStdString(path_));
    ASSERT_TRUE(waitFor([this] { return window_->workplace() && window_->settled(); }));
    EXPECT_EQ(window_->workplace()->selection().units(), wanted);
}

TEST_F(PreferencesTest, NonsenseInTheSettingsIsPassedOver) {
    QSettings settings(file(), QSettings::IniFormat);
    settings.setValue("view/scale", 77);
    settings.setValue("view/theme", 9);
    settings.setValue("units/inches", "perhaps");
    const Preferences kept = Preferences::read(&settings);
    EXPECT_DOUBLE_EQ(kept.scale, 2);
    EXPECT_EQ(kept.theme, ThemeChoice::System);
    EXPECT_FALSE(kept.letter.has_value());
    EXPECT_EQ(Preferences::read(nullptr), Preferences());
}

}  // namespace
}  // namespace fettle::desk_test
