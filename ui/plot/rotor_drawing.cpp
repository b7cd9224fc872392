#include "ui/plot/rotor_drawing.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "core/base/units.h"

#include "ui/model/numbers.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kSmallEms = 4;

QPointF towards(const QPointF& centre, double radius, double screen) {
    const double angle = screen * kTwoPi / 360;
    return centre + QPointF(radius * std::sin(angle), -radius * std::cos(angle));
}

// A text about a point, kept inside the rectangle.
void label(QPainter& painter, const QRectF& inside, const QPointF& at, const QString& text) {
    const QFontMetricsF metrics(painter.font());
    QRectF box(0, 0, metrics.horizontalAdvance(text) + 2, metrics.height());
    box.moveCenter(at);
    box.moveLeft(
        std::clamp(box.left(), inside.left(), std::max(inside.left(), inside.right() - box.width())));
    box.moveTop(std::clamp(box.top(), inside.top(), std::max(inside.top(), inside.bottom() - box.height())));
    painter.drawText(box, Qt::AlignCenter, text);
}

bool numbered(const RotorPicture& rotor) {
    return !rotor.places.empty() && rotor.places.size() <= 16 && rotor.masses.empty();
}

// What is drawn with, in the painter's units.
struct RotorSketch {
    Q_DECLARE_TR_FUNCTIONS(fettle::RotorSketch)
  public:
    QPainter& painter;
    const RotorPicture& rotor;
    const Theme& theme;
    QRectF rect;
    QPointF centre;
    double radius = 0, em = 0;
    double out = 0;  // what numbers at the rim take: marks stand beyond them

    QPointF at(double share, double degrees) const {
        return towards(centre, share * radius, screenDegrees(rotor, degrees));
    }
    void pen(Role role, double width, Qt::PenStyle style = Qt::SolidLine) {
        painter.setPen(QPen(theme.colour(role), width * em / 14, style));
    }

    // Too small for words inside the rim.
    bool small() const { return radius < kSmallEms * em; }

    void rim() {
        pen(Role::Ink, 1.4);
        painter.setBrush(theme.colour(Role::Panel));
        painter.drawEllipse(centre, radius, radius);
        painter.drawEllipse(centre, 0.12 * radius, 0.12 * radius);
        painter.setBrush(Qt::NoBrush);
        for (int degrees = 0; degrees < 360; degrees += 30) {
            pen(Role::MutedInk, 1);
            painter.drawLine(at(degrees % 90 == 0 ? 0.9 : 0.94, degrees), at(1, degrees));
            if (degrees % 90 || small()) continue;
            label(painter, rect, at(rotor.places.empty() ? 0.64 : 0.58, degrees),
                  QStringLiteral("%1°").arg(degrees));
        }
    }

    void mark() {
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.colour(Role::Ink));
        painter.drawPolygon(QPolygonF({at(0.99, 0), at(0.86, 3.5), at(0.86, -3.5)}));
        painter.setBrush(Qt::NoBrush);
        pen(Role::Ink, 1.4);
        const double rimTop = centre.y() - radius - out;
        painter.drawRect(QRectF(centre.x() - 0.3 * em, rimTop - 1.25 * em, 0.6 * em, 0.9 * em));
        painter.drawText(QRectF(centre.x() + 0.6 * em, rimTop - 1.75 * em, 6 * em, 1.5 * em),
                         Qt::AlignVCenter | Qt::AlignLeft, tr("pick-up"));
    }

    // An arrow along the inside of the rim, the way it turns.
    void rotation() {
        const double sign = rotor.clockwise ? 1 : -1, share = 0.42;
        QPainterPath path;
        for (int i = 0; i <= 24; ++i) {
            const QPointF point = towards(centre, share * radius, sign * (-55 + 110.0 * i / 24));
            i == 0 ? path.moveTo(point) : path.lineTo(point);
        }
        pen(Role::Accent, 1.8);
        painter.drawPath(path);
        const QPointF tip = towards(centre, share * radius, sign * 60);
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.colour(Role::Accent));
        painter.drawPolygon(QPolygonF({tip, towards(centre, (share + 0.05) * radius, sign * 50),
                                       towards(centre, (share - 0.05) * radius, sign * 50)}));
        painter.setBrush(Qt::NoBrush);
        painter.setPen(theme.colour(Role::Accent));
        if (!small()) label(painter, rect, centre + QPointF(0, 0.28 * radius), tr("turns"));
    }

    void places() {
        for (const RotorPicture::Place& place : rotor.places) {
            const QPointF point = at(0.9, place.degrees);
            pen(Role::MutedInk, 1);
            painter.setBrush(theme.colour(Role::Ground));
            painter.drawEllipse(point, 0.28 * em, 0.28 * em);
            if (!place.free) {
                const QPointF half(0.2 * em, 0.2 * em), other(0.2 * em, -0.2 * em);
                painter.drawLine(point - half, point + half);
                painter.drawLine(point - other, point + other);
            }
            painter.setBrush(Qt::NoBrush);
            if (numbered(rotor))
                label(painter, rect,
                      at(1, place.degrees) + (at(1, place.degrees) - centre) * (0.8 * em / radius),
                      QString::number(place.number));
        }
    }

    void masses() {
        for (const RotorPicture::Mass& mass : rotor.masses) {
            pen(Role::Ink, 1.2);
            const Role fill = mass.trial ? Role::Ground : Role::Accent;
            painter.setBrush(theme.colour(fill));
            painter.drawEllipse(at(0.9, mass.degrees), 0.42 * em, 0.42 * em);
            painter.setBrush(Qt::NoBrush);
            painter.setPen(theme.colour(Role::Ink));
            const QPointF rimPoint = at(1, mass.degrees), away = (rimPoint - centre) / radius;
            const double reach = 0.7 * em + 1.6 * em * std::abs(away.x());
            label(painter, rect, rimPoint + reach * away, mass.name);
        }
    }

    void sensors() {
        for (const RotorPicture::Sensor& sensor : rotor.sensors) {
            const double share = 1.04 + out / radius;
            const QPointF tip = at(share, sensor.degrees), away = (tip - centre) / (share * radius);
            const QPointF side(-away.y(), away.x());
            pen(Role::SecondCurve, 1.4);
            painter.drawPolygon(QPolygonF(
                {tip, tip + 0.8 * em * away + 0.4 * em * side, tip + 0.8 * em * away - 0.4 * em * side}));
            painter.setPen(theme.colour(Role::SecondCurve));
            const double reach = 1.5 * em + 2 * em * std::abs(away.x());
            label(painter, rect, tip + reach * away + 1.3 * em * side, sensor.name);
        }
    }
};

