#include <QCoreApplication>
#include <algorithm>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

TextStyle Column::body() const {
    return {.pt = fit_.pt, .mostLines = lines_};
}

TextStyle Column::small() const {
    return {.pt = std::max(kLeastPt, fit_.pt - 1), .ink = Role::MutedInk, .mostLines = lines_};
}

void Column::rule(double widthMm, Role ink, bool dashed) {
    page_.rules.push_back({QLineF(left_, y_, left_ + width_, y_), widthMm, ink, dashed});
}

void Column::heading(const QString& text) {
    rule(0.25);
    gap(0.8);
    y_ += place(page_, text, {left_, y_}, width_, {.pt = fit_.pt + 0.5, .bold = true, .mostLines = 1});
    gap(0.6);
}

void Column::paragraph(const QString& text, const QString& lead) {
    if (text.isEmpty()) return;
    TextStyle style = body();
    if (!lead.isEmpty()) style.lead = lead + QLatin1Char(' ');
    y_ += place(page_, text, {left_, y_}, width_, style);
    gap(0.8);
}

void Column::muted(const QString& text, int mostLines) {
    if (text.isEmpty()) return;
    TextStyle style = small();
    style.mostLines = mostLines;
    y_ += place(page_, text, {left_, y_}, width_, style);
    gap(0.6);
}

void Column::marked(const QString& mark, const QString& text, double indentMm) {
    const double indent = indentMm * kMm;
    place(page_, mark, {left_, y_}, indent, {.pt = fit_.pt, .mostLines = 1});
    y_ += place(page_, text, {left_ + indent, y_}, width_ - indent, body());
    gap(0.5);
}

void Column::more(std::size_t count) {
    if (count == 0) return;
    page_.shortened = true;
    muted(QCoreApplication::translate("Sheet", "%1 more, in the JSON twin").arg(count), 1);
}

}  // namespace fettle
