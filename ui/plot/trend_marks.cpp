#include "ui/plot/trend_marks.h"

#include <qwt_scale_map.h>

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/plot/curve_room.h"
#include "ui/plot/readout.h"

namespace fettle {

LimitLines::LimitLines(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(21);  // over the events' upright lines, which would strike its names through
}

void LimitLines::setLimits(std::vector<TrendLimit> limits) {
    limits_ = std::move(limits);
    std::stable_sort(limits_.begin(), limits_.end(),
                     [](const TrendLimit& a, const TrendLimit& b) { return a.value < b.value; });
    itemChanged();
}

void LimitLines::setCurves(std::vector<SeriesPtr> curves) {
    curves_ = std::move(curves);
    itemChanged();
}

void LimitLines::setBelowEvents(bool below) {
    belowEvents_ = below;
    itemChanged();
}

// The name stands above its line, below it where that would leave the canvas, reach the events or be struck
// through by the next line up, beside the one before where there is no room below either.
std::vector<LimitLines::Named> LimitLines::named(const QwtScaleMap& yMap, const QRectF& canvas,
                                                 const QFontMetricsF& metrics) const {
    const double ceiling = canvas.top() + (belowEvents_ ? EventMarks::rowHeight(metrics) : 0);
    double lastTop = canvas.bottom() + metrics.height(), lastRight = 0;
    std::vector<Named> all;
    for (std::size_t i = 0; i < limits_.size(); ++i) {
        const TrendLimit& limit = limits_[i];
        const double y = yMap.transform(limit.value);
        if (y < canvas.top() || y > canvas.bottom()) continue;
        const double next = i + 1 < limits_.size() ? yMap.transform(limits_[i + 1].value) : canvas.top();
        const double before =
            i > 0 ? yMap.transform(limits_[i - 1].value) : canvas.bottom() + metrics.height();
        const bool struck = y - next < metrics.height() && before - y > 2 * metrics.height();
        const QString name = limit.name + QStringLiteral("  ") + significant(limit.value, 3);
        QRectF box(0, 0, metrics.horizontalAdvance(name) + 6, metrics.height());
        box.moveBottomLeft(QPointF(canvas.left() + 4, y));
        if (box.top() < ceiling || struck) box.moveTop(y);
        if (box.bottom() > lastTop) box.moveLeft(canvas.left() + 4 + lastRight);
        lastRight = box.right() - canvas.left();
        lastTop = std::min(lastTop, box.top());
        all.push_back({y, box, name, limit.own});
    }
    return all;
}

void LimitLines::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                      const QRectF& canvas) const {
    QColor ground = theme_.colour(Role::Ground);
    ground.setAlphaF(0.8F);
    std::vector<Named> all = named(yMap, canvas, QFontMetricsF(painter->font()));
    const CurveRoom room{curves_, xMap, yMap};
    for (Named& limit : all) {
        std::vector<QRectF> others;
        for (const Named& other : all)
            if (&other != &limit) others.push_back(other.box);
        limit.box = room.freed(limit.box, canvas.right(), others);
    }
    for (const Named& limit : all) {
        painter->setPen(QPen(theme_.colour(Role::Limit), 1.2, limit.own ? Qt::DotLine : Qt::DashLine));
        painter->drawLine(QPointF(canvas.left(), limit.y), QPointF(canvas.right(), limit.y));
    }
    for (const Named& limit : all) {
        painter->fillRect(limit.box, ground);
        painter->setPen(theme_.colour(Role::Limit));
        painter->drawText(limit.box, Qt::AlignCenter, limit.name);
    }
}

EventMarks::EventMarks(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setRenderHint(QwtPlotItem::RenderAntialiased);
    setZ(20);
}

double EventMarks::rowHeight(const QFontMetricsF& metrics) {
    return metrics.height() + 2;
}

void EventMarks::setEvents(std::vector<TrendEvent> events) {
    events_ = std::move(events);
    itemChanged();
}

const TrendEvent* EventMarks::near(const QwtScaleMap& xMap, double x, double px) const {
    const TrendEvent* best = nullptr;
    for (const TrendEvent& event : events_) {
        const double away = std::abs(xMap.transform(event.ms) - x);
        if (away > px) continue;
        if (!best || away < std::abs(xMap.transform(best->ms) - x)) best = &event;
    }
    return best;
}

void EventMarks::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap&,
                      const QRectF& canvas) const {
    const QFontMetricsF metrics(painter->font());
    const double size = metrics.height() * 0.35;
    double free = canvas.left();  // where the next name may begin
    for (const TrendEvent& event : events_) {
        const double x = xMap.transform(event.ms);
        if (x < canvas.left() || x > canvas.right()) continue;
        painter->setPen(QPen(theme_.colour(Role::Event), 1, Qt::DotLine));
        painter->drawLine(QPointF(x, canvas.top()), QPointF(x, canvas.bottom()));
        const QPointF at(x, canvas.top() + size + 2);
        painter->setPen(QPen(theme_.colour(Role::Event), 1));
        painter->setBrush(theme_.colour(Role::Event));
        painter->drawPolygon(QPolygonF(
            {at + QPointF(0, -size), at + QPointF(size, 0), at + QPointF(0, size), at + QPointF(-size, 0)}));
        const double width = metrics.horizontalAdvance(event.kind) + 2;
        if (x + size + 3 < free || x + size + 3 + width > canvas.right()) continue;
        painter->drawText(QRectF(x + size + 3, canvas.top() + 1, width, metrics.height()),
                          Qt::AlignLeft | Qt::AlignVCenter, event.kind);
        free = x + size + 3 + width + metrics.averageCharWidth();
    }
}

StoppedPoints::StoppedPoints(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setRenderHint(QwtPlotItem::RenderAntialiased);
    setZ(8);
}

void StoppedPoints::setPoints(std::vector<QPointF> points) {
    points_ = std::move(points);
    itemChanged();
}

void StoppedPoints::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                         const QRectF& canvas) const {
    painter->setPen(QPen(theme_.colour(Role::MutedInk), 1));
    painter->setBrush(theme_.colour(Role::Ground));
    double lastX = -1e9, lastY = -1e9;
    for (const QPointF& point : points_) {
        const double x = xMap.transform(point.x()), y = yMap.transform(point.y());
        if (!std::isfinite(y) || x < canvas.left() - 3 || x > canvas.right() + 3) continue;
        if (std::abs(x - lastX) < 1 && std::abs(y - lastY) < 1) continue;
        painter->drawEllipse(QPointF(x, y), 2.2, 2.2);
        lastX = x;
        lastY = y;
    }
}

}  // namespace fettle
