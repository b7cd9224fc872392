#include "ui/panels/train_symbol.h"

#include <QPainterPath>
#include <cmath>

namespace fettle {

namespace {

QRectF square(const QRectF& box, double part) {
    const double side = std::min(box.width(), box.height()) * part;
    return {box.center().x() - side / 2, box.center().y() - side / 2, side, side};
}

void bearing(QPainter& painter, const QRectF& box) {
    const QRectF frame = square(box, 0.62);
    painter.drawRect(frame);
    const double reach = frame.width() / 4;
    const QPointF c = frame.center();
    painter.drawLine(c - QPointF(reach, 0), c + QPointF(reach, 0));
    painter.drawLine(c - QPointF(0, reach), c + QPointF(0, reach));
}

void coupling(QPainter& painter, const QRectF& box) {
    const QPointF c = box.center();
    const double high = box.height() * 0.3, apart = box.height() * 0.08;
    for (const double x : {-apart, apart})
        painter.drawLine(c + QPointF(x, -high), c + QPointF(x, high));
}

void gear(QPainter& painter, const QRectF& box) {
    const QPointF c = box.center();
    const double large = box.height() * 0.28, small = box.height() * 0.17;
    painter.drawEllipse(c + QPointF(0, box.height() * 0.45 - large), large, large);
    painter.drawEllipse(c + QPointF(0, box.height() * 0.45 - 2 * large - small), small, small);
}

void belt(QPainter& painter, const QRectF& box) {
    const QPointF c = box.center();
    const double r = box.height() * 0.18, R = box.height() * 0.26, away = box.height() * 0.42;
    painter.drawEllipse(c - QPointF(away, 0), r, r);
    painter.drawEllipse(c + QPointF(away, 0), R, R);
    for (const double side : {-1.0, 1.0})
        painter.drawLine(c + QPointF(-away, side * r), c + QPointF(away, side * R));
}

void fan(QPainter& painter, const QRectF& box) {
    const QRectF round = square(box, 0.94);
    painter.drawEllipse(round);
    for (int blade = 0; blade < 3; ++blade) {
        painter.save();
        painter.translate(round.center());
        painter.rotate(120.0 * blade);
        QPainterPath path;
        path.cubicTo(round.width() * 0.02, -round.width() * 0.2, round.width() * 0.26, -round.width() * 0.24,
                     round.width() * 0.2, -round.width() * 0.36);
        painter.drawPath(path);
        painter.restore();
    }
}

void pump(QPainter& painter, const QRectF& box) {
    const QRectF round = square(box, 0.94);
    painter.drawEllipse(round);
    const QPointF c = round.center();
    const double r = round.width() / 2;
    painter.drawPolyline(
        QPolygonF({c + QPointF(-r * 0.5, -r * 0.87), c + QPointF(r, 0), c + QPointF(-r * 0.5, r * 0.87)}));
}

void motor(QPainter& painter, const QRectF& box) {
    const QRectF round = square(box, 0.94);
    painter.drawEllipse(round);
    QFont font = painter.font();
    font.setPixelSize(std::max(6, int(round.height() * 0.5)));
    painter.setFont(font);
    painter.drawText(round, Qt::AlignCenter, QStringLiteral("M"));
}

}  // namespace

void paintTrainSymbol(QPainter& painter, TrainSymbol symbol, const QRectF& box, const QColor& ground) {
    painter.setBrush(ground);
    switch (symbol) {
        case TrainSymbol::Motor:
            return motor(painter, box);
        case TrainSymbol::Coupling:
            return coupling(painter, box);
        case TrainSymbol::Gear:
            return gear(painter, box);
        case TrainSymbol::Belt:
            return belt(painter, box);
        case TrainSymbol::Box:
        case TrainSymbol::Driven:
            return painter.drawRect(square(box, symbol == TrainSymbol::Box ? 0.76 : 0.9));
        case TrainSymbol::Fan:
            return fan(painter, box);
        case TrainSymbol::Pump:
            return pump(painter, box);
        case TrainSymbol::Bearing:
            return bearing(painter, box);
    }
}

}  // namespace fettle
