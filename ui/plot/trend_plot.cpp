#include "ui/plot/trend_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_engine.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QResizeEvent>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "ui/plot/cursor_item.h"
#include "ui/plot/gestures.h"
#include "ui/plot/line_item.h"
#include "ui/plot/readout.h"
#include "ui/plot/time_cover.h"
#include "ui/plot/trend_marks.h"
#include "ui/plot/trend_past_marks.h"

namespace fettle {

namespace {

constexpr double kNearPx = 14, kEventPx = 6;
constexpr int kFarSamples = 7;
constexpr double kAbove = 1.18;  // free above the highest value, for marks
constexpr double kMostForEvents = 0.4;
constexpr double kLimitWithin = 2.5;  // a limit up to this many times the highest value is shown

SeriesPtr seriesOf(const TrendData& data) {
    auto series = std::make_shared<Series>();
    for (const TrendSample& sample : data.samples) {
        if (!sample.running) continue;
        series->x.push_back(sample.ms);
        series->y.push_back(float(sample.value));
    }
    const std::vector<Cover> covers = coversOf(series->x);
    for (std::size_t i = 0; i < covers.size(); ++i)
        series->endsHere.push_back(gapAfter(covers, i));
    return series;
}

}  // namespace

TrendPlot::TrendPlot(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("trend"), tr("Trend"), parent),
      axis_(axis),
      selection_(selection),
      line_(new LineItem),
      stopped_(new StoppedPoints(theme)),
      limits_(new LimitLines(theme)),
      events_(new EventMarks(theme)),
      past_(new PastMarks(theme)),
      cursor_(new CursorItem) {
    for (QwtPlotItem* item :
         std::initializer_list<QwtPlotItem*>{past_, line_, stopped_, limits_, events_, cursor_})
        item->attach(&plot());
    line_->setDotted(true);
    canvas()->installEventFilter(this);
    axis_.attach(plot(), false);
    connectGestures();
    connect(&axis_, &TimeAxis::changed, this, &TrendPlot::showUpright);
    connect(&axis_, &TimeAxis::changed, this, &TrendPlot::showCursor);
    connect(&axis_, &TimeAxis::changed, this, &TrendPlot::showZone);
    connect(&selection_, &Selection::recordingChanged, this, &TrendPlot::showCursor);
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
    return line_->series();
}

void TrendPlot::setData(std::shared_ptr<const TrendData> data) {
    data_ = std::move(data);
    line_->setSeries(data_ ? seriesOf(*data_) : nullptr);
    std::vector<QPointF> stopped;
    if (data_)
        for (const TrendSample& sample : data_->samples)
            if (!sample.running) stopped.emplace_back(sample.ms, sample.value);
    stopped_->setPoints(std::move(stopped));
    past_->setData(data_);
    limits_->setLimits(data_ ? data_->limits : std::vector<TrendLimit>{});
    if (data_) {
        QwtText title = plot().axisTitle(QwtPlot::yLeft);
        title.setText(data_->unit.isEmpty() ? data_->quantity : data_->unit);
        plot().setAxisTitle(QwtPlot::yLeft, title);
    }
    showUpright();
    showCursor();
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
void TrendPlot::showUpright() {
    double low = 1e300, high = -1e300;
    if (data_)
        for (const TrendSample& sample : data_->samples) {
            if (sample.ms < axis_.span().from || sample.ms > axis_.span().until) continue;
            low = std::min(low, sample.value);
            high = std::max(high, sample.value);
        }
    if (low > high) low = 0, high = 1;
    const double measured = high;
    if (data_)
        for (const TrendLimit& limit : data_->limits)
            if (!limit.own && limit.value <= kLimitWithin * measured) high = std::max(high, limit.value);
    if (data_ && data_->fan) high = std::max(high, data_->fan->limit);
    if (data_ && data_->fromZero) low = std::min(low, 0.0);
    if (!(high > low)) high = low + std::max(1e-6, std::abs(low) * 0.1);
    const double above = std::max(kAbove, aboveForEvents());
    plot().setAxisMaxMajor(QwtPlot::yLeft, 5);
    plot().setAxisScale(QwtPlot::yLeft, low, low + (high - low) * above);
    axis_.align();
    plot().replot();
}

void TrendPlot::showZone() {
    setAtRest(tr("time of %1").arg(axis_.zoneName()));
}

void TrendPlot::showCursor() {
    std::vector<CursorLine> lines;
    if (selection_.recording() && selection_.time())
        lines.push_back({toMs(*selection_.time()), {}, true, Qt::SolidLine});
    else if (axis_.shown())
        lines.push_back({*axis_.shown(), {}, true, Qt::DashLine});
    cursor_->setLines(std::move(lines));
    plot().replot();
}

const TrendSample* TrendPlot::nearest(double ms) const {
    if (!data_ || data_->samples.empty()) return nullptr;
    const auto& samples = data_->samples;
    auto after = std::lower_bound(samples.begin(), samples.end(), ms,
                                  [](const TrendSample& s, double at) { return s.ms < at; });
    if (after == samples.end()) return &samples.back();
    if (after != samples.begin() && ms - (after - 1)->ms < after->ms - ms) --after;
    return &*after;
}

void TrendPlot::hover(const QPointF& at) {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    if (const TrendEvent* event = events_->near(map, at.x(), kEventPx))
        QToolTip::showText(canvas()->mapToGlobal(at.toPoint()),
                           tr("%1: %2\n%3").arg(axis_.text(event->ms), event->kind, event->text), canvas());
    const TrendSample* sample = nearest(map.invTransform(at.x()));
    if (!sample || std::abs(map.transform(sample->ms) - at.x()) > kNearPx)
        return setReadout(axis_.text(map.invTransform(at.x())));
    setReadout(tr("%1, %2%3")
                   .arg(axis_.text(sample->ms), valueText(sample->value, data_->unit),
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
    const auto last = std::ptrdiff_t(data_->samples.size()) - 1;
    const auto at = std::ptrdiff_t(now - data_->samples.data());
    const auto next = std::clamp<std::ptrdiff_t>(chosen ? at + steps * (far ? kFarSamples : 1) : at, 0, last);
    const TrendSample& sample = data_->samples[std::size_t(next)];
    selection_.setRecording(sample.recording, toInstant(sample.ms));
    axis_.bring(sample.ms);
}

void TrendPlot::takeTheme() {
    PlotFrame::takeTheme();
    line_->setColour(colour(Role::Curve));
    cursor_->setColours(colour(Role::Cursor), colour(Role::Ground));
    axis_.align();
}

}  // namespace fettle
