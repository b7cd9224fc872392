#include "ui/panels/weight_chart.h"

#include <QHelpEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "ui/model/numbers.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

constexpr double kNeededDban = 20, kNearPx = 12;

Instant instantOf(double ms) {
    return Instant(std::chrono::milliseconds(std::int64_t(ms)));
}

}  // namespace

WeightChart::WeightChart(const Theme& theme, QWidget* parent) : QWidget(parent), theme_(theme) {
    setObjectName(QStringLiteral("weightChart"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setFocusPolicy(Qt::StrongFocus);
    connect(&theme_, &Theme::changed, this, qOverload<>(&QWidget::update));
}

void WeightChart::setPoints(std::vector<WeightPoint> points) {
    std::erase_if(points, [](const WeightPoint& p) { return !std::isfinite(p.dban); });
    std::sort(points.begin(), points.end(),
              [](const WeightPoint& a, const WeightPoint& b) { return a.ms < b.ms; });
    points_ = std::move(points);
    low_ = -10;
    high_ = 30;
    for (const WeightPoint& p : points_) {
        low_ = std::min(low_, p.dban);
        high_ = std::max(high_, p.dban * 1.05);
    }
    say();
    update();
}

void WeightChart::setZone(const QTimeZone& zone) {
    zone_ = zone;
    update();
}

void WeightChart::setChosen(std::optional<std::int64_t> recording) {
    chosen_ = recording;
    say();
    update();
}

void WeightChart::say() {
    const auto at = chosenPlace();
    if (points_.empty())
        setAccessibleName(tr("Weight over the weeks: none"));
    else if (at)
        setAccessibleName(tr("Weight over the weeks, chosen recording: %1").arg(textOf(points_[*at])));
    else
        setAccessibleName(tr("Weight over the weeks: %1 recordings, the last %2 decibans")
                              .arg(points_.size())
                              .arg(fixedText(points_.back().dban, 1)));
}

QString WeightChart::dayOf(double ms) const {
    return dateText(siteTime(instantOf(ms), zone_).date());
}

QString WeightChart::textOf(const WeightPoint& point) const {
    return tr("%1: %2 decibans").arg(momentText(instantOf(point.ms), zone_)).arg(fixedText(point.dban, 1));
}

double WeightChart::highestTen() const {
    return std::floor(high_ / 10) * 10;
}

QSize WeightChart::sizeHint() const {
    return {20 * fontMetrics().averageCharWidth(), 7 * fontMetrics().height()};
}

QRectF WeightChart::area() const {
    const int label = fontMetrics().horizontalAdvance(fixedText(high_, 0)) + 6;
    const int high = fontMetrics().height();
    return QRectF(rect()).adjusted(label, high / 2.0, -2, -high - 2.0);
}

double WeightChart::y(double dban) const {
    const QRectF in = area();
    return in.bottom() - (dban - low_) / (high_ - low_) * in.height();
}

double WeightChart::xOf(const WeightPoint& point) const {
    if (points_.empty()) return 0;
    const QRectF in = area();
    const double from = points_.front().ms, span = std::max(points_.back().ms - from, 1.0);
    return in.left() + (point.ms - from) / span * (in.width() - 2) + 1;
}

std::optional<std::size_t> WeightChart::nearest(double x) const {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < points_.size(); ++i)
        if (!best || std::abs(xOf(points_[i]) - x) < std::abs(xOf(points_[*best]) - x)) best = i;
    if (best && std::abs(xOf(points_[*best]) - x) > kNearPx) best.reset();
    return best;
}

std::optional<std::size_t> WeightChart::chosenPlace() const {
    for (std::size_t i = 0; chosen_ && i < points_.size(); ++i)
        if (points_[i].recording == *chosen_) return i;
    return std::nullopt;
}

void WeightChart::pick(std::size_t place) {
    emit recordingPicked(points_[place].recording, points_[place].ms);
}

void WeightChart::mousePressEvent(QMouseEvent* event) {
    setFocus();
    const auto at = nearest(event->position().x());
    if (!at || event->button() != Qt::LeftButton) return;
    if (event->modifiers() & Qt::ControlModifier)
        emit weekPicked(points_[*at].ms);
    else
        pick(*at);
}

void WeightChart::keyPressEvent(QKeyEvent* event) {
    if (points_.empty()) return QWidget::keyPressEvent(event);
    const std::size_t last = points_.size() - 1;
    const auto at = chosenPlace();
    switch (event->key()) {
        case Qt::Key_Left:
            return pick(at ? *at - (*at > 0) : last);
        case Qt::Key_Right:
            return pick(at ? std::min(*at + 1, last) : last);
        case Qt::Key_Home:
            return pick(0);
        case Qt::Key_End:
            return pick(last);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            emit weekPicked(points_[at.value_or(last)].ms);
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

bool WeightChart::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    auto* help = static_cast<QHelpEvent*>(event);
    const auto at = nearest(help->pos().x());
    QToolTip::showText(help->globalPos(),
                       at ? tr("%1. Click for this recording, Ctrl and click for the week that ends here.")
                                .arg(textOf(points_[*at]))
                          : tr("One stroke a recording, decibans; dashed: what a finding needs"),
                       this);
    return true;
}

// Numbers keep clear of each other; that of a finding goes first.
void WeightChart::paintLevels(QPainter& painter) const {
    const QRectF in = area();
    const int high = fontMetrics().height();
    std::vector<double> written;
    for (const double level : {kNeededDban, 0.0, highestTen()}) {
        const bool needed = level == kNeededDban;
        painter.setPen(QPen(theme_.colour(needed      ? Role::Limit
                                          : level > 0 ? Role::Rule
                                                      : Role::MutedInk),
                            1, needed ? Qt::DashLine : Qt::SolidLine));
        painter.drawLine(QPointF(in.left(), y(level)), QPointF(in.right(), y(level)));
        if (std::any_of(written.begin(), written.end(),
                        [&](double at) { return std::abs(at - y(level)) < high * 0.8; }))
            continue;
        written.push_back(y(level));
        painter.setPen(theme_.colour(Role::MutedInk));
        painter.drawText(QRectF(0, y(level) - high / 2.0, in.left() - 4, high),
                         Qt::AlignRight | Qt::AlignVCenter, fixedText(level, 0));
    }
}

void WeightChart::paintStrokes(QPainter& painter) const {
    const double wide = std::clamp(area().width() / double(points_.size()) * 0.6, 1.0, 4.0);
    for (const WeightPoint& p : points_) {
        painter.setPen(
            QPen(theme_.colour(p.dban >= 0 ? Role::For : Role::Against), wide, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(xOf(p), y(0)), QPointF(xOf(p), y(p.dban)));
    }
    const auto at = chosenPlace();
    if (!at) return;
    painter.setPen(QPen(theme_.colour(Role::Cursor), 1));
    const double x = xOf(points_[*at]);
    painter.drawLine(QPointF(x, area().top()), QPointF(x, area().bottom()));
    painter.setBrush(theme_.colour(Role::Cursor));
    painter.drawEllipse(QPointF(x, y(points_[*at].dban)), 3, 3);
}

void WeightChart::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    if (points_.empty()) {
        painter.setPen(theme_.colour(Role::MutedInk));
        painter.drawText(rect(), Qt::AlignCenter, tr("no weight was kept for this fault"));
        return;
    }
    paintLevels(painter);
    paintStrokes(painter);
    const QRectF in = area();
    painter.setPen(theme_.colour(Role::MutedInk));
    const QRectF below(in.left(), in.bottom() + 2, in.width(), fontMetrics().height());
    painter.drawText(below, Qt::AlignLeft, dayOf(points_.front().ms));
    if (points_.size() > 1) painter.drawText(below, Qt::AlignRight, dayOf(points_.back().ms));
    if (!hasFocus()) return;
    painter.setPen(QPen(theme_.colour(Role::Accent), 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

}  // namespace fettle
