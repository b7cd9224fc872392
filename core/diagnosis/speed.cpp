#include "core/diagnosis/speed.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace fettle {

namespace {

constexpr int kSpectrumOrders = 30, kEnvelopeOrders = 12;
constexpr double kSure =
    9.5;  // nepers over the range's median, and the log of how many speeds can be told apart in it
constexpr double kDrop = 2;             // the score may drop by this at the ends of the stated uncertainty
constexpr double kGivenSpread = 0.002;  // of a given speed that no comb confirms

// A spectrum in which shaft orders may stand.
struct CombView {
    const std::vector<float>* z;
    double df, topHz;
    int orders;
};

std::vector<CombView> combViews(const std::vector<ChannelViews>& channels) {
    std::vector<CombView> views;
    for (const ChannelViews& c : channels) {
        views.push_back({&c.plainZ, c.df, double(c.plainZ.size()) * c.df, kSpectrumOrders});
        if (!c.envelopes.empty() && c.envelopes[0].top > 0)
            views.push_back({&c.envelopes[0].z, c.df, double(c.envelopes[0].top) * c.df, kEnvelopeOrders});
    }
    return views;
}

// Odds for a line where z was found: a mixture of absent and present, as if z were exponential, bounded so
// that no single line decides.
double odds(double z) {
    return 0.5 + 0.075 * std::exp(0.85 * std::min(z, 8.0));
}

double interpolated(const std::vector<float>& z, double bin) {
    const auto k = std::size_t(bin);
    if (k + 1 >= z.size()) return 0;
    const double t = bin - double(k);
    return (1 - t) * z[k] + t * z[k + 1];
}

// Whether a line would stand outside the peak of every mains multiple.
bool clearOfMains(double hz, double mainsHz, double df) {
    const double nearest = double(std::int64_t(hz / mainsHz + 0.5)) * mainsHz;
    return std::abs(hz - nearest) >= 2 * df + 0.05;
}

// The log of the odds of all orders, in nepers. Orders that would stand at a mains multiple if the shaft ran
// at `judgedAtHz` are left out.
double combScore(const std::vector<CombView>& views, double shaftHz, double judgedAtHz, double mainsHz) {
    double score = 0;
    for (const CombView& view : views) {
        double product = 1;  // at most 68 a line, 30 lines
        for (int h = 1; h <= view.orders && h * judgedAtHz < view.topHz; ++h)
            if (clearOfMains(h * judgedAtHz, mainsHz, view.df))
                product *= odds(interpolated(*view.z, h * shaftHz / view.df));
        score += std::log(product);
    }
    return score;
}

struct Comb {
    double hz = 0, halfWidthHz = 0;
    double score = 0;  // over the median of the range
    double sure = 0;   // the score from which it is believed: the more speeds tried, the more
};

template <class Score>
Comb bestOf(double leastHz, double mostHz, double step, Score scoreAt) {
    const auto count = std::size_t(std::min(4e5, std::ceil((mostHz - leastHz) / step))) + 1;
    std::vector<double> scores(count);
    for (std::size_t i = 0; i < count; ++i)
        scores[i] = scoreAt(leastHz + double(i) * step);
    const std::size_t best = std::size_t(std::max_element(scores.begin(), scores.end()) - scores.begin());
    std::size_t low = best, high = best;
    while (low > 0 && scores[low] > scores[best] - kDrop)
        --low;
    while (high + 1 < count && scores[high] > scores[best] - kDrop)
        ++high;
    const double half = step * double(std::max({best - low, high - best, std::size_t(1)}));
    std::vector<double> sorted = scores;
    std::nth_element(sorted.begin(), sorted.begin() + std::ptrdiff_t(count / 2), sorted.end());
    return {leastHz + double(best) * step, half, scores[best] - sorted[count / 2], 0};
}

// First over the whole range, then near the best with the orders that are clear of the mains there: judged
// anew at every speed they would draw it to where fewer are left out.
Comb searchComb(const std::vector<CombView>& views, double leastHz, double mostHz, double mainsHz) {
    double df = 1e9;
    for (const CombView& v : views)
        df = std::min(df, v.df);
    const double step = df / (4 * kSpectrumOrders);
    const Comb rough =
        bestOf(leastHz, mostHz, step, [&](double hz) { return combScore(views, hz, hz, mainsHz); });
    Comb fine = bestOf(std::max(leastHz, rough.hz - df / 2), std::min(mostHz, rough.hz + df / 2), step,
                       [&](double hz) { return combScore(views, hz, rough.hz, mainsHz); });
    fine.score = rough.score;
    fine.sure = kSure + std::log(std::max(1.0, (mostHz - leastHz) * kSpectrumOrders / df));
    return fine;
}

}  // namespace

std::optional<SpeedRange> speedRange(const Machine& machine) {
    const Driver& d = machine.driver;
    if (d.inverter && d.rpmMin && d.rpmMax)
        return SpeedRange{*d.rpmMin, *d.rpmMax, "nameplate: inverter range"};
    const auto synchronous = machine.synchronousRpm();
    const bool slips = d.kind == DriverKind::Induction || d.kind == DriverKind::WoundRotor;
    if (synchronous && d.ratedRpm && *d.ratedRpm < *synchronous && slips)
        return SpeedRange{*synchronous - 1.6 * (*synchronous - *d.ratedRpm), *synchronous * 1.002,
                          fmt::format("nameplate: {} poles, {:g} Hz, rated {:g} r/min", d.poles.value_or(0),
                                      machine.mainsHz, *d.ratedRpm)};
    if (synchronous)
        return SpeedRange{*synchronous * (slips ? 0.94 : 0.998), *synchronous * 1.002,
                          fmt::format("nameplate: {} poles, {:g} Hz", d.poles.value_or(0), machine.mainsHz)};
    if (d.ratedRpm) return SpeedRange{*d.ratedRpm * 0.97, *d.ratedRpm * 1.03, "nameplate: rated speed"};
    return std::nullopt;
}

SpeedResult findSpeed(const Machine& machine, std::optional<double> givenRpm,
                      const std::vector<ChannelViews>& channels, const WeighingSettings& settings) {
    SpeedResult result;
    result.givenRpm = givenRpm;
    const std::vector<CombView> views = combViews(channels);
    const auto range = speedRange(machine);
    if (!givenRpm && !range) {
        result.from = "not given, and the nameplate has neither poles nor rated speed";
        return result;
    }
    const double least = givenRpm ? *givenRpm * (1 - settings.speedReachGiven) : range->least;
    const double most = givenRpm ? *givenRpm * (1 + settings.speedReachGiven) : range->most;
    Comb comb;
    if (!views.empty()) comb = searchComb(views, least / 60, most / 60, machine.mainsHz);
    const bool believed = !views.empty() && comb.score >= comb.sure;
    if (believed) result.estimates.push_back({"shaft comb", comb.hz * 60, comb.halfWidthHz * 60});
    if (givenRpm) result.estimates.push_back({"given", *givenRpm, *givenRpm * kGivenSpread});
    if (believed) {
        result.rpm = comb.hz * 60;
        result.plusMinusRpm = comb.halfWidthHz * 60;
        result.from = givenRpm ? "given, refined" : "found";
    } else if (givenRpm) {
        result.rpm = givenRpm;
        result.plusMinusRpm = *givenRpm * kGivenSpread;
        result.from = "given";
    } else {
        result.from = fmt::format(
            "not given, and no comb of shaft orders stands out between {:.0f} and {:.0f} r/min ({})", least,
            most, range->from);
    }
    return result;
}

}  // namespace fettle
