// The weight of one hypothesis: a mean of products of e-values, row by row.
// Source: Vovk and Wang, Ann. Statist. 49 (2021) 1736-1754, sec. 3.
#include "core/diagnosis/weigh.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/diagnosis/explain_away.h"
#include "core/diagnosis/hypotheses.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

constexpr double kShaftHz = 25;

// One channel with one view in which every position is at chance level one (p = 1), drawn by hand.
class DrawnEvidence {
  public:
    DrawnEvidence() {
        views_.df = 0.1;
        views_.bins = 30000;
        View view;
        view.name = "envelope";
        view.omega = 1;
        view.top = views_.bins;
        view.z.assign(views_.bins, 1.0f);
        view.rankP.assign(views_.bins, 1.0f);
        view.factor.assign(views_.bins + 1, float(settings_.kappa));
        view.factor.back() = 1;
        views_.envelopes.push_back(view);
        evidence_.resize(1);
        evidence_[0].views = &views_;
        evidence_[0].channelName = "x";
        evidence_[0].factors = {view.factor};
        evidence_[0].blocked.bins.assign(views_.bins, 0);
    }

    void setRank(double hz, double p) {
        const auto middle = std::size_t(hz / views_.df + 0.5);
        for (std::size_t k = middle - 1; k <= middle + 1; ++k) {
            evidence_[0].factors[0][k] = float(settings_.kappa * std::pow(p, settings_.kappa - 1));
            views_.envelopes[0].rankP[k] = float(p);
        }
    }
    void block(double hz, double halfWidthHz, const std::string& reason) {
        Blocked& blocked = evidence_[0].blocked;
        blocked.block(hz, halfWidthHz, views_.df, blocked.addReason(reason));
        for (std::size_t k = 0; k < blocked.bins.size(); ++k)
            if (blocked.bins[k]) evidence_[0].factors[0][k] = 1;
    }
    void neutral() { std::fill(evidence_[0].factors[0].begin(), evidence_[0].factors[0].end(), 1.0f); }

    Weighing weigh(const Family& family, double wCut = 1) const {
        return fettle::weigh({family.fault, "driver DE", 1, {family}, {{0, 1, wCut}}}, evidence_, kShaftHz,
                             settings_);
    }

    WeighingSettings settings_;

  private:
    ChannelViews views_;
    std::vector<ChannelEvidence> evidence_;
};

Family outerRace() {
    return bearingFamily(BearingElement::OuterRace, asVariant({9, 25, 120, 0}, TurningRing::Inner));
}

double sumOf(const Weighing& w) {
    double sum = w.searchDban;
    for (const LineRow& row : w.rows)
        sum += row.weightDban;
    return sum;
}

void showAllLines(DrawnEvidence& evidence, const Family& family, double p) {
    for (const FamilyLine& line : family.lines)
        evidence.setRank(line.order * kShaftHz, p);
}

TEST(Weigh, NoEvidenceEitherWayWeighsNothing) {
    DrawnEvidence evidence;
    evidence.neutral();  // every factor 1: the priors over views and shifts must sum to 1
    for (const BearingElement element : kBearingElements) {
        const auto family = bearingFamily(element, asVariant({9, 25, 120, 0}, TurningRing::Inner));
        EXPECT_NEAR(evidence.weigh(family).weightDban, 0, 1e-9) << family.fault;
    }
}

// At chance level one everywhere the product is fixed by the shares: (1 - 0.85 w) for every line.
TEST(Weigh, AbsentLinesCountAgainst) {
    double expected = 0;
    for (const FamilyLine& line : outerRace().lines)
        expected += 10 * std::log10(1 - 0.85 * line.w);
    const Weighing w = DrawnEvidence().weigh(outerRace());
    EXPECT_NEAR(w.weightDban, expected, 1e-4);
    EXPECT_LT(w.weightDban, -25);
    for (const LineRow& row : w.rows)
        EXPECT_EQ(row.state, LineState::Absent) << row.name;
}

