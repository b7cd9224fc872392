// Why: one capture as it was measured: every channel that was taken together, raw, with what the file and its
// sidecar say about it. Immutable once read and shared by pointer: everything after it can be computed again
// from it. Units: samples are in the channel's `unit` (g, m/s2, mm/s, 1 for flux) after `scale`; time is the
// first sample, UTC.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/time.h"

namespace fettle {

enum class Simultaneous { Yes, No, Unknown };  // Unknown: no phase between channels

struct Channel {
    std::string name;             // as the sidecar or the file names it; "1", "2" .. where neither does
    std::string point;            // measuring point id; empty: the machine's first point
    std::string unit;             // as stored; empty where nobody says
    double sampleRateHz = 0;      // > 0
    std::vector<double> samples;  // finite numbers only
    double fullScale = 0;  // largest value the file's number format can hold, in `unit`; 0: no limit (float)
    // Where the file held whole numbers of `bits` bits, a sample is number x 2^(1 - bits) x scale, rounded
    // once; 0 bits: float or text.
    int bits = 0;
    double scale = 1;
    std::string pointHint = {};  // what the file calls the place: taken where the machine has such a point
};

struct Recording {
    std::string file;     // the path as given
    std::string machine;  // tag, from the sidecar; may be empty
    std::string point;
    std::optional<Instant> time;
    std::optional<Instant> fileTime;  // as the file dates itself, in no zone: UTC where somebody says so
    std::string timeSource;
    std::optional<Instant> received;
    std::string capture;  // joins files of one capture
    Simultaneous simultaneous = Simultaneous::Unknown;
    std::optional<double> speedRpm;
    std::optional<double> outputHz;  // inverter output frequency
    std::optional<double> frameTempC, ambientTempC;
    std::optional<double> loadPct;
    std::vector<Channel> channels;      // at least one; all of the same length and rate within one file
    std::vector<std::string> warnings;  // sentences: unknown keys, what was assumed

    double seconds() const {
        return channels.empty() ? 0 : double(channels[0].samples.size()) / channels[0].sampleRateHz;
    }
};

using RecordingPtr = std::shared_ptr<const Recording>;

}  // namespace fettle
