#include "ui/plot/scatter_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/plot/gestures.h"
#include "ui/plot/readout.h"
#include "ui/plot/trend_marks.h"
#include "ui/theme/colour_map.h"

namespace fettle {

namespace {

constexpr double kDotNearPx = 14, kDotPx = 4, kMargin = 0.04;
constexpr double kFarPoints = 7;

// Weak colours would vanish on the ground: the light or the dark end of the map is left out.
QRgb colourOf(double share, bool dark) {
    const double at = dark ? 0.30 + 0.70 * share : 0.80 * share;
    return blueToYellow()[std::size_t(std::clamp(at, 0.0, 1.0) * 255)];
}

}  // namespace

// All points of the span, oldest first, and the legend of their colours.
class PointCloud : public QwtPlotItem {
  public:
    explicit PointCloud(const Theme& theme) : theme_(theme) {
        setItemAttribute(QwtPlotItem::Legend, false);
        setRenderHint(QwtPlotItem::RenderAntialiased);
        setZ(10);
    }
    void setPoints(std::shared_ptr<const ScatterData> data, double fromMs, double untilMs, QString words) {
        data_ = std::move(data);
        from_ = fromMs;
        until_ = untilMs;
        words_ = std::move(words);
        itemChanged();
    }
    void setSelected(std::optional<std::int64_t> recording) {
        selected_ = recording;
        itemChanged();
    }
    bool holds(const ScatterPoint& point) const { return point.ms >= from_ && point.ms <= until_; }

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override {
        if (!data_) return;
        painter->setRenderHint(QPainter::Antialiasing, data_->points.size() < 2000);
        painter->setPen(Qt::NoPen);
        const ScatterPoint* chosen = nullptr;
        for (const ScatterPoint& point : data_->points) {
            if (!holds(point)) continue;
            const QPointF at(xMap.transform(point.x), yMap.transform(point.y));
            if (!canvas.contains(at)) continue;
            if (selected_ && point.recording == *selected_) chosen = &point;
            const double share = (point.ms - from_) / std::max(until_ - from_, 1.0);
            painter->fillRect(QRectF(at - QPointF(kDotPx / 2, kDotPx / 2), QSizeF(kDotPx, kDotPx)),
                              QColor::fromRgb(colourOf(share, theme_.isDark())));
        }
        painter->setRenderHint(QPainter::Antialiasing, true);
        if (chosen) drawRing(*painter, {xMap.transform(chosen->x), yMap.transform(chosen->y)});
        drawLegend(*painter, canvas);
    }

  private:
    void drawRing(QPainter& painter, const QPointF& at) const {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme_.colour(Role::Ground), 4));
        painter.drawEllipse(at, 7, 7);
        painter.setPen(QPen(theme_.colour(Role::Cursor), 2));
        painter.drawEllipse(at, 7, 7);
    }
    void drawLegend(QPainter& painter, const QRectF& canvas) const {
        const QFontMetricsF metrics(painter.font());
        const double wide = 60, width = metrics.horizontalAdvance(words_) + wide + 18;
        const QRectF box(canvas.right() - width - 4, canvas.top() + 3, width, metrics.height());
        QColor ground = theme_.colour(Role::Ground);
        ground.setAlphaF(0.85F);
        painter.fillRect(box, ground);
        const QRectF bar(box.left() + 4, box.top() + 0.25 * box.height(), wide, 0.5 * box.height());
        for (int x = 0; x < int(wide); ++x)
            painter.fillRect(QRectF(bar.left() + x, bar.top(), 1, bar.height()),
                             QColor::fromRgb(colourOf(x / wide, theme_.isDark())));
        painter.setPen(theme_.colour(Role::MutedInk));
        painter.drawText(box.adjusted(wide + 10, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, words_);
    }

    const Theme& theme_;
    std::shared_ptr<const ScatterData> data_;
    double from_ = 0, until_ = 0;
    QString words_;
    std::optional<std::int64_t> selected_;
};

