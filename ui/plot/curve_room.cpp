#include "ui/plot/curve_room.h"

#include <qwt_scale_map.h>

#include <QPointF>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kStepsAWidth = 4;

double heightAt(const QPointF& from, const QPointF& until, double x) {
    const double wide = until.x() - from.x();
    return wide > 0 ? from.y() + (until.y() - from.y()) * (x - from.x()) / wide : until.y();
}

// Of a line that runs to the right.
bool crosses(const QPointF& from, const QPointF& until, const QRectF& box) {
    const double left = std::max(from.x(), box.left()), right = std::min(until.x(), box.right());
    if (left > right) return false;
    const double a = heightAt(from, until, left), b = heightAt(from, until, right);
    return std::max(a, b) >= box.top() && std::min(a, b) <= box.bottom();
}

bool crossedBy(const Series& curve, const QRectF& box, const QwtScaleMap& xMap, const QwtScaleMap& yMap) {
    const auto [first, last] = curve.within(xMap.invTransform(box.left()), xMap.invTransform(box.right()));
    for (std::size_t i = first; i < last; ++i) {
        if (!std::isfinite(curve.y[i])) continue;
        const QPointF point(xMap.transform(curve.at(i)), yMap.transform(double(curve.y[i])));
        const bool joined =
            i > first && std::isfinite(curve.y[i - 1]) && (curve.endsHere.empty() || !curve.endsHere[i - 1]);
        const QPointF before =
            joined ? QPointF(xMap.transform(curve.at(i - 1)), yMap.transform(double(curve.y[i - 1]))) : point;
        if (crosses(before, point, box)) return true;
    }
    return false;
}

}  // namespace

bool CurveRoom::crossed(const QRectF& box) const {
    return std::any_of(curves.begin(), curves.end(), [&](const SeriesPtr& curve) {
        return curve && curve->size() > 0 && crossedBy(*curve, box, xMap, yMap);
    });
}

QRectF CurveRoom::freed(const QRectF& box, double right, const std::vector<QRectF>& taken) const {
    const auto onAnother = [&](const QRectF& place) {
        return std::any_of(taken.begin(), taken.end(),
                           [&](const QRectF& other) { return other.intersects(place); });
    };
    for (QRectF place = box; place.right() <= right; place.translate(box.width() / kStepsAWidth, 0))
        if (!crossed(place) && !onAnother(place)) return place;
    return box;
}

}  // namespace fettle
