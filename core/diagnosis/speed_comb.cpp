#include "core/diagnosis/speed_comb.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "core/dsp/orders.h"

namespace fettle {

namespace {

constexpr int kSpectrumOrders = 30, kEnvelopeOrders = 12, kLowOrders = 8;
constexpr double kKappa = 0.15;     // as in weighing
constexpr double kReach = 0.45;     // bins a top may lie off an order's place
constexpr double kNepers = 3.5;     // 1 in 30: there is a comb
constexpr double kShare = 0.9;      // the rest of the speeds together: a tenth
constexpr double kHalf = 0.5;       // of a comb that heights over the floor may confirm ..
constexpr int kFewestByHeight = 4;  // .. and orders that stand out in it
constexpr double kNear = 0.002;     // speeds this near count as one ..
constexpr double kSharp = 0.001;    // .. and this near, where the comb is sharp
constexpr double kStrongW = 0.5;
constexpr int kFewestInSpectrum = 3;  // orders that place a speed; fewer: those of the envelope too, where a
                                      // bearing draws lines beside whole orders
constexpr double kWander = 1e-4;      // of the speed within a recording, for the weight of an order's place
constexpr double kLeastHz = 2;
constexpr double kBesideMains = 1.2;  // bins
constexpr int kMostSpeeds = 400000;

double shareOfOrder(int order, bool envelope) {
    if (envelope) return order == 1 ? 0.5 : order == 2 ? 0.35 : 0.2;
    constexpr double kFirst[] = {0.9, 0.8, 0.7, 0.6, 0.5};
    return order <= 5 ? kFirst[order - 1] : order <= 10 ? 0.4 : 0.25;
}

// Ranks of the tops within [from, to): p is the share of positions as near to a top as high.
void rankTops(CombView& view, std::size_t from, std::size_t to) {
    std::vector<std::size_t> tops;
    for (std::size_t k = from; k < to; ++k)
        if (view.place[k] > 0) tops.push_back(k);
    std::sort(tops.begin(), tops.end(), [&](std::size_t a, std::size_t b) { return view.z[a] > view.z[b]; });
    const double cover = 2 * kReach / double(to - from);
    for (std::size_t i = 0; i < tops.size(); ++i)
        view.factor[tops[i]] = float(kKappa * std::pow(std::min(1.0, double(i + 1) * cover), kKappa - 1));
}

CombView combView(std::vector<float> z, double df, bool envelope, double mostHz) {
    CombView view;
    view.df = df;
    view.z = std::move(z);
    const std::size_t size = view.z.size();
    view.place.assign(size, 0);
    view.factor.assign(size, float(kKappa));
    for (int h = 1; h <= (envelope ? kEnvelopeOrders : kSpectrumOrders); ++h)
        view.orders.push_back({double(h), shareOfOrder(h, envelope)});
    if (envelope) {
        view.depths = {3, 12};
        view.none = 0.5;
    } else {
        view.depths = {3, 6, 12, 30};
    }
    Spectrum spectrum;
    spectrum.stepHz = 1;
    spectrum.window = WindowKind::Hann;
    spectrum.values.assign(view.z.begin(), view.z.end());
    const auto first = std::min(size, std::size_t(std::ceil(kLeastHz / df)));
    for (std::size_t k = std::max<std::size_t>(1, first); k + 1 < size; ++k)
        if (view.z[k] > view.z[k - 1] && view.z[k] >= view.z[k + 1])
            view.place[k] = float(refinedPeak(spectrum, k).frequencyHz);
    const auto parted = std::clamp(std::size_t(kLowOrders * mostHz / df), first, size);
    rankTops(view, first, parted);
    rankTops(view, parted, size);
    return view;
}

template <class Z>
std::vector<float> meanOf(const std::vector<ChannelViews>& channels, std::size_t size, Z zOf) {
    std::vector<float> mean;
    double count = 0;
    for (const ChannelViews& c : channels) {
        const std::vector<float>* z = zOf(c);
        if (!z || (!mean.empty() && c.df != channels[0].df)) continue;
        mean.resize(std::min(size, mean.empty() ? z->size() : std::min(z->size(), mean.size())));
        for (std::size_t k = 0; k < mean.size(); ++k)
            mean[k] += (*z)[k];
        ++count;
    }
    for (float& value : mean)
        value /= float(std::max(1.0, count));
    return mean;
}

// The top an order is taken to be: the nearest within reach; 0: none.
std::size_t topAt(const CombView& view, double bin) {
    const auto middle = std::size_t(bin + 0.5);
    std::size_t best = 0;
    double nearest = kReach;
    for (std::size_t k = middle > 1 ? middle - 1 : 1; k <= middle + 1 && k < view.place.size(); ++k) {
        const double off = std::abs(view.place[k] - bin);
        if (view.place[k] <= 0 || off > nearest) continue;
        nearest = off;
        best = k;
    }
    return best;
}

// Orders that would stand beside the mains say nothing.
class BesideMains {
  public:
    explicit BesideMains(const Mains& mains) : mains_(mains) {}

