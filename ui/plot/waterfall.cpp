#include "ui/plot/waterfall.h"

#include <qwt_plot.h>
#include <qwt_scale_draw.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QLabel>
#include <cmath>

#include "ui/plot/colour_legend.h"
#include "ui/plot/cursor_item.h"
#include "ui/plot/gestures.h"
#include "ui/plot/readout.h"
#include "ui/plot/waterfall_item.h"
#include "ui/plot/waterfall_words.h"

namespace fettle {

namespace {
constexpr double kWaterPickPx = 4;
constexpr int kRowsAtOnce = 7;
}  // namespace

Waterfall::Waterfall(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("waterfall"), tr("Waterfall"), parent),
      axis_(axis),
      selection_(selection),
      item_(new WaterfallItem),
      cursors_(new CursorItem),
      look_(new WaterfallLook(theme, selection, this)),
      legend_(new ColourLegend(theme, *look_, this)) {
    item_->attach(&plot());
    cursors_->attach(&plot());
    hideGrid();
    addControl(legend_);
    axis_.attach(plot(), true);
    connectGestures();
    connect(look_, &WaterfallLook::changed, this, &Waterfall::takeData);
    connect(look_, &WaterfallLook::lookChanged, this, [this] {
        setScale();
        plot().replot();
    });
    connect(&axis_, &TimeAxis::changed, this, &Waterfall::showCursors);
    connect(&selection_, &Selection::recordingChanged, this, &Waterfall::showCursors);
    connect(&selection_, &Selection::cursorChanged, this, &Waterfall::showCursors);
    Waterfall::takeTheme();
}

Waterfall::~Waterfall() = default;

void Waterfall::connectGestures() {
    const auto time = [this](double x) { return plot().canvasMap(QwtPlot::xBottom).invTransform(x); };
    const auto up = [this](double y) {
        return plot().canvasMap(QwtPlot::yLeft).invTransform(y) / look_->uprightFactor();
    };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at, bool upright) {
        if (!upright) return axis_.zoom(factor, time(at.x()));
        upright_.zoom(factor, up(at.y()));
        showUpright();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        axis_.pan(time(0) - time(by.x()));
        const double before = upright_.from;
        upright_.pan(up(0) - up(by.y()));
        if (upright_.from != before) showUpright();
    });
    connect(&gestures(), &Gestures::framed, this, [=, this](const QRect& part) {
        upright_.show(up(part.bottom()), up(part.top()));
        axis_.show(time(part.left()), time(part.right()));
        showUpright();
    });
    connect(&gestures(), &Gestures::showAll, this, [this] {
        upright_.showAll();
        axis_.showAll();
        showUpright();
    });
    connect(&gestures(), &Gestures::hovered, this, &Waterfall::hover);
    connect(&gestures(), &Gestures::clicked, this, &Waterfall::choose);
    connect(&gestures(), &Gestures::left, this, [this] { setReadout({}); });
    connect(&gestures(), &Gestures::stepped, this, &Waterfall::step);
}

void Waterfall::takeData() {
    item_->setData(data());
    const bool sameAxis =
        !look_->empty() && data()->top() == knownTop_ && data()->options().orders == knownOrders_;
    if (!look_->empty() && !sameAxis) {
        knownTop_ = data()->top();
        knownOrders_ = data()->options().orders;
        upright_.setBounds(0, data()->top(), 4 * data()->top() / double(data()->lines()));
    }
    setAtRest(look_->empty() ? QString() : completeness(*data()));
    setScale();
    showUpright();
    showCursors();
}

void Waterfall::setScale() {
    item_->setScale(std::make_shared<ColourScale>(look_->range(), look_->colours(), colour(Role::Gap).rgb()));
}

void Waterfall::showUpright() {
    const double factor = look_->uprightFactor();
    item_->setUprightFactor(factor);
    plot().setAxisScale(QwtPlot::yLeft, upright_.from * factor, upright_.until * factor);
    plot().setAxisMaxMajor(QwtPlot::yLeft, 6);
    QwtText title = plot().axisTitle(QwtPlot::yLeft);
    title.setText(look_->uprightUnit());
    plot().setAxisTitle(QwtPlot::yLeft, title);
    axis_.align();
    plot().replot();
}

