#include "core/diagnosis/unlisted_combs.h"

#include <algorithm>

#include "core/diagnosis/unknown_bearing.h"

namespace fettle {

namespace {

constexpr int kMostCombs = 3;    // of one recording that may claim
constexpr double kToldDban = 3;  // a smaller loss to a claim is not worth telling

const Hypothesis* strongest(const std::vector<Hypothesis>& combs, double least) {
    const Hypothesis* best = nullptr;
    for (const Hypothesis& comb : combs)
        if (comb.weightDban >= least && (!best || comb.weightDban > best->weightDban)) best = &comb;
    return best;
}

double shaftRatioAt(const Machine& machine, const std::string& component) {
    const auto place = machine.placeOf(component);
    return place ? machine.shafts[place->shaft].ratio : 1;
}

// Whatever is weaker than the comb keeps the smaller of its weights before and after the claim.
void weighAgain(const AskedBearings& asked, const Hypothesis& comb, const PreparedRecording& prepared,
                const std::vector<ChannelEvidence>& evidence, const WeighingSettings& settings,
                BearingsWeighed& all) {
    for (std::size_t i = 0; i < all.described.size(); ++i) {
        Weighing& now = all.described[i].now;
        if (now.weightDban >= *comb.weightDban) continue;
        Weighing again = weigh(asked.hypotheses[i], evidence, prepared.rates.shaftHz, settings);
        if (again.weightDban >= now.weightDban) continue;
        if (now.weightDban - again.weightDban >= kToldDban)
            all.combs[i].push_back({comb.fault, comb.at, *comb.weightDban, kClaimedByRival});
        now = std::move(again);
    }
}

}  // namespace

BearingsWeighed weighBearings(const Machine& machine, const PreparedRecording& prepared,
                              const AskedBearings& asked, std::vector<ChannelEvidence>& evidence,
                              const WeighingSettings& settings) {
    BearingsWeighed all;
    all.described = explainAway(asked.hypotheses, evidence, prepared.rates, settings);
    all.combs.resize(all.described.size());
    std::vector<Hypothesis> combs = all.unknown = unknownBearings(machine, prepared, evidence, settings);
    for (int n = 0; n < kMostCombs; ++n) {
        const Hypothesis* comb = strongest(combs, settings.claimStopsDban);
        if (!comb) break;
        BearingHypothesis claiming;
        claiming.at = comb->at;
        claiming.shaftRatio = shaftRatioAt(machine, comb->at);
        claim(claiming, comb->best, evidence, prepared.rates, settings);
        weighAgain(asked, *comb, prepared, evidence, settings, all);
        combs = unknownBearings(machine, prepared, evidence, settings);
    }
    return all;
}

}  // namespace fettle
