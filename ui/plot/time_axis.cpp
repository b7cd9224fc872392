#include "ui/plot/time_axis.h"

#include <qwt_date.h>
#include <qwt_date_scale_draw.h>
#include <qwt_date_scale_engine.h>
#include <qwt_plot.h>
#include <qwt_scale_widget.h>
#include <qwt_text.h>

#include <QDateTime>
#include <QFontMetrics>
#include <algorithm>
#include <cmath>

#include "ui/model/site_time.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kNarrowestMs = 3600 * 1e3;
constexpr double kMarginShare = 0.01;  // of the bounds, free at either end
constexpr double kDayMs = 24 * 3600 * 1e3;

// Qwt knows one distance from UTC for a whole scale; where the clock is put forward within it, ticks of days
// are an hour beside midnight on one side, which nobody sees, and the hours say what the clock says.
class SiteScaleDraw : public QwtDateScaleDraw {
  public:
    SiteScaleDraw() : QwtDateScaleDraw(Qt::OffsetFromUTC) {}
    void setZone(const QTimeZone& zone, int secondsFromUtc) {
        if (zone == zone_ && secondsFromUtc == utcOffset()) return;
        zone_ = zone;
        setUtcOffset(secondsFromUtc);
        invalidateCache();
    }
    QwtText label(double ms) const override {
        const QwtDate::IntervalType type = intervalType(scaleDiv());
        if (type >= QwtDate::Day) return QwtDateScaleDraw::label(ms);
        const QDateTime there = siteTime(toInstant(ms), zone_);
        return QwtText(there.toString(dateFormatOfDate(there, type)));
    }

  private:
    QTimeZone zone_ = QTimeZone::utc();
};

QwtDateScaleDraw* timeScaleDraw(bool ticksOnly) {
    auto* draw = new SiteScaleDraw;
    draw->setDateFormat(QwtDate::Second, QStringLiteral("hh:mm:ss"));
    draw->setDateFormat(QwtDate::Minute, tr("hh:mm\nd MMM"));
    draw->setDateFormat(QwtDate::Hour, tr("hh:mm\nd MMM"));
    draw->setDateFormat(QwtDate::Day, tr("d MMM\nyyyy"));
    draw->setDateFormat(QwtDate::Week, tr("d MMM\nyyyy"));
    draw->setDateFormat(QwtDate::Month, QStringLiteral("MMM\nyyyy"));
    draw->setDateFormat(QwtDate::Year, QStringLiteral("yyyy"));
    draw->setTickLength(QwtScaleDiv::MinorTick, 3);
    draw->setTickLength(QwtScaleDiv::MediumTick, 4);
    draw->setTickLength(QwtScaleDiv::MajorTick, 6);
    draw->enableComponent(QwtScaleDraw::Labels, !ticksOnly);
    return draw;
}

double ownExtent(QwtScaleWidget& scale) {
    scale.scaleDraw()->setMinimumExtent(0);
    return scale.scaleDraw()->extent(scale.font());
}

// A right axis that says something, not one that keeps room.
bool hasRight(const QwtPlot& plot) {
    return plot.isAxisVisible(QwtPlot::yRight) &&
           plot.axisScaleDraw(QwtPlot::yRight)->hasComponent(QwtScaleDraw::Labels);
}

// As much room at the right as the one that speaks takes: its fonts count too.
void keepRight(QwtPlot& plot, const QwtPlot* speaks) {
    plot.setAxisVisible(QwtPlot::yRight, speaks != nullptr);
    if (!speaks) return;
    QwtText title = speaks->axisTitle(QwtPlot::yRight);
    title.setText(QStringLiteral(" "));
    plot.setAxisTitle(QwtPlot::yRight, title);
    plot.setAxisFont(QwtPlot::yRight, speaks->axisFont(QwtPlot::yRight));
}

// Half the widest label: how far one at the edge of the scale hangs over.
int mostOverhang(const QwtScaleWidget& scale) {
    return QFontMetrics(scale.font()).horizontalAdvance(QStringLiteral("00:00:00")) / 2 + 2;
}

}  // namespace

double toMs(Instant time) {
    return double(time.time_since_epoch().count());
}

Instant toInstant(double ms) {
    return Instant(std::chrono::milliseconds(qint64(std::llround(ms))));
}

TimeAxis::TimeAxis(Selection& selection, QObject* parent) : QObject(parent), selection_(selection) {
    connect(&selection_, &Selection::spanChanged, this, &TimeAxis::take);
    setBounds({});
}

TimeAxis::~TimeAxis() = default;

std::vector<QwtPlot*> TimeAxis::plots() const {
    std::vector<QwtPlot*> there;
    for (const QPointer<QwtPlot>& plot : plots_)
        if (plot) there.push_back(plot);
    return there;
}

void TimeAxis::setBounds(TimeSpan bounds) {
    double from = toMs(bounds.from), until = toMs(bounds.until);
    if (!(until > from)) {
        from -= kDayMs / 2;
        until = from + kDayMs;
    }
    const double margin = std::max(kMarginShare * (until - from), kNarrowestMs / 4);
    span_.setBounds(from - margin, until + margin, kNarrowestMs);
    take();
}

void TimeAxis::take() {
    if (publishing_) return;
    const TimeSpan shown = selection_.span();
    if (shown.until > shown.from)
        span_.show(toMs(shown.from), toMs(shown.until));
    else
        span_.showAll();
    setScales();
    emit changed();
}

