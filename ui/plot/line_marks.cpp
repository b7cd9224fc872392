#include "ui/plot/line_marks.h"

#include <qwt_scale_map.h>

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr int kNameRows = 2;
constexpr double kMarksApartPx = 6;

double symbolSize(const QFontMetricsF& metrics) {
    return metrics.height() * 0.5;
}

// Rows of names that do not overlap: greedy, in the order given.
class NameRows {
  public:
    explicit NameRows(const QRectF& canvas) : canvas_(canvas) {}

    // Where a name of `width` may stand beside x: row and left edge; nothing where there is no room.
    std::optional<std::pair<int, double>> place(double x, double width) {
        const double left =
            std::clamp(x - width / 2, canvas_.left(), std::max(canvas_.left(), canvas_.right() - width));
        for (int row = 0; row < kNameRows; ++row) {
            const bool free = std::none_of(taken_[row].begin(), taken_[row].end(), [&](const auto& t) {
                return left < t.second + kMarksApartPx && t.first < left + width + kMarksApartPx;
            });
            if (!free) continue;
            taken_[row].push_back({left, left + width});
            return std::pair{row, left};
        }
        return std::nullopt;
    }

  private:
    QRectF canvas_;
    std::vector<std::pair<double, double>> taken_[kNameRows];
};

}  // namespace

LineMarks::LineMarks(const Theme& theme) : theme_(theme) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setRenderHint(QwtPlotItem::RenderAntialiased);
    setZ(60);
}

void LineMarks::setMarks(std::vector<LineMark> marks) {
    std::stable_sort(marks.begin(), marks.end(),
                     [](const LineMark& a, const LineMark& b) { return a.importance < b.importance; });
    marks_ = std::move(marks);
    itemChanged();
}

std::optional<LineMark> LineMarks::markNear(const QwtScaleMap& xMap, double x, double px) const {
    const LineMark* best = nullptr;
    for (const LineMark& mark : marks_) {
        const double away = std::abs(xMap.transform(mark.at) - x);
        if (away <= px && (!best || away < std::abs(xMap.transform(best->at) - x))) best = &mark;
    }
    return best ? std::optional(*best) : std::nullopt;
}

double LineMarks::headroom(const QFontMetricsF& metrics) {
    return kNameRows * metrics.height() + symbolSize(metrics) + 4;
}

QColor inkOf(const Theme& theme, MarkKind kind) {
    switch (kind) {
        case MarkKind::Found:
            return theme.colour(Role::Found);
        case MarkKind::Absent:
            return theme.colour(Role::Absent);
        case MarkKind::LeftOut:
            return theme.colour(Role::LeftOut);
        case MarkKind::Ordinary:
            break;
    }
    return theme.colour(Role::MutedInk);
}

void paintMark(QPainter& painter, const Theme& theme, MarkKind kind, const QPointF& tip, double size) {
    const double half = size / 2;
    const QPolygonF triangle({tip, tip + QPointF(-half, -size), tip + QPointF(half, -size)});
    painter.setPen(QPen(inkOf(theme, kind), 1.2));
    painter.setBrush(kind == MarkKind::Found ? QBrush(inkOf(theme, kind))
                                             : QBrush(theme.colour(Role::Ground)));
    if (kind == MarkKind::Found || kind == MarkKind::Absent) {
        painter.drawPolygon(triangle);
    } else if (kind == MarkKind::LeftOut) {
        painter.drawLine(tip + QPointF(-half, -size), tip + QPointF(half, 0));
        painter.drawLine(tip + QPointF(half, -size), tip + QPointF(-half, 0));
    } else {
        painter.drawLine(tip, tip + QPointF(0, -half));
    }
}

void LineMarks::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap&,
                     const QRectF& canvas) const {
    const QFontMetricsF metrics(painter->font());
    const double size = symbolSize(metrics), tipY = canvas.top() + headroom(metrics);
    NameRows rows(canvas);
    for (const LineMark& mark : marks_) {
        const double x = xMap.transform(mark.at);
        if (x < canvas.left() || x > canvas.right()) continue;
        const bool found = mark.kind == MarkKind::Found;
        QPen stem(inkOf(theme_, mark.kind), 1, found ? Qt::SolidLine : Qt::DotLine);
        QColor faint = stem.color();
        faint.setAlphaF(found ? 0.45F : 0.6F);
        stem.setColor(faint);
        painter->setPen(stem);
        if (mark.kind != MarkKind::Ordinary) painter->drawLine(QPointF(x, tipY), QPointF(x, canvas.bottom()));
        paintMark(*painter, theme_, mark.kind, QPointF(x, tipY), size);
        const double width = metrics.horizontalAdvance(mark.name);
        if (const auto place = rows.place(x, width)) {
            const double bottom = tipY - size - 2 - place->first * metrics.height();
            painter->setPen(inkOf(theme_, mark.kind));
            painter->drawText(QRectF(place->second, bottom - metrics.height(), width + 2, metrics.height()),
                              Qt::AlignLeft | Qt::AlignVCenter, mark.name);
        }
    }
}

}  // namespace fettle
