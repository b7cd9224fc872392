#include "ui/plot/waterfall_item.h"

#include <qwt_interval.h>
#include <qwt_scale_map.h>

#include <QImage>
#include <algorithm>

namespace fettle {

namespace {

constexpr int kBlock = 16;  // columns coloured before they are turned into rows of the image

using Part = WaterfallData::Part;

// What each pixel of an axis covers, between its two edges.
template <class Within>
std::vector<Part> partsOf(const QwtScaleMap& map, int pixels, const Within& within) {
    std::vector<Part> parts(static_cast<std::size_t>(pixels));
    for (int i = 0; i < pixels; ++i) {
        const double a = map.invTransform(i), b = map.invTransform(i + 1);
        parts[std::size_t(i)] = within(std::min(a, b), std::max(a, b));
    }
    return parts;
}

Part unionOf(const std::vector<Part>& parts) {
    Part all{std::size_t(-1), 0};
    for (const Part& part : parts) {
        if (part.first >= part.last) continue;
        all.first = std::min(all.first, part.first);
        all.last = std::max(all.last, part.last);
    }
    return all.first < all.last ? all : Part{};
}

// One column of pixels from the lines' maxima.
void colourColumn(const std::vector<float>& lines, std::size_t firstLine, const std::vector<Part>& pixels,
                  const ColourScale& scale, QRgb* out) {
    for (std::size_t y = 0; y < pixels.size(); ++y) {
        float most = WaterfallData::kGap;
        for (std::size_t k = pixels[y].first; k < pixels[y].last; ++k)
            most = std::max(most, lines[k - firstLine]);
        out[y] = scale.of(most);
    }
}

void copyBlock(const std::vector<QRgb>& block, int firstColumn, int columns, QImage& image) {
    const int height = image.height();
    for (int y = 0; y < height; ++y) {
        auto* row = reinterpret_cast<QRgb*>(image.scanLine(y)) + firstColumn;
        for (int c = 0; c < columns; ++c)
            row[c] = block[std::size_t(c) * std::size_t(height) + std::size_t(y)];
    }
}

}  // namespace

WaterfallItem::WaterfallItem() : QwtPlotRasterItem(QStringLiteral("waterfall")) {
    setItemAttribute(QwtPlotItem::AutoScale, false);
    setCachePolicy(QwtPlotRasterItem::PaintCache);
    setZ(-20);
}

void WaterfallItem::setData(std::shared_ptr<const WaterfallData> data) {
    data_ = std::move(data);
    invalidateCache();
    itemChanged();
}

void WaterfallItem::setScale(std::shared_ptr<const ColourScale> scale) {
    scale_ = std::move(scale);
    invalidateCache();
    itemChanged();
}

void WaterfallItem::setUprightFactor(double factor) {
    if (factor == factor_) return;
    factor_ = factor;
    invalidateCache();
}

QwtInterval WaterfallItem::interval(Qt::Axis axis) const {
    if (!data_ || data_->rows() == 0) return {};
    if (axis == Qt::YAxis) return {0, data_->top() * factor_};
    if (axis == Qt::XAxis) return {data_->cover(0).from, data_->cover(data_->rows() - 1).until};
    return {};
}

QImage WaterfallItem::renderImage(const QwtScaleMap& xMap, const QwtScaleMap& yMap, const QRectF&,
                                  const QSize& size) const {
    if (!data_ || !scale_ || size.isEmpty()) return {};
    QImage image(size, QImage::Format_RGB32);
    const auto columns =
        partsOf(xMap, size.width(), [&](double a, double b) { return data_->rowsWithin(a, b); });
    const auto pixels = partsOf(yMap, size.height(), [&](double a, double b) {
        return data_->linesWithin(a / factor_, b / factor_);
    });
    const Part lines = unionOf(pixels);
    const auto height = std::size_t(size.height());
    std::vector<float> most(lines.last - lines.first + 1, WaterfallData::kGap);
    std::vector<QRgb> block(kBlock * height), column(height);
    Part before{std::size_t(-1), std::size_t(-1)};
    for (int x = 0; x < size.width(); ++x) {
        const Part rows = columns[std::size_t(x)];
        if (!(rows == before)) {
            data_->maxOver(rows, lines, most.data());
            colourColumn(most, lines.first, pixels, *scale_, column.data());
            before = rows;
        }
        std::copy(column.begin(), column.end(), block.begin() + std::ptrdiff_t(x % kBlock * int(height)));
        if (x % kBlock == kBlock - 1 || x == size.width() - 1)
            copyBlock(block, x - x % kBlock, x % kBlock + 1, image);
    }
    return image;
}

}  // namespace fettle