void TimeAxis::publish() {
    publishing_ = true;
    selection_.setSpan(span_.all() ? TimeSpan{} : TimeSpan{toInstant(span_.from), toInstant(span_.until)});
    publishing_ = false;
    setScales();
    emit changed();
}

void TimeAxis::zoom(double factor, double aboutMs) {
    span_.zoom(factor, aboutMs);
    publish();
}

void TimeAxis::pan(double byMs) {
    span_.pan(byMs);
    publish();
}

void TimeAxis::show(double fromMs, double untilMs) {
    span_.show(fromMs, untilMs);
    publish();
}

void TimeAxis::showAll() {
    span_.showAll();
    publish();
}

void TimeAxis::bring(double ms) {
    const double before = span_.from;
    span_.bring(ms);
    if (span_.from != before) publish();
}

void TimeAxis::setShown(std::optional<double> ms) {
    if (ms == shown_) return;
    shown_ = ms;
    emit changed();
}

void TimeAxis::attach(QwtPlot& plot, bool ticksOnly) {
    plot.setAxisScaleDraw(QwtPlot::xBottom, timeScaleDraw(ticksOnly));
    plot.setAxisScaleEngine(QwtPlot::xBottom, new QwtDateScaleEngine(Qt::OffsetFromUTC));
    plot.setAxisMaxMajor(QwtPlot::xBottom, 8);
    plot.setAxisMaxMinor(QwtPlot::xBottom, 4);
    for (const auto part : {QwtScaleDraw::Labels, QwtScaleDraw::Ticks, QwtScaleDraw::Backbone})
        plot.axisScaleDraw(QwtPlot::yRight)->enableComponent(part, false);
    plot.axisWidget(QwtPlot::yRight)->setMargin(0);
    plot.axisWidget(QwtPlot::yRight)->setSpacing(2);
    plot.axisWidget(QwtPlot::yRight)->setTitle(QStringLiteral(" "));
    plots_.emplace_back(&plot);
    setScales();
}

void TimeAxis::attachUpright(QwtPlot& plot, double above) {
    plot.setAxisScaleDraw(QwtPlot::yLeft, timeScaleDraw(false));
    plot.setAxisScaleEngine(QwtPlot::yLeft, new QwtDateScaleEngine(Qt::OffsetFromUTC));
    plot.setAxisMaxMajor(QwtPlot::yLeft, 4);
    plot.setAxisMaxMinor(QwtPlot::yLeft, 4);
    uprights_.emplace_back(&plot, above);
    setScales();
}

void TimeAxis::setZone(const QTimeZone& zone) {
    if (zone == zone_) return;
    zone_ = zone;
    setScales();
    emit changed();
}

QString TimeAxis::zoneName() const {
    return QString::fromUtf8(zone_.id());
}

QString TimeAxis::text(double ms) const {
    return shortMomentText(toInstant(ms), zone_);
}

void TimeAxis::setScale(QwtPlot& plot, int axis, double until, int fromUtc) {
    static_cast<QwtDateScaleEngine*>(plot.axisScaleEngine(axis))->setUtcOffset(fromUtc);
    static_cast<SiteScaleDraw*>(plot.axisScaleDraw(axis))->setZone(zone_, fromUtc);
    plot.setAxisScale(axis, span_.from, until);
    if (axis == QwtPlot::xBottom || plot.isVisible()) plot.replot();
}

void TimeAxis::setScales() {
    const int fromUtc = siteTime(toInstant((span_.from + span_.until) / 2), zone_).offsetFromUtc();
    for (QwtPlot* plot : plots())
        setScale(*plot, QwtPlot::xBottom, span_.until, fromUtc);
    for (const auto& [plot, above] : uprights_)
        if (plot) setScale(*plot, QwtPlot::yLeft, span_.until + above * span_.width(), fromUtc);
}

// Where one plot has a second upright axis at its right, the others keep that room free.
double TimeAxis::alignRight() {
    double extent = 0;
    const QwtPlot* speaks = nullptr;
    for (QwtPlot* plot : plots())
        if (hasRight(*plot)) {
            speaks = plot;
            extent = std::max(extent, ownExtent(*plot->axisWidget(QwtPlot::yRight)));
        }
    for (QwtPlot* plot : plots()) {
        if (!hasRight(*plot)) keepRight(*plot, speaks);
        plot->axisWidget(QwtPlot::yRight)->scaleDraw()->setMinimumExtent(extent);
    }
    return speaks ? extent : -1;
}

void TimeAxis::align() {
    double extent = 0;
    int overhang = 0;
    for (QwtPlot* plot : plots()) {
        plot->updateAxes();  // labels of the scale that was set last
        extent = std::max(extent, ownExtent(*plot->axisWidget(QwtPlot::yLeft)));
        overhang = std::max(overhang, mostOverhang(*plot->axisWidget(QwtPlot::xBottom)));
    }
    const double right = alignRight();
    const bool same =
        extent == extent_ && right == right_ && overhang == overhang_ && plots_.size() == aligned_;
    extent_ = extent;
    right_ = right;
    overhang_ = overhang;
    aligned_ = plots_.size();
    for (QwtPlot* plot : plots()) {
        plot->axisWidget(QwtPlot::yLeft)->scaleDraw()->setMinimumExtent(extent);
        if (same) continue;
        plot->axisWidget(QwtPlot::xBottom)->setMinBorderDist(overhang, overhang);
        plot->updateLayout();
    }
}

}  // namespace fettle
