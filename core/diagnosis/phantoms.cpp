#include "core/diagnosis/phantoms.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <map>
#include <mutex>
#include <random>
#include <thread>

#include "core/diagnosis/unlisted_combs.h"

namespace fettle {

namespace {

constexpr std::array<double, 3> kLevels = {10, 20, 30};
constexpr std::size_t kElements = std::size(kBearingElements);
constexpr int kMostTries = 1000;

// Uniform numbers from the standard's own generator, the same everywhere.
class Draw {
  public:
    explicit Draw(std::uint64_t seed) : engine_(seed) {}
    double uniform(double low, double high) { return low + (high - low) * double(engine_() >> 11) * 0x1p-53; }
    std::size_t below(std::size_t n) { return std::min(n - 1, std::size_t(uniform(0, double(n)))); }

  private:
    std::mt19937_64 engine_;
};

struct Phantom {
    BearingVariant bearing;
    double shaftRatio = 1;
};

BearingVariant randomBearing(Draw& draw) {
    BearingGeometry g;
    g.rollingElements = 6 + int(draw.below(15));
    g.pitchMm = 100;
    // From slim to as thick as fits round the circle.
    g.elementMm = draw.uniform(0.4, 0.95) * 100 * std::sin(3.14159265358979 / g.rollingElements);
    g.contactDeg = draw.uniform(0, 1) < 0.5 ? 0 : draw.uniform(0, 40);
    return asVariant(g, TurningRing::Inner);
}

double foreignRatio(Draw& draw) {
    switch (draw.below(3)) {
        case 0:
            return draw.uniform(0, 1) < 0.5 ? 0.99 : 1.01;  // a neighbour of the same kind
        case 1:
            return draw.uniform(0.25, 0.9);  // behind a belt or gear
        default:
            return draw.uniform(0.5, 1.6);  // on an inverter
    }
}

Phantom drawPhantom(Draw& draw, const std::vector<BearingVariant>& sizes) {
    Phantom phantom{draw.uniform(0, 1) < 0.5 ? sizes[draw.below(sizes.size())] : randomBearing(draw), 1};
    if (draw.uniform(0, 1) < 1.0 / 3) phantom.shaftRatio = foreignRatio(draw);
    return phantom;
}

// Whether this element of the phantom could be an element the machine does have.
bool mayBeTrue(const BearingHypothesis& phantom, const std::vector<BearingHypothesis>& own, double reach) {
    const double carrier = phantom.variants[0].lines[0].order * phantom.shaftRatio;
    return std::any_of(own.begin(), own.end(), [&](const BearingHypothesis& h) {
        return h.fault == phantom.fault &&
               std::any_of(h.variants.begin(), h.variants.end(), [&](const Family& f) {
                   return std::abs(f.lines[0].order * h.shaftRatio / carrier - 1) <
                          2 * reach;  // both are searched that far
               });
    });
}

// Weights of the phantoms of one recording, by element.
using Weights = std::vector<std::vector<double>>;

double phantomWeight(const BearingHypothesis& h, const PreparedRecording& prepared,
                     const std::vector<ChannelEvidence>& afterClaims, const WeighingSettings& settings) {
    const double before = weigh(h, prepared.evidence, prepared.rates.shaftHz, settings).weightDban;
    if (before < kLevels[0]) return before;
    return std::min(before, weigh(h, afterClaims, prepared.rates.shaftHz, settings).weightDban);
}

Weights phantomWeights(const Machine& machine, const PreparedRecording& prepared, const AskedBearings& asked,
                       const std::vector<BearingVariant>& sizes, const PhantomOptions& options,
                       std::uint64_t seed) {
    std::vector<ChannelEvidence> afterClaims = prepared.evidence;
    weighBearings(machine, prepared, asked, afterClaims, options.settings);
    Weights weights(kElements);
    Draw draw(seed);
    for (std::size_t i = 0; i < options.perRecording && !options.cancel.cancelled(); ++i)
        for (std::size_t e = 0; e < kElements; ++e) {
            const std::size_t channel = draw.below(prepared.evidence.size());
            BearingHypothesis h;
            int tries = 0;
            do {
                const Phantom phantom = drawPhantom(draw, sizes);
                h = {faultKey(kBearingElements[e]),
                     "phantom",
                     phantom.shaftRatio,
                     {bearingFamily(kBearingElements[e], phantom.bearing)},
                     {{channel, 1, 1}}};
            } while (mayBeTrue(h, asked.hypotheses, options.settings.shiftReach) && ++tries < kMostTries);
            if (tries < kMostTries)
                weights[e].push_back(phantomWeight(h, prepared, afterClaims, options.settings));
        }
    return weights;
}

// Trials and hits of what is alike.
struct Cluster {
    std::size_t reached = 0, trials = 0;
};

// Wilson's interval with n trials cut by the design effect of the clusters.
void addInterval(PhantomShare& share, const std::map<std::string, Cluster>& clusters) {
    double n = 0, hits = 0;
    for (const auto& [file, cluster] : clusters) {
        n += double(cluster.trials);
        hits += double(cluster.reached);
    }
    if (n == 0) return;
    const double p = hits / n;
    double between = 0;
    for (const auto& [file, cluster] : clusters)
        between += std::pow(double(cluster.reached) - p * double(cluster.trials), 2);
    const double binomial = n * p * (1 - p);
    const double effect = binomial > 0 ? std::max(1.0, between / binomial) : 1;
    const double m = n / effect, z = 1.959964;
    const double middle = (p + z * z / (2 * m)) / (1 + z * z / m);
    const double half = z / (1 + z * z / m) * std::sqrt(p * (1 - p) / m + z * z / (4 * m * m));
    share.share = p;
    share.low = hits == 0 ? 0 : std::max(0.0, middle - half);
    share.high = middle + half;
}

// The weights of one element, by cluster.
using Clustered = std::map<std::string, std::vector<double>>;

PhantomShare shareOf(const Clustered& all, double level) {
    PhantomShare share{level, std::pow(10, -level / 10), 0, 0, 0, 0, 0};
    std::map<std::string, Cluster> clusters;
    for (const auto& [name, weights] : all) {
        Cluster& cluster = clusters[name];
        cluster.trials = weights.size();
        cluster.reached = std::size_t(
            std::count_if(weights.begin(), weights.end(), [&](double weight) { return weight >= level; }));
        share.reached += cluster.reached;
        share.recordings += cluster.reached > 0;
    }
    addInterval(share, clusters);
    return share;
}

PhantomCurve curveOf(const std::string& fault, const Clustered& all) {
    PhantomCurve curve;
    curve.fault = fault;
    curve.largestDban = -1e9;
    for (const auto& [name, weights] : all) {
        curve.trials += weights.size();
        curve.largestDban = std::max(curve.largestDban, *std::max_element(weights.begin(), weights.end()));
    }
    curve.recordings = all.size();
    for (const double level : kLevels)
        curve.shares.push_back(shareOf(all, level));
    for (int dban = 0; dban <= kCurveToDban; ++dban)
        curve.shareAtLeast.push_back(shareOf(all, dban).share);
    return curve;
}

}  // namespace

PhantomTally::PhantomTally(PhantomOptions options) : options_(std::move(options)) {}

Status PhantomTally::add(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                         const std::string& cluster) {
    if (sizes_.empty()) {
        auto sizes = allTypicalVariants();
        if (!sizes) return fail(sizes.error());
        sizes_ = std::move(*sizes);
    }
    const std::size_t first = weighed_.size();
    weighed_.resize(first + recordings.size());
    std::atomic<std::size_t> next{0};
    std::size_t done = 0;
    std::mutex telling;
    const auto work = [&] {
        for (std::size_t i = next++; i < recordings.size() && !options_.cancel.cancelled(); i = next++) {
            const PreparedRecording prepared =
                prepare(machine, recordings[i], {options_.ignoreSpeed, options_.settings});
            Weighed& weighed = weighed_[first + i];
            weighed.file = recordings[i]->file;
            weighed.cluster = cluster.empty() ? weighed.file : cluster;
            if (prepared.unfit.empty())
                weighed.weights = phantomWeights(machine, prepared, askBearings(machine, prepared), sizes_,
                                                 options_, options_.seed + first + i);
            const std::lock_guard hold(telling);
            if (!prepared.unfit.empty()) skipped_.push_back(recordings[i]->file + ": " + prepared.unfit);
            ++done;
            if (options_.progress) options_.progress(done, recordings.size(), recordings[i]->file);
        }
    };
    {
        std::vector<std::jthread> helpers;
        for (int t = 1; t < std::min<int>(options_.threads, int(recordings.size())); ++t)
            helpers.emplace_back(work);
        work();
    }
    if (options_.cancel.cancelled()) return fail(ErrorKind::Cancelled, "", "", "stopped on request");
    return {};
}

PhantomResult PhantomTally::result() const {
    PhantomResult result;
    result.skipped = skipped_;
    std::sort(result.skipped.begin(), result.skipped.end());
    for (std::size_t e = 0; e < kElements; ++e) {
        Clustered all;
        for (const Weighed& weighed : weighed_)
            if (e < weighed.weights.size() && !weighed.weights[e].empty()) {
                std::vector<double>& weights = all[weighed.cluster];
                weights.insert(weights.end(), weighed.weights[e].begin(), weighed.weights[e].end());
            }
        result.curves.push_back(curveOf(faultKey(kBearingElements[e]), all));
    }
    return result;
}

Result<PhantomResult> measurePhantoms(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                                      const PhantomOptions& options) {
    PhantomTally tally(options);
    if (const Status added = tally.add(machine, recordings); !added) return fail(added.error());
    return tally.result();
}

}  // namespace fettle