    bool clear(double hz, double df) const {
        const double times = std::max(1.0, double(std::int64_t(hz / mains_.hz + 0.5)));
        return std::abs(hz - times * mains_.hz) >=
               kBesideMains * df + std::min(0.3, times * mains_.plusMinusHz);
    }

  private:
    const Mains& mains_;
};

// Speeds that are tried, rising by even steps.
struct Tried {
    double leastHz, step;
    std::size_t count;
    double at(std::size_t i) const { return leastHz + double(i) * step; }
};

// Asks one view at all speeds, an order at a time: while the speed rises an order passes its tops one by one.
class Walk {
  public:
    Walk(const CombView& view, const Tried& tried, const BesideMains& mains)
        : view_(view), tried_(tried), mains_(mains) {
        for (std::size_t k = 0; k < view.place.size(); ++k)
            if (view.place[k] > 0) tops_.push_back(k);
        if (tops_.empty()) tops_.push_back(0);  // below every order
    }

    // Multiplies each speed's product by the e-value of the order there.
    void multiply(const CombOrder& order, std::vector<double>& products) const {
        const double first = order.order * tried_.leastHz / view_.df;
        std::size_t top =
            std::size_t(std::lower_bound(tops_.begin(), tops_.end(), first > 2 ? std::size_t(first - 2) : 0) -
                        tops_.begin());
        top = std::min(top, tops_.size() - 1);
        for (std::size_t i = 0; i < tried_.count; ++i) {
            const double hz = order.order * tried_.at(i), bin = hz / view_.df;
            if (bin + 1 >= double(view_.place.size())) return;
            while (top + 1 < tops_.size() && offAt(top + 1, bin) <= offAt(top, bin))
                ++top;
            if (!mains_.clear(hz, view_.df)) continue;
            const double factor = offAt(top, bin) <= kReach ? double(view_.factor[tops_[top]]) : kKappa;
            products[i] *= 1 - order.w + order.w * factor;
        }
    }

  private:
    double offAt(std::size_t top, double bin) const { return std::abs(view_.place[tops_[top]] - bin); }

