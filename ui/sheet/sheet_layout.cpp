#include "ui/sheet/sheet_layout.h"

#include <algorithm>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

namespace {

constexpr double kGutterMm = 6, kMostFigureMm = 52, kMostBoxMm = 15;
constexpr double kSlackMm = 0.1;                           // so that what fitted once fits again
constexpr double kWorkShares[] = {0.5, 0.52, 0.54, 0.56};  // of the work in the width of the body

// The reasons, from all of them to the least that is honest.
constexpr WhyFit kWhyFits[] = {{16, 8, 0}, {14, 6, 0}, {12, 5, 0}, {12, 4, 0}, {10, 4, 0},
                               {10, 3, 0}, {8, 3, 0},  {8, 2, 0},  {7, 2, 0},  {6, 2, 0},
                               {6, 2, 4},  {6, 1, 3},  {6, 1, 2},  {5, 1, 2},  {4, 1, 1}};

// From roomy to crowded; the last holds whatever the content is. What the sceptic reads gives way before what
// the fitter needs, and lists before sentences.
std::vector<Fit> fits() {
    std::vector<Fit> all;
    const auto add = [&](double pt, double figureMm, std::size_t whyFits) {
        Fit fit{.pt = pt, .leastFigureMm = figureMm};
        fit.whyFits = whyFits;
        all.push_back(fit);
    };
    add(9.0, 42, 2);
    add(8.5, 40, 3);
    add(8.0, 38, 4);
    add(7.5, 34, 7);
    add(7.5, 30, 8);
    add(7.0, 32, 9);
    add(7.0, 30, 10);
    add(7.0, 28, 12);
    add(7.0, 28, 12);
    all.back().afterUnderWhy = true;
    for (const int lines : {0, 4, 3, 2, 1}) {
        add(7.0, 25, std::size(kWhyFits));
        Fit& fit = all.back();
        fit.afterUnderWhy = true;
        fit.boxMm = 8.5;
        if (lines == 0) continue;
        fit.lines = lines;
        fit.parts = std::size_t(lines) + 1;
        fit.steps = std::size_t(lines) + 6;
        fit.blanks = std::size_t(lines) + 3;
    }
    all.back().fields = 12;
    all.back().cautions = 6;
    return all;
}

double lowest(const SheetPage& page) {
    return page.area().bottom() - lineHeight(kLeastPt) - 0.8 * kMm;
}

// Head, halves and tail of one page in one fit; whether all of it stays above the footer.
class Attempt {
  public:
    Attempt(const SheetContent& sheet, bool spectrum, PaperSize size, const Fit& fit)
        : sheet_(sheet), spectrum_(spectrum), fit_(fit) {
        page_.size = size;
        page_.bodyPt = fit.pt;
    }

    bool build(double figureMm) {
        const QRectF area = page_.area();
        Column all(page_, fit_, area.left(), area.width(), area.top());
        setHead(all, sheet_);
        const double room = lowest(page_) - all.y() - tailHeight(figureMm);
        if (!setHalves(all, room)) return false;
        setTail(all, figureMm);
        page_.bottom = all.y();
        return true;
    }
    SheetPage finished() {
        setFooter(page_, sheet_);
        return std::move(page_);
    }
    double roomMm() const { return (lowest(page_) - page_.bottom) / kMm; }
    bool hasFigures() const { return !page_.spectrum.isNull() || !page_.trend.isNull(); }

  private:
    void setTail(Column& column, double figureMm) {
        column.gap(1.8);
        setFigures(column, sheet_, spectrum_, figureMm);
        setCautions(column, sheet_);
        setReturn(column, sheet_);
    }
    double tailHeight(double figureMm) {
        SheetPage trial;
        trial.size = page_.size;
        Column column(trial, fit_, trial.area().left(), trial.area().width(), 0);
        setTail(column, figureMm);
        return column.y();
    }
    double workHeight(double width) const {
        SheetPage trial;
        Column column(trial, fit_, 0, width, 0);
        setWork(column, sheet_);
        return column.y();
    }
    double whyHeight(const WhyFit& why, double width) const {
        SheetPage trial;
        Column column(trial, fit_, 0, width, 0);
        setWhy(column, sheet_, why);
        return column.y();
    }

    // The narrowest column that holds the work, and beside it as much of the reasons as there is room for.
    bool setHalves(Column& top, double room) {
        const double width = top.width() - kGutterMm * kMm;
        for (const double share : kWorkShares) {
            if (workHeight(share * width) > room) continue;
            for (std::size_t i = 0; i < fit_.whyFits; ++i) {
                if (whyHeight(kWhyFits[i], (1 - share) * width) > room) continue;
                Column work(page_, fit_, top.left(), share * width, top.y());
                Column why(page_, fit_, work.left() + work.width() + kGutterMm * kMm, (1 - share) * width,
                           top.y());
                setWork(work, sheet_);
                setWhy(why, sheet_, kWhyFits[i]);
                top.moveTo(std::max(work.y(), why.y()));
                return true;
            }
        }
        return false;
    }

    const SheetContent& sheet_;
    bool spectrum_;
    Fit fit_;
    SheetPage page_;
};

// The smallest there is, cut where it has to be: never reached by a content of core/fleet.
SheetPage emptyPage(const SheetContent& sheet, PaperSize size, const Fit& fit) {
    SheetPage page;
    page.size = size;
    page.bodyPt = fit.pt;
    page.shortened = true;
    Column all(page, fit, page.area().left(), page.area().width(), page.area().top());
    setHead(all, sheet);
    setCautions(all, sheet);
    page.bottom = all.y();
    setFooter(page, sheet);
    return page;
}

}  // namespace

// What is left over makes the figures larger, then the boxes to write in.
SheetPage layOutSheet(const SheetContent& sheet, bool spectrum, PaperSize size) {
    const std::vector<Fit> all = fits();
    for (Fit fit : all) {
        Attempt first(sheet, spectrum, size, fit);
        if (!first.build(fit.leastFigureMm)) continue;
        double room = first.roomMm();
        const double larger =
            first.hasFigures() ? std::clamp(room - kSlackMm, 0.0, kMostFigureMm - fit.leastFigureMm) : 0;
        room -= larger;
        fit.boxMm = std::clamp(fit.boxMm + room / 2, fit.boxMm, kMostBoxMm);
        Attempt second(sheet, spectrum, size, fit);
        return second.build(fit.leastFigureMm + larger) ? second.finished() : first.finished();
    }
    return emptyPage(sheet, size, all.back());
}

}  // namespace fettle
