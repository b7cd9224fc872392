// Why: the findings sheet as it will stand on paper, before anything draws it: every line of text, rule, box
// and figure with its place. Screen, PDF and printer draw the same page, and tests read it: nothing overlaps,
// nothing is cut, no letter is smaller than 7.5 pt and no sentence smaller than 8.5. Units: hundredths of a
// millimetre from the upper left corner of the paper. A value; texts are shared and never changed. Thread:
// the window's (fonts).
#pragma once

#include <QFont>
#include <QLineF>
#include <QRectF>
#include <QString>
#include <memory>
#include <vector>

#include "ui/theme/theme.h"
#include "ui/theme/urgency_disc.h"

class QTextLayout;

namespace fettle {

enum class PaperSize { A4, Letter };

inline constexpr double kMm = 100;  // units of a page in a millimetre
inline constexpr double kUnitsPerInch = 2540;
inline constexpr double kLeastPt = 7.5;  // no letter on the sheet is smaller
inline constexpr double kBodyPt = 8.5;   // no sentence is
inline constexpr double kMarginMm = 12;

QSizeF paperMm(PaperSize size);

struct PlacedText {
    std::shared_ptr<const QTextLayout> layout;
    QPointF at;   // of the layout's origin
    QRectF rect;  // what its letters cover
    QString text;
    double pt = 0;
    Role ink = Role::Ink;
};

struct PlacedRule {
    QLineF line;
    double widthMm = 0.15;
    Role ink = Role::Ink;
    bool dashed = false;
};

struct PlacedBox {
    QRectF rect;
    bool filled = false;
};

struct PlacedDisc {
    QRectF rect;
    Urgency urgency = Urgency::Unseen;
};

struct SheetPage {
    PaperSize size = PaperSize::A4;
    int number = 1, of = 1;
    double bodyPt = 0;
    std::vector<PlacedText> texts;
    std::vector<PlacedRule> rules;
    std::vector<PlacedBox> boxes;
    QRectF disc;  // null: on the first page alone
    Urgency urgency = Urgency::Unseen;
    std::vector<PlacedDisc> discs;  // of the lines of a table
    QRectF spectrum, trend;         // null: there is none
    bool shortened = false;         // something absurdly long was left to the twin, and the page says so
    double bottom = 0;              // of what was laid out

    QRectF paper() const;
    QRectF area() const;  // inside the margins
};

// Which look a text has; `lead` stands before it in bold, on the same line.
struct TextStyle {
    double pt = 8;
    bool bold = false;
    Role ink = Role::Ink;
    Qt::Alignment align = Qt::AlignLeft;
    int mostLines = 0;  // 0: as many as it takes; else cut with an ellipsis
    QString lead = {};
};

QFont sheetFont(double pt, bool bold = false);
double lineHeight(double pt);
double textWidth(const QString& text, double pt, bool bold = false);
// User text made harmless: one line, no control or direction signs.
QString plainText(const std::string& text);
QString engineWords(const std::string& text);  // a fixed one in the language of the window
// Sets the text and returns its height. A text that takes more lines than allowed is cut and the page says
// so.
double place(SheetPage& page, const QString& text, const QPointF& at, double width, const TextStyle& style);

}  // namespace fettle
