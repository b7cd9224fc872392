#include "ui/plot/period_ticks.h"

#include <qwt_scale_map.h>

#include <QPainter>
#include <cmath>

namespace fettle {

namespace {
constexpr double kLeastApartPx = 4, kNumberedApartPx = 34, kTickEms = 0.7;
}

PeriodTicks::PeriodTicks(bool above) : above_(above) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(30);
}

void PeriodTicks::setPeriod(double seconds, double origin, const QString& name) {
    seconds_ = seconds;
    origin_ = origin;
    name_ = name;
    itemChanged();
}

void PeriodTicks::setColour(const QColor& colour) {
    colour_ = colour;
    itemChanged();
}

void PeriodTicks::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap&,
                       const QRectF& canvas) const {
    if (!(seconds_ > 0)) return;
    const double apart = std::abs(xMap.transform(seconds_) - xMap.transform(0));
    const QFontMetricsF metrics(painter->font());
    const double tick = kTickEms * metrics.height(), edge = above_ ? canvas.top() : canvas.bottom();
    const double inner = above_ ? edge + tick : edge - tick, row = metrics.height();
    const double textTop = above_ ? inner : inner - row;
    painter->setPen(QPen(colour_, 1.2));
    const double width = metrics.horizontalAdvance(name_) + 4;
    if (apart >= kLeastApartPx) {
        const auto first = (long long)std::ceil((xMap.s1() - origin_) / seconds_);
        const auto last = (long long)std::floor((xMap.s2() - origin_) / seconds_);
        for (long long i = first; i <= last; ++i) {
            const double x = xMap.transform(origin_ + double(i) * seconds_);
            painter->drawLine(QPointF(x, edge), QPointF(x, inner));
            if (apart < kNumberedApartPx || x < canvas.left() + width + kNumberedApartPx / 2) continue;
            painter->drawText(QRectF(x - apart / 2, textTop, apart, row), Qt::AlignCenter,
                              QString::number(i));
        }
    }
    painter->drawText(QRectF(canvas.left() + 4, textTop, width, row), Qt::AlignVCenter, name_);
}

}  // namespace fettle
