#include "core/dsp/orders.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace fettle {

namespace {

constexpr double kCrossings = 24;  // zero crossings of the sinc on a side
constexpr double kKaiserBeta = 8;  // ripple beyond the transition near -82 dB
constexpr std::size_t kPerCross =
    512;  // table entries a crossing; straight lines between are 1e-5 off at most
constexpr std::size_t kEntries = std::size_t(kCrossings) * kPerCross;

// sinc(v) times the Kaiser window, v = 0 .. kCrossings, and two zeros behind.
const std::vector<double>& kernelTable() {
    static const std::vector<double> table = [] {
        std::vector<double> t(kEntries + 2);
        for (std::size_t i = 0; i < kEntries; ++i) {
            const double v = double(i) / kPerCross, edge = v / kCrossings, x = std::numbers::pi * v;
            const double window = std::cyl_bessel_i(0, kKaiserBeta * std::sqrt(1 - edge * edge));
            t[i] = (i == 0 ? 1 : std::sin(x) / x) * window / std::cyl_bessel_i(0, kKaiserBeta);
        }
        return t;
    }();
    return table;
}

// The signal at a fractional sample, everything above `cut` of half the sample rate taken out. 0 < cut <= 1.
double interpolated(std::span<const double> signal, double position, double cut) {
    const std::vector<double>& table = kernelTable();
    const double reach = kCrossings / cut;
    const auto first = std::size_t(std::max(0.0, std::ceil(position - reach)));
    const auto last = std::size_t(std::min(double(signal.size() - 1), std::floor(position + reach)));
    double sum = 0;
    for (std::size_t i = first; i <= last; ++i) {
        const double at = std::min(std::abs(position - double(i)) * cut * kPerCross, double(kEntries));
        const auto entry = std::size_t(at);
        const double part = at - double(entry);
        sum += signal[i] * (table[entry] * (1 - part) + table[entry + 1] * part);
    }
    return sum * cut;
}

tl::unexpected<Error> refused(std::size_t sample, const char* rule) {
    return fail(ErrorKind::Invalid, "", "sample " + std::to_string(sample + 1), rule);
}

// Offset of the top of a parabola through three values, in steps from the middle one.
double parabolaTop(double before, double middle, double after) {
    return 0.5 * (before - after) / (before - 2 * middle + after);
}

// A Hann line seen through a parabola of logs lies up to 0.016 of a step too far out, an odd function of the
// offset that is nil at 0 and 1/2. The two numbers are a least-squares fit to the main lobe; 0.00013 of a
// step remains.
double withoutHannBias(double offset) {
    const double square = offset * offset;
    return offset - offset * (0.25 - square) * (0.2994 + 0.3934 * square);
}

// Height of the Hann window's main lobe `offset` bins off its top.
double hannLobe(double offset) {
    const double x = std::numbers::pi * offset;
    return (std::abs(x) < 1e-9 ? 1 : std::sin(x) / x) / (1 - offset * offset);
}

}  // namespace

Result<ShaftAngle> ShaftAngle::fromSpeed(std::span<const SpeedSample> samples) {
    if (samples.empty()) return fail(ErrorKind::Invalid, "", "", "a speed curve needs at least one sample");
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double at = samples[i].seconds, speed = samples[i].speed.value;
        if (!std::isfinite(at) || !std::isfinite(speed))
            return refused(i, "time and speed must be finite numbers");
        if (speed <= 0) return refused(i, "the speed must be above 0");
        if (i > 0 && at <= samples[i - 1].seconds) return refused(i, "times must rise from sample to sample");
        if (i > 0) {
            Piece& before = pieces.back();
            const double step = at - before.seconds;
            before.slope = (speed - before.speed) / step;
            pieces.push_back({at, before.turns + step * (before.speed + speed) / 2, speed, 0});
        } else {
            pieces.push_back({at, 0, speed, 0});
        }
    }
    // Ahead of the first sample the speed is the first sample's, and the angle is 0 at time 0.
    pieces.insert(pieces.begin(), {pieces[0].seconds - 1, -pieces[0].speed, pieces[0].speed, 0});
    ShaftAngle angle(std::move(pieces));
    const double origin = angle.turnsAt(0);
    for (Piece& piece : angle.pieces_)
        piece.turns -= origin;
    return angle;
}

