#include "ui/sheet/sheet_layout.h"

#include <algorithm>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

namespace {

constexpr double kGutterMm = 6, kMostFigureMm = 62, kMostBoxMm = 13;

// From roomy to crowded; the last holds whatever the content is.
std::vector<Fit> fits() {
    std::vector<Fit> all;
    for (const double pt : {9.0, 8.5, 8.0, 7.5, 7.25, 7.0})
        all.push_back({.pt = pt, .leastFigureMm = pt > 8 ? 46.0 : 40.0});
    const auto crowded = [&](double figure, std::size_t rows, std::size_t most, int lines) {
        Fit fit = all.back();
        fit.leastFigureMm = figure;
        fit.rows = rows;
        fit.blind = fit.notes = std::max<std::size_t>(most / 2, 1);
        fit.lines = lines;
        all.push_back(fit);
    };
    crowded(36, 10, 8, 0);
    crowded(34, 8, 6, 4);
    crowded(32, 8, 6, 3);
    all.back().parts = 5;
    all.back().boxMm = 7;
    crowded(30, 6, 4, 2);
    all.back().steps = 8;
    all.back().parts = 4;
    all.back().blanks = 6;
    crowded(28, 5, 2, 2);
    all.back().steps = 6;
    all.back().parts = 2;
    all.back().blanks = 4;
    crowded(26, 4, 2, 1);
    all.back().fields = 12;
    all.back().cautions = 6;
    return all;
}

double bodyBottom(Column& top, const SheetContent& sheet) {
    const double gutter = kGutterMm * kMm, width = (top.width() - gutter) / 2;
    Column work(top.page(), top.fit(), top.left(), width, top.y());
    Column why(top.page(), top.fit(), top.left() + width + gutter, width, top.y());
    setWork(work, sheet);
    setWhy(why, sheet);
    return std::max(work.y(), why.y());
}

SheetPage build(const SheetContent& sheet, bool spectrum, PaperSize size, const Fit& fit, double figureMm) {
    SheetPage page;
    page.size = size;
    page.bodyPt = fit.pt;
    const QRectF area = page.area();
    Column all(page, fit, area.left(), area.width(), area.top());
    setHead(all, sheet);
    all.moveTo(bodyBottom(all, sheet));
    all.gap(0.8);
    setFigures(all, sheet, spectrum, figureMm);
    setCautions(all, sheet);
    setReturn(all, sheet);
    page.bottom = all.y();
    setFooter(page, sheet);
    return page;
}

double roomMm(const SheetPage& page) {
    return (page.area().bottom() - lineHeight(kLeastPt) - 0.8 * kMm - page.bottom) / kMm;
}

}  // namespace

// What is left over makes the figures larger, then the boxes to write in.
SheetPage layOutSheet(const SheetContent& sheet, bool spectrum, PaperSize size) {
    const std::vector<Fit> all = fits();
    for (Fit fit : all) {
        SheetPage page = build(sheet, spectrum, size, fit, fit.leastFigureMm);
        double room = roomMm(page);
        if (room < 0 && fit.lines != 1) continue;
        const bool figures = !page.spectrum.isNull() || !page.trend.isNull();
        const double larger = figures ? std::clamp(room, 0.0, kMostFigureMm - fit.leastFigureMm) : 0;
        room -= larger;
        fit.boxMm = std::clamp(fit.boxMm + room / 4, fit.boxMm, kMostBoxMm);
        if (larger > 0 || room > 0) page = build(sheet, spectrum, size, fit, fit.leastFigureMm + larger);
        return page;
    }
    return build(sheet, spectrum, size, all.back(), all.back().leastFigureMm);
}

}  // namespace fettle
