// Why: the plots show the very spectra a verdict was weighed on, at full resolution: recomputed from the
// recording, they equal what the examination saw. Shapes: bin k of a spectrum stands for k x dfHz. Units in
// the names. Thread: pure; costs about one examination.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/diagnosis/settings.h"
#include "core/machine/machine.h"
#include "core/signal/recording.h"

namespace fettle {

struct DetailSpectrum {
    double dfHz = 0;
    std::string unit;           // "mm/s r.m.s.", "g r.m.s.", "dB over floor"
    std::vector<float> values;  // linear for mm/s and g; dB for the envelope
};

struct RecordingDetail {
    std::string channel, view;   // what was asked for, resolved
    std::string quantity, unit;  // of the channel
    double sampleRateHz = 0;
    std::vector<float> samples;  // time waveform in the channel's unit, mean kept
    DetailSpectrum velocity;     // to 1000 Hz or the channel's top; empty for other quantities
    DetailSpectrum plain;        // acceleration in g, or the channel's own unit (flux)
    DetailSpectrum envelope;     // the view named: power over local floor, dB
    double shaftHz = 0, mainsHz = 0;
};

// `channel` empty: the first acceleration channel. NotFound for a channel or view that the recording has not.
Result<RecordingDetail> detailOf(const Machine& machine, const RecordingPtr& recording,
                                 const std::string& channel, const std::string& view,
                                 const WeighingSettings& settings = {});

}  // namespace fettle
