#include "ui/plot/cursor_item.h"

#include <qwt_scale_map.h>

#include <QPainter>

namespace fettle {

namespace {
constexpr double kInkPx = 1.2, kRimPx = 3.2;
}

CursorItem::CursorItem() {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(50);
}

void CursorItem::setLines(std::vector<CursorLine> lines) {
    lines_ = std::move(lines);
    itemChanged();
}

void CursorItem::setColours(const QColor& ink, const QColor& rim) {
    ink_ = ink;
    rim_ = rim;
    rim_.setAlphaF(0.75F);
    itemChanged();
}

void CursorItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                      const QRectF& canvas) const {
    for (const CursorLine& line : lines_) {
        const double at = line.upright ? xMap.transform(line.at) : yMap.transform(line.at);
        const bool seen = line.upright ? at >= canvas.left() - 1 && at <= canvas.right() + 1
                                       : at >= canvas.top() - 1 && at <= canvas.bottom() + 1;
        if (!seen) continue;
        const QLineF stroke = line.upright ? QLineF(at, canvas.top(), at, canvas.bottom())
                                           : QLineF(canvas.left(), at, canvas.right(), at);
        if (parts_ & Lines) drawStroke(*painter, stroke, line.style);
        if ((parts_ & Labels) && !line.label.isEmpty())
            drawLabel(*painter, line.label,
                      line.upright ? QPointF(at, canvas.bottom()) : QPointF(canvas.right(), at), canvas);
    }
}

void CursorItem::drawStroke(QPainter& painter, const QLineF& stroke, Qt::PenStyle style) const {
    painter.setPen(QPen(rim_, kRimPx));
    if (rimmed_) painter.drawLine(stroke);
    painter.setPen(QPen(ink_, kInkPx, style));
    painter.drawLine(stroke);
}

// Beside the end of the line, on the ground's colour, within the canvas.
void CursorItem::drawLabel(QPainter& painter, const QString& label, QPointF at, const QRectF& canvas) const {
    const QFontMetricsF metrics(painter.font());
    QRectF box(0, 0, metrics.horizontalAdvance(label) + 6, metrics.height());
    box.moveBottomLeft(at + QPointF(3, -2));
    if (box.right() > canvas.right()) box.moveRight(std::max(at.x() - 3, canvas.left() + box.width()));
    if (box.right() > canvas.right()) box.moveRight(canvas.right());
    if (box.top() < canvas.top()) box.moveTop(canvas.top());
    painter.fillRect(box, rim_);
    painter.setPen(ink_);
    painter.drawText(box, Qt::AlignCenter, label);
}

}  // namespace fettle