// All lines at p = 0.001: the product at the true shift, at a price of its prior and no more.
TEST(Weigh, AllLinesFoundWeighTheirProductLessTheSearch) {
    DrawnEvidence evidence;
    showAllLines(evidence, outerRace(), 1e-3);
    const double f = 0.15 * std::pow(1e-3, -0.85);
    double product = 0;
    for (const FamilyLine& line : outerRace().lines)
        product += 10 * std::log10(1 - line.w + line.w * f);
    const Weighing w = evidence.weigh(outerRace());
    EXPECT_LT(w.weightDban, product);
    EXPECT_GT(w.weightDban, product - 30);  // at most one in 1,000 shifts
    EXPECT_LT(w.searchDban, 0);
    EXPECT_NEAR(w.cageShift, 0, 3e-4);
    for (const LineRow& row : w.rows) {
        EXPECT_EQ(row.state, LineState::Found) << row.name;
        EXPECT_NEAR(row.weightDban, 10 * std::log10(1 - row.w + row.w * f), 1e-3) << row.name;
    }
    EXPECT_NEAR(sumOf(w), w.weightDban, 1e-9);
}

TEST(Weigh, FindsTheCageShiftThatIsThere) {
    for (const double c : {-0.015, -0.004, 0.006, 0.018}) {
        DrawnEvidence evidence;
        for (const FamilyLine& line : outerRace().lines)
            evidence.setRank((line.order + line.slope * c) * kShaftHz, 1e-3);
        const Weighing w = evidence.weigh(outerRace());
        EXPECT_NEAR(w.cageShift, c, 4e-4);
        EXPECT_GT(w.weightDban, 100);
    }
    DrawnEvidence beyond;  // 5 %: neither slip nor another maker's geometry goes so far
    for (const FamilyLine& line : outerRace().lines)
        beyond.setRank((line.order + line.slope * 0.05) * kShaftHz, 1e-3);
    EXPECT_LT(beyond.weigh(outerRace()).weightDban, 10);
}

// Slip of half a per cent is usual, of 2 % rare: the same lines weigh less there.
TEST(Weigh, AnUnusualShiftCostsMore) {
    const auto weightAt = [](double c) {
        DrawnEvidence evidence;
        for (const FamilyLine& line : outerRace().lines)
            evidence.setRank((line.order + line.slope * c) * kShaftHz, 1e-3);
        return evidence.weigh(outerRace()).weightDban;
    };
    EXPECT_GT(weightAt(0.002), weightAt(0.017) + 3);
}

TEST(Weigh, FallsAsTheLinesOfTheFaultAreTakenAway) {
    DrawnEvidence evidence;
    const Family family = outerRace();
    showAllLines(evidence, family, 1e-3);
    double before = evidence.weigh(family).weightDban;
    for (const FamilyLine& line : family.lines) {
        evidence.setRank(line.order * kShaftHz, 1);
        const double now = evidence.weigh(family).weightDban;
        EXPECT_LT(now, before) << line.name;
        before = now;
    }
    EXPECT_LT(before, 0);
}

TEST(Weigh, AMaskedLineIsNeutralAndSaysWhatItIsSharedWith) {
    const Family family = outerRace();
    DrawnEvidence open, masked;
    showAllLines(open, family, 1e-3);
    showAllLines(masked, family, 1e-3);
    const FamilyLine& second = family.lines[1];
    masked.block(second.order * kShaftHz, 0.03 * second.order * kShaftHz, "7 x shaft");
    const Weighing a = open.weigh(family), b = masked.weigh(family);
    EXPECT_EQ(b.rows[1].state, LineState::LeftOut);
    EXPECT_EQ(b.rows[1].weightDban, 0);
    EXPECT_NE(b.rows[1].why.find("7 x shaft"), std::string::npos) << b.rows[1].why;
    EXPECT_NEAR(a.weightDban - b.weightDban, a.rows[1].weightDban, 1);
    EXPECT_NEAR(sumOf(b), b.weightDban, 1e-9);
}

