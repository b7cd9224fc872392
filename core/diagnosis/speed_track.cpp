#include "core/diagnosis/speed_track.h"

#include <algorithm>
#include <cmath>

#include "core/diagnosis/speed_comb.h"

namespace fettle {

namespace {

constexpr double kTurnsAPiece = 16;
constexpr std::size_t kFewestPieces = 6, kMostPieces = 64;
constexpr double kStep = 5e-4;           // of the speed, between states
constexpr std::ptrdiff_t kMostJump = 8;  // states from piece to piece, half a piece apart
constexpr double kJumpCosts = 0.25;      // nepers a state
constexpr double kSeen = 7;              // nepers over all pieces: they hold a comb

ChannelViews pieceViews(const Channel& channel, std::size_t from, std::size_t count) {
    return plainViews(std::span(channel.samples).subspan(from, count), channel.sampleRateHz, 9);
}

struct Pieces {
    std::vector<double> seconds;              // of their middles
    std::vector<std::vector<double>> nepers;  // at each state
};

Pieces heardInPieces(const Recording& recording, const std::vector<ChannelViews>& views, double leastHz,
                     double mostHz, const Mains& mains, const std::vector<double>& strong) {
    Pieces pieces;
    const double rate = recording.channels[views[0].channel].sampleRateHz, middle = (leastHz + mostHz) / 2;
    const std::size_t samples = recording.channels[views[0].channel].samples.size();
    std::size_t length =
        quickSizeAtLeast(std::max<std::size_t>(256, std::size_t(kTurnsAPiece / middle * rate)));
    while (2 * samples / length > kMostPieces)
        length = quickSizeAtLeast(length * 2);
    const double step = kStep * middle;
    const auto states = std::size_t((mostHz - leastHz) / step) + 1;
    for (std::size_t from = 0; from + length <= samples; from += length / 2) {
        std::vector<ChannelViews> heard;
        for (const ChannelViews& v : views)
            heard.push_back(pieceViews(recording.channels[v.channel], from, length));
        pieces.seconds.push_back((double(from) + double(length) / 2) / rate);
        pieces.nepers.push_back(combNepers(combViews(heard, mostHz, strong), leastHz, step, states, mains));
    }
    return pieces;
}

// The states that together are worth most, jumps charged for.
std::vector<std::size_t> dearestPath(const std::vector<std::vector<double>>& nepers) {
    const std::size_t pieces = nepers.size(), states = nepers[0].size();
    std::vector<std::vector<std::uint32_t>> from(pieces, std::vector<std::uint32_t>(states, 0));
    std::vector<double> worth = nepers[0];
    for (std::size_t i = 1; i < pieces; ++i) {
        std::vector<double> next(states);
        for (std::size_t s = 0; s < states; ++s) {
            double best = -1e300;
            for (std::ptrdiff_t jump = -kMostJump; jump <= kMostJump; ++jump) {
                const std::ptrdiff_t before = std::ptrdiff_t(s) + jump;
                if (before < 0 || before >= std::ptrdiff_t(states)) continue;
                const double w = worth[std::size_t(before)] - kJumpCosts * double(std::abs(jump));
                if (w <= best) continue;
                best = w;
                from[i][s] = std::uint32_t(before);
            }
            next[s] = best + nepers[i][s];
        }
        worth = std::move(next);
    }
    std::vector<std::size_t> path(pieces);
    path.back() = std::size_t(std::max_element(worth.begin(), worth.end()) - worth.begin());
    for (std::size_t i = pieces - 1; i > 0; --i)
        path[i - 1] = from[i][path[i]];
    return path;
}

double meanEvidence(const std::vector<double>& nepers) {
    const double most = *std::max_element(nepers.begin(), nepers.end());
    double sum = 0;
    for (const double n : nepers)
        sum += std::exp(n - most);
    return most + std::log(sum / double(nepers.size()));
}

// Mean of a sample and its neighbours: states are coarse, a shaft's inertia is not.
std::vector<double> smoothed(const std::vector<double>& values) {
    std::vector<double> out(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        const std::size_t from = i > 0 ? i - 1 : 0, to = std::min(values.size() - 1, i + 1);
        double sum = 0;
        for (std::size_t k = from; k <= to; ++k)
            sum += values[k];
        out[i] = sum / double(to - from + 1);
    }
    return out;
}

}  // namespace

void SpeedTrack::take(std::vector<ShaftAngle::SpeedSample> speeds) {
    samples = std::move(speeds);
    const auto slower = [](const auto& a, const auto& b) { return a.speed < b.speed; };
    const auto [least, most] = std::minmax_element(samples.begin(), samples.end(), slower);
    leastHz = least->speed.value;
    mostHz = most->speed.value;
    meanHz = 0;
    for (const auto& sample : samples)
        meanHz += sample.speed.value / double(samples.size());
    oneWay = std::is_sorted(samples.begin(), samples.end(), slower) ||
             std::is_sorted(samples.rbegin(), samples.rend(), slower);
}

std::optional<SpeedTrack> trackSpeed(const Recording& recording, const std::vector<ChannelViews>& views,
                                     double leastHz, double mostHz, const Mains& mains,
                                     const std::vector<double>& strong) {
    if (views.empty() || leastHz <= 0 || mostHz <= leastHz) return std::nullopt;
    if (recording.seconds() * leastHz < kTurnsAPiece * double(kFewestPieces) / 2) return std::nullopt;
    const Pieces pieces = heardInPieces(recording, views, leastHz, mostHz, mains, strong);
    if (pieces.seconds.size() < kFewestPieces) return std::nullopt;
    SpeedTrack track;
    for (std::size_t i = 0; i < pieces.nepers.size(); i += 2)  // those that do not overlap
        track.nepers += meanEvidence(pieces.nepers[i]);
    if (track.nepers < kSeen) return std::nullopt;
    std::vector<double> speeds;
    for (const std::size_t state : dearestPath(pieces.nepers))
        speeds.push_back(leastHz + double(state) * kStep * (leastHz + mostHz) / 2);
    speeds = smoothed(speeds);
    std::vector<ShaftAngle::SpeedSample> samples;
    for (std::size_t i = 0; i < speeds.size(); ++i)
        samples.push_back({pieces.seconds[i], Hertz(speeds[i])});
    track.take(std::move(samples));
    return track;
}

}  // namespace fettle
