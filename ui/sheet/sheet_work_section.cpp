#include <algorithm>

#include "ui/sheet/sheet_sections.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr const char* kCommonPractice = "common practice, no source";

QString stepText(const SheetStep& step) {
    const QString text = plainText(step.text);
    return step.source.empty() || step.source == kCommonPractice
               ? text
               : tr("%1 (%2)").arg(text, plainText(step.source));
}

Block paragraphOf(const std::string& text, const char* lead) {
    return [&text, lead](Column& column) { column.paragraph(plainText(text), tr(lead)); };
}

}  // namespace

Blocks workBlocks(const SheetContent& sheet) {
    Blocks blocks{[&sheet](Column& column) {
        column.heading(tr("What to do"));
        column.paragraph(plainText(sheet.stopAtOnceIf), tr("Stop at once if"));
    }};
    blocks.push_back(paragraphOf(sheet.untilThen, QT_TRANSLATE_NOOP("fettle", "Until then:")));
    blocks.push_back(paragraphOf(sheet.ifLeft, QT_TRANSLATE_NOOP("fettle", "If left:")));
    for (std::size_t i = 0; i < sheet.steps.size(); ++i)
        blocks.push_back([&sheet, i](Column& column) {
            column.marked(QString::number(i + 1) + QLatin1Char('.'), stepText(sheet.steps[i]), 5);
        });
    const bool common = std::any_of(sheet.steps.begin(), sheet.steps.end(),
                                    [](const SheetStep& s) { return s.source == kCommonPractice; });
    if (common)
        blocks.push_back([](Column& column) {
            column.muted(tr("Steps without a source in brackets are common practice."));
        });
    blocks.push_back(paragraphOf(sheet.measureAfter, QT_TRANSLATE_NOOP("fettle", "Measure after the job:")));
    blocks.push_back(paragraphOf(sheet.cured, QT_TRANSLATE_NOOP("fettle", "Cured when")));
    return blocks;
}

Blocks cautionBlocks(const SheetContent& sheet) {
    Blocks blocks;
    for (std::size_t i = 0; i < sheet.cautions.size(); ++i)
        blocks.push_back([&sheet, i](Column& column) {
            if (i == 0) column.heading(tr("Safety comes first"));
            column.marked(QStringLiteral("–"), engineWords(sheet.cautions[i]), 3);
        });
    return blocks;
}

void setCautions(Column& column, const SheetContent& sheet) {
    if (sheet.cautions.empty()) return;
    column.heading(tr("Safety comes first"));
    const double top = column.y(), gap = 5 * kMm, width = (column.width() - gap) / 2;
    const std::size_t count = sheet.cautions.size(), half = (count + 1) / 2;
    double bottom = top;
    for (const std::size_t first : {std::size_t(0), half}) {
        Column part(column.page(), column.fit(), column.left() + (first ? width + gap : 0), width, top);
        for (std::size_t i = first; i < (first ? count : half); ++i)
            part.marked(QStringLiteral("–"), engineWords(sheet.cautions[i]), 3);
        bottom = std::max(bottom, part.y());
    }
    column.moveTo(bottom);
    column.gap(1);
}

}  // namespace fettle
