#include "ui/plot/cascade_item.h"

#include <qwt_painter.h>
#include <qwt_scale_map.h>

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kApartPx = 6;  // of two traces
constexpr int kMostTraces = 200, kLarger = 2;
constexpr double kPickPx = 4;

using Part = WaterfallData::Part;

// The upper edge of one trace, column by column, in pixels from the top; NaN where there is nothing.
class Outline {
  public:
    Outline(const WaterfallData& data, const QwtScaleMap& xMap, double factor, int width)
        : data_(data), width_(width) {
        for (int x = 0; x < width; ++x) {
            const double a = xMap.invTransform(x) / factor, b = xMap.invTransform(x + 1) / factor;
            columns_.push_back(data.linesWithin(std::min(a, b), std::max(a, b)));
            middles_.push_back((a + b) / 2 / (data.top() / double(data.lines())) - 0.5);
        }
        lines_.resize(data.lines());
    }
    // Value of each column: the largest of its lines; between two lines that are farther apart than a
    // column, on the way from one to the other.
    const std::vector<float>& values(Part rows) {
        data_.maxOver(rows, {0, data_.lines()}, lines_.data());
        values_.assign(std::size_t(width_), WaterfallData::kGap);
        for (std::size_t x = 0; x < values_.size(); ++x) {
            const Part& part = columns_[x];
            if (part.first >= part.last) continue;
            const bool fine = part.last - part.first > 1 || holdsMiddle(x);
            values_[x] = fine ? *std::max_element(lines_.begin() + std::ptrdiff_t(part.first),
                                                  lines_.begin() + std::ptrdiff_t(part.last))
                              : between(middles_[x]);
        }
        return values_;
    }

  private:
    bool holdsMiddle(std::size_t x) const {
        const double next = x + 1 < middles_.size() ? middles_[x + 1] : middles_[x];
        const double half = std::abs(next - middles_[x]) / 2;
        return std::abs(middles_[x] - std::round(middles_[x])) <= half;
    }
    float between(double at) const {
        const double low = std::clamp(std::floor(at), 0.0, double(lines_.size() - 1));
        const auto i = std::size_t(low), j = std::min(i + 1, lines_.size() - 1);
        if (lines_[i] < 0 || lines_[j] < 0) return std::max(lines_[i], lines_[j]);
        const auto f = float(std::clamp(at - low, 0.0, 1.0));
        return lines_[i] * (1 - f) + lines_[j] * f;
    }

    const WaterfallData& data_;
    int width_;
    std::vector<Part> columns_;
    std::vector<double> middles_;  // in lines
    std::vector<float> lines_, values_;
};

// What is seen over everything nearer.
class Horizon {
  public:
    Horizon(QImage& image) : image_(image), top_(std::size_t(image.width()), image.height()) {}
    // From the column before to this one, above what is nearer.
    void column(int x, int from, int to, QRgb ink) {
        int& top = top_[std::size_t(x)];
        const int high = std::min(from, to), low = std::max(from, to);
        for (int y = std::max(high, 0); y <= std::min(low, top - 1); ++y)
            reinterpret_cast<QRgb*>(image_.scanLine(y))[x] = ink;
        top = std::min(top, std::max(high, 0));
    }

  private:
    QImage& image_;
    std::vector<int> top_;
};

}  // namespace

CascadeItem::CascadeItem(const Theme& theme, const WaterfallLook& look) : theme_(theme), look_(look) {
    setItemAttribute(QwtPlotItem::Legend, false);
    setZ(-20);
}

void CascadeItem::setSelected(std::optional<std::size_t> row) {
    selected_ = row;
    itemChanged();
}