QString inWords(const RotorPicture& rotor) {
    const QString turns = rotor.clockwise ? tr("Turns clockwise.") : tr("Turns anticlockwise.");
    const QString counted = rotor.withRotation
                                ? tr("Degrees are counted with the rotation from the mark.")
                                : tr("Degrees are counted against the rotation from the mark.");
    QStringList parts{rotor.seenFrom, turns, counted};
    for (const RotorPicture::Mass& mass : rotor.masses)
        parts << tr("%1 at %2 degrees.").arg(mass.name, fixedText(mass.degrees, 0));
    parts.removeAll(QString());
    return parts.join(QChar(' '));
}

}  // namespace

double screenDegrees(const RotorPicture& rotor, double degrees) {
    return rotor.clockwise == rotor.withRotation ? degrees : -degrees;
}

void paintRotor(QPainter& painter, const QRectF& rect, const RotorPicture& rotor, const Theme& theme,
                const QFont& font) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(font);
    const double em = QFontMetricsF(font).height();
    painter.setPen(theme.colour(Role::Ink));
    painter.drawText(QRectF(rect.left(), rect.top(), rect.width(), 1.2 * em), Qt::AlignCenter, rotor.title);
    const QString counted =
        rotor.withRotation ? tr("degrees with the rotation") : tr("degrees against the rotation");
    painter.setPen(theme.colour(Role::MutedInk));
    const QString words = rotor.seenFrom.isEmpty() ? counted : rotor.seenFrom + QChar('\n') + counted;
    const int flags = Qt::AlignHCenter | Qt::AlignBottom | Qt::TextWordWrap;
    const double footHeight = painter.boundingRect(rect, flags, words).height() + 0.1 * em;
    const QRectF foot(rect.left(), rect.bottom() - footHeight, rect.width(), footHeight);
    painter.drawText(foot, flags, words);
    const QRectF inside = rect.adjusted(0, 1.2 * em, 0, -footHeight);
    const double out = numbered(rotor) ? 1.1 * em : 0;
    const double radius = std::min(inside.width() / 2 - 2.8 * em, inside.height() / 2 - 1.9 * em - out);
    if (radius > em) {
        RotorSketch drawing{painter, rotor, theme, inside, inside.center(), radius, em, out};
        drawing.rim();
        drawing.rotation();
        drawing.mark();
        drawing.places();
        drawing.sensors();
        drawing.masses();
    }
    painter.restore();
}

RotorDrawing::RotorDrawing(const Theme& theme, QWidget* parent)
    : DrawnPicture(theme, {19, 19}, {11, 13}, inWords, paintRotor, parent) {
    setObjectName(QStringLiteral("rotorDrawing"));
    setAccessibleName(tr("Rotor with its angles"));
}

}  // namespace fettle
