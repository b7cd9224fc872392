#include "ui/plot/line_item.h"

#include <qwt_painter.h>
#include <qwt_scale_map.h>

#include <QPainter>

namespace fettle {

namespace {
constexpr double kPointPx = 4.5;
constexpr double kDense = 4;  // points a pixel
}  // namespace

LineItem::LineItem() {
    setRenderHint(QwtPlotItem::RenderAntialiased);
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(10);
}

void LineItem::setSeries(SeriesPtr series) {
    series_ = std::move(series);
    itemChanged();
}

void LineItem::setColour(const QColor& colour) {
    colour_ = colour;
    itemChanged();
}

void LineItem::setDotted(bool withPoints) {
    points_ = withPoints;
    itemChanged();
}

void LineItem::setStyle(Qt::PenStyle style) {
    style_ = style;
    itemChanged();
}

void LineItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                    const QRectF& canvas) const {
    if (!series_ || series_->size() == 0) return;
    const auto [first, last] = series_->within(xMap.s1(), xMap.s2());
    const auto pieces = decimated(
        *series_, first, last, [&](double x) { return xMap.transform(x); },
        [&](double y) { return yMap.transform(y); });
    // A band of noise is no smoother for smooth edges, and takes several times as long with them.
    const bool dense = double(last - first) > kDense * canvas.width();
    painter->setRenderHint(QPainter::Antialiasing, !dense);
    QPen pen(colour_, dense ? 1 : width_, dense ? Qt::SolidLine : style_);
    pen.setJoinStyle(Qt::RoundJoin);
    painter->setPen(pen);
    painter->setBrush(Qt::NoBrush);
    for (const QPolygonF& piece : pieces)
        if (piece.size() > 1) QwtPainter::drawPolyline(painter, piece);
    const double room = last > first ? canvas.width() / double(last - first) : 0;
    if (points_) drawPoints(*painter, pieces, room);
}

void LineItem::drawPoints(QPainter& painter, const std::vector<QPolygonF>& pieces, double room) const {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour_);
    const double size = room > 2 * kPointPx ? kPointPx : 3;
    for (const QPolygonF& piece : pieces)
        for (const QPointF& point : piece)
            if (room > size || piece.size() == 1) painter.drawEllipse(point, size / 2, size / 2);
}

}  // namespace fettle
