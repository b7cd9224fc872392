#include "core/diagnosis/explain_away.h"

#include "core/diagnosis/cage_comb.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr double kLossToldDban = 3;  // a smaller loss to a claim is not worth telling

// The strongest hypothesis that has not claimed yet; none below the stop.
std::size_t strongest(const std::vector<Weighed>& all, const std::vector<char>& claimed, double stop) {
    std::size_t best = all.size();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (!claimed[i] && all[i].now.weightDban >= stop &&
            (best == all.size() || all[i].now.weightDban > all[best].now.weightDban))
            best = i;
    return best;
}

// The cage on whose comb a rolling element stands.
struct CageBehind {
    std::size_t cage = 0;
    double hz = 0;
};

std::optional<CageBehind> cageBehind(std::size_t element, const std::vector<BearingHypothesis>& hypotheses,
                                     const std::vector<Weighed>& all, const std::vector<char>& claimed,
                                     const std::vector<ChannelEvidence>& evidence, double driverHz,
                                     double stop) {
    const BearingHypothesis& h = hypotheses[element];
    if (h.fault != faultKey(BearingElement::RollingElement)) return std::nullopt;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const BearingHypothesis& c = hypotheses[i];
        if (c.fault != faultKey(BearingElement::Cage) || claimed[i] || all[i].now.weightDban < stop) continue;
        if (c.shaftRatio != h.shaftRatio || !placesMeet(c.at, h.at)) continue;
        if (const auto hz = cageCombOf({h, all[element].now}, {c, all[i].now}, evidence, driverHz))
            return CageBehind{i, *hz};
    }
    return std::nullopt;
}

// Claims made, everything that has not claimed is weighed again.
void weighOthers(std::size_t winner, const std::vector<BearingHypothesis>& hypotheses,
                 const std::vector<ChannelEvidence>& evidence, const std::vector<char>& claimed,
                 double driverHz, const WeighingSettings& settings, std::vector<Weighed>& all) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (claimed[i]) continue;
        Weighing again = weigh(hypotheses[i], evidence, driverHz, settings);
        if (again.weightDban >= all[i].now.weightDban) continue;
        if (all[i].now.weightDban - again.weightDban >= kLossToldDban) all[i].claimedBy.push_back(winner);
        all[i].now = std::move(again);
    }
}

}  // namespace

std::vector<Weighed> explainAway(const std::vector<BearingHypothesis>& hypotheses,
                                 std::vector<ChannelEvidence>& evidence, const Rates& rates,
                                 const WeighingSettings& settings) {
    std::vector<Weighed> all;
    for (const BearingHypothesis& h : hypotheses) {
        const Weighing first = weigh(h, evidence, rates.shaftHz, settings);
        all.push_back({first, first.weightDban, {}});
    }
    std::vector<char> claimed(all.size(), 0);
    for (;;) {
        const std::size_t winner = strongest(all, claimed, settings.claimStopsDban);
        if (winner == all.size()) return all;
        const auto behind =
            cageBehind(winner, hypotheses, all, claimed, evidence, rates.shaftHz, settings.claimStopsDban);
        const std::size_t claims = behind ? behind->cage : winner;
        claimed[claims] = 1;
        claim(hypotheses[claims], all[claims].now, evidence, rates, settings);
        if (behind) claimComb(behind->hz, hypotheses[claims].at, evidence, settings);
        weighOthers(claims, hypotheses, evidence, claimed, rates.shaftHz, settings, all);
        // What it weighed before was the cage's.
        if (behind) all[winner].beforeClaimsDban = all[winner].now.weightDban;
    }
}

}  // namespace fettle