    const CombView& view_;
    const Tried& tried_;
    const BesideMains& mains_;
    std::vector<std::size_t> tops_;
};

// Adds the log of the product of a view's e-values, averaged over how many orders there may be.
void addNepers(const CombView& view, const Tried& tried, const BesideMains& mains,
               std::vector<double>& nepers) {
    const Walk walk(view, tried, mains);
    std::vector<double> product(tried.count, 1), mean(tried.count, view.none), strong(tried.count, 1);
    std::size_t deep = 0;
    for (std::size_t h = 0; h < view.orders.size(); ++h) {
        walk.multiply(view.orders[h], product);
        if (h + 1 != view.depths[deep]) continue;
        for (std::size_t i = 0; i < tried.count; ++i)
            mean[i] += (1 - view.none) * product[i] / double(view.depths.size());
        ++deep;
    }
    for (const CombOrder& order : view.strong)
        walk.multiply(order, strong);
    for (std::size_t i = 0; i < tried.count; ++i)
        nepers[i] += std::log(mean[i]) + std::log(view.strong.empty() ? 1 : 0.5 + 0.5 * strong[i]);
}

struct Sums {
    double weights = 0, hz = 0, misfit = 0, highest = 0;
    int found = 0, low = 0;
};

// Where an order's top says the shaft turns, unless it is off by more than three times its share.
void addPlace(const CombView& view, const CombOrder& order, const BesideMains& mains, double shaftHz,
              bool strict, Sums& sums) {
    constexpr double kOut = 4;  // e-value of a top that counts
    const double bin = order.order * shaftHz / view.df;
    if (bin + 1 >= double(view.place.size()) || !mains.clear(order.order * shaftHz, view.df)) return;
    const std::size_t top = topAt(view, bin);
    if (top == 0 || view.factor[top] < kOut) return;
    const double present = order.w * double(view.factor[top]);
    const double credit = present / (1 - order.w + present);  // that the top is the order's
    const double hz = view.place[top] * view.df / order.order;
    const double spread =
        view.df * (0.02 + 0.6 / std::sqrt(double(view.z[top]))) / order.order + kWander * shaftHz;
    if (strict && std::abs(hz - shaftHz) > 3 * spread) return;
    const double weight = credit * credit * credit * credit / (spread * spread);
    ++sums.found;
    sums.low += order.order <= 4;
    sums.highest = std::max(sums.highest, order.order);
    sums.weights += weight;
    sums.hz += hz * weight;
    sums.misfit += (hz - shaftHz) * (hz - shaftHz) * weight;
}

// Least squares through the places of the orders that stand out.
void refine(const std::vector<CombView>& views, const BesideMains& mains, Comb& comb) {
    for (int round = 0; round < 3; ++round) {
        Sums sums;
        for (const CombView& view : views) {
            if (&view != views.data() && sums.found >= kFewestInSpectrum) break;
            for (const CombOrder& order : view.orders)
                addPlace(view, order, mains, comb.hz, round > 0, sums);
            for (const CombOrder& order : view.strong)
                addPlace(view, order, mains, comb.hz, round > 0, sums);
        }
        if (sums.weights == 0) return;
        comb.found = sums.found;
        comb.low = sums.low;
        comb.highest = sums.highest;
        comb.hz = sums.hz / sums.weights;
        const double scatter = sums.found > 1 ? std::max(1.0, sums.misfit / (sums.found - 1)) : 4;
        comb.plusMinusHz = 2 * std::sqrt(scatter / sums.weights);
    }
}

// Odds for a line where z was found: a mixture of absent and present, as if z were exponential, bounded so
// that no single line decides.
double oddsOf(double z) {
    return 0.5 + 0.075 * std::exp(0.85 * std::min(z, 8.0));
}

// The other way to ask: by heights over the floor at the orders' places, whatever else stands around.
std::vector<double> heightNepers(const std::vector<CombView>& views, double leastHz, double step,
                                 std::size_t count, const BesideMains& mains) {
    std::vector<double> nepers(count, 0);
    for (std::size_t i = 0; i < count; ++i)
        for (const CombView& view : views) {
            const double hz = leastHz + double(i) * step;
            double product = 1;
            for (const CombOrder& order : view.orders) {
                const double bin = order.order * hz / view.df, part = bin - std::floor(bin);
                const auto k = std::size_t(bin);
                if (k + 1 >= view.z.size() || !mains.clear(order.order * hz, view.df)) continue;
                product *= oddsOf((1 - part) * view.z[k] + part * view.z[k + 1]);
            }
            nepers[i] += std::log(product);
        }
    return nepers;
}

// How the best speed compares with all others that were tried.
void judge(const std::vector<double>& nepers, double leastHz, double step, double df, Comb& comb) {
    const double best = *std::max_element(nepers.begin(), nepers.end());
    const double near = std::max({kNear * comb.hz, comb.plusMinusHz, df / std::max(2.0, comb.highest)});
    double all = 0, own = 0, sharp = 0, second = -1e9;
    for (std::size_t i = 0; i < nepers.size(); ++i) {
        const double hz = leastHz + double(i) * step, e = std::exp(nepers[i] - best);
        all += e;
        if (std::abs(hz - comb.hz) <= std::max(kSharp * comb.hz, comb.plusMinusHz)) sharp += e;
        if (std::abs(hz - comb.hz) <= near)
            own += e;
        else if (nepers[i] > second) {
            second = nepers[i];
            comb.secondHz = hz;
        }
    }
    comb.nepers = best + std::log(all / double(nepers.size()));
    comb.share = own / all;
    if (sharp < kShare * own) comb.plusMinusHz = std::max(comb.plusMinusHz, kSharp * comb.hz);
    comb.secondGap = best - second;
}

}  // namespace

bool Comb::stands() const {
    return nepers >= kNepers && found >= 2;
}

bool Comb::single() const {
    return (stands() && share >= kShare) || twoWays;
}

std::vector<double> strongOrders(const Machine& machine) {
    std::vector<double> orders;
    if (machine.driver.rotorBars) orders.push_back(*machine.driver.rotorBars);
    const auto driven = machine.shaftOfDriven();
    if (machine.driven.blades && driven && *driven == 0) orders.push_back(*machine.driven.blades);
    for (const Gear& gear : machine.gears)
        if (!machine.shafts.empty() && gear.from == machine.shafts[0].id && gear.teeth[0] > 0)
            for (const int times : {1, 2})
                orders.push_back(times * gear.teeth[0]);
    return orders;
}

std::vector<CombView> combViews(const std::vector<ChannelViews>& channels, double mostHz,
                                const std::vector<double>& strong) {
    std::vector<CombView> views;
    if (channels.empty()) return views;
    const double df = channels[0].df;
    double most = kSpectrumOrders;
    for (const double order : strong)
        most = std::max(most, order);
    const auto sizeTo = [&](double orders) { return std::size_t((orders + 1) * mostHz / df) + 3; };
    std::vector<float> plain =
        meanOf(channels, sizeTo(most), [](const ChannelViews& c) { return &c.plainZ; });
    std::vector<float> envelope =
        meanOf(channels, sizeTo(kEnvelopeOrders), [](const ChannelViews& c) -> const std::vector<float>* {
            return c.envelopes.empty() || c.envelopes[0].top == 0 ? nullptr : &c.envelopes[0].z;
        });
    constexpr std::size_t kFewest = 16;
    if (plain.size() < kFewest) return views;
    views.push_back(combView(std::move(plain), df, false, mostHz));
    for (const double order : strong)
        views[0].strong.push_back({order, kStrongW});
    if (envelope.size() >= kFewest) views.push_back(combView(std::move(envelope), df, true, mostHz));
    return views;
}

std::vector<double> combNepers(const std::vector<CombView>& views, double leastHz, double step,
                               std::size_t count, const Mains& mains) {
    const BesideMains beside(mains);
    const Tried tried{leastHz, step, count};
    std::vector<double> nepers(count, 0);
    for (const CombView& view : views)
        addNepers(view, tried, beside, nepers);
    return nepers;
}

std::optional<Comb> findComb(const std::vector<CombView>& views, double leastHz, double mostHz,
                             const Mains& mains) {
    if (views.empty() || mostHz <= leastHz || leastHz <= 0) return std::nullopt;
    const double df = views[0].df;
    double highest = kSpectrumOrders;
    for (const CombOrder& order : views[0].strong)
        highest = std::max(highest, order.order);
    const double step = std::max(df / (2 * highest), (mostHz - leastHz) / kMostSpeeds);
    const auto count = std::size_t((mostHz - leastHz) / step) + 1;
    const std::vector<double> nepers = combNepers(views, leastHz, step, count, mains);
    const auto best = std::size_t(std::max_element(nepers.begin(), nepers.end()) - nepers.begin());
    std::size_t last = best;  // of the flat top
    while (last + 1 < count && nepers[last + 1] == nepers[best])
        ++last;
    Comb comb;
    comb.hz = leastHz + 0.5 * double(best + last) * step;
    comb.plusMinusHz = df / 2;
    const BesideMains beside(mains);
    refine(views, beside, comb);
    judge(nepers, leastHz, step, df, comb);
    if (!comb.single() && comb.share >= kHalf && comb.found >= kFewestByHeight) {
        Comb byHeight = comb;
        judge(heightNepers(views, leastHz, step, count, beside), leastHz, step, df, byHeight);
        comb.twoWays = byHeight.nepers >= kNepers && byHeight.share >= kShare;
    }
    return comb;
}

}  // namespace fettle
