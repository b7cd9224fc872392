// Contrast of the table of colours: WCAG 2.1, success criteria 1.4.3 (text 4.5) and 1.4.11 (marks 3).
#include <gtest/gtest.h>

#include <QFontMetricsF>
#include <QGuiApplication>
#include <QImage>
#include <QPainter>

#include "ui/theme/colour_map.h"
#include "ui/theme/theme.h"
#include "ui/theme/urgency_disc.h"

namespace fettle {

namespace {

const ThemeChoice kChoices[] = {ThemeChoice::Light, ThemeChoice::Dark, ThemeChoice::Paper};

// Roles in which something is written, and the grounds it may stand on.
const Role kTextRoles[] = {Role::Ink,    Role::MutedInk, Role::Accent, Role::Limit, Role::Found,
                           Role::Absent, Role::LeftOut,  Role::Cursor, Role::Event, Role::Trouble};
const Role kMarks[] = {Role::Curve, Role::SecondCurve, Role::For, Role::Against};
const Role kGrounds[] = {Role::Ground, Role::Panel, Role::AccentGround};

int inkedPixels(Urgency urgency) {
    QImage image(60, 60, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintUrgencyDisc(painter, QRectF(5, 5, 50, 50), urgency, Qt::black);
    painter.end();
    int inked = 0;
    for (int y = 0; y < 60; ++y)
        for (int x = 0; x < 60; ++x)
            inked += qGray(image.pixel(x, y)) < 128;
    return inked;
}

}  // namespace

TEST(ThemeContrast, TheFormulaGivesThePublishedExtremes) {
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-9);  // WCAG 2.1, definition of contrast ratio
    EXPECT_NEAR(contrast(Qt::white, Qt::white), 1, 1e-9);
    EXPECT_NEAR(contrast(QColor("#767676"), Qt::white), 4.54, 0.01);  // the lightest AA grey, from memory
}

TEST(ThemeContrast, EveryTextAndMarkCanBeReadOnEveryGround) {
    for (const ThemeChoice choice : kChoices) {
        const Theme theme(choice);
        for (const Role ground : kGrounds) {
            for (const Role text : kTextRoles)
                EXPECT_GE(contrast(theme.colour(text), theme.colour(ground)), 4.5)
                    << "theme " << int(choice) << " role " << int(text) << " on " << int(ground);
            for (const Role mark : kMarks)
                EXPECT_GE(contrast(theme.colour(mark), theme.colour(ground)), 3)
                    << "theme " << int(choice) << " role " << int(mark) << " on " << int(ground);
        }
    }
}

TEST(ThemeContrast, ThePaletteOfTheWindowIsTheTables) {
    for (const ThemeChoice choice : kChoices) {
        const Theme theme(choice);
        const QPalette p = theme.palette();
        for (const auto& [text, ground] :
             {std::pair{QPalette::WindowText, QPalette::Window}, std::pair{QPalette::Text, QPalette::Base},
              std::pair{QPalette::Text, QPalette::AlternateBase},
              std::pair{QPalette::ButtonText, QPalette::Button},
              std::pair{QPalette::HighlightedText, QPalette::Highlight},
              std::pair{QPalette::ToolTipText, QPalette::ToolTipBase},
              std::pair{QPalette::PlaceholderText, QPalette::Base},
              std::pair{QPalette::Link, QPalette::Window}})
            EXPECT_GE(contrast(p.color(text), p.color(ground)), 4.5) << int(choice) << " " << int(text);
    }
}

TEST(ThemeContrast, PaperHasNoColourAtAll) {
    const Theme theme(ThemeChoice::Paper);
    for (int role = 0; role < kRoles; ++role)
        EXPECT_LE(theme.colour(Role(role)).hsvSaturation(), 0) << role;
}

TEST(ThemeContrast, ChoosingEmitsOnceAndOnlyOnChange) {
    Theme theme(ThemeChoice::Light);
    int changes = 0;
    QObject::connect(&theme, &Theme::changed, [&] { ++changes; });
    theme.choose(ThemeChoice::Dark);
    theme.choose(ThemeChoice::Dark);
    EXPECT_EQ(changes, 1);
    EXPECT_TRUE(theme.isDark());
}

TEST(ThemeFigures, DigitsStandInColumns) {
    const QFontMetricsF metrics(withTabularFigures(QGuiApplication::font()));
    for (const QString digits : {"1111111111", "7777777777", "4444444444"})
        EXPECT_NEAR(metrics.horizontalAdvance(digits), metrics.horizontalAdvance("0000000000"), 0.05);
}

// Equal steps of CIE lightness; blue to yellow is what a dichromat still sees (Nunez et al., PLoS ONE 13
// (2018) e0199239).
TEST(ColourMaps, RunEvenlyInLightness) {
    for (const ColourMap* map : {&blueToYellow(), &greysForPrint()}) {
        const double step = (lightness(map->back()) - lightness(map->front())) / 255;
        for (std::size_t i = 0; i < map->size(); ++i)
            EXPECT_NEAR(lightness((*map)[i]), lightness(map->front()) + step * double(i), 0.6) << i;
    }
    EXPECT_GT(qBlue(blueToYellow().front()), qRed(blueToYellow().front()));
    EXPECT_LT(qBlue(blueToYellow().back()), qRed(blueToYellow().back()));
    EXPECT_LT(lightness(greysForPrint().back()), 10);
}

// A disc inside a ring: a quarter, a half and all of it more ink than the ring alone.
TEST(UrgencyDisc, FillsByQuarterHalfAndWhole) {
    const double ring = inkedPixels(Urgency::Leave), full = inkedPixels(Urgency::Act) - ring;
    EXPECT_NEAR((inkedPixels(Urgency::Watch) - ring) / full, 0.25, 0.02);
    EXPECT_NEAR((inkedPixels(Urgency::Plan) - ring) / full, 0.5, 0.02);
    EXPECT_LT(inkedPixels(Urgency::Unseen), 0.7 * ring);
    EXPECT_GT(inkedPixels(Urgency::Unseen), 0.3 * ring);
    EXPECT_EQ(urgencyOf("plan"), Urgency::Plan);
    EXPECT_EQ(urgencyOf("nonsense"), Urgency::Unseen);
}

}  // namespace fettle
