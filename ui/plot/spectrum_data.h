// Why: what a spectrum plot is given, as plain data made elsewhere: the measured lines, what is laid over
// them (a reference recording, the band of the sound machine, the ranges in which a bearing's lines may lie)
// and the spacings a sideband cursor can be set to. Immutable and shared once handed over. Units in the
// names.
#pragma once

#include <QString>
#include <memory>
#include <vector>

#include "core/dsp/motion_lines.h"

namespace fettle {

struct SpectrumData {
    QString unit;           // "mm/s r.m.s.", "dB over floor"
    bool decibels = false;  // values are in dB already: no other amplitude or scale
    double least = 0;       // the axis begins there
    double dfHz = 0;
    std::vector<float> values;
    double shaftHz = 0;      // 0: not known
    double bandwidthHz = 0;  // noise bandwidth of a line; 0: not known, no density
};
using SpectrumPtr = std::shared_ptr<const SpectrumData>;

// Another recording in the same unit.
struct SpectrumReference {
    QString name;  // "5 May 2026 06:20 UTC", "M-NDE x"
    SpectrumPtr data;
};

// Cell i covers [i, i + 1) x topHz / cells; in the unit of the spectrum it is laid over.
struct SpectrumBandData {
    QString name;  // "sound: 42 days from 5 January 2026"
    QString unit;
    double topHz = 0;
    std::vector<float> low, middle, high;
};

// Where a defect's line may lie: the likely part, and the farthest.
struct DefectBand {
    QString name;  // "2 x BPFO"
    QString note;  // for the readout
    double fromHz = 0, untilHz = 0, likelyFromHz = 0, likelyUntilHz = 0;
    int importance = 0;  // smaller: named first
};

struct NamedSpacing {
    QString name;  // "cage of driver DE"
    double hz = 0;
};

enum class AmplitudeScale { Linear, Logarithmic, Decibels };

struct AmplitudeChoice {
    LineReading reading = LineReading::Rms;
    AmplitudeScale scale = AmplitudeScale::Linear;
    bool operator==(const AmplitudeChoice&) const = default;
};

}  // namespace fettle
