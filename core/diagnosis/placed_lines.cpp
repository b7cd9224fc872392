#include "core/diagnosis/placed_lines.h"

#include <algorithm>
#include <cmath>

#include "core/dsp/local_floor.h"
#include "core/dsp/orders.h"
#include "core/dsp/sharp_spectrum.h"

namespace fettle {

namespace {

constexpr double kLeastPlace = 0.01;  // bins
constexpr double kFluxTopHz = 1000;

PlacedLine placed(const Spectrum& spectrum, const std::vector<float>& z, std::size_t k) {
    const RefinedPeak top = refinedPeak(spectrum, k);
    const double height = z[k];
    return {top.frequencyHz, spectrum.stepHz * (kLeastPlace + 1.1 / std::sqrt(std::max(1.0, height))), height,
            top.value};
}

}  // namespace

std::vector<PlacedLine> linesBetween(const Spectrum& spectrum, const std::vector<float>& z, double lowHz,
                                     double highHz, double leastZ) {
    std::vector<PlacedLine> lines;
    if (spectrum.stepHz <= 0 || z.size() < 3 || highHz <= lowHz) return lines;
    const auto first = std::size_t(std::max(1.0, std::floor(lowHz / spectrum.stepHz)));
    const auto last = std::min(z.size() - 2, std::size_t(std::max(0.0, std::ceil(highHz / spectrum.stepHz))));
    for (std::size_t k = first; k <= last; ++k) {
        const auto& power = spectrum.values;
        if (z[k] < leastZ || power[k] <= power[k - 1] || power[k] < power[k + 1]) continue;
        const PlacedLine line = placed(spectrum, z, k);
        if (line.hz >= lowHz && line.hz <= highHz) lines.push_back(line);
    }
    return lines;
}

std::optional<PlacedLine> strongestOf(const std::vector<PlacedLine>& lines) {
    const auto top = std::max_element(lines.begin(), lines.end(),
                                      [](const auto& a, const auto& b) { return a.power < b.power; });
    if (top == lines.end()) return std::nullopt;
    return *top;
}

FluxView fluxView(const Channel& channel, std::size_t index, const WeighingSettings& settings) {
    FluxView view;
    view.channel = index;
    constexpr std::size_t kFewest = 256;
    if (channel.samples.size() < kFewest) return view;
    view.spectrum = sharpSpectrum(channel.samples, channel.sampleRateHz, kFluxTopHz);
    const std::vector<float> power(view.spectrum.values.begin(), view.spectrum.values.end());
    const auto width = std::size_t(std::lround(settings.floorWidthHz / view.spectrum.stepHz));
    view.z.resize(power.size());
    overLocalFloor(power, std::max<std::size_t>(25, width), view.z);
    return view;
}

}  // namespace fettle