std::vector<CascadeItem::Trace> CascadeItem::traces(const QwtScaleMap& yMap) const {
    std::vector<Trace> all;
    if (look_.empty()) return all;
    const double span = (yMap.s2() - yMap.s1()) / (1 + kRise);
    const double height = std::abs(yMap.p2() - yMap.p1()) / (1 + kRise);
    const int steps = std::clamp(int(height / kApartPx), 1, kMostTraces);
    const WaterfallData& data = *look_.data();
    const auto within = [&](int step) {
        return data.rowsWithin(yMap.s1() + span * step / steps, yMap.s1() + span * (step + 1) / steps);
    };
    std::size_t done = 0;
    for (int step = 0; step < steps; ++step) {
        Part rows = within(step);
        rows.first = std::max(rows.first, done);
        if (rows.first >= rows.last) continue;
        done = rows.last;
        all.push_back({rows, (data.ms(rows.first) + data.ms(rows.last - 1)) / 2});
    }
    return all;
}

double CascadeItem::riseOf(float value, double fullPx) const {
    return std::clamp(look_.range().share(double(value)), 0.0, 1.2) * fullPx;
}

QImage CascadeItem::picture(const QwtScaleMap& xMap, const QwtScaleMap& yMap, QSize size) const {
    QImage image(size, QImage::Format_RGB32);
    image.fill(theme_.colour(Role::Ground));
    Outline outline(*look_.data(), xMap, look_.uprightFactor(), size.width());
    Horizon horizon(image);
    const double fullPx = std::abs(yMap.p2() - yMap.p1()) * kRise / (1 + kRise);
    const ColourRange range = look_.range();
    const QRgb usual = theme_.colour(Role::Curve).rgb(), chosen = theme_.colour(Role::Cursor).rgb();
    for (const Trace& trace : traces(yMap)) {
        const bool selected = selected_ && *selected_ >= trace.rows.first && *selected_ < trace.rows.last;
        const auto& values = outline.values(trace.rows);
        const double base = yMap.transform(trace.ms);
        std::optional<int> before;
        for (int x = 0; x < size.width(); ++x) {
            const float value = values[std::size_t(x)];
            if (value < 0) {
                before.reset();
                continue;
            }
            const double share = std::clamp(range.share(double(value)), 0.0, 1.2);
            const int y = int(std::lround(base - share * fullPx));
            // Thick enough to be whole in one pixel when smoothed.
            horizon.column(x, before.value_or(y), y + 2, selected ? chosen : usual);
            before = y;
        }
    }
    return image;
}

void CascadeItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                       const QRectF& canvas) const {
    if (look_.empty() || canvas.isEmpty()) return;
    const double ratio = QwtPainter::devicePixelRatio(painter->device()) * kLarger;
    const QSize size(int(std::ceil(canvas.width() * ratio)), int(std::ceil(canvas.height() * ratio)));
    QwtScaleMap x = xMap, y = yMap;
    x.setPaintInterval((xMap.p1() - canvas.left()) * ratio, (xMap.p2() - canvas.left()) * ratio);
    y.setPaintInterval((yMap.p1() - canvas.top()) * ratio, (yMap.p2() - canvas.top()) * ratio);
    const QImage large = picture(x, y, size);
    painter->drawImage(canvas, large.scaled(size / kLarger, Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
}

// Of all traces that pass near, the one whose outline is nearest.
std::optional<WaterfallData::Cell> CascadeItem::cellAt(const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                                                       const QPointF& at) const {
    if (look_.empty()) return std::nullopt;
    const WaterfallData& data = *look_.data();
    const double factor = look_.uprightFactor();
    const Part lines = data.linesWithin(xMap.invTransform(at.x() - kPickPx) / factor,
                                        xMap.invTransform(at.x() + kPickPx) / factor);
    const double fullPx = std::abs(yMap.p2() - yMap.p1()) * kRise / (1 + kRise);
    std::optional<WaterfallData::Cell> best;
    double least = 1e300, horizon = 1e300;
    for (const Trace& trace : traces(yMap)) {
        const auto peak = data.peakWithin(trace.rows, lines);
        if (!peak) continue;
        const double y = yMap.transform(trace.ms) - riseOf(peak->value, fullPx);
        const bool seen = y < horizon;
        horizon = std::min(horizon, y);
        if (!seen || std::abs(y - at.y()) >= least) continue;
        least = std::abs(y - at.y());
        best = peak;
    }
    return best;
}

}  // namespace fettle
