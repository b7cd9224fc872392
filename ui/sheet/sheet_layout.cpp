#include "ui/sheet/sheet_layout.h"

#include <algorithm>
#include <deque>
#include <optional>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

namespace {

constexpr double kSheetGutterMm = 6, kMostBoxMm = 14;
constexpr double kSlackMm = 0.1;  // so that what fitted once fits again
constexpr double kShares[] = {0.5, 0.53, 0.56, 0.59, 0.46, 0.42};
constexpr double kCut = 1e6;  // higher than any column: words are not cut for a better fit
constexpr double kSizes[] = {9, kBodyPt};
constexpr double kStackedMm = 42, kMostStackedMm = 62, kBesideMm = 45, kMostBesideMm = 70;
constexpr std::size_t kMostRows = 40, kMostBlindRows = 100;
// How much the second page is shortened until it fits, least first.
struct Shorter {
    std::size_t rows = kMostRows, blind = kMostBlindRows;
    double figureMm = kBesideMm;
};
constexpr Shorter kShorter[] = {{40, 100, kBesideMm}, {24, 100, kBesideMm}, {16, 100, kBesideMm},
                                {16, 4, kBesideMm},   {12, 4, 40},          {10, 3, 36}};

double lowest(const SheetPage& page) {
    return page.area().bottom() - lineHeight(kLeastPt) - 0.8 * kMm;
}

double heightOf(const Blocks& blocks, const Fit& fit, double width, double whereCut = 0) {
    SheetPage trial;
    Column column(trial, fit, 0, width, 0);
    setAll(column, blocks);
    return column.y() + (trial.shortened ? whereCut : 0);
}

// Side by side, parted where the taller one is shortest.
void setHalves(Column& top, const Blocks& left, const Blocks& right) {
    const double width = top.width() - kSheetGutterMm * kMm;
    const auto taller = [&](double share) {
        return std::max(heightOf(left, top.fit(), share * width, kCut),
                        heightOf(right, top.fit(), (1 - share) * width, kCut));
    };
    const double share = *std::min_element(std::begin(kShares), std::end(kShares),
                                           [&](double a, double b) { return taller(a) < taller(b); });
    Column first(top.page(), top.fit(), top.left(), share * width, top.y());
    Column second(top.page(), top.fit(), first.left() + first.width() + kSheetGutterMm * kMm,
                  (1 - share) * width, top.y());
    setAll(first, left);
    setAll(second, right);
    top.moveTo(std::max(first.y(), second.y()));
    top.gap(1);
}

// Parted where the taller half is shortest.
void setInTwo(Column& top, const Blocks& blocks) {
    std::vector<double> above{0};  // height of so many blocks
    for (const Block& block : blocks)
        above.push_back(above.back() +
                        heightOf({block}, top.fit(), (top.width() - kSheetGutterMm * kMm) / 2));
    std::size_t left = 0;
    for (std::size_t n = 1; n < above.size(); ++n) {
        const auto taller = [&](std::size_t count) {
            return std::max(above[count], above.back() - above[count]);
        };
        if (left == 0 || taller(n) < taller(left)) left = n;
    }
    const auto parted = blocks.begin() + long(left);
    setHalves(top, Blocks(blocks.begin(), parted), Blocks(parted, blocks.end()));
}

// What has no lines to show has its reasons over the whole width.
void setWhy(Column& column, const SheetContent& sheet) {
    if (sheet.rows.empty()) {
        Blocks all = whyBlocks(sheet);
        all.push_back([&sheet](Column& one) { one.muted(engineWords(sheet.rowsNote)); });
        return setInTwo(column, all);
    }
    setHalves(column, whyBlocks(sheet), lineBlocks(sheet, column.fit().rows));
}

class Layout {
  public:
    Layout(const SheetContent& sheet, bool spectrum, PaperSize size)
        : sheet_(sheet), spectrum_(spectrum), size_(size) {}

    std::vector<SheetPage> pages() {
        if (!setOnOne()) {
            const bool returned = setJob();
            setReasons(!returned);
        }
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            pages_[i].number = int(i) + 1;
            pages_[i].of = int(pages_.size());
            setFooter(pages_[i], sheet_);
        }
        return {pages_.begin(), pages_.end()};
    }

  private:
    SheetPage emptyPage(const Fit& fit) const {
        SheetPage page;
        page.size = size_;
        page.bodyPt = fit.pt;
        return page;
    }
    // What `set` makes of one page, where it stays above the footer; what is left over in mm.
    template <class Set>
    std::optional<SheetPage> tried(const Fit& fit, double& roomMm, Set set) const {
        SheetPage page = emptyPage(fit);
        const QRectF area = page.area();
        Column column(page, fit, area.left(), area.width(), area.top());
        set(column);
        page.bottom = column.y();
        roomMm = (lowest(page) - page.bottom) / kMm;
        if (roomMm < 0) return std::nullopt;
        return page;
    }
    // Fitted, then once more with larger boxes to write in.
    template <class Set>
    bool take(Fit fit, Set set) {
        double room = 0, none = 0;
        auto page = tried(fit, room, set);
        if (!page) return false;
        fit.boxMm = std::clamp(fit.boxMm + (room - kSlackMm) / 4, fit.boxMm, kMostBoxMm);
        if (auto larger = tried(fit, none, set)) page = std::move(larger);
        pages_.push_back(std::move(*page));
        return true;
    }

