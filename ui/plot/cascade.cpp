#include "ui/plot/cascade.h"

#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <algorithm>

#include "ui/plot/cascade_item.h"
#include "ui/plot/cursor_item.h"
#include "ui/plot/gestures.h"
#include "ui/plot/readout.h"
#include "ui/plot/waterfall_words.h"

namespace fettle {

namespace {
constexpr int kFarRows = 7;
}

Cascade::Cascade(const Theme& theme, TimeAxis& axis, Selection& selection, WaterfallLook& look,
                 QWidget* parent)
    : PlotFrame(theme, QStringLiteral("cascade"), tr("Cascade of spectra"), parent),
      axis_(axis),
      selection_(selection),
      look_(look),
      item_(new CascadeItem(theme, look)),
      cursors_(new CursorItem) {
    item_->attach(&plot());
    cursors_->attach(&plot());
    hideGrid();
    axis_.attachUpright(plot(), CascadeItem::kRise);
    connectGestures();
    connect(&look_, &WaterfallLook::changed, this, &Cascade::takeData);
    connect(&look_, &WaterfallLook::lookChanged, &plot(), &QwtPlot::replot);
    connect(&axis_, &TimeAxis::changed, this, [this] {
        if (isVisible()) showCursors();
    });
    connect(&selection_, &Selection::recordingChanged, this, &Cascade::showCursors);
    connect(&selection_, &Selection::cursorChanged, this, &Cascade::showCursors);
    Cascade::takeTheme();
    takeData();
}

Cascade::~Cascade() = default;

// The wheel zooms time as everywhere, with Ctrl the other axis.
void Cascade::connectGestures() {
    const auto time = [this](double y) { return plot().canvasMap(QwtPlot::yLeft).invTransform(y); };
    const auto across = [this](double x) {
        return plot().canvasMap(QwtPlot::xBottom).invTransform(x) / look_.uprightFactor();
    };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at, bool other) {
        if (!other) return axis_.zoom(factor, time(at.y()));
        across_.zoom(factor, across(at.x()));
        showAcross();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        axis_.pan(time(0) - time(by.y()));
        across_.pan(across(0) - across(by.x()));
        showAcross();
    });
    connect(&gestures(), &Gestures::framed, this, [=, this](const QRect& part) {
        across_.show(across(part.left()), across(part.right()));
        axis_.show(time(part.bottom()), time(part.top()));
        showAcross();
    });
    connect(&gestures(), &Gestures::showAll, this, [this] {
        across_.showAll();
        axis_.showAll();
        showAcross();
    });
    connect(&gestures(), &Gestures::hovered, this, &Cascade::hover);
    connect(&gestures(), &Gestures::clicked, this, &Cascade::choose);
    connect(&gestures(), &Gestures::left, this, [this] { setReadout({}); });
    connect(&gestures(), &Gestures::stepped, this, &Cascade::step);
}

void Cascade::takeData() {
    if (!look_.empty() && look_.data()->top() != knownTop_) {
        knownTop_ = look_.data()->top();
        across_.setBounds(0, knownTop_, 4 * knownTop_ / double(look_.data()->lines()));
    }
    setAtRest(look_.empty() ? QString() : completeness(*look_.data()));
    showAcross();
    showCursors();
}

void Cascade::showAcross() {
    const double factor = look_.uprightFactor();
    plot().setAxisScale(QwtPlot::xBottom, across_.from * factor, across_.until * factor);
    QwtText title = plot().axisTitle(QwtPlot::xBottom);
    title.setText(look_.uprightUnit());
    plot().setAxisTitle(QwtPlot::xBottom, title);
    plot().replot();
}

std::optional<std::size_t> Cascade::selectedRow() const {
    if (look_.empty()) return std::nullopt;
    if (selection_.recording() && selection_.time())
        return look_.data()->nearestRow(toMs(*selection_.time()));
    return axis_.shown() ? look_.data()->nearestRow(*axis_.shown()) : std::nullopt;
}

void Cascade::showCursors() {
    std::vector<CursorLine> lines;
    const auto row = selectedRow();
    item_->setSelected(row);
    if (selection_.cursorHz() && !look_.empty()) {
        const double unit = look_.hzPerUnit(row.value_or(look_.data()->rows() - 1));
        if (unit > 0)
            lines.push_back({*selection_.cursorHz() / unit * look_.uprightFactor(), {}, true, Qt::SolidLine});
    }
    cursors_->setLines(std::move(lines));
    plot().replot();
}

void Cascade::hover(const QPointF& at) {
    const auto cell = item_->cellAt(plot().canvasMap(QwtPlot::xBottom), plot().canvasMap(QwtPlot::yLeft), at);
    if (!cell) return setReadout({});
    const WaterfallData& spectra = *look_.data();
    const double up = (double(cell->line) + 0.5) * spectra.top() / double(spectra.lines());
    setReadout(tr("%1, %2, %3")
                   .arg(axis_.text(spectra.ms(cell->row)),
                        frequencyText(up * look_.hzPerUnit(cell->row), spectra.shaftHz(cell->row)),
                        look_.text(double(cell->value))));
}

void Cascade::choose(const QPointF& at) {
    const auto cell = item_->cellAt(plot().canvasMap(QwtPlot::xBottom), plot().canvasMap(QwtPlot::yLeft), at);
    if (!cell) return;
    const WaterfallData& spectra = *look_.data();
    const double up = (double(cell->line) + 0.5) * spectra.top() / double(spectra.lines());
    selection_.setRecording(spectra.recording(cell->row), toInstant(spectra.ms(cell->row)));
    selection_.setCursorHz(up * look_.hzPerUnit(cell->row));
}

void Cascade::step(int steps, bool far) {
    if (look_.empty()) return;
    const WaterfallData& spectra = *look_.data();
    const auto last = std::ptrdiff_t(spectra.rows()) - 1;
    const auto now = std::ptrdiff_t(selectedRow().value_or(std::size_t(last)));
    const bool chosen = selection_.recording().has_value();
    const auto next = std::clamp<std::ptrdiff_t>(chosen ? now + steps * (far ? kFarRows : 1) : now, 0, last);
    selection_.setRecording(spectra.recording(std::size_t(next)), toInstant(spectra.ms(std::size_t(next))));
    axis_.bring(spectra.ms(std::size_t(next)));
}

// Hidden it follows nothing.
void Cascade::showEvent(QShowEvent* event) {
    PlotFrame::showEvent(event);
    takeData();
}

WaterfallTable Cascade::table(TableExtent extent) const {
    return waterfallTable(look_.data(), extent, {axis_.span().from, axis_.span().until},
                          {across_.from, across_.until}, caption());
}

QString Cascade::tableText(TableExtent extent) const {
    return clipboardText(table(extent));
}

TableWriter Cascade::tableWriter(TableExtent extent) const {
    return writerOf(table(extent));
}

void Cascade::takeTheme() {
    PlotFrame::takeTheme();
    cursors_->setColours(colour(Role::Cursor), colour(Role::Ground));
}

}  // namespace fettle
