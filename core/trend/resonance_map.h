// Why: an inverter sweeps a machine through its speeds for nothing: weeks of recordings at many speeds show
// where an order grows because it meets a natural frequency. Level against speed and frequency, in bins of
// speed; an order runs along a diagonal, a resonance stays where it is. Every order's level is followed over
// speed with the square of speed taken out (force of a turning mass); a top that falls by 3 dB to both sides
// is a crossing; crossings of several orders or channels at one frequency support each other. A line that is
// there at full height when no order stands near is somebody else's (mains, a neighbour), never a resonance.
// What was never run is said. Units: Hz, r/min, level as the spectra have it (mm/s r.m.s.). Source: order
// diagonals and fixed ridges of a run-up diagram, any textbook of rotor dynamics; half-power points: ISO
// 2041; limits here: common practice, no source; what they miss and invent is tested on simulated machines.
// Thread: pure.
#pragma once

#include <string>
#include <vector>

namespace fettle {

struct SpeedSpectrum {
    double rpm = 0;  // of the shaft
    double topHz = 0;
    std::vector<float> lines;  // line i covers [i, i + 1) x topHz / lines.size()
};

struct ResonanceOptions {
    int highestOrder = 12;
    std::vector<int> moreOrders = {};  // blades
    std::size_t fewestInBin = 3;       // recordings
    std::size_t fewestBins = 6;
    double leastRange = 0.1;  // of the middle speed
    double leastDb = 3;       // of a top over both sides
    double loneDb = 4.5;      // of one that a single order of a single channel shows
    double fixedDb = 6;       // a line within so much of the top when no order is near is another's
    double aboveFloorDb = 6;  // of the order's line at the top
    double sameHz = 0.04;     // relative, of tops that belong together
};

struct SpeedBin {
    double fromRpm = 0, toRpm = 0;
    std::size_t count = 0;
    double middle() const { return (fromRpm + toRpm) / 2; }
};

// One channel's spectra gathered by speed.
struct SpeedMap {
    std::string channel;         // "M-DE x"
    std::vector<SpeedBin> bins;  // those with a recording, slowest first
    double topHz = 0;
    std::size_t lines = 0;
    std::vector<float> middle, most;  // bins x lines: median and largest of the recordings
};

// One order that grows where it meets a frequency.
struct Crossing {
    std::string channel;
    int order = 0;
    double rpm = 0, hz = 0;
    double fromRpm = 0, toRpm = 0;  // 3 dB down, or as far as it was run
    double riseDb = 0;              // over the lower side that is higher
    double level = 0;               // at the top
    std::size_t recordings = 0;     // in the band
    bool whole = true;              // both half-power points were run
};

struct Resonance {
    double hz = 0;
    double sharpness = 0;                  // Q; 0: the half-power points were not run
    std::vector<Crossing> crossings;       // highest level first
    std::size_t orders = 0, channels = 0;  // that show it
};

// A line that keeps its frequency and height whatever the speed.
struct FixedLine {
    std::string channel;
    double hz = 0, level = 0;
};

// A band of speeds to skip, with what meets there.
struct SkipBand {
    double fromRpm = 0, toRpm = 0;
    int order = 0;
    double hz = 0, riseDb = 0, level = 0;
    std::size_t recordings = 0;
    std::size_t orders = 0, channels = 0;  // of the resonance
    bool small = false;  // the order is under a quarter of the largest anywhere: seen, hardly worth skipping
};

struct ResonanceMap {
    std::vector<SpeedMap> channels;
    std::vector<Resonance> resonances;  // highest level first
    std::vector<SkipBand> bands;        // highest level first
    std::vector<FixedLine> fixed;
    std::vector<std::string> unseen;  // what it cannot say: speeds never run
    std::string lacking;              // "not enough speeds: ..."; then there are no resonances
    double leastRpm = 0, mostRpm = 0;
    std::size_t recordings = 0;  // of the channel that has most
};

struct ChannelSpectra {
    std::string channel;
    std::vector<SpeedSpectrum> spectra;
};

// `speedRange`: that the drive may run, r/min; 0: not known.
ResonanceMap resonanceMap(const std::vector<ChannelSpectra>& channels, double leastRpm = 0,
                          double mostRpm = 0, const ResonanceOptions& options = {});

}  // namespace fettle
