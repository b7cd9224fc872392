#include "ui/sheet/page_flow.h"

#include <algorithm>

#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kCellGapMm = 2.5, kDiscMm = 3.2, kRowGapMm = 0.8, kParagraphMm = 0.4;

constexpr int kMostCellLines = 12;  // what a register makes longer than this is cut

std::vector<double> widthsOf(const Column& column, const std::vector<FlowColumn>& columns) {
    double shares = 0;
    for (const FlowColumn& one : columns)
        shares += one.share;
    const double gap = kCellGapMm * kMm, all = column.width() - gap * double(columns.size() - 1);
    std::vector<double> widths;
    for (const FlowColumn& one : columns)
        widths.push_back(all * one.share / shares);
    return widths;
}

double setCell(Column& column, const FlowCell& cell, double left, double width) {
    const double line = lineHeight(column.fit().pt);
    double indent = 0;
    if (cell.disc) {
        const double disc = kDiscMm * kMm;
        column.page().discs.push_back({QRectF(left, column.y() + (line - disc) / 2, disc, disc), *cell.disc});
        indent = disc + 1 * kMm;
    }
    TextStyle style = cell.muted ? column.small() : column.body();
    style.mostLines = kMostCellLines;
    style.lead = cell.lead;
    if (!cell.lead.isEmpty() && !cell.text.isEmpty()) style.lead += QLatin1Char(' ');
    double y =
        column.y() + place(column.page(), cell.text, {left + indent, column.y()}, width - indent, style);
    for (const FlowCell& paragraph : cell.more) {
        style.lead = paragraph.lead.isEmpty() ? QString() : paragraph.lead + QLatin1Char(' ');
        y += place(column.page(), paragraph.text, {left + indent, y + kParagraphMm * kMm}, width - indent,
                   style);
        y += kParagraphMm * kMm;
    }
    return y;
}

}  // namespace

void setFlowHead(Column& column, const std::vector<FlowColumn>& columns) {
    const std::vector<double> widths = widthsOf(column, columns);
    double left = column.left();
    for (std::size_t i = 0; i < columns.size(); ++i) {
        place(column.page(), columns[i].head, {left, column.y()}, widths[i],
              {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1});
        left += widths[i] + kCellGapMm * kMm;
    }
    column.moveTo(column.y() + lineHeight(kLeastPt));
    column.gap(0.3);
    column.rule(0.2);
    column.gap(0.6);
}

void setFlowRow(Column& column, const std::vector<FlowColumn>& columns, const std::vector<FlowCell>& cells) {
    const std::vector<double> widths = widthsOf(column, columns);
    double left = column.left(), bottom = column.y();
    for (std::size_t i = 0; i < columns.size() && i < cells.size(); ++i) {
        bottom = std::max(bottom, setCell(column, cells[i], left, widths[i]));
        left += widths[i] + kCellGapMm * kMm;
    }
    column.moveTo(bottom);
    column.gap(kRowGapMm / 2);
    column.rule(0.1, Role::MutedInk);
    column.gap(kRowGapMm);
}

PageFlow::PageFlow(PaperSize size, Block first, Block later) : size_(size), later_(std::move(later)) {
    begin(first);
}

double PageFlow::room() const {
    const QRectF area = pages_.back().area();
    return area.bottom() - lineHeight(kLeastPt) - 1.5 * kMm - y_;
}

double PageFlow::heightOf(const Block& block) const {
    SheetPage trial;
    trial.size = size_;
    Column column(trial, fit_, 0, trial.area().width(), 0);
    block(column);
    return column.y();
}

void PageFlow::begin(const Block& head) {
    SheetPage page;
    page.size = size_;
    page.bodyPt = fit_.pt;
    pages_.push_back(std::move(page));
    y_ = pages_.back().area().top();
    set(head);
}

void PageFlow::set(const Block& block) {
    const QRectF area = pages_.back().area();
    Column column(pages_.back(), fit_, area.left(), area.width(), y_);
    block(column);
    pages_.back().bottom = y_ = column.y();
}

void PageFlow::newPage() {
    begin(later_);
}

void PageFlow::add(const Block& block) {
    if (heightOf(block) > room()) newPage();
    set(block);
}

void PageFlow::add(const FlowTable& table) {
    if (table.rows.empty()) return;
    const auto row = [&](std::size_t i) {
        return Block([&table, i](Column& column) { setFlowRow(column, table.columns, table.rows[i]); });
    };
    const Block head = [&table](Column& column) {
        column.gap(1.5);
        column.heading(table.heading);
        column.muted(table.note);
        setFlowHead(column, table.columns);
    };
    const Block again = [&table](Column& column) {
        place(column.page(), tr("%1, continued").arg(table.heading), {column.left(), column.y()},
              column.width(), {.pt = column.fit().pt, .bold = true, .mostLines = 1});
        column.moveTo(column.y() + lineHeight(column.fit().pt));
        column.gap(0.7);
        setFlowHead(column, table.columns);
    };
    if (heightOf(head) + heightOf(row(0)) > room()) newPage();
    set(head);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        if (i > 0 && heightOf(row(i)) > room()) {
            newPage();
            set(again);
        }
        set(row(i));
    }
}

std::vector<SheetPage> PageFlow::finish(const QString& footer) {
    for (std::size_t i = 0; i < pages_.size(); ++i) {
        SheetPage& page = pages_[i];
        page.number = int(i) + 1;
        page.of = int(pages_.size());
        const QRectF area = page.area();
        const double y = area.bottom() - lineHeight(kLeastPt), right = 0.2 * area.width();
        TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
        place(page, footer, {area.left(), y}, area.width() - right, style);
        style.align = Qt::AlignRight;
        place(page, tr("%1 of %2").arg(page.number).arg(page.of), {area.right() - right, y}, right, style);
    }
    return std::move(pages_);
}

}  // namespace fettle
