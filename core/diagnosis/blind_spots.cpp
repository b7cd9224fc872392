#include "core/diagnosis/blind_spots.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "core/diagnosis/blind_machine.h"
#include "core/diagnosis/line_reading.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr double kLongestSeconds = 64;  // a node hardly records more at one go

// An ordinary line over a carrier, and the recording that parts them.
struct Blocker {
    std::string name;
    double apartHz = 0, seconds = 0;  // infinite: the line moves over the carrier with speed or mains
    bool ofMains = false;
};

std::optional<Blocker> blockerOf(const ForcingLine& line, double hz, const Rates& rates, double df,
                                 const WeighingSettings& settings) {
    const double moves = movesOf(line, rates), apart = std::abs(hz - line.hz(rates.shaftHz, rates.mainsHz));
    if (apart > settings.maskBins * df + moves) return std::nullopt;
    const double bins = settings.maskBins + 1;
    return Blocker{line.name, apart, apart > moves ? bins / (apart - moves) : INFINITY, line.perMains != 0};
}

// The nearest, with the recording that parts all of them; nothing: the carrier stands clear.
std::optional<Blocker> worstBlocker(const std::vector<ForcingLine>& lines, double hz, const Rates& rates,
                                    double df, const WeighingSettings& settings) {
    std::optional<Blocker> worst;
    double seconds = 0;
    for (const ForcingLine& line : lines) {
        const auto one = blockerOf(line, hz, rates, df, settings);
        if (!one) continue;
        seconds = std::max(seconds, one->seconds);
        if (!worst || one->apartHz < worst->apartHz) worst = one;
    }
    if (worst) worst->seconds = seconds;
    return worst;
}

// Lengths as nodes record them.
std::string cureOf(const Blocker& blocker, double seconds) {
    if (!std::isfinite(blocker.seconds))
        return blocker.ofMains ? "a recording at another load"
                               : "the speed better known: stray flux, or a tachometer";
    double length = 1;
    while (length < blocker.seconds || length <= seconds)
        length *= 2;
    if (length > kLongestSeconds) return "more than a minute at steady speed";
    return fmt::format("a recording of {:.0f} s or more", length);
}

// A whole family is blind where its first carrier stands in an ordinary line at the expected order, and where
// it would do so over most of the range that is searched: of every geometry that the bearing may have.
void blindCarriers(const std::vector<ForcingLine>& lines, const PreparedRecording& prepared,
                   const AskedBearings& asked, const WeighingSettings& settings,
                   std::vector<BlindSpot>& spots) {
    for (const BearingHypothesis& h : asked.hypotheses) {
        const double df = prepared.evidence[h.hearings[0].channel].views->df;
        std::optional<Blocker> told;
        double toldHz = 0;
        bool all = true;
        for (const Family& variant : h.variants) {
            const double hz = variant.lines[0].order * h.shaftRatio * prepared.rates.shaftHz;
            const auto blocker = worstBlocker(lines, hz, prepared.rates, df, settings);
            all = all && blocker;
            if (!blocker || (told && told->seconds >= blocker->seconds)) continue;
            told = blocker;
            toldHz = hz;
        }
        if (!told || !all) continue;
        spots.push_back(
            {h.fault, h.at,
             fmt::format("{} at {:.1f} Hz is not parted from {} ({:.1f} Hz off) in {}",
                         h.variants[0].lines[0].name, toldHz, told->name, told->apartHz, secondsText(1 / df)),
             cureOf(*told, 1 / df)});
    }
}

void blindViews(const PreparedRecording& prepared, std::vector<BlindSpot>& spots) {
    for (const ChannelEvidence& channel : prepared.evidence) {
        const auto& views = channel.views->envelopes;
        const auto leftOut = std::count_if(views.begin(), views.end(),
                                           [](const View& view) { return !view.unusable.empty(); });
        if (leftOut == 0) continue;
        const auto first =
            std::find_if(views.begin(), views.end(), [](const View& view) { return !view.unusable.empty(); });
        const Point* point = prepared.roles[channel.views->channel].point;
        spots.push_back({"bearing", point ? point->at : "",
                         fmt::format("{} of {} bands of {} left out: {}", leftOut, views.size(),
                                     channel.channelName, first->unusable),
                         "a longer recording or a higher sample rate"});
    }
}

