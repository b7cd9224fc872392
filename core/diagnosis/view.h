// Why: a view is one spectrum in which a family of lines can be looked for, with every position ranked among
// all the others. Making views is the costly part of an examination; weighing a hypothesis only looks values
// up. Shapes: all views of one channel share the bin width df; index k stands for k x df Hz. Views are cut at
// their own top; `factor` has one entry more, 1, where every line beyond the view is looked up: it is neutral
// there. Thread: made by one thread, then read by any.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "core/diagnosis/settings.h"
#include "core/dsp/band_envelope.h"
#include "core/dsp/spectrum.h"

namespace fettle {

struct View {
    std::string name;  // "envelope 3000-3920 Hz, whitened"
    Band band;         // of an envelope view
    bool whitened = false;
    double omega = 0;           // weight among the views a bearing is looked for in
    std::size_t top = 0;        // bins [0, top) are real
    std::vector<float> z;       // power over local floor, size top
    std::vector<float> factor;  // f(p) of the rank p; 1 where masked or beyond; size top + 1
    std::vector<float> rankP;   // p, 0 where not ranked; size top
    std::string unusable;       // why this view is left out; empty: usable
};

// Where slip sidebands, mains and rotor lines stand: the third harmonic of an inverter's 130 Hz is below it.
inline constexpr double kSharpTopHz = 400;

struct ChannelViews {
    std::size_t channel = 0;  // index into Recording::channels, set by the caller
    double df = 0;            // Hz
    double sampleRateHz = 0;
    std::size_t samplesUsed = 0;  // the record is cut to a quick length, at most 1 % shorter
    std::size_t bins = 0;         // of the envelope views' common axis
    std::vector<View> envelopes;
    Spectrum spectrum;          // Power, Hann, of the whole record in one transform, g
    std::vector<float> plainZ;  // the spectrum over its local floor, same size
    Spectrum sharp;             // Power, Blackman-Harris, to kSharpTopHz, g: small lines beside large ones
};

// Transforms only; nothing is ranked yet (ranking needs the mask, the mask needs the speed). `accelerationG`
// in g; highestCarrierHz bounds how narrow a band may be.
ChannelViews makeViews(std::span<const double> accelerationG, double sampleRateHz, double highestCarrierHz,
                       const WeighingSettings& settings);

// Only the plain spectrum over its local floor, all that a comb asks for; the floor's median is `fewestBins`
// wide or more.
ChannelViews plainViews(std::span<const double> samples, double sampleRateHz, std::size_t fewestBins);

// Ranks every position of an envelope view among the unmasked ones: fills rankP and factor.
// `masked` has ChannelViews::bins entries, non-zero where an ordinary line stands.
void rankViews(ChannelViews& views, const std::vector<std::uint16_t>& masked,
               const WeighingSettings& settings);

}  // namespace fettle