ScatterPlot::ScatterPlot(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("scatter"), tr("Scatter"), parent),
      axis_(axis),
      selection_(selection),
      cloud_(new PointCloud(theme)),
      limits_(new LimitLines(theme)) {
    cloud_->attach(&plot());
    limits_->attach(&plot());
    connectGestures();
    connect(&axis_, &TimeAxis::changed, this, [this] {
        if (isVisible()) showSpan();
    });
    connect(&selection_, &Selection::recordingChanged, this, &ScatterPlot::showSelected);
    connect(&selection_, &Selection::unitsChanged, this, &ScatterPlot::takeUnits);
}

ScatterPlot::~ScatterPlot() = default;

void ScatterPlot::connectGestures() {
    const auto x = [this](double px) { return plot().canvasMap(QwtPlot::xBottom).invTransform(px); };
    const auto y = [this](double px) { return plot().canvasMap(QwtPlot::yLeft).invTransform(px); };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at, bool upright) {
        upright ? y_.zoom(factor, y(at.y())) : x_.zoom(factor, x(at.x()));
        setScales();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        x_.pan(x(0) - x(by.x()));
        y_.pan(y(0) - y(by.y()));
        setScales();
    });
    connect(&gestures(), &Gestures::framed, this, [=, this](const QRect& part) {
        x_.show(x(part.left()), x(part.right()));
        y_.show(y(part.bottom()), y(part.top()));
        setScales();
    });
    connect(&gestures(), &Gestures::showAll, this, [this] {
        x_.showAll();
        y_.showAll();
        setScales();
    });
    connect(&gestures(), &Gestures::hovered, this, &ScatterPlot::hover);
    connect(&gestures(), &Gestures::clicked, this, &ScatterPlot::choose);
    connect(&gestures(), &Gestures::left, this, [this] { setReadout({}); });
    connect(&gestures(), &Gestures::stepped, this, &ScatterPlot::step);
}

void ScatterPlot::setData(std::shared_ptr<const ScatterData> data) {
    stored_ = std::move(data);
    takeUnits();
}

void ScatterPlot::takeUnits() {
    shown_.reset();
    if (stored_) {
        auto data = std::make_shared<ScatterData>(*stored_);
        const ShownUnit x = shownUnit(stored_->xUnit, selection_.units());
        const ShownUnit y = shownUnit(stored_->yUnit, selection_.units());
        data->xUnit = x.unit;
        data->yUnit = y.unit;
        for (ScatterPoint& point : data->points) {
            point.x = x.shown(point.x);
            point.y = y.shown(point.y);
        }
        for (TrendLimit& limit : data->limits)
            limit.value = y.shown(limit.value);
        shown_ = data;
    }
    limits_->setLimits(shown_ ? shown_->limits : std::vector<TrendLimit>{});
    showSpan();
}

void ScatterPlot::showSpan() {
    double least[2] = {1e300, 1e300}, most[2] = {-1e300, -1e300};
    if (shown_)
        for (const ScatterPoint& point : shown_->points) {
            if (point.ms < axis_.span().from || point.ms > axis_.span().until) continue;
            const double at[2] = {point.x, point.y};
            for (int i = 0; i < 2; ++i) {
                least[i] = std::min(least[i], at[i]);
                most[i] = std::max(most[i], at[i]);
            }
        }
    for (int i = 0; i < 2; ++i) {
        if (least[i] > most[i]) least[i] = 0, most[i] = 1;
        const double room = std::max((most[i] - least[i]) * kMargin, std::abs(most[i]) * 1e-3 + 1e-9);
        (i == 0 ? x_ : y_).setBounds(least[i] - room, most[i] + room, room / 10);
    }
    cloud_->setPoints(
        shown_, axis_.span().from, axis_.span().until,
        tr("%1 to %2").arg(axis_.text(axis_.span().from).left(10), axis_.text(axis_.span().until).left(10)));
    setScales();
    showSelected();
}

