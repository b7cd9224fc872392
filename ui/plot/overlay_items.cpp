#include "ui/plot/overlay_items.h"

#include <qwt_scale_map.h>

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kLeastStripePx = 2, kNameApartPx = 4;

QColor faint(QColor colour, float alpha) {
    colour.setAlphaF(alpha);
    return colour;
}

// Highest (or lowest) of the cells on one pixel column, so that no narrow one is lost.
template <class Better>
QPolygonF outline(const std::vector<float>& values, double cell, const QwtScaleMap& xMap,
                  const QwtScaleMap& yMap, const QRectF& canvas, Better better) {
    QPolygonF line;
    const double least = std::min(xMap.s1(), xMap.s2()), most = std::max(xMap.s1(), xMap.s2());
    const auto first = std::size_t(std::max(0.0, std::floor(least / cell)));
    const auto last = std::min(values.size(), std::size_t(std::max(0.0, std::ceil(most / cell) + 1)));
    double column = -1e9;
    for (std::size_t i = first; i < last; ++i) {
        const double y = yMap.transform(double(values[i]));  // nothing on a logarithmic scale: far below
        const QPointF at(xMap.transform((double(i) + 0.5) * cell),
                         values[i] > 0 || std::isfinite(y)
                             ? std::clamp(y, canvas.top() - 2, canvas.bottom() + 2)
                             : canvas.bottom() + 2);
        if (std::floor(at.x()) == column && !line.isEmpty()) {
            if (better(at.y(), line.back().y())) line.back() = at;
        } else {
            line << at;
        }
        column = std::floor(at.x());
    }
    return line;
}

}  // namespace

BandItem::BandItem() {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(-5);
}

void BandItem::setBand(std::vector<float> low, std::vector<float> middle, std::vector<float> high,
                       double cell) {
    low_ = std::move(low);
    middle_ = std::move(middle);
    high_ = std::move(high);
    cell_ = cell;
    itemChanged();
}

void BandItem::setColour(const QColor& colour) {
    colour_ = colour;
    itemChanged();
}

void BandItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                    const QRectF& canvas) const {
    if (middle_.empty()) return;
    const auto higher = [](double a, double b) { return a < b; };  // on the screen
    const auto lower = [](double a, double b) { return a > b; };
    QPolygonF area = outline(high_, cell_, xMap, yMap, canvas, higher);
    const QPolygonF below = outline(low_, cell_, xMap, yMap, canvas, lower);
    for (auto at = below.crbegin(); at != below.crend(); ++at)
        area << QPointF(at->x(), std::min(at->y(), canvas.bottom() + 2));
    painter->setPen(Qt::NoPen);
    painter->setBrush(faint(colour_, 0.16F));
    painter->drawPolygon(area);
    painter->setBrush(QBrush(faint(colour_, 0.45F), Qt::BDiagPattern));
    painter->drawPolygon(area);
    painter->setPen(QPen(colour_, 1, Qt::DotLine));
    painter->setBrush(Qt::NoBrush);
    painter->drawPolyline(outline(middle_, cell_, xMap, yMap, canvas, higher));
}

RangeItem::RangeItem(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(-4);
}

void RangeItem::setRanges(std::vector<DefectBand> ranges, double unitHz) {
    std::stable_sort(ranges.begin(), ranges.end(),
                     [](const DefectBand& a, const DefectBand& b) { return a.importance < b.importance; });
    ranges_ = std::move(ranges);
    unitHz_ = unitHz;
    itemChanged();
}

void RangeItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap&,
                     const QRectF& canvas) const {
    const QFontMetricsF metrics(painter->font());
    const QColor ink = theme_.colour(Role::Accent);
    std::vector<std::pair<double, double>> taken;
    const auto stripe = [&](double fromHz, double untilHz, float alpha) {
        double left = xMap.transform(fromHz / unitHz_), right = xMap.transform(untilHz / unitHz_);
        const double room = std::max(0.0, kLeastStripePx - (right - left)) / 2;
        painter->fillRect(QRectF(left - room, canvas.top(), right - left + 2 * room, canvas.height()),
                          faint(ink, alpha));
    };
    for (const DefectBand& range : ranges_) {
        stripe(range.fromHz, range.untilHz, 0.10F);
        stripe(range.likelyFromHz, range.likelyUntilHz, 0.22F);
        const double x = xMap.transform((range.likelyFromHz + range.likelyUntilHz) / 2 / unitHz_);
        const double width = metrics.horizontalAdvance(range.name), left = x - width / 2;
        const bool free = std::none_of(taken.begin(), taken.end(), [&](const auto& t) {
            return left < t.second + kNameApartPx && t.first < left + width + kNameApartPx;
        });
        if (!free || left < canvas.left() || left + width > canvas.right()) continue;
        taken.push_back({left, left + width});
        painter->setPen(ink);
        painter->drawText(QRectF(left, canvas.bottom() - metrics.height() - 1, width + 2, metrics.height()),
                          Qt::AlignCenter, range.name);
    }
}

LegendItem::LegendItem(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(70);
}

void LegendItem::setEntries(std::vector<LegendEntry> entries) {
    entries_ = std::move(entries);
    itemChanged();
}

void LegendItem::draw(QPainter* painter, const QwtScaleMap&, const QwtScaleMap&, const QRectF& canvas) const {
    const QFontMetricsF metrics(painter->font());
    const double sample = 2 * metrics.height(), room = metrics.averageCharWidth();
    double y = canvas.top() + top_;
    for (const LegendEntry& entry : entries_) {
        const double most = canvas.width() - sample - 4 * room;
        const QString text = metrics.elidedText(entry.text, Qt::ElideRight, most);
        const double width = metrics.horizontalAdvance(text) + sample + 2 * room;
        const QRectF box(canvas.right() - width - room, y, width, metrics.height());
        painter->fillRect(box, faint(theme_.colour(Role::Ground), 0.8F));
        const QRectF key(box.left(), box.top() + 3, sample, box.height() - 6);
        if (entry.stroke == LegendEntry::Line) {
            painter->setPen(QPen(entry.colour, 1.6));
            painter->drawLine(QPointF(key.left(), key.center().y()), QPointF(key.right(), key.center().y()));
        } else {
            painter->fillRect(key, faint(entry.colour, 0.2F));
            if (entry.stroke == LegendEntry::Area)
                painter->fillRect(key, QBrush(faint(entry.colour, 0.6F), Qt::BDiagPattern));
        }
        painter->setPen(theme_.colour(Role::Ink));
        painter->drawText(QRectF(key.right() + room, y, width, metrics.height()), Qt::AlignVCenter, text);
        y += metrics.height();
    }
}

}  // namespace fettle
