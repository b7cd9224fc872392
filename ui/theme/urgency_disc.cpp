#include "ui/theme/urgency_disc.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPixmap>
#include <algorithm>

namespace fettle {

namespace {

constexpr int kTop = 90 * 16, kFullTurn = 360 * 16;  // QPainter's sixteenths of a degree

// Clockwise from the top; 0 for a ring alone.
int filledSixteenths(Urgency urgency) {
    switch (urgency) {
        case Urgency::Watch:
            return kFullTurn / 4;
        case Urgency::Plan:
            return kFullTurn / 2;
        case Urgency::Act:
            return kFullTurn;
        case Urgency::Leave:
        case Urgency::Unseen:
            break;
    }
    return 0;
}

}  // namespace

Urgency urgencyOf(const std::string& word) {
    if (word == "leave") return Urgency::Leave;
    if (word == "watch") return Urgency::Watch;
    if (word == "plan") return Urgency::Plan;
    if (word == "act") return Urgency::Act;
    return Urgency::Unseen;
}

QString urgencyWord(Urgency urgency) {
    static const char* const words[] = {
        QT_TRANSLATE_NOOP("Urgency", "leave"), QT_TRANSLATE_NOOP("Urgency", "watch"),
        QT_TRANSLATE_NOOP("Urgency", "plan"), QT_TRANSLATE_NOOP("Urgency", "act"),
        QT_TRANSLATE_NOOP("Urgency", "unseen")};
    return QCoreApplication::translate("Urgency", words[int(urgency)]);
}

void paintUrgencyDisc(QPainter& painter, const QRectF& in, Urgency urgency, const QColor& ink) {
    const double side = std::min(in.width(), in.height());
    const double line = std::max(side / 11, 0.5);
    QRectF ring(0, 0, side - line, side - line);
    ring.moveCenter(in.center());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QPen pen(ink, line);
    pen.setCapStyle(Qt::FlatCap);
    if (urgency == Urgency::Unseen) pen.setDashPattern({2.2, 2.2});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(ring);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    if (const int filled = filledSixteenths(urgency)) painter.drawPie(ring, kTop, -filled);
    painter.restore();
}

QIcon urgencyIcon(Urgency urgency, const QColor& ink, int size) {
    QIcon icon;
    for (const int ratio : {1, 2, 3}) {
        QPixmap pixmap(size * ratio, size * ratio);
        pixmap.setDevicePixelRatio(ratio);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paintUrgencyDisc(painter, QRectF(0, 0, size, size), urgency, ink);
        painter.end();
        for (const QIcon::Mode mode : {QIcon::Normal, QIcon::Selected, QIcon::Disabled})
            icon.addPixmap(pixmap, mode);
    }
    return icon;
}

}  // namespace fettle
