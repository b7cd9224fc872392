#include "ui/plot/trend_past_marks.h"

#include <qwt_scale_map.h>

#include <QPainter>
#include <algorithm>

#include "ui/plot/curve_room.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr float kOwnDays = 0.20F, kAfter = 0.09F, kFan = 0.16F;  // of the ink
constexpr double kPastPad = 3, kMostWords = 0.6;                 // of the width

QColor washed(QColor ink, float alpha) {
    ink.setAlphaF(alpha);
    return ink;
}

}  // namespace

PastMarks::PastMarks(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setRenderHint(QwtPlotItem::RenderAntialiased);
    setZ(4);  // behind the curve
}

void PastMarks::setData(std::shared_ptr<const TrendData> data) {
    data_ = std::move(data);
    itemChanged();
}

void PastMarks::setCurves(std::vector<SeriesPtr> curves) {
    curves_ = std::move(curves);
    itemChanged();
}

void PastMarks::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                     const QRectF& canvas) const {
    if (!data_) return;
    painter->setClipRect(canvas);
    if (data_->baseline) drawBaseline(*painter, xMap, yMap, canvas);
    if (data_->fan) drawFan(*painter, xMap, yMap, canvas);
    if (data_->sinceMs) drawSince(*painter, xMap, canvas);
}

// Kept within the canvas; on a ground of its own, so that what lies under it does not strike it through.
void PastMarks::label(QPainter& painter, QRectF box, const QString& text, Role ink) const {
    const QFontMetricsF metrics(painter.font());
    box.setSize({metrics.horizontalAdvance(text) + 2 * kPastPad, metrics.height()});
    painter.fillRect(box, washed(theme_.colour(Role::Ground), 0.8F));
    painter.setPen(theme_.colour(ink));
    painter.drawText(box, Qt::AlignCenter, text);
}

void PastMarks::drawBaseline(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                             const QRectF& canvas) const {
    const TrendBaseline& baseline = *data_->baseline;
    const double from = std::clamp(xMap.transform(baseline.fromMs), canvas.left(), canvas.right());
    const double until = std::clamp(xMap.transform(baseline.untilMs), from, canvas.right());
    const double top = yMap.transform(baseline.high), bottom = yMap.transform(baseline.low);
    const QColor ink = theme_.colour(Role::SecondCurve);
    painter.fillRect(QRectF(QPointF(from, top), QPointF(until, bottom)), washed(ink, kOwnDays));
    painter.fillRect(QRectF(QPointF(until, top), QPointF(canvas.right(), bottom)), washed(ink, kAfter));
    const double middle = yMap.transform(baseline.middle);
    painter.setPen(QPen(ink, 1));
    painter.drawLine(QPointF(from, middle), QPointF(until, middle));
    const QFontMetricsF metrics(painter.font());
    const double height = metrics.height(), width = metrics.horizontalAdvance(tr("baseline")) + 2 * kPastPad;
    if (until - from <= width) return;
    const bool fits = bottom + height < canvas.bottom();
    const CurveRoom room{curves_, xMap, yMap};
    const QRectF above(from + kPastPad, top - height, width, height),
        below(from + kPastPad, bottom, width, height);
    QRectF place = room.freed(fits ? below : above, until, {});
    if (room.crossed(place) && fits) place = room.freed(above, until, {});
    label(painter, place, tr("baseline"), Role::MutedInk);
}

void PastMarks::drawSince(QPainter& painter, const QwtScaleMap& xMap, const QRectF& canvas) const {
    const double x = xMap.transform(*data_->sinceMs);
    if (x < canvas.left() || x > canvas.right()) return;
    painter.setPen(QPen(theme_.colour(Role::SecondCurve), 1.2));
    painter.drawLine(QPointF(x, canvas.top()), QPointF(x, canvas.bottom()));
    const QFontMetricsF metrics(painter.font());
    const double width = metrics.horizontalAdvance(tr("apart since")) + 2 * kPastPad;
    const bool left = x - width > canvas.left();
    label(painter, {left ? x - width : x, canvas.bottom() - metrics.height() - 1, 0, 0}, tr("apart since"),
          Role::Ink);
}

void PastMarks::drawFan(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                        const QRectF& canvas) const {
    const TrendFan& fan = *data_->fan;
    const QPointF apex(xMap.transform(fan.ms), yMap.transform(fan.value));
    const double limit = yMap.transform(fan.limit);
    // Without an end the slowest growth that fits does not rise.
    const QPointF last = fan.latestMs ? QPointF(xMap.transform(*fan.latestMs), limit)
                                      : QPointF(std::max(canvas.right(), apex.x()) * 2, apex.y());
    const QPointF first(xMap.transform(fan.earliestMs), limit), middle(xMap.transform(fan.middleMs), limit);
    painter.setPen(Qt::NoPen);
    painter.setBrush(washed(theme_.colour(Role::Limit), kFan));
    painter.drawPolygon(fan.latestMs ? QPolygonF({apex, first, last})
                                     : QPolygonF({apex, first, QPointF(last.x(), limit), last}));
    painter.setPen(QPen(theme_.colour(Role::Limit), 1.4, Qt::DashLine));
    painter.drawLine(apex, middle);
    if (middle.x() <= canvas.right()) {
        painter.setBrush(theme_.colour(Role::Limit));
        painter.drawEllipse(middle, 3, 3);
    }
    // The level is high where it heads for a limit: the corner under it is free.
    const QFontMetricsF metrics(painter.font());
    const double width = metrics.horizontalAdvance(fan.words) + 2 * kPastPad;
    if (width > kMostWords * canvas.width()) return;  // on a small figure the words stand beside it
    const double left = canvas.right() - width - 2;
    const bool sinceBelow = data_->sinceMs && xMap.transform(*data_->sinceMs) > left;
    const double rows = sinceBelow ? 2 : 1;
    label(painter, {left, canvas.bottom() - rows * metrics.height() - 1, 0, 0}, fan.words, Role::Limit);
}

}  // namespace fettle
