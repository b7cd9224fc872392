#include "core/diagnosis/explain_away.h"

namespace fettle {

namespace {

constexpr double kToldDban = 3;  // a smaller loss to a claim is not worth telling

// The strongest hypothesis that has not claimed yet; none below the stop.
std::size_t strongest(const std::vector<Weighed>& all, const std::vector<char>& claimed, double stop) {
    std::size_t best = all.size();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (!claimed[i] && all[i].now.weightDban >= stop &&
            (best == all.size() || all[i].now.weightDban > all[best].now.weightDban))
            best = i;
    return best;
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
        claimed[winner] = 1;
        claim(hypotheses[winner], all[winner].now, evidence, rates, settings);
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (claimed[i]) continue;
            Weighing again = weigh(hypotheses[i], evidence, rates.shaftHz, settings);
            if (again.weightDban >= all[i].now.weightDban) continue;
            if (all[i].now.weightDban - again.weightDban >= kToldDban) all[i].claimedBy.push_back(winner);
            all[i].now = std::move(again);
        }
    }
}

}  // namespace fettle
