#include "ui/plot/order_rays.h"

#include <qwt_scale_map.h>

#include <QPainter>

namespace fettle {

namespace {
constexpr int kSteps = 40;  // of a curve
constexpr double kBarPx = 4;
}  // namespace

OrderRays::OrderRays(const Theme& theme) : theme_(theme) {
    setZ(10);
}

void OrderRays::setData(std::shared_ptr<const ResonanceData> data) {
    data_ = std::move(data);
    itemChanged();
}

void OrderRays::setAxis(bool orders, double factor) {
    orders_ = orders;
    factor_ = factor;
    itemChanged();
}

void OrderRays::stroke(QPainter& painter, const QPolygonF& line, const QColor& ink, double width,
                       Qt::PenStyle style) const {
    painter.setPen(QPen(theme_.colour(Role::Ground), width + 1.5));
    painter.drawPolyline(line);
    painter.setPen(QPen(ink, width, style, Qt::FlatCap));
    painter.drawPolyline(line);
}

void OrderRays::drawOrders(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                           const QRectF& canvas) const {
    const QFontMetricsF metrics(painter.font());
    double lowestLabel = 1e9;
    for (const int order : data_->lines) {
        const double left = xMap.s1(), right = xMap.s2();
        const QPointF from(xMap.transform(left), yMap.transform(up(order * left / 60, left)));
        const QPointF to(xMap.transform(right), yMap.transform(up(order * right / 60, right)));
        painter.setPen(QPen(theme_.colour(Role::Ground), 0.8, Qt::DotLine));
        painter.drawLine(from, to);
        // Named at the right edge while it ends there and there is room.
        if (to.y() < canvas.top() + metrics.height() || to.y() > canvas.bottom() - metrics.height()) continue;
        if (lowestLabel - to.y() < metrics.height()) continue;
        lowestLabel = to.y();
        const QString name = QStringLiteral("%1 x").arg(order);
        const QRectF box(canvas.right() - metrics.horizontalAdvance(name) - 6, to.y() - metrics.height() / 2,
                         metrics.horizontalAdvance(name) + 4, metrics.height());
        painter.fillRect(box, theme_.colour(Role::Ground));
        painter.setPen(theme_.colour(Role::MutedInk));
        painter.drawText(box, Qt::AlignCenter, name);
    }
}

void OrderRays::drawMark(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                         const QRectF& canvas, const ResonanceMark& mark, bool chosen) const {
    QPolygonF line;
    for (int i = 0; i <= kSteps; ++i) {
        const double rpm = xMap.s1() + (xMap.s2() - xMap.s1()) * i / kSteps;
        if (rpm > 0) line << QPointF(xMap.transform(rpm), yMap.transform(up(mark.hz, rpm)));
    }
    const QColor ink = theme_.colour(chosen ? Role::Accent : Role::Cursor);
    stroke(painter, line, ink, chosen ? 2 : 1, chosen ? Qt::SolidLine : Qt::DashLine);
    const double left = xMap.transform(mark.fromRpm), right = xMap.transform(mark.toRpm);
    const QRectF bar(left, canvas.bottom() - kBarPx - 2, right - left, kBarPx);
    painter.fillRect(bar.adjusted(-1, -1, 1, 1), theme_.colour(Role::Ground));
    painter.fillRect(bar, ink);
}

void OrderRays::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                     const QRectF& canvas) const {
    if (!data_) return;
    painter->save();
    painter->setClipRect(canvas);
    painter->setRenderHint(QPainter::Antialiasing);
    for (int pass = 0; pass < 2; ++pass)  // the chosen one above the others
        for (std::size_t i = 0; i < data_->marks.size(); ++i)
            if ((int(i) == chosen_) == (pass == 1))
                drawMark(*painter, xMap, yMap, canvas, data_->marks[i], pass == 1);
    drawOrders(*painter, xMap, yMap, canvas);
    painter->restore();
}

}  // namespace fettle