Result<ShaftAngle> ShaftAngle::fromConstant(Hertz speed) {
    const SpeedSample sample{0, speed};
    return fromSpeed({&sample, 1});
}

Result<ShaftAngle> ShaftAngle::fromMarks(std::span<const double> seconds) {
    if (seconds.size() < 2) return fail(ErrorKind::Invalid, "", "", "turns need at least two marks");
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < seconds.size(); ++i) {
        if (!std::isfinite(seconds[i])) return refused(i, "time must be a finite number");
        if (i > 0 && seconds[i] <= seconds[i - 1]) return refused(i, "times must rise from mark to mark");
        if (i > 0) pieces.push_back({seconds[i - 1], double(i - 1), 1 / (seconds[i] - seconds[i - 1]), 0});
    }
    return ShaftAngle(std::move(pieces));
}

const ShaftAngle::Piece& ShaftAngle::pieceAt(double Piece::*coordinate, double value) const {
    const auto after = std::upper_bound(pieces_.begin(), pieces_.end(), value,
                                        [&](double v, const Piece& piece) { return v < piece.*coordinate; });
    return after == pieces_.begin() ? *after : *(after - 1);
}

double ShaftAngle::turnsAt(double seconds) const {
    const Piece& piece = pieceAt(&Piece::seconds, seconds);
    const double dt = seconds - piece.seconds;
    return piece.turns + piece.speed * dt + piece.slope * dt * dt / 2;
}

double ShaftAngle::secondsAt(double turns) const {
    const Piece& piece = pieceAt(&Piece::turns, turns);
    const double dTurns = turns - piece.turns;
    const double root = std::sqrt(std::max(0.0, piece.speed * piece.speed + 2 * piece.slope * dTurns));
    return piece.seconds + 2 * dTurns / (piece.speed + root);
}

Hertz ShaftAngle::speedAt(double seconds) const {
    const Piece& piece = pieceAt(&Piece::seconds, seconds);
    return Hertz(piece.speed + piece.slope * (seconds - piece.seconds));
}

TurnSignal resampledByAngle(std::span<const double> signal, double sampleRateHz, const ShaftAngle& angle,
                            unsigned samplesPerTurn) {
    TurnSignal out;
    out.samplesPerTurn = samplesPerTurn;
    if (signal.empty() || samplesPerTurn == 0) return out;
    const double lastSample = double(signal.size() - 1);
    const double from = std::ceil(angle.turnsAt(0) * samplesPerTurn);
    const double steps = std::floor(angle.turnsAt(lastSample / sampleRateHz) * samplesPerTurn) - from + 1;
    for (std::size_t i = 0; double(i) < steps; ++i) {
        const double turns = (from + double(i)) / samplesPerTurn, seconds = angle.secondsAt(turns);
        const double cut = std::min(1.0, angle.speedAt(seconds).value * samplesPerTurn / sampleRateHz);
        const double position = seconds * sampleRateHz, reach = kCrossings / cut;
        if (position < reach || position > lastSample - reach) continue;
        if (out.samples.empty()) out.firstTurn = turns;
        out.samples.push_back(interpolated(signal, position, cut));
    }
    return out;
}

RefinedPeak refinedPeak(const Spectrum& spectrum, std::size_t line) {
    RefinedPeak peak{spectrum.frequencyHz(line), line < spectrum.values.size() ? spectrum.values[line] : 0};
    if (line < 1 || line + 1 >= spectrum.values.size()) return peak;
    const double before = spectrum.values[line - 1], after = spectrum.values[line + 1];
    if (before <= 0 || after <= 0 || peak.value < std::max(before, after)) return peak;
    const double a = std::log(before), b = std::log(peak.value), c = std::log(after);
    if (a == b && b == c) return peak;
    const bool power = spectrum.kind == SpectrumKind::Power || spectrum.kind == SpectrumKind::Density;
    double offset = parabolaTop(a, b, c);
    if (spectrum.window == WindowKind::Hann) {
        offset = withoutHannBias(offset);
        peak.value /= std::pow(hannLobe(offset), power ? 2 : 1);
    } else {
        peak.value = std::exp(b - (a - c) * offset / 4);
    }
    peak.frequencyHz += offset * spectrum.stepHz;
    return peak;
}

}  // namespace fettle
