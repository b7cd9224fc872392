// Why: speed and mains are wanted far finer than the bins of a spectrum lie. A line that stands alone can be
// placed between bins by its neighbours, the better the higher it stands above the floor. Source: bound on
// the frequency of a tone in noise, Rife and Boorstyn, IEEE Trans. Inf. Theory 20 (1974) 591-598: standard
// deviation about 0.55 bins over the root of power over floor. Units: Hz; z is power over local floor; the
// uncertainty is a half-width of about two standard deviations, and never below a hundredth of a bin.
#pragma once

#include <optional>
#include <vector>

#include "core/diagnosis/settings.h"
#include "core/dsp/spectrum.h"
#include "core/signal/recording.h"

namespace fettle {

struct PlacedLine {
    double hz = 0, plusMinusHz = 0;
    double z = 0, power = 0;
};

// Tops between two frequencies that stand `leastZ` above their floor, rising in frequency. `spectrum` is of
// kind Power, `z` of its size.
std::vector<PlacedLine> linesBetween(const Spectrum& spectrum, const std::vector<float>& z, double lowHz,
                                     double highHz, double leastZ);
std::optional<PlacedLine> strongestOf(const std::vector<PlacedLine>& lines);

// A stray-flux channel: under a four-term Blackman-Harris window, whose side lobes lie 92 dB down, so that
// slip sidebands 60 dB below the mains are seen.
struct FluxView {
    std::size_t channel = 0;  // index into Recording::channels
    Spectrum spectrum;        // Power
    std::vector<float> z;
};
FluxView fluxView(const Channel& channel, std::size_t index, const WeighingSettings& settings);

}  // namespace fettle
