#include "core/trend/spectrum_band.h"

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

// The value below which `share` of them lie; reorders.
float quantile(std::vector<float>& values, double share) {
    const auto at = std::ptrdiff_t(std::lround(share * double(values.size() - 1)));
    std::nth_element(values.begin(), values.begin() + at, values.end());
    return values[std::size_t(at)];
}

}  // namespace

std::vector<float> movedToSpeed(const SoundSpectrum& spectrum, double shaftHz) {
    if (!(spectrum.shaftHz > 0) || !(shaftHz > 0)) return spectrum.lines;
    const double stretch = shaftHz / spectrum.shaftHz;
    std::vector<float> moved(spectrum.lines.size(), -1);
    for (std::size_t i = 0; i < moved.size(); ++i) {
        const auto to = std::size_t((double(i) + 0.5) * stretch);
        if (to < moved.size()) moved[to] = std::max(moved[to], spectrum.lines[i]);
    }
    for (std::size_t i = 0; i < moved.size(); ++i)  // cells between two that were stretched apart
        if (moved[i] < 0) moved[i] = i > 0 ? moved[i - 1] : 0;
    return moved;
}

SpectrumBand bandOf(const std::vector<SoundSpectrum>& spectra, double shaftHz, double share) {
    SpectrumBand band;
    if (spectra.empty()) return band;
    const std::size_t cells = spectra.back().lines.size();
    band.topHz = spectra.back().topHz;
    std::vector<std::vector<float>> rows;
    for (const SoundSpectrum& one : spectra)
        if (one.lines.size() == cells && one.topHz == band.topHz) rows.push_back(movedToSpeed(one, shaftHz));
    band.spectra = rows.size();
    std::vector<float> column(rows.size());
    for (std::size_t i = 0; i < cells; ++i) {
        std::transform(rows.begin(), rows.end(), column.begin(), [i](const auto& row) { return row[i]; });
        band.low.push_back(quantile(column, share));
        band.middle.push_back(quantile(column, 0.5));
        band.high.push_back(quantile(column, 1 - share));
    }
    return band;
}

}  // namespace fettle
