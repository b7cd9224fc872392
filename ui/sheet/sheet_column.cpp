#include <algorithm>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

TextStyle Column::body() const {
    return {.pt = fit_.pt};
}

TextStyle Column::small() const {
    return {.pt = std::max(kLeastPt, fit_.pt - 1), .ink = Role::MutedInk};
}

void Column::rule(double widthMm, Role ink, bool dashed) {
    page_.rules.push_back({QLineF(left_, y_, left_ + width_, y_), widthMm, ink, dashed});
}

void Column::heading(const QString& text) {
    rule(0.25);
    gap(0.8);
    y_ += place(page_, text, {left_, y_}, width_, {.pt = fit_.pt + 1, .bold = true, .mostLines = 1});
    gap(0.7);
}

void Column::paragraph(const QString& text, const QString& lead) {
    if (text.isEmpty()) return;
    TextStyle style = body();
    if (!lead.isEmpty()) style.lead = lead + QLatin1Char(' ');
    y_ += place(page_, text, {left_, y_}, width_, style);
    gap(0.9);
}

void Column::muted(const QString& text) {
    if (text.isEmpty()) return;
    y_ += place(page_, text, {left_, y_}, width_, small());
    gap(0.7);
}

void Column::marked(const QString& mark, const QString& text, double indentMm) {
    const double indent = indentMm * kMm;
    place(page_, mark, {left_, y_}, indent, {.pt = fit_.pt, .mostLines = 1});
    y_ += place(page_, text, {left_ + indent, y_}, width_ - indent, body());
    gap(0.6);
}

void setAll(Column& column, const Blocks& blocks) {
    for (const Block& block : blocks)
        block(column);
}

}  // namespace fettle
