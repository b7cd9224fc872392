#include "ui/plot/trend_names.h"

#include <qwt_plot.h>
#include <qwt_scale_map.h>

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {
constexpr double kPad = 3;
}

LineNames::LineNames(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(22);
}

void LineNames::setNames(std::vector<Named> names) {
    names_ = std::move(names);
    itemChanged();
}

// At the last value that is seen, above it; pushed down where another name stands already.
std::vector<LineNames::Label> LineNames::labels(const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                                                const QRectF& canvas, const QFontMetricsF& metrics) const {
    std::vector<Label> all;
    for (const Named& one : names_) {
        if (!one.series || one.series->size() == 0) continue;
        const std::size_t after = one.series->firstFrom(xMap.s2());
        if (after == 0) continue;
        const std::size_t at = std::min(after, one.series->size()) - 1;
        const QwtScaleMap& upright = one.right && plot() ? plot()->canvasMap(QwtPlot::yRight) : yMap;
        const double x = std::min(xMap.transform(one.series->at(at)), canvas.right() - kPad);
        const double y = upright.transform(double(one.series->y[at]));
        if (x < canvas.left() || !std::isfinite(y)) continue;
        const double width = metrics.horizontalAdvance(one.name) + 2 * kPad;
        QRectF box(x - width, y - metrics.height() - kPad, width, metrics.height());
        box.moveLeft(std::max(box.left(), canvas.left()));
        box.moveTop(std::clamp(box.top(), canvas.top(), canvas.bottom() - metrics.height()));
        all.push_back({box, one.name, one.ink});
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Label& a, const Label& b) { return a.box.top() < b.box.top(); });
    for (std::size_t i = 1; i < all.size(); ++i)
        all[i].box.moveTop(std::max(all[i].box.top(), all[i - 1].box.bottom()));
    double floor = canvas.bottom();
    for (std::size_t i = all.size(); i-- > 0; floor = all[i].box.top())
        all[i].box.moveBottom(std::min(all[i].box.bottom(), floor));
    return all;
}

void LineNames::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                     const QRectF& canvas) const {
    QColor ground = theme_.colour(Role::Ground);
    ground.setAlphaF(0.8F);
    for (const Label& label : labels(xMap, yMap, canvas, QFontMetricsF(painter->font()))) {
        painter->fillRect(label.box, ground);
        painter->setPen(theme_.colour(label.ink));
        painter->drawText(label.box, Qt::AlignCenter, label.name);
    }
}

}  // namespace fettle