std::optional<std::size_t> Waterfall::selectedRow() const {
    if (!data()) return std::nullopt;
    if (selection_.recording() && selection_.time()) return data()->nearestRow(toMs(*selection_.time()));
    return axis_.shown() ? data()->nearestRow(*axis_.shown()) : std::nullopt;
}

void Waterfall::showCursors() {
    std::vector<CursorLine> lines;
    if (selection_.recording() && selection_.time())
        lines.push_back({toMs(*selection_.time()), {}, true, Qt::SolidLine});
    else if (axis_.shown())
        lines.push_back({*axis_.shown(), {}, true, Qt::DashLine});
    if (selection_.cursorHz() && !look_->empty()) {
        const double unit = look_->hzPerUnit(selectedRow().value_or(data()->rows() - 1));
        if (unit > 0)
            lines.push_back(
                {*selection_.cursorHz() / unit * look_->uprightFactor(), {}, false, Qt::SolidLine});
    }
    if (lines == cursors_->lines()) return;
    cursors_->setLines(std::move(lines));
    plot().replot();
}

WaterfallData::Part Waterfall::rowsAt(double x) const {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    return data()->rowsWithin(map.invTransform(std::floor(x)), map.invTransform(std::floor(x) + 1));
}

WaterfallData::Part Waterfall::linesAt(double y, double px) const {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::yLeft);
    const double factor = look_->uprightFactor();
    return data()->linesWithin(map.invTransform(y + px) / factor, map.invTransform(y - px) / factor);
}

void Waterfall::hover(const QPointF& at) {
    if (look_->empty()) return;
    const auto rows = rowsAt(at.x());
    const auto peak = data()->peakWithin(rows, linesAt(at.y(), 0.5));
    if (!peak) {
        const double ms = plot().canvasMap(QwtPlot::xBottom).invTransform(at.x());
        return setReadout(tr("%1, nothing recorded").arg(axis_.text(ms)));
    }
    const double up = (double(peak->line) + 0.5) * data()->top() / double(data()->lines());
    setReadout(tr("%1, %2, %3")
                   .arg(axis_.text(data()->ms(peak->row)),
                        frequencyText(up * look_->hzPerUnit(peak->row), data()->shaftHz(peak->row)),
                        look_->text(double(peak->value))));
}

void Waterfall::choose(const QPointF& at) {
    if (look_->empty()) return;
    const auto rows = rowsAt(at.x());
    const auto peak = data()->peakWithin(rows, linesAt(at.y(), kWaterPickPx));
    std::size_t row = 0;
    if (peak)
        row = peak->row;
    else
        row = data()->nearestRow(plot().canvasMap(QwtPlot::xBottom).invTransform(at.x())).value_or(0);
    selection_.setRecording(data()->recording(row), toInstant(data()->ms(row)));
    if (!peak) return;
    const double up = (double(peak->line) + 0.5) * data()->top() / double(data()->lines());
    selection_.setCursorHz(up * look_->hzPerUnit(row));
}

void Waterfall::step(int steps, bool far) {
    if (look_->empty()) return;
    const auto last = std::ptrdiff_t(data()->rows()) - 1;
    const auto now = std::ptrdiff_t(selectedRow().value_or(std::size_t(last)));
    const bool chosen = selection_.recording().has_value();
    const auto next =
        std::clamp<std::ptrdiff_t>(chosen ? now + steps * (far ? kRowsAtOnce : 1) : now, 0, last);
    const auto row = std::size_t(next);
    selection_.setRecording(data()->recording(row), toInstant(data()->ms(row)));
    axis_.bring(data()->ms(row));
}

void Waterfall::labelTimes(bool labelled) {
    plot().axisScaleDraw(QwtPlot::xBottom)->enableComponent(QwtScaleDraw::Labels, labelled);
}

WaterfallTable Waterfall::table(TableExtent extent) const {
    return waterfallTable(look_->data(), extent, {axis_.span().from, axis_.span().until},
                          {upright_.from, upright_.until}, caption());
}

QString Waterfall::tableText(TableExtent extent) const {
    return clipboardText(table(extent));
}

TableWriter Waterfall::tableWriter(TableExtent extent) const {
    return writerOf(table(extent));
}

void Waterfall::takeTheme() {
    PlotFrame::takeTheme();
    plot().setCanvasBackground(colour(Role::Gap));
    cursors_->setColours(colour(Role::Cursor), colour(Role::Ground));
    setScale();
    axis_.align();
}

}  // namespace fettle
