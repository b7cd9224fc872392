// A key that two actions have at the same place does nothing in Qt: it only says "ambiguous". The table of
// keys is read for that, and the letters of the menu bar against those of the pages' buttons.
#include "ui/model/shortcuts.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <map>

#include "tests/ui/desk_fixture.h"
#include "ui/model/language.h"

namespace fettle {
namespace {

// Groups that stand inside each other: the window round all, the plots on the machine page.
bool heardTogether(const Shortcut& a, const Shortcut& b) {
    const auto is = [](const Shortcut& one, const char* group) { return std::string(one.group) == group; };
    const auto plotOnPage = [&](const Shortcut& plot, const Shortcut& page) {
        return is(plot, "In a plot") && is(page, "Machine page");
    };
    return is(a, b.group) || is(a, "Everywhere") || is(b, "Everywhere") || plotOnPage(a, b) ||
           plotOnPage(b, a);
}

TEST(Shortcuts, NoKeyHasTwoActionsAtOnePlace) {
    const auto& table = shortcuts();
    int compared = 0;
    for (std::size_t i = 0; i < table.size(); ++i)
        for (std::size_t j = i + 1; j < table.size(); ++j) {
            EXPECT_STRNE(table[i].id, table[j].id);
            if (!heardTogether(table[i], table[j])) continue;
            for (const QKeySequence& key : table[i].keys) {
                EXPECT_FALSE(table[j].keys.contains(key))
                    << key.toString().toStdString() << " is both " << table[i].id << " and " << table[j].id;
                ++compared;
            }
        }
    EXPECT_GT(compared, 500);
}

TEST(Shortcuts, EveryKeyOfTheTableIsAKey) {
    for (const Shortcut& row : shortcuts())
        for (const QKeySequence& key : row.keys) {
            ASSERT_EQ(key.count(), 1) << row.id;
            EXPECT_NE(key[0].key(), Qt::Key_unknown) << row.id;
        }
}

class Letters : public desk_test::Desk {
  protected:
    // Letters that Alt reaches on the page that is shown, with what they belong to.
    void expectAllDifferent(const QString& page) {
        std::map<QString, QString> seen;
        const auto take = [&](const QString& text) {
            const QString key = QKeySequence::mnemonic(text).toString();
            if (key.isEmpty()) return;
            EXPECT_EQ(seen.count(key), 0u)
                << page.toStdString() << ": " << key.toStdString() << " is both \"" << seen[key].toStdString()
                << "\" and \"" << text.toStdString() << '"';
            seen[key] = text;
        };
        for (const QAction* menu : window_->menuBar()->actions())
            take(menu->text());
        for (const auto* button : window_->findChildren<QAbstractButton*>())
            if (button->isVisible() && button->isEnabled()) take(button->text());
        for (const auto* label : window_->findChildren<QLabel*>())
            if (label->isVisible() && label->buddy()) take(label->text());
    }
};

TEST_F(Letters, OfAPageAreUnlikeThoseOfTheMenus) {
    PagePlace place;
    place.machine = "A-RACE";
    for (const char* page : {"round", "machine", "register"}) {
        place.page = page;
        openWindow(place);
        settle();
        expectAllDifferent(place.page);
    }
}

// Qt goes round entries of one letter instead of taking them: a menu where each has its own is one key press.
TEST(Menus, EveryEntryOfAMenuHasALetterOfItsOwnInEveryLanguage) {
    for (const Language& language : languages()) {
        speak(language.code);
        Theme theme(ThemeChoice::Light);
        MainWindow window(theme, 1.0, nullptr);
        int entries = 0;
        for (const QMenu* menu : window.menuBar()->findChildren<QMenu*>()) {
            std::map<QString, QString> seen;
            for (const QAction* entry : menu->actions()) {
                if (entry->isSeparator()) continue;
                const QString key = QKeySequence::mnemonic(entry->text()).toString();
                EXPECT_FALSE(key.isEmpty()) << entry->text().toStdString();
                EXPECT_EQ(seen.count(key), 0u)
                    << menu->title().toStdString() << ", " << key.toStdString() << ": \""
                    << seen[key].toStdString() << "\" and \"" << entry->text().toStdString() << '"';
                seen[key] = entry->text();
                ++entries;
            }
        }
        EXPECT_GT(entries, 30) << language.code.toStdString();
    }
    speak(languages().front().code);
}

}  // namespace
}  // namespace fettle
