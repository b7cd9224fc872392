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

namespace fettle {

namespace {
constexpr double kPickPx = 4;
constexpr int kFarRows = 7;
}  // namespace

Waterfall::Waterfall(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("waterfall"), tr("Waterfall"), parent),
      axis_(axis),
      selection_(selection),
      item_(new WaterfallItem),
      cursors_(new CursorItem),
      legend_(new ColourLegend(theme, this)) {
    item_->attach(&plot());
    cursors_->attach(&plot());
    hideGrid();
    addControl(legend_);
    axis_.attach(plot(), true);
    connectGestures();
    connect(legend_, &ColourLegend::rangeWanted, this, &Waterfall::setRange);
    connect(&axis_, &TimeAxis::changed, this, &Waterfall::showCursors);
    connect(&selection_, &Selection::recordingChanged, this, &Waterfall::showCursors);
    connect(&selection_, &Selection::cursorChanged, this, &Waterfall::showCursors);
    Waterfall::takeTheme();
}

Waterfall::~Waterfall() = default;

void Waterfall::connectGestures() {
    const auto time = [this](double x) { return plot().canvasMap(QwtPlot::xBottom).invTransform(x); };
    const auto up = [this](double y) { return plot().canvasMap(QwtPlot::yLeft).invTransform(y); };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at, bool upright) {
        if (!upright) return axis_.zoom(factor, time(at.x()));
        upright_.zoom(factor, up(at.y()));
        showUpright();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        axis_.pan(time(0) - time(by.x()));
        upright_.pan(up(0) - up(by.y()));
        showUpright();
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

void Waterfall::setData(std::shared_ptr<const WaterfallData> data) {
    const bool sameAxis =
        data_ && data && data_->top() == data->top() && data_->options().orders == data->options().orders;
    data_ = std::move(data);
    item_->setData(data_);
    if (data_ && data_->rows() > 0 && !sameAxis)
        upright_.setBounds(0, data_->top(), 4 * data_->top() / double(data_->lines()));
    setScale();
    showUpright();
    showCursors();
}

ColourRange Waterfall::range() const {
    return byHand_ ? *byHand_ : data_ ? data_->usualRange() : ColourRange{};
}

void Waterfall::setRange(std::optional<ColourRange> range) {
    byHand_ = range;
    setScale();
    plot().replot();
}

void Waterfall::setScale() {
    const ColourMap& map = theme().choice() == ThemeChoice::Paper ? greysForPrint() : blueToYellow();
    item_->setScale(std::make_shared<ColourScale>(range(), map, colour(Role::Gap).rgb()));
    legend_->setVisible(data_ && data_->rows() > 0);
    const WaterfallOptions options = data_ ? data_->options() : WaterfallOptions{};
    legend_->show(range(), QString::fromStdString(options.unit), options.decibels, map);
}

void Waterfall::showUpright() {
    plot().setAxisScale(QwtPlot::yLeft, upright_.from, upright_.until);
    plot().setAxisMaxMajor(QwtPlot::yLeft, 6);
    QwtText title = plot().axisTitle(QwtPlot::yLeft);
    title.setText(data_ && data_->options().orders ? tr("orders") : tr("Hz"));
    plot().setAxisTitle(QwtPlot::yLeft, title);
    axis_.align();
    plot().replot();
}

std::optional<std::size_t> Waterfall::selectedRow() const {
    if (!data_) return std::nullopt;
    if (selection_.recording() && selection_.time()) return data_->nearestRow(toMs(*selection_.time()));
    return axis_.shown() ? data_->nearestRow(*axis_.shown()) : std::nullopt;
}

double Waterfall::unitAt(std::size_t row) const {
    return data_->options().orders ? data_->shaftHz(row) : 1;
}

void Waterfall::showCursors() {
    std::vector<CursorLine> lines;
    if (selection_.recording() && selection_.time())
        lines.push_back({toMs(*selection_.time()), {}, true, Qt::SolidLine});
    else if (axis_.shown())
        lines.push_back({*axis_.shown(), {}, true, Qt::DashLine});
    if (selection_.cursorHz() && data_ && data_->rows() > 0) {
        const double unit = unitAt(selectedRow().value_or(data_->rows() - 1));
        if (unit > 0) lines.push_back({*selection_.cursorHz() / unit, {}, false, Qt::SolidLine});
    }
    cursors_->setLines(std::move(lines));
    plot().replot();
}

WaterfallData::Part Waterfall::rowsAt(double x) const {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    return data_->rowsWithin(map.invTransform(std::floor(x)), map.invTransform(std::floor(x) + 1));
}

WaterfallData::Part Waterfall::linesAt(double y, double px) const {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::yLeft);
    return data_->linesWithin(map.invTransform(y + px), map.invTransform(y - px));
}

void Waterfall::hover(const QPointF& at) {
    if (!data_ || data_->rows() == 0) return;
    const auto rows = rowsAt(at.x());
    const auto peak = data_->peakWithin(rows, linesAt(at.y(), 0.5));
    if (!peak) {
        const double ms = plot().canvasMap(QwtPlot::xBottom).invTransform(at.x());
        return setReadout(tr("%1, nothing recorded").arg(axis_.text(ms)));
    }
    const double up = (double(peak->line) + 0.5) * data_->top() / double(data_->lines());
    const double unit = unitAt(peak->row);
    setReadout(tr("%1, %2, %3")
                   .arg(axis_.text(data_->ms(peak->row)), frequencyText(up * unit, data_->shaftHz(peak->row)),
                        valueText(double(peak->value), QString::fromStdString(data_->options().unit),
                                  data_->options().decibels)));
}

void Waterfall::choose(const QPointF& at) {
    if (!data_ || data_->rows() == 0) return;
    const auto rows = rowsAt(at.x());
    const auto peak = data_->peakWithin(rows, linesAt(at.y(), kPickPx));
    std::size_t row = 0;
    if (peak)
        row = peak->row;
    else
        row = data_->nearestRow(plot().canvasMap(QwtPlot::xBottom).invTransform(at.x())).value_or(0);
    selection_.setRecording(data_->recording(row), toInstant(data_->ms(row)));
    if (!peak) return;
    const double up = (double(peak->line) + 0.5) * data_->top() / double(data_->lines());
    selection_.setCursorHz(up * unitAt(row));
}

void Waterfall::step(int steps, bool far) {
    if (!data_ || data_->rows() == 0) return;
    const auto last = std::ptrdiff_t(data_->rows()) - 1;
    const auto now = std::ptrdiff_t(selectedRow().value_or(std::size_t(last)));
    const bool chosen = selection_.recording().has_value();
    const auto next = std::clamp<std::ptrdiff_t>(chosen ? now + steps * (far ? kFarRows : 1) : now, 0, last);
    const auto row = std::size_t(next);
    selection_.setRecording(data_->recording(row), toInstant(data_->ms(row)));
    axis_.bring(data_->ms(row));
}

void Waterfall::labelTimes(bool labelled) {
    plot().axisScaleDraw(QwtPlot::xBottom)->enableComponent(QwtScaleDraw::Labels, labelled);
}

void Waterfall::takeTheme() {
    PlotFrame::takeTheme();
    plot().setCanvasBackground(colour(Role::Gap));
    cursors_->setColours(colour(Role::Cursor), colour(Role::Ground));
    setScale();
    axis_.align();
}

}  // namespace fettle