void ScatterPlot::setScales() {
    plot().setAxisScale(QwtPlot::xBottom, x_.from, x_.until);
    plot().setAxisScale(QwtPlot::yLeft, y_.from, y_.until);
    plot().setAxisMaxMajor(QwtPlot::yLeft, 5);
    const auto name = [](const QString& quantity, const QString& unit) {
        return unit.isEmpty() ? quantity : tr("%1, %2").arg(quantity, unit);
    };
    QwtText title = plot().axisTitle(QwtPlot::xBottom);
    title.setText(shown_ ? name(shown_->xName, shown_->xUnit) : QString());
    plot().setAxisTitle(QwtPlot::xBottom, title);
    title = plot().axisTitle(QwtPlot::yLeft);
    title.setText(shown_ ? (shown_->yUnit.isEmpty() ? shown_->yName : shown_->yUnit) : QString());
    plot().setAxisTitle(QwtPlot::yLeft, title);
    plot().replot();
}

void ScatterPlot::showSelected() {
    cloud_->setSelected(selection_.recording());
    plot().replot();
}

QPointF ScatterPlot::placeOf(const ScatterPoint& shown) const {
    return {plot().canvasMap(QwtPlot::xBottom).transform(shown.x),
            plot().canvasMap(QwtPlot::yLeft).transform(shown.y)};
}

const ScatterPoint* ScatterPlot::nearest(const QPointF& at) const {
    const ScatterPoint* best = nullptr;
    double least = kDotNearPx;
    if (!shown_) return nullptr;
    for (const ScatterPoint& point : shown_->points) {
        if (!cloud_->holds(point)) continue;
        const QPointF away = placeOf(point) - at;
        const double distance = std::hypot(away.x(), away.y());
        if (distance > least) continue;
        least = distance;
        best = &point;
    }
    return best;
}

void ScatterPlot::hover(const QPointF& at) {
    const ScatterPoint* point = nearest(at);
    if (!point) return setReadout({});
    setReadout(tr("%1, %2 at %3")
                   .arg(axis_.text(point->ms), valueText(point->y, shown_->yUnit),
                        valueText(point->x, shown_->xUnit)));
}

void ScatterPlot::choose(const QPointF& at) {
    if (const ScatterPoint* point = nearest(at))
        selection_.setRecording(point->recording, toInstant(point->ms));
}

// By time, as in the trend.
void ScatterPlot::step(int steps, bool far) {
    if (!shown_ || shown_->points.empty()) return;
    const auto& points = shown_->points;
    const auto last = std::ptrdiff_t(points.size()) - 1;
    std::ptrdiff_t at = last;
    if (selection_.recording() && selection_.time()) {
        const auto after = std::lower_bound(points.begin(), points.end(), toMs(*selection_.time()),
                                            [](const ScatterPoint& p, double ms) { return p.ms < ms; });
        at = std::clamp<std::ptrdiff_t>(
            after - points.begin() + steps * (far ? std::ptrdiff_t(kFarPoints) : 1), 0, last);
    }
    selection_.setRecording(points[std::size_t(at)].recording, toInstant(points[std::size_t(at)].ms));
    axis_.bring(points[std::size_t(at)].ms);
}

QString ScatterPlot::tableText(TableExtent extent) const {
    if (!stored_) return {};
    const bool all = extent == TableExtent::All;
    QString text = tableHead(all ? tr("all data") : tr("as shown"));
    text += QStringLiteral("time\t%1 %2\t%3 %4\n")
                .arg(stored_->xName, stored_->xUnit, stored_->yName, stored_->yUnit);
    for (const ScatterPoint& point : stored_->points)
        if (all || cloud_->holds(point))
            text += QStringLiteral("%1\t%2\t%3\n")
                        .arg(QString::fromStdString(formatUtc(toInstant(point.ms))))
                        .arg(point.x, 0, 'g', 9)
                        .arg(point.y, 0, 'g', 9);
    return text;
}

// Hidden it follows nothing.
void ScatterPlot::showEvent(QShowEvent* event) {
    PlotFrame::showEvent(event);
    showSpan();
}

}  // namespace fettle
