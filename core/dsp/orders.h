// Why: lines of a machine stand at multiples of its shaft speed. Where the speed wanders, a line smears over
// many bins; read against shaft angle instead of time it is sharp again. And a line's place is wanted finer
// than the bins lie. Source: Fyfe and Munck, Analysis of computed order tracking, MSSP 11 (1997) 187-205;
// peak through three log lines: Gasior and Gonzalez, AIP Conf. Proc. 732 (2004) 276-285. Units: order =
// frequency / shaft frequency = events a turn; angle in turns of the shaft. Thread: any.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/base/units.h"
#include "core/dsp/spectrum.h"

namespace fettle {

constexpr Order orderOf(Hertz frequency, Hertz shaft) {
    return Order(frequency / shaft);
}

// The shaft's angle against time. Between samples the speed is a straight line, so the angle is a parabola;
// before the first and after the last sample the speed stands still at theirs.
class ShaftAngle {
  public:
    struct SpeedSample {
        double seconds = 0;
        Hertz speed;
    };
    // At least one sample, times rising, speeds above zero and finite: otherwise Invalid with the sample's
    // number as place.
    static Result<ShaftAngle> fromSpeed(std::span<const SpeedSample> samples);
    static Result<ShaftAngle> fromConstant(Hertz speed);
    // From the times of a mark seen once a turn (at least two): the speed between marks is even.
    static Result<ShaftAngle> fromMarks(std::span<const double> seconds);

    double turnsAt(double seconds) const;  // 0 at time 0 for fromSpeed, at the first mark for fromMarks
    double secondsAt(double turns) const;
    Hertz speedAt(double seconds) const;

  private:
    // From `seconds` on, until the next piece: turns + speed dt + slope dt^2 / 2.
    struct Piece {
        double seconds = 0, turns = 0, speed = 0, slope = 0;
    };
    explicit ShaftAngle(std::vector<Piece> pieces) : pieces_(std::move(pieces)) {}
    const Piece& pieceAt(double Piece::*coordinate, double value) const;

    std::vector<Piece> pieces_;
};

struct TurnSignal {
    FftVector<double> samples;
    double samplesPerTurn = 0;  // use as sample rate: frequencies of its spectrum are orders
    double firstTurn = 0;       // angle of the first sample
};

// The signal at even steps of shaft angle, first sample of the signal at time 0. Interpolation: sinc under a
// Kaiser window (beta 8, 24 zero crossings a side), its cut-off at the lower of half the sample rate and half
// the samples a turn at the moment's speed, so nothing folds: flat within 0.01 dB to 0.9 of the cut-off, 80
// dB down from 1.12 of it. Angles whose kernel would reach beyond the record are left out; nothing left gives
// no samples.
TurnSignal resampledByAngle(std::span<const double> signal, double sampleRateHz, const ShaftAngle& angle,
                            unsigned samplesPerTurn);

struct RefinedPeak {
    double frequencyHz = 0;
    double value = 0;  // of the spectrum's kind
};

// Place and height of a lone line whose highest spectral line is `line`, by a parabola through the logarithm
// of it and its neighbours. For the Hann window the parabola's own bias is taken out: less than 0.001 of a
// step and 0.01 dB remain. For other windows it stays. Beside an edge, a zero or a higher neighbour the line
// comes back as it is.
RefinedPeak refinedPeak(const Spectrum& spectrum, std::size_t line);

}  // namespace fettle
