#include "ui/panels/weight_chart.h"

#include <QDateTime>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kFindingDban = 20;

QString dayOf(double ms) {
    return QDateTime::fromMSecsSinceEpoch(qint64(ms), Qt::UTC).toString(QStringLiteral("d MMM yyyy"));
}

}  // namespace

WeightChart::WeightChart(const Theme& theme, QWidget* parent) : QWidget(parent), theme_(theme) {
    setObjectName(QStringLiteral("weightChart"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&theme_, &Theme::changed, this, qOverload<>(&QWidget::update));
}

void WeightChart::setPoints(std::vector<WeightPoint> points) {
    std::sort(points.begin(), points.end(),
              [](const WeightPoint& a, const WeightPoint& b) { return a.ms < b.ms; });
    points_ = std::move(points);
    low_ = -10;
    high_ = 30;
    for (const WeightPoint& p : points_) {
        low_ = std::min(low_, p.dban);
        high_ = std::max(high_, p.dban * 1.05);
    }
    setAccessibleName(points_.empty() ? tr("Weight over the weeks: none")
                                      : tr("Weight over the weeks: %1 recordings, the last %2 decibans")
                                            .arg(points_.size())
                                            .arg(points_.back().dban, 0, 'f', 1));
    setToolTip(accessibleName());
    update();
}

double WeightChart::highestTen() const {
    return std::floor(high_ / 10) * 10;
}

QSize WeightChart::sizeHint() const {
    return {20 * fontMetrics().averageCharWidth(), 7 * fontMetrics().height()};
}

void WeightChart::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QFontMetrics metrics = fontMetrics();
    if (points_.empty()) {
        painter.setPen(theme_.colour(Role::MutedInk));
        painter.drawText(rect(), Qt::AlignCenter, tr("no weight was kept for this fault"));
        return;
    }
    const int label = metrics.horizontalAdvance(QString::number(high_, 'f', 0)) + 6;
    const QRectF area = QRectF(rect()).adjusted(label, metrics.height() / 2.0, -2, -metrics.height() - 2.0);
    const double from = points_.front().ms, span = std::max(points_.back().ms - from, 1.0);
    const auto y = [&](double dban) {
        return area.bottom() - (dban - low_) / (high_ - low_) * area.height();
    };
    std::vector<double> written;  // where numbers stand; the finding's goes first
    for (const double level : {kFindingDban, 0.0, highestTen()}) {
        const bool needed = level == kFindingDban;
        painter.setPen(QPen(theme_.colour(needed      ? Role::Limit
                                          : level > 0 ? Role::Rule
                                                      : Role::MutedInk),
                            1, needed ? Qt::DashLine : Qt::SolidLine));
        painter.drawLine(QPointF(area.left(), y(level)), QPointF(area.right(), y(level)));
        const bool taken = std::any_of(written.begin(), written.end(), [&](double at) {
            return std::abs(at - y(level)) < metrics.height() * 0.8;
        });
        if (taken) continue;
        written.push_back(y(level));
        painter.setPen(theme_.colour(Role::MutedInk));
        painter.drawText(QRectF(0, y(level) - metrics.height() / 2.0, label - 4, metrics.height()),
                         Qt::AlignRight | Qt::AlignVCenter, QString::number(level, 'f', 0));
    }
    const double room = area.width() / double(points_.size());
    for (const WeightPoint& p : points_) {
        const double x = area.left() + (p.ms - from) / span * (area.width() - 2) + 1;
        painter.setPen(QPen(theme_.colour(p.dban >= 0 ? Role::For : Role::Against),
                            std::clamp(room * 0.6, 1.0, 4.0), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(x, y(0)), QPointF(x, y(p.dban)));
    }
    painter.setPen(theme_.colour(Role::MutedInk));
    const QRectF below(area.left(), area.bottom() + 2, area.width(), metrics.height());
    painter.drawText(below, Qt::AlignLeft, dayOf(from));
    if (points_.size() > 1) painter.drawText(below, Qt::AlignRight, dayOf(points_.back().ms));
}

}  // namespace fettle
