#include <algorithm>

#include "ui/sheet/sheet_sections.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr std::size_t kMostAcross = 4;
constexpr double kReturnGapMm = 2, kReturnTickMm = 2.4;

// Boxes to write in, side by side, the label inside. What is written at length gets the widest.
void setFreeRow(Column& column, const SheetField* fields, std::size_t count) {
    SheetPage& page = column.page();
    const auto share = [&](std::size_t i) { return count > 3 && i == 0 ? 2.0 : 1.0; };
    const double gap = kReturnGapMm * kMm, height = column.fit().boxMm * kMm, inset = 0.6 * kMm;
    const double shares = double(count) + (count > 3 ? 1 : 0);
    const double one = (column.width() - gap * double(count - 1)) / shares;
    double left = column.left();
    for (std::size_t i = 0; i < count; ++i) {
        const QRectF box(left, column.y(), one * share(i), height);
        page.boxes.push_back({box});
        place(page, engineWords(fields[i].label), box.topLeft() + QPointF(inset, inset / 2),
              box.width() - 2 * inset, {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1});
        left = box.right() + gap;
    }
    column.moveTo(column.y() + height);
    column.gap(1);
}

// As even rows as there can be.
void setFree(Column& column, const SheetField* fields, std::size_t count) {
    const std::size_t rows = (count + kMostAcross - 1) / kMostAcross;
    for (std::size_t row = 0, first = 0; row < rows; ++row) {
        const std::size_t here = (count - first + rows - row - 1) / (rows - row);
        setFreeRow(column, fields + first, here);
        first += here;
    }
}

double choicesPt(const Column& column) {
    return column.fit().pt;
}

double choicesWidth(const SheetField& field, double pt) {
    double width = textWidth(engineWords(field.label) + QLatin1Char(':'), pt, true) + 2 * kMm;
    for (const std::string& choice : field.choices)
        width += textWidth(engineWords(choice), pt) + (kReturnTickMm + 4.3) * kMm;
    return width;
}

// Label, then a small box before each choice, on as many lines as it takes; x: where the next may begin.
void setChoices(Column& column, const SheetField& field, double& x) {
    SheetPage& page = column.page();
    const double pt = choicesPt(column), line = lineHeight(pt), tick = kReturnTickMm * kMm;
    const double right = column.left() + column.width();
    const QString label = engineWords(field.label) + QLatin1Char(':');
    const double labelWidth = std::min(textWidth(label, pt, true) + 0.3 * kMm, column.width() / 2);
    place(page, label, {x, column.y()}, labelWidth, {.pt = pt, .bold = true, .mostLines = 1});
    x += labelWidth + 1.7 * kMm;
    for (const std::string& choice : field.choices) {
        const QString text = engineWords(choice);
        const double width = std::min(textWidth(text, pt) + 0.3 * kMm, column.width() - tick - kMm);
        if (x > column.left() && x + tick + kMm + width > right) {
            x = column.left();
            column.moveTo(column.y() + line + 0.6 * kMm);
        }
        page.boxes.push_back({QRectF(x, column.y() + (line - tick) / 2, tick, tick)});
        place(page, text, {x + tick + kMm, column.y()}, width, {.pt = pt, .mostLines = 1});
        x += tick + width + 4 * kMm;
    }
    x += 3 * kMm;
}

// Short ones share a line.
void setAllChoices(Column& column, const SheetField* fields, std::size_t count) {
    std::vector<const SheetField*> left;
    for (std::size_t i = 0; i < count; ++i)
        left.push_back(fields + i);
    while (!left.empty()) {
        double x = column.left();
        for (auto next = left.begin(); next != left.end();) {
            const bool fits = x + choicesWidth(**next, choicesPt(column)) <= column.left() + column.width();
            if (!fits && x > column.left()) {
                ++next;
                continue;
            }
            setChoices(column, **next, x);
            next = left.erase(next);
        }
        column.moveTo(column.y() + lineHeight(choicesPt(column)) + kMm);
    }
}

void setReturnHead(Column& column) {
    column.rule(0.25, Role::Ink, true);
    column.gap(0.8);
    column.moveTo(column.y() + place(column.page(), tr("Send back after the job, as found"),
                                     {column.left(), column.y()}, column.width(),
                                     {.pt = column.fit().pt + 1, .bold = true, .mostLines = 1}));
    column.gap(0.6);
}

}  // namespace

// Runs of boxes to tick and of boxes to write in, in turn.
Blocks returnBlocks(const SheetContent& sheet) {
    Blocks blocks;
    const std::vector<SheetField>& fields = sheet.fields;
    for (std::size_t first = 0, last = 0; first < fields.size(); first = last) {
        const bool choices = !fields[first].choices.empty();
        while (last < fields.size() && choices == !fields[last].choices.empty())
            ++last;
        blocks.push_back([&fields, first, last, choices](Column& column) {
            if (first == 0) setReturnHead(column);
            const auto set = choices ? setAllChoices : setFree;
            set(column, &fields[first], last - first);
        });
    }
    return blocks;
}

}  // namespace fettle
