// Another theme chosen while the window is open: nothing keeps the ink of the one before. Bound: 4.5 to 1
// between letters and their ground (WCAG 2.1, success criterion 1.4.3), measured in what is painted.
#include <QAction>
#include <QApplication>
#include <QHash>
#include <QLabel>
#include <QTabBar>
#include <QToolButton>

#include "tests/ui/desk_fixture.h"

namespace fettle::desk_test {
namespace {

class ThemeLive : public Desk {
  protected:
    void TearDown() override {
        Desk::TearDown();
        theme_.choose(ThemeChoice::Light);
        theme_.applyTo(*qApp, 1);
    }
    void chooseTheme(ThemeChoice choice) {
        window_->findChild<QAction*>(QStringLiteral("theme.%1").arg(int(choice)))->trigger();
        settle();
    }
};

// The ground is the commonest colour, the ink the one that differs most from it.
double paintedContrast(const QImage& picture) {
    QHash<QRgb, int> counts;
    for (int y = 0; y < picture.height(); ++y)
        for (int x = 0; x < picture.width(); ++x)
            ++counts[picture.pixel(x, y)];
    QRgb ground = 0;
    for (auto at = counts.cbegin(); at != counts.cend(); ++at)
        if (at.value() > counts.value(ground)) ground = at.key();
    double most = 1;
    for (auto at = counts.cbegin(); at != counts.cend(); ++at)
        most = std::max(most, contrast(QColor(at.key()), QColor(ground)));
    return most;
}

QImage painted(QWidget* window, QWidget* widget, const QRect& part) {
    return window->grab(QRect(widget->mapTo(window, part.topLeft()), part.size())).toImage();
}

// What cannot be read, by name.
QStringList faint(QWidget* window) {
    QStringList names;
    const auto check = [&](QWidget* widget, const QRect& part, const QString& text) {
        const QRect seen = part & widget->visibleRegion().boundingRect();
        if (text.trimmed().isEmpty() || seen.height() < part.height() || seen.width() < 12) return;
        const double found = paintedContrast(painted(window, widget, seen));
        if (found < 4.5) names << QStringLiteral("%1 '%2' %3").arg(widget->objectName(), text).arg(found);
    };
    for (QWidget* widget : window->findChildren<QWidget*>()) {
        if (!widget->isVisible() || !widget->isEnabled()) continue;
        if (const auto* label = qobject_cast<QLabel*>(widget)) check(widget, widget->rect(), label->text());
        if (const auto* button = qobject_cast<QToolButton*>(widget))
            check(widget, widget->rect(), button->text());
        if (const auto* bar = qobject_cast<QTabBar*>(widget))
            for (int tab = 0; tab < bar->count(); ++tab)
                if (bar->isTabEnabled(tab)) check(widget, bar->tabRect(tab), bar->tabText(tab));
    }
    return names;
}

TEST_F(ThemeLive, EveryTabButtonAndLabelIsReadableAfterwards) {
    opened();
    openWindow({QStringLiteral("machine"), QStringLiteral("A-RACE"), {}, {}, {}, {}});
    window_->resize(1280, 800);
    const char* const pages[] = {"page.round", "page.machine", "page.register"};
    for (const char* page : pages) {  // once in light, so that everything was dressed there
        part<QAction>(page)->trigger();
        settle();
    }
    for (const ThemeChoice choice : {ThemeChoice::Dark, ThemeChoice::Light})
        for (const char* page : pages) {
            chooseTheme(choice);
            part<QAction>(page)->trigger();
            settle();
            EXPECT_EQ(faint(window_.get()).join(u'\n').toStdString(), "") << page << int(choice);
        }
}

}  // namespace
}  // namespace fettle::desk_test
