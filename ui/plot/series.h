// Why: a curve of a million points is drawn from at most four a pixel column (first, least, most, last), so
// that no peak is lost and no time spent on what cannot be seen. Immutable, shared; x rises. Evenly spaced
// series carry no x. Units: those of the axes they are drawn in.
#pragma once

#include <QPolygonF>
#include <functional>
#include <memory>
#include <vector>

namespace fettle {

struct Series {
    double x0 = 0, dx = 1;       // of an evenly spaced one
    std::vector<double> x;       // else: one a value
    std::vector<float> y;        // NaN breaks the line
    std::vector<bool> endsHere;  // line broken after this point; empty: nowhere

    std::size_t size() const { return y.size(); }
    double at(std::size_t i) const { return x.empty() ? x0 + dx * double(i) : x[i]; }
    std::size_t firstFrom(double value) const;  // first index with x >= value
    // Index range [first, last) within [from, until], one point more to either side.
    std::pair<std::size_t, std::size_t> within(double from, double until) const;
    std::size_t nearest(double value) const;  // of a series that is not empty
};
using SeriesPtr = std::shared_ptr<const Series>;

// Unbroken pieces in pixels, at most four points a column. `toX`, `toY`: axis to pixel.
std::vector<QPolygonF> decimated(const Series& series, std::size_t first, std::size_t last,
                                 const std::function<double(double)>& toX,
                                 const std::function<double(double)>& toY);

}  // namespace fettle