// A first carrier that slides onto a shaft order would take that order's strength for its own.
TEST(Weigh, ACarrierThatCannotBePartedFromAShaftOrderIsWorthNothing) {
    const Family family = outerRace();
    DrawnEvidence evidence;
    showAllLines(evidence, family, 1e-4);
    const double carrier = family.lines[0].order * kShaftHz;
    EXPECT_GT(evidence.weigh(family).weightDban, 100);
    evidence.block(carrier, 0.021 * carrier, "a shaft order");  // over all of the search
    const Weighing w = evidence.weigh(family);
    EXPECT_LE(w.weightDban, 1e-9);
    EXPECT_NEAR(sumOf(w), w.weightDban, 1e-9);
    for (const LineRow& row : w.rows)
        EXPECT_LE(row.weightDban, 0) << row.name;
}

// Parted at some shifts only: what is gained there still counts.
TEST(Weigh, ACarrierBesideAShaftOrderStillCounts) {
    const Family family = outerRace();
    DrawnEvidence evidence;
    showAllLines(evidence, family, 1e-4);
    const double carrier = family.lines[0].order * kShaftHz;
    evidence.block(carrier * 1.01, 0.4, "a shaft order");
    EXPECT_GT(evidence.weigh(family).weightDban, 100);
}

TEST(Weigh, LinesBeyondTheViewAreLeftOutNotAbsent) {
    const Family family = bearingFamily(BearingElement::OuterRace, {"", {300, 400, 90, 0.4}, 700, "", true});
    const Weighing w = DrawnEvidence().weigh(family);  // 0 to 3000 Hz; 12 x 7500 Hz
    EXPECT_EQ(w.rows[0].state, LineState::LeftOut);
    EXPECT_EQ(w.rows[0].why, "beyond the view");
    EXPECT_NEAR(w.weightDban, 0, 1e-9);
}

// Through a coupling lines are fainter: absence says less, and so does presence.
TEST(Weigh, AFartherPathSaysLessEitherWay) {
    DrawnEvidence evidence;
    EXPECT_GT(evidence.weigh(outerRace(), 0.3).weightDban, evidence.weigh(outerRace(), 1).weightDban);
    showAllLines(evidence, outerRace(), 1e-3);
    EXPECT_LT(evidence.weigh(outerRace(), 0.3).weightDban, evidence.weigh(outerRace(), 1).weightDban);
}

// Several internal geometries share the prior: two alike change nothing, a wrong one beside a right one costs
// 3 decibans.
TEST(Weigh, AWrongGeometryBesideTheRightOneCostsItsShare) {
    const Machine machine = made::motor();
    const auto recording =
        made::made(made::with(made::setupOf(machine), "bearing_outer_race", "driver DE", 0.75));
    const PreparedRecording prepared = prepare(machine, recording.recording, {});
    ASSERT_EQ(prepared.unfit, "");
    auto h = askBearings(machine, prepared).hypotheses[0];
    const auto weightOf = [&] { return weigh(h, prepared.evidence, prepared.rates.shaftHz, {}).weightDban; };
    const double alone = weightOf();
    h.variants.push_back(h.variants[0]);
    EXPECT_NEAR(weightOf(), alone, 1e-9);
    h.variants[1] = bearingFamily(BearingElement::OuterRace, asVariant({7, 25, 120, 0}, TurningRing::Inner));
    EXPECT_NEAR(weightOf(), alone - 10 * std::log10(2), 0.1);
}

// The whole way on simulated recordings.
class WeighKinds : public ::testing::TestWithParam<std::size_t> {
  protected:
    void SetUp() override {
        const auto made = made::made(made::kinds()[GetParam()].setup);
        prepared_ = prepare(machine_, made.recording, {});
        ASSERT_EQ(prepared_.unfit, "");
        asked_ = askBearings(machine_, prepared_);
        ASSERT_GE(asked_.hypotheses.size(), 4u);
    }

    // The e-value of a row from its rank alone.
    static double fromRank(const LineRow& row) {
        return 10 * std::log10(1 - row.w + row.w * 0.15 * std::pow(row.rankP, -0.85));
    }

