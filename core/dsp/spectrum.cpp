#include "core/dsp/spectrum.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/dsp/statistics.h"

namespace fettle {

namespace {

// Mean square of a sine on each line, of one segment after another.
class SegmentPower {
  public:
    SegmentPower(const SpectrumOptions& options, std::size_t size)
        : removeMean_(options.removeMean), window_(makeWindow(options.window, size)), windowed_(size) {
        const double sum = std::accumulate(window_.begin(), window_.end(), 0.0);
        scale_ = 1 / (sum * sum);
    }

    const FftVector<double>& window() const { return window_; }

    const std::vector<double>& of(std::span<const double> segment) {
        const double sum = removeMean_ ? std::accumulate(segment.begin(), segment.end(), 0.0) : 0;
        const double mean = sum / double(segment.size());
        for (std::size_t i = 0; i < segment.size(); ++i)
            windowed_[i] = (segment[i] - mean) * window_[i];
        forwardReal(windowed_, bins_);
        power_.resize(bins_.size());
        for (std::size_t k = 0; k < bins_.size(); ++k) {
            const bool edge = k == 0 || 2 * k == segment.size();
            power_[k] = std::norm(bins_[k]) * scale_ * (edge ? 1 : 2);
        }
        return power_;
    }

  private:
    bool removeMean_;
    double scale_ = 1;
    FftVector<double> window_, windowed_;
    FftVector<std::complex<double>> bins_;
    std::vector<double> power_;
};

std::size_t hopOf(const SpectrumOptions& options, std::size_t size) {
    const double hop = double(size) * (1 - std::clamp(options.overlap, 0.0, 1.0));
    return std::clamp<std::size_t>(std::size_t(std::lround(hop)), 1, size);
}

// Expected median of n exponentially distributed powers of mean 1.
double medianBias(std::size_t n) {
    double bias = 1;
    for (std::size_t i = 2; i <= n - 1; i += 2)
        bias += 1 / double(i + 1) - 1 / double(i);
    return bias;
}

using PowerRows = std::vector<std::vector<double>>;

std::vector<double> meanOver(const PowerRows& rows) {
    std::vector<double> mean(rows[0].size());
    for (const auto& row : rows)
        for (std::size_t k = 0; k < row.size(); ++k)
            mean[k] += row[k] / double(rows.size());
    return mean;
}

std::vector<double> medianOver(const PowerRows& rows) {
    const double bias = medianBias(rows.size());
    std::vector<double> out(rows[0].size()), column(rows.size());
    for (std::size_t k = 0; k < out.size(); ++k) {
        for (std::size_t i = 0; i < rows.size(); ++i)
            column[i] = rows[i][k];
        out[k] = median(column) / bias;
    }
    return out;
}

Spectrum averaged(std::span<const double> signal, double sampleRateHz, const SpectrumOptions& options,
                  std::size_t size) {
    Spectrum spectrum;
    spectrum.window = options.window;
    spectrum.unit = options.unit;
    spectrum.kind = options.kind;
    if (size == 0) return spectrum;
    SegmentPower power(options, size);
    PowerRows rows;
    const std::size_t hop = hopOf(options, size);
    for (std::size_t at = 0; at + size <= signal.size(); at += hop)
        rows.push_back(power.of(signal.subspan(at, size)));
    spectrum.kind = SpectrumKind::Power;
    spectrum.stepHz = sampleRateHz / double(size);
    spectrum.noiseBandwidthBins = noiseBandwidthBins(power.window());
    spectrum.transformSize = size;
    spectrum.segments = rows.size();
    spectrum.values = options.average == AverageOver::Median ? medianOver(rows) : meanOver(rows);
    return converted(spectrum, options.kind);
}

double toPower(const Spectrum& from, std::size_t line, double value) {
    switch (from.kind) {
        case SpectrumKind::Amplitude:
            return value * value / (from.isEdge(line) ? 1 : 2);
        case SpectrumKind::Rms:
            return value * value;
        case SpectrumKind::Power:
            return value;
        case SpectrumKind::Density:
            break;
    }
    return value * from.noiseBandwidthBins * from.stepHz;
}

double fromPower(const Spectrum& to, std::size_t line, double power) {
    switch (to.kind) {
        case SpectrumKind::Amplitude:
            return std::sqrt(power * (to.isEdge(line) ? 1 : 2));
        case SpectrumKind::Rms:
            return std::sqrt(power);
        case SpectrumKind::Power:
            return power;
        case SpectrumKind::Density:
            break;
    }
    return power / (to.noiseBandwidthBins * to.stepHz);
}

// How much of a line's cell lies in the band, 0 to 1.
double shareInside(const Spectrum& spectrum, std::size_t line, double lowHz, double highHz) {
    const double centre = spectrum.frequencyHz(line), half = spectrum.stepHz / 2;
    const double from = std::max(0.0, centre - half), to = std::min(spectrum.topHz(), centre + half);
    const double inside = std::min(to, highHz) - std::max(from, lowHz);
    return to > from ? std::clamp(inside / (to - from), 0.0, 1.0) : 0;
}

}  // namespace

Spectrum periodogram(std::span<const double> signal, double sampleRateHz, const SpectrumOptions& options) {
    return averaged(signal, sampleRateHz, options, signal.size());
}

Spectrum welch(std::span<const double> signal, double sampleRateHz, const SpectrumOptions& options) {
    return averaged(signal, sampleRateHz, options, std::min(options.segment, signal.size()));
}

Spectrum converted(const Spectrum& spectrum, SpectrumKind kind) {
    Spectrum out = spectrum;
    out.kind = kind;
    for (std::size_t k = 0; k < out.values.size(); ++k)
        out.values[k] = fromPower(out, k, toPower(spectrum, k, spectrum.values[k]));
    return out;
}

std::string valueUnit(const Spectrum& spectrum) {
    const std::string& unit = spectrum.unit;
    const bool plain = unit.find('/') == std::string::npos;
    std::string squared = unit == "1" || unit.empty() ? "1" : (plain ? unit : "(" + unit + ")") + "²";
    switch (spectrum.kind) {
        case SpectrumKind::Amplitude:
            return unit + " peak";
        case SpectrumKind::Rms:
            return unit + " r.m.s.";
        case SpectrumKind::Power:
            return squared;
        case SpectrumKind::Density:
            break;
    }
    return squared + "/Hz";
}

double bandRms(const Spectrum& spectrum, double lowHz, double highHz) {
    if (spectrum.values.empty()) return 0;
    // Lines beyond one on either side of the band have no share in it.
    const auto lineAt = [&](double hz, double besides) {
        return std::size_t(std::clamp(hz / spectrum.stepHz + besides, 0.0, double(spectrum.values.size())));
    };
    const std::size_t first = lineAt(lowHz, -1), end = lineAt(highHz, 2);
    // Lines three or more from either end lie in the band whole.
    const std::size_t wholeFrom = std::min(end, first + 3),
                      wholeTo = std::max(wholeFrom, end - std::min<std::size_t>(end, 4));
    double sum = 0;
    const auto addPart = [&](std::size_t from, std::size_t to) {
        for (std::size_t k = from; k < to; ++k) {
            const double share = shareInside(spectrum, k, lowHz, highHz);
            if (share > 0) sum += share * toPower(spectrum, k, spectrum.values[k]);
        }
    };
    addPart(first, wholeFrom);
    for (std::size_t k = wholeFrom; k < wholeTo; ++k)
        sum += toPower(spectrum, k, spectrum.values[k]);
    addPart(wholeTo, end);
    return std::sqrt(sum / spectrum.noiseBandwidthBins);
}

}  // namespace fettle
