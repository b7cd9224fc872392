#include "ui/plot/polar_drawing.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/base/units.h"
#include "ui/model/numbers.h"
#include "ui/plot/readout.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

// 1, 2 or 5 with noughts, about a third of the whole.
double ringStep(double most) {
    const double raw = most / 3, power = std::pow(10, std::floor(std::log10(raw)));
    for (const double step : {1.0, 2.0, 5.0})
        if (raw <= step * power) return step * power;
    return 10 * power;
}

double reachOf(const PolarPicture& polar) {
    double most = polar.limit;
    for (const PolarPicture::Arrow& arrow : polar.arrows)
        most = std::max(most, arrow.amount);
    for (const PolarPicture::Circle& circle : polar.circles)
        most = std::max(most, circle.centre + circle.radius);
    return most;
}

struct Drawing {
    QPainter& painter;
    const PolarPicture& polar;
    const Theme& theme;
    QRectF rect;
    QPointF centre;
    double perUnit = 0, radius = 0, em = 0;

    QPointF at(double amount, double degrees) const {
        const double angle = (polar.clockwise ? degrees : -degrees) * kTwoPi / 360;
        return centre + perUnit * amount * QPointF(std::sin(angle), -std::cos(angle));
    }
    void pen(Role role, double width, Qt::PenStyle style = Qt::SolidLine) {
        painter.setPen(QPen(theme.colour(role), width * em / 14, style));
    }
    void text(const QPointF& at, const QString& words) {
        const QFontMetricsF metrics(painter.font());
        QRectF box(0, 0, metrics.horizontalAdvance(words) + 2, metrics.height());
        box.moveCenter(at);
        box.moveLeft(std::clamp(box.left(), rect.left(), std::max(rect.left(), rect.right() - box.width())));
        box.moveTop(std::clamp(box.top(), rect.top(), std::max(rect.top(), rect.bottom() - box.height())));
        painter.drawText(box, Qt::AlignCenter, words);
    }

    void grid(double most) {
        const double step = ringStep(most);
        for (double ring = step; ring <= most * 1.0001; ring += step) {
            pen(Role::Rule, 1);
            painter.drawEllipse(centre, ring * perUnit, ring * perUnit);
            painter.setPen(theme.colour(Role::MutedInk));
            text(at(ring, 45) + QPointF(0, -0.45 * em), significant(ring, 2));
        }
        for (int degrees = 0; degrees < 360; degrees += 90) {
            pen(Role::Rule, 1);
            painter.drawLine(centre, at(most, degrees));
            painter.setPen(theme.colour(Role::MutedInk));
            const QPointF out = (at(1, degrees) - centre) / perUnit;
            text(at(most, degrees) + 0.9 * em * out, QStringLiteral("%1°").arg(degrees));
        }
        if (polar.limit <= 0) return;
        pen(Role::Limit, 1.2, Qt::DashLine);
        painter.drawEllipse(centre, polar.limit * perUnit, polar.limit * perUnit);
    }

    void circles() {
        for (const PolarPicture::Circle& circle : polar.circles) {
            pen(Role::SecondCurve, 1.3);
            const QPointF middle = at(circle.centre, circle.degrees);
            painter.drawEllipse(middle, circle.radius * perUnit, circle.radius * perUnit);
            painter.drawEllipse(middle, 1.5, 1.5);
            painter.setPen(theme.colour(Role::SecondCurve));
            const QPointF out = (at(1, circle.degrees) - centre) / perUnit;
            text(middle + out * 0.9 * em, circle.name);
        }
    }

    void arrow(const PolarPicture::Arrow& one) {
        const QPointF tip = at(one.amount, one.degrees);
        const double length = std::hypot(tip.x() - centre.x(), tip.y() - centre.y());
        const Role ink = one.strong ? Role::Accent : Role::Curve;
        pen(ink, one.strong ? 2.4 : 1.6, one.dashed ? Qt::DashLine : Qt::SolidLine);
        painter.drawLine(centre, tip);
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.colour(ink));
        const QPointF out = length > 0 ? (tip - centre) / length : QPointF(0, -1), side(-out.y(), out.x());
        if (length > 0.8 * em)
            painter.drawPolygon(QPolygonF(
                {tip, tip - 0.6 * em * out + 0.22 * em * side, tip - 0.6 * em * out - 0.22 * em * side}));
        else
            painter.drawEllipse(tip, 0.2 * em, 0.2 * em);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(theme.colour(ink));
        const double reach = 0.5 * em + 0.9 * em * std::abs(out.x());
        text(tip + reach * out, one.name);
    }
};

QString inWords(const PolarPicture& polar) {
    QStringList parts{polar.title};
    for (const PolarPicture::Arrow& arrow : polar.arrows)
        parts << tr("%1: %2 %3 at %4 degrees.")
                     .arg(arrow.name, significant(arrow.amount), polar.unit, fixedText(arrow.degrees, 0));
    for (const PolarPicture::Circle& circle : polar.circles)
        parts << tr("%1: circle of %2 %3.").arg(circle.name, significant(circle.radius), polar.unit);
    return parts.join(QChar(' '));
}

}  // namespace

void paintPolar(QPainter& painter, const QRectF& rect, const PolarPicture& polar, const Theme& theme,
                const QFont& font) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(font);
    const double em = QFontMetricsF(font).height();
    painter.setPen(theme.colour(Role::Ink));
    painter.drawText(QRectF(rect.left(), rect.top(), rect.width(), 1.2 * em), Qt::AlignCenter, polar.title);
    painter.setPen(theme.colour(Role::MutedInk));
    const double reach = reachOf(polar);
    const QString foot = reach > 0 ? polar.unit : polar.empty;
    painter.drawText(QRectF(rect.left(), rect.bottom() - 2.2 * em, rect.width(), 2.2 * em),
                     Qt::AlignHCenter | Qt::AlignBottom | Qt::TextWordWrap, foot);
    const QRectF inside = rect.adjusted(0, 1.2 * em, 0, -1.3 * em);
    const double radius = std::min(inside.width(), inside.height()) / 2 - 1.8 * em;
    if (radius > em && reach > 0) {
        Drawing drawing{painter, polar, theme, inside, inside.center(), radius / reach, radius, em};
        drawing.grid(reach);
        drawing.circles();
        for (const PolarPicture::Arrow& arrow : polar.arrows)
            drawing.arrow(arrow);
    }
    painter.restore();
}

PolarDrawing::PolarDrawing(const Theme& theme, QWidget* parent)
    : DrawnPicture(theme, {19, 17}, {11, 12}, inWords, paintPolar, parent) {
    setObjectName(QStringLiteral("polarDrawing"));
    setAccessibleName(tr("Vibration of the runs as arrows"));
}

}  // namespace fettle
