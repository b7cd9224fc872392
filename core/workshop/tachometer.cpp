#include "core/workshop/tachometer.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/units.h"
#include "core/dsp/orders.h"
#include "core/dsp/statistics.h"

namespace fettle {

namespace {

constexpr double kStandsOut = 5, kQuiet = 1.4826;   // spreads; of a normal spread in median deviations
constexpr double kUpShare = 0.5, kBackShare = 0.3;  // of the pulse's height: taken up, let go
constexpr double kMostBetween = 0.1;                // of the samples, in the middle third
constexpr double kMostTurnSpread = 0.2;
constexpr std::size_t kLeastTurns = 10, kStretches = 5;
constexpr unsigned kSamplesPerTurn = 64;

Result<Pulses> noPulses(const std::string& rule) {
    return fail(ErrorKind::Invalid, "", "tachometer", rule);
}

std::vector<double> shares(std::span<const double> signal, double from, double to) {
    std::vector<double> share(signal.size());
    for (std::size_t i = 0; i < signal.size(); ++i)
        share[i] = (signal[i] - from) / (to - from);
    return share;
}

// A square wave: hardly anything between its two levels. The rarer one is the mark.
std::vector<double> squareRisen(std::span<const double> signal, double low, double high) {
    std::size_t above = 0, between = 0;
    for (const double x : signal) {
        const double share = (x - low) / (high - low);
        above += share > 0.5;
        between += share > 1.0 / 3 && share < 2.0 / 3;
    }
    if (double(between) > kMostBetween * double(signal.size())) return {};
    const bool up = 2 * above <= signal.size() + signal.size() / 50;  // even halves: the rising edge
    return up ? shares(signal, low, high) : shares(signal, high, low);
}

// The signal measured from its quiet level (0) to the top of the pulses (1), whichever way they reach; empty
// where nothing stands out.
std::vector<double> risen(std::span<const double> signal) {
    const auto [low, high] = std::minmax_element(signal.begin(), signal.end());
    if (!(*high > *low)) return {};
    if (std::vector<double> square = squareRisen(signal, *low, *high); !square.empty()) return square;
    const double quiet = median(signal), spread = kQuiet * medianAbsoluteDeviation(signal);
    const double top = *high - quiet >= quiet - *low ? *high : *low;
    if (std::abs(top - quiet) < kStandsOut * spread) return {};
    return shares(signal, quiet, top);
}

std::vector<double> edges(const std::vector<double>& share, double sampleRateHz) {
    std::vector<double> seconds;
    bool on = !share.empty() && share[0] >= kBackShare;  // begun within a pulse: its edge is not here
    for (std::size_t i = 1; i < share.size(); ++i) {
        if (!on && share[i] >= kUpShare) {
            const double part = (kUpShare - share[i - 1]) / (share[i] - share[i - 1]);
            seconds.push_back((double(i - 1) + part) / sampleRateHz);
            on = true;
        } else if (on && share[i] < kBackShare) {
            on = false;
        }
    }
    return seconds;
}

std::vector<double> turnsBetween(const std::vector<double>& seconds) {
    std::vector<double> turns;
    for (std::size_t i = 1; i < seconds.size(); ++i)
        turns.push_back(seconds[i] - seconds[i - 1]);
    return turns;
}

// The arrow of one turn, r.m.s., as a lag: x = A cos(angle - lag) gives A exp(-j lag).
Phasor arrowOfTurn(std::span<const double> turn) {
    Phasor sum;
    for (std::size_t i = 0; i < turn.size(); ++i)
        sum += turn[i] * std::polar(1.0, -kTwoPi * double(i) / double(turn.size()));
    return std::conj(sum) * std::numbers::sqrt2 / double(turn.size());
}

std::vector<Phasor> arrows(const TurnSignal& signal) {
    std::vector<Phasor> all;
    const std::size_t per = kSamplesPerTurn;
    // The first whole turn begins where the angle is a whole number.
    const double skip = (std::ceil(signal.firstTurn - 1e-9) - signal.firstTurn) * double(per);
    const auto first = std::size_t(std::llround(std::max(skip, 0.0)));
    for (std::size_t at = first; at + per <= signal.samples.size(); at += per)
        all.push_back(arrowOfTurn({signal.samples.data() + at, per}));
    return all;
}

std::vector<Phasor> stretchMeans(const std::vector<Phasor>& turns) {
    std::vector<Phasor> means;
    for (std::size_t k = 0; k < kStretches; ++k) {
        const std::size_t from = k * turns.size() / kStretches, to = (k + 1) * turns.size() / kStretches;
        Phasor sum;
        for (std::size_t i = from; i < to; ++i)
            sum += turns[i] / double(to - from);
        means.push_back(sum);
    }
    return means;
}

struct Scale {
    Phasor factor{1, 0};
    std::string unit;
};

// From acceleration to velocity at shaft speed: the velocity lags by a quarter turn.
Scale scaleOf(const std::string& unit, double rpm) {
    const double omega = kTwoPi * rpm / 60;
    const Phasor later = Phasor(0, 1);
    if (unit == "g") return {1000 * kStandardGravity / omega * later, "mm/s r.m.s."};
    if (unit == "m/s2" || unit == "m/s^2" || unit == "m/s²") return {1000 / omega * later, "mm/s r.m.s."};
    return {Phasor(1, 0), unit.empty() ? "r.m.s." : unit + " r.m.s."};
}

}  // namespace

Result<Pulses> findPulses(std::span<const double> tachometer, double sampleRateHz) {
    if (tachometer.size() < 2 || !(sampleRateHz > 0)) return noPulses("the channel is empty");
    const std::vector<double> seconds = edges(risen(tachometer), sampleRateHz);
    if (seconds.size() < 2)
        return noPulses(
            "no pulses stand out of this channel; choose the channel of the once-per-turn pick-up");
    const std::vector<double> turns = turnsBetween(seconds);
    const double middle = median(turns);
    const auto [shortest, longest] = std::minmax_element(turns.begin(), turns.end());
    const double spread = (*longest - *shortest) / middle;
    if (spread > kMostTurnSpread)
        return noPulses(
            fmt::format("the turns differ by {:.0f} % of each other: a pulse is missing, there are "
                        "more marks than one a turn, or the speed changes; at most {:.0f} % is taken",
                        100 * spread, 100 * kMostTurnSpread));
    return Pulses{seconds, 60 / middle, spread};
}

Result<OnceAsTurned> onceAsTurned(std::span<const double> signal, const std::string& unit,
                                  std::span<const double> tachometer, double sampleRateHz) {
    const auto pulses = findPulses(tachometer, sampleRateHz);
    if (!pulses) return fail(pulses.error());
    const auto angle = ShaftAngle::fromMarks(pulses->seconds);
    if (!angle) return fail(angle.error());
    const std::vector<Phasor> turns = arrows(resampledByAngle(signal, sampleRateHz, *angle, kSamplesPerTurn));
    if (turns.size() < kLeastTurns)
        return fail(ErrorKind::Invalid, "", "tachometer",
                    fmt::format("the recording holds {} whole turns, at least {} are needed", turns.size(),
                                kLeastTurns));
    const Scale scale = scaleOf(unit, pulses->rpm);
    std::vector<Phasor> means = stretchMeans(turns);
    OnceAsTurned once;
    for (Phasor& mean : means) {
        mean *= scale.factor;
        once.parts.push_back(polarOf(mean));
    }
    once.stretches = averaged(means);
    once.reading = polarOf(once.stretches.mean);
    once.unit = scale.unit;
    once.rpm = pulses->rpm;
    once.rpmSpreadShare = pulses->rpmSpreadShare;
    once.turns = turns.size();
    return once;
}

}  // namespace fettle
