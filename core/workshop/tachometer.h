// Why: a pick-up that sees a mark once a turn gives each recording the phase that balancing needs. Pulses are
// found in their channel wherever they reach (up or down from the quiet level), the turns between them become
// shaft angle, the vibration is read against it, and every turn gives one arrow at shaft speed; their mean is
// the reading, and the means of several stretches of the record tell whether it repeats. Accelerations are
// given as velocity. Units: amount r.m.s., mm/s for g, m/s2 and mm/s channels, else the channel's own; phase
// lag in degrees from the pulse's leading edge to the peak (phasor.h). Source: order tracking as core/dsp has
// it; a sine's component over whole turns is exact. Thread: pure, slow (call off the window's thread).
// Errors: Invalid where pulses are missing, doubled or too few; place "tachometer".
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/workshop/readings.h"

namespace fettle {

struct Pulses {
    std::vector<double> seconds;  // of the leading edges
    double rpm = 0;               // median of all turns
    double rpmSpreadShare = 0;    // largest less smallest turn, share of the median
};

// A mark stands out by 5 times the spread of the rest or more; turns that differ by over a fifth are a
// missing or a second pulse.
Result<Pulses> findPulses(std::span<const double> tachometer, double sampleRateHz);

struct OnceAsTurned {
    Polar reading;             // amount r.m.s. at lag
    std::string unit;          // "mm/s r.m.s."
    MeanReading stretches;     // of the record, as if they were repeat readings
    std::vector<Polar> parts;  // the stretches themselves
    double rpm = 0, rpmSpreadShare = 0;
    std::size_t turns = 0;
};

// `unit` of the signal as the recording has it. At least 10 whole turns.
Result<OnceAsTurned> onceAsTurned(std::span<const double> signal, const std::string& unit,
                                  std::span<const double> tachometer, double sampleRateHz);

}  // namespace fettle
