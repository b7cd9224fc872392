#include "ui/plot/trend_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_draw.h>
#include <qwt_scale_engine.h>
#include <qwt_scale_map.h>
#include <qwt_scale_widget.h>
#include <qwt_text.h>

#include <QResizeEvent>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "ui/plot/cursor_item.h"
#include "ui/plot/gestures.h"
#include "ui/plot/line_item.h"
#include "ui/plot/readout.h"
#include "ui/plot/trend_marks.h"
#include "ui/plot/trend_names.h"
#include "ui/plot/trend_past_marks.h"
#include "ui/plot/trend_series.h"

namespace fettle {

namespace {

constexpr double kNearPx = 14, kEventPx = 6;
constexpr int kFarSamples = 7;
constexpr double kAbove = 1.18;  // free above the highest value, for marks
constexpr double kMostForEvents = 0.4;
constexpr double kSameMs = 60e3;      // two quantities of one recording stand so near
constexpr double kLimitWithin = 2.5;  // a limit up to this many times the highest value is shown

bool within(const TrendSample& a, const TrendSample& b) {
    return &a == &b || std::abs(a.ms - b.ms) < kSameMs;
}

}  // namespace

TrendPlot::TrendPlot(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("trend"), tr("Trend"), parent),
      axis_(axis),
      selection_(selection),
      stopped_(new StoppedPoints(theme)),
      limits_(new LimitLines(theme)),
      rightLimits_(new LimitLines(theme)),
      events_(new EventMarks(theme)),
      past_(new PastMarks(theme)),
      names_(new LineNames(theme)),
      cursor_(new CursorItem) {
    for (QwtPlotItem* item : std::initializer_list<QwtPlotItem*>{past_, stopped_, limits_, rightLimits_,
                                                                 names_, events_, cursor_})
        item->attach(&plot());
    rightLimits_->setYAxis(QwtPlot::yRight);
    canvas()->installEventFilter(this);
    axis_.attach(plot(), false);
    connectGestures();
    connect(&axis_, &TimeAxis::changed, this, &TrendPlot::showUpright);
    connect(&axis_, &TimeAxis::changed, this, &TrendPlot::showCursor);
    connect(&axis_, &TimeAxis::changed, this, &TrendPlot::showZone);
    connect(&selection_, &Selection::recordingChanged, this, &TrendPlot::showCursor);
    connect(&selection_, &Selection::unitsChanged, this, &TrendPlot::takeUnits);
    TrendPlot::takeTheme();
    showZone();
}

TrendPlot::~TrendPlot() = default;

void TrendPlot::connectGestures() {
    const auto time = [this](double x) { return plot().canvasMap(QwtPlot::xBottom).invTransform(x); };
    connect(&gestures(), &Gestures::zoomed, this,
            [=, this](double factor, const QPointF& at, bool) { axis_.zoom(factor, time(at.x())); });
    connect(&gestures(), &Gestures::panned, this,
            [=, this](const QPointF& by) { axis_.pan(time(0) - time(by.x())); });
    connect(&gestures(), &Gestures::framed, this,
            [=, this](const QRect& part) { axis_.show(time(part.left()), time(part.right())); });
    connect(&gestures(), &Gestures::showAll, this, [this] { axis_.showAll(); });
    connect(&gestures(), &Gestures::hovered, this, &TrendPlot::hover);
    connect(&gestures(), &Gestures::clicked, this, &TrendPlot::choose);
    connect(&gestures(), &Gestures::left, this, [this] { setReadout({}); });
    connect(&gestures(), &Gestures::stepped, this, &TrendPlot::step);
}

const SeriesPtr& TrendPlot::series() const {
    static const SeriesPtr none;
    return lines_.empty() ? none : lines_.front()->series();
}

const TrendPlot::DataPtr& TrendPlot::data() const {
    static const DataPtr none;
    return stored_.empty() ? none : stored_.front();
}

void TrendPlot::setAll(std::vector<DataPtr> all) {
    stored_.clear();
    QStringList units;
    for (DataPtr& one : all) {
        if (!one) continue;
        if (!units.contains(one->unit)) {
            if (units.size() == 2) continue;
            units << one->unit;
        }
        stored_.push_back(std::move(one));
    }
    takeUnits();
}

void TrendPlot::takeUnits() {
    shown_.clear();
    for (const DataPtr& one : stored_)
        shown_.push_back(inUnits(*one, selection_.units()));
    showLines();
    nameAxis(QwtPlot::yLeft);
    nameAxis(QwtPlot::yRight);
    showUpright();
    showCursor();
}

bool TrendPlot::onRight(const TrendData& data) const {
    return data.unit != shown_.front()->unit;
}

const TrendData* TrendPlot::firstOn(int axis) const {
    for (const DataPtr& one : shown_)
        if (onRight(*one) == (axis == QwtPlot::yRight)) return one.get();
    return nullptr;
}

void TrendPlot::showLines() {
    for (LineItem* line : lines_)
        delete line;
    lines_.clear();
    std::vector<LineNames::Named> named;
    std::vector<QPointF> stopped;
    std::vector<SeriesPtr> leftCurves, rightCurves;
    for (std::size_t i = 0; i < shown_.size(); ++i) {
        const TrendData& one = *shown_[i];
        auto* line = lines_.emplace_back(new LineItem);
        line->setDotted(!one.smooth);
        line->setSeries(seriesOf(one));
        line->setYAxis(onRight(one) ? QwtPlot::yRight : QwtPlot::yLeft);
        dressLine(*line, i, theme());
        line->attach(&plot());
        (onRight(one) ? rightCurves : leftCurves).push_back(line->series());
        named.push_back({one.quantity, line->series(), inkOf(i), onRight(one)});
        if (i == 0)
            for (const TrendSample& sample : one.samples)
                if (!sample.running) stopped.emplace_back(sample.ms, sample.value);
    }
    if (named.size() < 2) named.clear();
    names_->setNames(std::move(named));
    stopped_->setPoints(std::move(stopped));
    past_->setCurves(leftCurves);
    limits_->setCurves(std::move(leftCurves));
    rightLimits_->setCurves(std::move(rightCurves));
    past_->setData(shown_.empty() ? nullptr : shown_.front());
    std::vector<TrendLimit> left, right;
    for (const DataPtr& one : shown_)
        for (const TrendLimit& limit : one->limits)
            (onRight(*one) ? right : left).push_back(limit);
    limits_->setLimits(std::move(left));
    rightLimits_->setLimits(std::move(right));
}

void TrendPlot::nameAxis(int axis) {
    const TrendData* first = shown_.empty() ? nullptr : firstOn(axis);
    if (axis == QwtPlot::yRight) {
        for (const auto part : {QwtScaleDraw::Labels, QwtScaleDraw::Ticks, QwtScaleDraw::Backbone})
            plot().axisScaleDraw(axis)->enableComponent(part, first != nullptr);
        plot().setAxisVisible(axis, first != nullptr);
    }
    QwtText title = plot().axisTitle(QwtPlot::yLeft);
    title.setText(!first ? QStringLiteral(" ") : first->unit.isEmpty() ? first->quantity : first->unit);
    if (first || axis == QwtPlot::yRight) plot().setAxisTitle(axis, title);
    plot().axisWidget(axis)->setPalette(plot().axisWidget(QwtPlot::yLeft)->palette());
    plot().axisWidget(axis)->setFont(plot().axisWidget(QwtPlot::yLeft)->font());
}

void TrendPlot::setEvents(std::vector<TrendEvent> events) {
    std::stable_sort(events.begin(), events.end(),
                     [](const TrendEvent& a, const TrendEvent& b) { return a.ms < b.ms; });
    limits_->setBelowEvents(!events.empty());
    events_->setEvents(std::move(events));
    showUpright();
}

// So much of the height is the events', above the highest value and its limit.
double TrendPlot::aboveForEvents() const {
    if (!isVisible() || events_->events().empty()) return kAbove;
    const double row = EventMarks::rowHeight(QFontMetricsF(canvas()->font())) + 3;
    return 1 / (1 - std::min(row / std::max(canvas()->height(), 1), kMostForEvents));
}

bool TrendPlot::eventFilter(QObject* watched, QEvent* event) {
    if (watched == canvas() && event->type() == QEvent::Resize &&
        static_cast<QResizeEvent*>(event)->oldSize().height() != canvas()->height())
        QMetaObject::invokeMethod(this, &TrendPlot::showUpright, Qt::QueuedConnection);
    return PlotFrame::eventFilter(watched, event);
}

// By what is seen of the time axis; limits that are not far above count too.
void TrendPlot::scaleAxis(int axis) {
    double low = 1e300, high = -1e300;
    bool fromZero = true;
    for (const DataPtr& one : shown_) {
        if (onRight(*one) != (axis == QwtPlot::yRight)) continue;
        fromZero = fromZero && one->fromZero;
        const auto [least, most] = extremesWithin(*one, axis_.span().from, axis_.span().until);
        low = std::min(low, least);
        high = std::max(high, most);
    }
    if (low > high) low = 0, high = 1;
    const double measured = high;
    for (const DataPtr& one : shown_) {
        if (onRight(*one) != (axis == QwtPlot::yRight)) continue;
        for (const TrendLimit& limit : one->limits)
            if (!limit.own && limit.value <= kLimitWithin * measured) high = std::max(high, limit.value);
        if (one->fan && one == shown_.front()) high = std::max(high, one->fan->limit);
    }
    if (fromZero) low = std::min(low, 0.0);
    if (!(high > low)) high = low + std::max(1e-6, std::abs(low) * 0.1);
    const double above = std::max(kAbove, aboveForEvents());
    plot().setAxisMaxMajor(axis, 5);
    plot().setAxisScale(axis, low, low + (high - low) * above);
}

void TrendPlot::showUpright() {
    scaleAxis(QwtPlot::yLeft);
    if (!shown_.empty() && firstOn(QwtPlot::yRight)) scaleAxis(QwtPlot::yRight);
    axis_.align();
    plot().replot();
}

void TrendPlot::showZone() {
    setAtRest(note_.isEmpty() ? tr("time of %1").arg(axis_.zoneName()) : note_);
}

void TrendPlot::setNote(const QString& note) {
    note_ = note;
    showZone();
}

void TrendPlot::showCursor() {
    std::vector<CursorLine> lines;
    if (selection_.recording() && selection_.time())
        lines.push_back({toMs(*selection_.time()), {}, true, Qt::SolidLine});
    else if (axis_.shown())
        lines.push_back({*axis_.shown(), {}, true, Qt::DashLine});
    if (lines == cursor_->lines()) return;
    cursor_->setLines(std::move(lines));
    plot().replot();
}

const TrendSample* TrendPlot::nearest(double ms) const {
    return shown_.empty() ? nullptr : nearestSample(*shown_.front(), ms);
}

void TrendPlot::hover(const QPointF& at) {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    if (const TrendEvent* event = events_->near(map, at.x(), kEventPx))
        QToolTip::showText(canvas()->mapToGlobal(at.toPoint()),
                           tr("%1: %2\n%3").arg(axis_.text(event->ms), event->kind, event->text), canvas());
    const TrendSample* sample = nearest(map.invTransform(at.x()));
    if (!sample || std::abs(map.transform(sample->ms) - at.x()) > kNearPx)
        return setReadout(axis_.text(map.invTransform(at.x())));
    QStringList values;
    for (const DataPtr& one : shown_)
        if (const TrendSample* there = nearestSample(*one, sample->ms); there && within(*there, *sample))
            values << valueText(there->value, one->unit);
    setReadout(tr("%1, %2%3")
                   .arg(axis_.text(sample->ms), values.join(QStringLiteral("; ")),
                        sample->running ? QString() : tr(", not running")));
}

void TrendPlot::choose(const QPointF& at) {
    const TrendSample* sample = nearest(plot().canvasMap(QwtPlot::xBottom).invTransform(at.x()));
    if (sample) selection_.setRecording(sample->recording, toInstant(sample->ms));
}

void TrendPlot::step(int steps, bool far) {
    const bool chosen = selection_.recording() && selection_.time();
    const TrendSample* now = nearest(chosen ? toMs(*selection_.time()) : 1e300);
    if (!now) return;
    const auto last = std::ptrdiff_t(shown_.front()->samples.size()) - 1;
    const auto at = std::ptrdiff_t(now - shown_.front()->samples.data());
    const auto next = std::clamp<std::ptrdiff_t>(chosen ? at + steps * (far ? kFarSamples : 1) : at, 0, last);
    const TrendSample& sample = shown_.front()->samples[std::size_t(next)];
    selection_.setRecording(sample.recording, toInstant(sample.ms));
    axis_.bring(sample.ms);
}

QString TrendPlot::tableText(TableExtent extent) const {
    if (shown_.empty()) return {};
    const bool all = extent == TableExtent::All;
    QString text = tableHead(all ? tr("all data") : tr("as shown"));
    text += QStringLiteral("time\tquantity\tvalue\tunit\trunning\n");
    for (const DataPtr& one : stored_)
        for (const TrendSample& sample : one->samples) {
            if (!all && (sample.ms < axis_.span().from || sample.ms > axis_.span().until)) continue;
            text += QStringLiteral("%1\t%2\t%3\t%4\t%5\n")
                        .arg(QString::fromStdString(formatUtc(toInstant(sample.ms))), one->quantity,
                             QString::number(sample.value, 'g', 9), one->unit,
                             sample.running ? QStringLiteral("1") : QStringLiteral("0"));
        }
    return text;
}

void TrendPlot::takeTheme() {
    PlotFrame::takeTheme();
    for (std::size_t i = 0; i < lines_.size(); ++i)
        dressLine(*lines_[i], i, theme());
    cursor_->setColours(colour(Role::Cursor), colour(Role::Ground));
    axis_.align();
}

}  // namespace fettle
