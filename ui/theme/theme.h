// Why: one table of named colours for the whole window, its plots and its print, so that nothing is ever
// painted in a colour that does not belong to the theme. Every pair that stands on each other has WCAG AA
// contrast (4.5 for text, 3 for marks); tests/ui checks the table. Paper is the print theme: black and greys
// on white. Handed down by constructor; `changed` is emitted when another theme is chosen. System means dark
// where the system's palette was dark at the start. Figures are tabular: where the system's font has digits
// of unequal width, one with equal ones takes its place. Thread: the window's.
#pragma once

#include <QColor>
#include <QFont>
#include <QObject>
#include <QPalette>

class QApplication;

namespace fettle {

enum class ThemeChoice { System, Light, Dark, Paper };

// What a colour is for, never what it looks like.
enum class Role {
    Ground,        // page
    Panel,         // slightly lifted: table heads, side panels
    Ink,           // text, axes
    MutedInk,      // secondary text
    Rule,          // thin rules, grid
    Accent,        // the one accent ink: selection, links, urgency discs
    AccentGround,  // selected rows
    Curve,         // the measured curve
    SecondCurve,   // reference, second channel
    Limit,         // zone boundaries
    Found,         // expected line that was found
    Absent,        // expected line that was not
    LeftOut,       // expected line that was left out
    Cursor,        // cursors and their labels
    For,           // evidence bar to the right
    Against,       // evidence bar to the left
    Gap,           // where nothing was recorded
    Event,         // dated events in trend and waterfall
    Trouble        // a refused field, a warning
};
inline constexpr int kRoles = int(Role::Trouble) + 1;

class Theme : public QObject {
    Q_OBJECT
  public:
    explicit Theme(ThemeChoice choice = ThemeChoice::System, QObject* parent = nullptr);

    void choose(ThemeChoice choice);
    ThemeChoice choice() const { return choice_; }
    bool isDark() const;
    QColor colour(Role role) const;
    QPalette palette() const;  // for QApplication, Fusion style
    // Sets style, palette and the font scale (1.0 to 2.0) of the application.
    void applyTo(QApplication& application, double scale);

  signals:
    void changed();

  private:
    ThemeChoice choice_;
    bool systemDark_ = false;
};

// The contrast ratio of WCAG 2.1 (1 to 21).
double contrast(const QColor& a, const QColor& b);

// `base` where its digits are equally wide, else the same size in a family whose digits are.
QFont withTabularFigures(const QFont& base);

}  // namespace fettle