    void expectArithmetic(const Weighing& w) const {
        EXPECT_NEAR(sumOf(w), w.weightDban, 1e-9);
        for (const LineRow& row : w.rows) {
            if (row.state == LineState::LeftOut) {
                EXPECT_EQ(row.weightDban, 0) << row.name;
                EXPECT_NE(row.why, "") << row.name;
                continue;
            }
            EXPECT_EQ(row.state == LineState::Found, row.weightDban > 0) << row.name;
            EXPECT_GT(row.rankP, 0) << row.name;
            EXPECT_NEAR(row.foundHz, row.expectedHz, 2.01 * prepared_.views[w.channel].df) << row.name;
        }
    }

    Machine machine_ = made::motor();
    PreparedRecording prepared_;
    AskedBearings asked_;
};

TEST_P(WeighKinds, RowsAndSearchAddUpToTheWeight) {
    for (const BearingHypothesis& h : asked_.hypotheses) {
        const Weighing w = weigh(h, prepared_.evidence, prepared_.rates.shaftHz, {});
        ASSERT_EQ(w.rows.size(), h.variants[0].lines.size());
        expectArithmetic(w);
        for (const LineRow& row : w.rows)
            if (row.state != LineState::LeftOut) {
                EXPECT_NEAR(row.weightDban, fromRank(row), 1e-3) << row.name;
            }
    }
}

TEST_P(WeighKinds, RowsAddUpAfterClaimsAndNoWeightHasGrown) {
    auto evidence = prepared_.evidence;
    const auto all = explainAway(asked_.hypotheses, evidence, prepared_.rates, {});
    ASSERT_EQ(all.size(), asked_.hypotheses.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        expectArithmetic(all[i].now);
        EXPECT_LE(all[i].now.weightDban, all[i].beforeClaimsDban);
        const double before =
            weigh(asked_.hypotheses[i], prepared_.evidence, prepared_.rates.shaftHz, {}).weightDban;
        EXPECT_EQ(all[i].beforeClaimsDban, before);
    }
}

// The unknown shift is continuous: a grid four times as fine must not tell another story.
TEST_P(WeighKinds, AFinerGridOfShiftsTellsTheSame) {
    WeighingSettings fine;
    fine.gridStepBins /= 4;
    for (const BearingHypothesis& h : asked_.hypotheses) {
        const Weighing usual = weigh(h, prepared_.evidence, prepared_.rates.shaftHz, {});
        const Weighing finer = weigh(h, prepared_.evidence, prepared_.rates.shaftHz, fine);
        EXPECT_NEAR(usual.weightDban, finer.weightDban, 1.5) << h.fault << " at " << h.at;
    }
}

// The shares of views and of hearings are priors: they sum to 1.
TEST_P(WeighKinds, SharesOfViewsAndHearingsSumToOne) {
    for (const ChannelViews& views : prepared_.views) {
        double sum = 0;
        for (const View& view : views.envelopes)
            sum += view.omega;
        EXPECT_NEAR(sum, 1, 1e-12);
    }
    for (const BearingHypothesis& h : asked_.hypotheses) {
        double sum = 0;
        for (const Hearing& hearing : h.hearings)
            sum += hearing.share;
        EXPECT_NEAR(sum, 1, 1e-12);
    }
}

INSTANTIATE_TEST_SUITE_P(Simulated, WeighKinds, ::testing::Range(std::size_t(0), made::kKinds),
                         [](const auto& kind) {
                             std::string name = made::kinds()[kind.param].name;
                             std::replace(name.begin(), name.end(), ' ', '_');
                             return name;
                         });

// Physics: the deeper the spall, the heavier the evidence; without it there is none.
TEST(Weigh, FallsWithTheSeverityOfTheFault) {
    const Machine machine = made::motor();
    double before = 1e9;
    for (const double severity : {0.75, 0.5, 0.0}) {
        const auto made =
            made::made(made::with(made::setupOf(machine, 3), "bearing_outer_race", "driver DE", severity));
        const PreparedRecording prepared = prepare(machine, made.recording, {});
        const auto asked = askBearings(machine, prepared);
        const double now =
            weigh(asked.hypotheses[0], prepared.evidence, prepared.rates.shaftHz, {}).weightDban;
        EXPECT_LT(now, before) << severity;
        before = now;
    }
    EXPECT_LT(before, 10);
}

}  // namespace
}  // namespace fettle