    void setJobOn(Column& column) const {
        setHead(column, sheet_);
        setHalves(column, workBlocks(sheet_), needBlocks(sheet_));
        setAll(column, partBlocks(sheet_));
    }
    bool setOnOne() {
        for (const double pt : kSizes) {
            const bool done = take({.pt = pt}, [this](Column& column) {
                setJobOn(column);
                setWhy(column, sheet_);
                setFigures(column, sheet_, spectrum_, kBesideMm, false);
                setInTwo(column, blindBlocks(sheet_, kMostBlindRows));
                setCautions(column, sheet_);
                setAll(column, returnBlocks(sheet_));
            });
            if (done) return true;
        }
        return false;
    }
    // Whether the half to send back stands on it.
    bool setJob() {
        for (const bool withReturn : {true, false})
            for (const double pt : kSizes) {
                const bool done = take({.pt = pt}, [this, withReturn](Column& column) {
                    setJobOn(column);
                    setCautions(column, sheet_);
                    if (withReturn) setAll(column, returnBlocks(sheet_));
                });
                if (done) return withReturn;
            }
        runOn([this](Column& column) { setHead(column, sheet_); },
              {workBlocks(sheet_), needBlocks(sheet_), partBlocks(sheet_), cautionBlocks(sheet_),
               returnBlocks(sheet_)});
        return true;
    }
    void setReasons(bool withReturn) {
        for (const double pt : kSizes)
            for (const Shorter& shorter : kShorter)
                for (const bool stacked : {true, false})
                    if (setReasonsOn({.pt = pt, .rows = shorter.rows}, shorter, withReturn, stacked)) return;
        const Block figures = [this](Column& column) {
            setFigures(column, sheet_, spectrum_, kBesideMm, false);
        };
        runOn([this](Column& column) { setLaterHead(column, sheet_); },
              {whyBlocks(sheet_),
               lineBlocks(sheet_, kMostRows),
               {figures},
               blindBlocks(sheet_, kMostBlindRows),
               withReturn ? returnBlocks(sheet_) : Blocks()});
    }
    bool setReasonsOn(const Fit& fit, const Shorter& shorter, bool withReturn, bool stacked) {
        const bool two = spectrum_ && sheet_.trend.days.size() > 1;
        if (stacked && !two) return false;
        const double least = stacked ? kStackedMm : shorter.figureMm;
        double room = 0;
        const auto set = [&](double figureMm) {
            return [=, this](Column& column) {
                setLaterHead(column, sheet_);
                setWhy(column, sheet_);
                setFigures(column, sheet_, spectrum_, figureMm, stacked);
                setInTwo(column, blindBlocks(sheet_, shorter.blind));
                if (withReturn) setAll(column, returnBlocks(sheet_));
            };
        };
        if (!tried(fit, room, set(least))) return false;
        const double larger = std::max(0.0, room - kSlackMm) / (stacked ? 2 : 1);
        return take(fit, set(std::min(least + larger, stacked ? kMostStackedMm : kMostBesideMm)));
    }

    // One under the other over the whole width, on as many pages as it takes.
    template <class Head>
    void runOn(Head head, const std::vector<Blocks>& parts) {
        const Fit fit;
        double y = newPage(fit, head);
        for (const Blocks& part : parts)
            for (const Block& block : part) {
                const QRectF area = pages_.back().area();
                if (y + heightOf({block}, fit, area.width()) > lowest(pages_.back()))
                    y = newPage(fit, [this](Column& column) { setLaterHead(column, sheet_); });
                Column column(pages_.back(), fit, area.left(), area.width(), y);
                block(column);
                pages_.back().bottom = y = column.y();
            }
    }
    template <class Head>
    double newPage(const Fit& fit, Head head) {
        pages_.push_back(emptyPage(fit));
        const QRectF area = pages_.back().area();
        Column column(pages_.back(), fit, area.left(), area.width(), area.top());
        head(column);
        pages_.back().bottom = column.y();
        return column.y();
    }

    const SheetContent& sheet_;
    bool spectrum_;
    PaperSize size_;
    std::deque<SheetPage> pages_;
};

}  // namespace

std::vector<SheetPage> layOutSheet(const SheetContent& sheet, bool spectrum, PaperSize size) {
    return Layout(sheet, spectrum, size).pages();
}

}  // namespace fettle
