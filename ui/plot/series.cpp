#include "ui/plot/series.h"

#include <algorithm>
#include <cmath>

namespace fettle {

std::size_t Series::firstFrom(double value) const {
    if (!x.empty()) return std::size_t(std::lower_bound(x.begin(), x.end(), value) - x.begin());
    if (!(dx > 0) || value <= x0) return 0;
    return std::min(size(), std::size_t(std::ceil((value - x0) / dx)));
}

std::pair<std::size_t, std::size_t> Series::within(double from, double until) const {
    std::size_t first = firstFrom(from), last = firstFrom(until);
    first = first > 0 ? first - 1 : 0;
    last = std::min(size(), last + 1);
    return {std::min(first, last), last};
}

std::size_t Series::nearest(double value) const {
    const std::size_t after = std::min(firstFrom(value), size() - 1);
    if (after == 0) return 0;
    return value - at(after - 1) < at(after) - value ? after - 1 : after;
}

namespace {

// Points that fall on one pixel column, kept in their order.
class PixelColumn {
  public:
    void add(const QPointF& point) {
        if (count_++ == 0) {
            first_ = least_ = most_ = point;
            leastAt_ = mostAt_ = 0;
        }
        if (point.y() < least_.y()) {
            least_ = point;
            leastAt_ = count_;
        }
        if (point.y() > most_.y()) {
            most_ = point;
            mostAt_ = count_;
        }
        last_ = point;
    }
    void flushTo(QPolygonF& line) {
        if (count_ == 0) return;
        line << first_;
        const bool leastFirst = leastAt_ < mostAt_;
        for (const QPointF& point : {leastFirst ? least_ : most_, leastFirst ? most_ : least_})
            if (count_ > 2 && point != line.back()) line << point;
        if (count_ > 1 && last_ != line.back()) line << last_;
        count_ = 0;
    }

  private:
    QPointF first_, least_, most_, last_;
    std::size_t count_ = 0, leastAt_ = 0, mostAt_ = 0;
};

}  // namespace

std::vector<QPolygonF> decimated(const Series& series, std::size_t first, std::size_t last,
                                 const std::function<double(double)>& toX,
                                 const std::function<double(double)>& toY) {
    std::vector<QPolygonF> pieces;
    QPolygonF line;
    PixelColumn column;
    double columnPx = 0;
    const auto close = [&] {
        column.flushTo(line);
        if (!line.isEmpty()) pieces.push_back(std::move(line));
        line = {};
    };
    for (std::size_t i = first; i < last; ++i) {
        const float y = series.y[i];
        if (!std::isfinite(y)) {
            close();
            continue;
        }
        const QPointF point(toX(series.at(i)), toY(double(y)));
        if (std::floor(point.x()) != columnPx) column.flushTo(line);
        columnPx = std::floor(point.x());
        column.add(point);
        if (!series.endsHere.empty() && series.endsHere[i]) close();
    }
    close();
    return pieces;
}

}  // namespace fettle
