#include "ui/theme/theme.h"

#include <QApplication>
#include <QFontDatabase>
#include <QFontMetricsF>
#include <QVariant>
#include <QWidget>
#include <algorithm>
#include <array>
#include <cmath>

#include "ui/theme/colour_map.h"
#include "ui/theme/quiet_style.h"

namespace fettle {

namespace {

struct Row {
    Role role;
    QRgb light, dark, paper;
};

constexpr std::array<Row, kRoles> kTable = {{
    {Role::Ground, 0xfffbfaf6, 0xff14171a, 0xffffffff},
    {Role::Panel, 0xfff3f1ea, 0xff1d2125, 0xffffffff},
    {Role::Ink, 0xff1c1f23, 0xffe8e6e1, 0xff000000},
    {Role::MutedInk, 0xff555a61, 0xffa6abb1, 0xff404040},
    {Role::Rule, 0xffd3cfc4, 0xff3b4249, 0xffb8b8b8},
    {Role::Accent, 0xff0f4c75, 0xff86bfe0, 0xff000000},
    {Role::AccentGround, 0xffdde8ef, 0xff1f3645, 0xffececec},
    {Role::Curve, 0xff2a4058, 0xffb4cde2, 0xff000000},
    {Role::SecondCurve, 0xff8a5f1c, 0xffd6ac68, 0xff707070},
    {Role::Limit, 0xff6b5220, 0xffd0b27c, 0xff303030},
    {Role::Found, 0xff0f4c75, 0xff86bfe0, 0xff000000},
    {Role::Absent, 0xff86501a, 0xffdba766, 0xff505050},
    {Role::LeftOut, 0xff62676e, 0xff9ba1a8, 0xff6a6a6a},
    {Role::Cursor, 0xff8d1f5d, 0xfff0a9d0, 0xff000000},
    {Role::For, 0xff0f4c75, 0xff86bfe0, 0xff000000},
    {Role::Against, 0xff86501a, 0xffdba766, 0xff606060},
    {Role::Gap, 0xffe6e2d8, 0xff262b30, 0xffeeeeee},
    {Role::Event, 0xff454a51, 0xffbfc4ca, 0xff303030},
    {Role::Trouble, 0xff8c1d18, 0xfff2a29b, 0xff000000},
}};

constexpr bool tableIsInOrder() {
    for (int i = 0; i < kRoles; ++i)
        if (int(kTable[std::size_t(i)].role) != i) return false;
    return true;
}
static_assert(tableIsInOrder());

double luminance(const QColor& c) {
    return 0.2126 * linearLight(c.redF()) + 0.7152 * linearLight(c.greenF()) +
           0.0722 * linearLight(c.blueF());
}

bool digitsAreEqual(const QFont& font) {
    const QFontMetricsF metrics(font);
    const double width = metrics.horizontalAdvance(QLatin1Char('0'));
    for (char digit = '1'; digit <= '9'; ++digit)
        if (std::abs(metrics.horizontalAdvance(QLatin1Char(digit)) - width) > 0.01) return false;
    return true;
}

// A style sheet keeps the colours and letters it was read with: it is read again.
void rereadSheets() {
    for (QWidget* widget : QApplication::allWidgets()) {
        const QString sheet = widget->styleSheet();
        if (sheet.isEmpty()) continue;
        widget->setStyleSheet({});
        widget->setPalette({});
        widget->setStyleSheet(sheet);
    }
}

constexpr const char* kFirstFont = "fettleFirstFont";  // of the application, before any scale

}  // namespace

Theme::Theme(ThemeChoice choice, QObject* parent) : QObject(parent), choice_(choice) {
    if (qApp) systemDark_ = QGuiApplication::palette().color(QPalette::Window).lightness() < 128;
}

void Theme::choose(ThemeChoice choice) {
    if (choice == choice_) return;
    choice_ = choice;
    emit changed();
}

bool Theme::isDark() const {
    return choice_ == ThemeChoice::Dark || (choice_ == ThemeChoice::System && systemDark_);
}

QColor Theme::colour(Role role) const {
    const Row& row = kTable[std::size_t(role)];
    return QColor::fromRgb(choice_ == ThemeChoice::Paper ? row.paper : isDark() ? row.dark : row.light);
}

QPalette Theme::palette() const {
    QPalette p;
    const auto set = [&](QPalette::ColorRole at, Role role) { p.setColor(at, colour(role)); };
    set(QPalette::Window, Role::Ground);
    set(QPalette::Base, Role::Ground);
    set(QPalette::AlternateBase, Role::Panel);
    set(QPalette::Button, Role::Panel);
    set(QPalette::ToolTipBase, Role::Panel);
    for (const auto at : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText,
                          QPalette::BrightText, QPalette::HighlightedText})
        set(at, Role::Ink);
    set(QPalette::PlaceholderText, Role::MutedInk);
    set(QPalette::Highlight, Role::AccentGround);
    set(QPalette::Link, Role::Accent);
    set(QPalette::LinkVisited, Role::Accent);
    set(QPalette::Light, Role::Ground);
    set(QPalette::Midlight, Role::Panel);
    set(QPalette::Mid, Role::Rule);
    set(QPalette::Dark, Role::MutedInk);
    set(QPalette::Shadow, Role::Rule);
    for (const auto at : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        p.setColor(QPalette::Disabled, at, colour(Role::MutedInk));
    return p;
}

void Theme::applyTo(QApplication& application, double scale) {
    QVariant first = application.property(kFirstFont);
    if (!first.isValid()) {
        first = QApplication::font();
        application.setProperty(kFirstFont, first);
    }
    QFont font = withTabularFigures(first.value<QFont>());
    font.setPointSizeF(first.value<QFont>().pointSizeF() * std::clamp(scale, 1.0, 2.0));
    if (!qobject_cast<QuietStyle*>(QApplication::style())) QApplication::setStyle(new QuietStyle);
    QApplication::setPalette(palette());
    QApplication::setFont(font);
    rereadSheets();
}

double contrast(const QColor& a, const QColor& b) {
    const double first = luminance(a), second = luminance(b);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

QFont withTabularFigures(const QFont& base) {
    if (digitsAreEqual(base)) return base;
    for (const char* family : {"DejaVu Sans", "Noto Sans", "Liberation Sans"}) {
        QFont font = base;
        font.setFamily(QString::fromLatin1(family));
        if (QFontDatabase::hasFamily(font.family()) && digitsAreEqual(font)) return font;
    }
    return base;
}

}  // namespace fettle