// Whether a part has a measure or a weight of the fault at the place, and nothing that it is blind to there.
bool seesInFull(const Examination& part, const BlindSpot& spot) {
    const auto same = [&](const auto& one) {
        return faultsMeet(one.fault, spot.fault) && placesMeet(one.at, spot.at);
    };
    const auto blind = [&](const BlindSpot& one) { return !one.machineWide && same(one); };
    if (std::any_of(part.blind.begin(), part.blind.end(), blind)) return false;
    const bool weighed = std::any_of(part.considered.begin(), part.considered.end(),
                                     [&](const Hypothesis& h) { return h.weightDban && same(h); });
    return weighed || std::any_of(part.recordings.begin(), part.recordings.end(), [&](const auto& r) {
               return std::any_of(r.measures.begin(), r.measures.end(), same);
           });
}

double secondsOf(const Examination& part) {
    const auto& channels = part.recordings.front().channels;
    if (channels.empty() || channels[0].sampleRateHz <= 0) return 0;
    return double(channels[0].samples) / channels[0].sampleRateHz;
}

std::vector<std::size_t> longestFirst(const std::vector<Examination>& parts) {
    std::vector<std::size_t> order(parts.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return secondsOf(parts[a]) > secondsOf(parts[b]); });
    return order;
}

std::vector<RecordingFacts> factsOf(const std::vector<Examination>& parts) {
    std::vector<RecordingFacts> facts;
    for (const Examination& part : parts)
        facts.insert(facts.end(), part.recordings.begin(), part.recordings.end());
    return facts;
}

// A bearing that no point hears is told once, with its housing.
bool isToldBy(const std::vector<BlindSpot>& wide, const BlindSpot& spot) {
    return spot.why == kNotHeard && std::any_of(wide.begin(), wide.end(), [&](const BlindSpot& one) {
               return one.fault == spot.fault && spot.at.starts_with(one.at + " ");
           });
}

}  // namespace

bool faultsMeet(const std::string& fault, const std::string& spots) {
    if (spots != "bearing" || fault == spots) return fault == spots;
    return std::any_of(std::begin(kBearingElements), std::end(kBearingElements),
                       [&](BearingElement element) { return fault == faultKey(element); });
}

std::vector<BlindSpot> jointBlindSpots(const Machine& machine, const std::vector<Examination>& parts) {
    const std::vector<BlindSpot> wide = blindByMachine(machine, factsOf(parts));
    std::vector<BlindSpot> all;
    std::set<std::pair<std::string, std::string>> asked;
    for (const std::size_t i : longestFirst(parts))
        for (const BlindSpot& b : parts[i].blind) {
            if (b.machineWide || isToldBy(wide, b)) continue;
            // Whether others saw it follows from fault and place: asked once of the week.
            if (!asked.emplace(b.fault, b.at).second) continue;
            const bool known = std::any_of(all.begin(), all.end(), [&](const BlindSpot& a) {
                return a.fault == b.fault && placesMeet(a.at, b.at);
            });
            const bool seen = std::any_of(parts.begin(), parts.end(),
                                          [&](const Examination& p) { return seesInFull(p, b); });
            if (!known && !seen) all.push_back(b);
        }
    all.insert(all.end(), wide.begin(), wide.end());
    return all;
}

std::vector<BlindSpot> blindSpots(const Machine& machine, const PreparedRecording& prepared,
                                  const AskedBearings& asked, const WeighingSettings& settings) {
    std::vector<BlindSpot> spots;
    for (const auto& n : asked.notAsked)
        spots.push_back({"bearing", n.at, n.why, n.cure});
    if (prepared.unfit.empty()) {
        blindCarriers(ordinaryLines(machine, prepared.rates, settings), prepared, asked, settings, spots);
        blindViews(prepared, spots);
    }
    return spots;
}

}  // namespace fettle
