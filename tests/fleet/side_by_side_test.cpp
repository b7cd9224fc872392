// Where it is largest, and what the sound machine drew, on a history made by hand; every answer is put in.
#include "core/fleet/side_by_side.h"

#include "core/fleet/sound_spectra.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;

class Side : public MadeHistory {
  protected:
    ChannelEntry channelOf(const std::string& tag) {
        return fleet_->trends().channels(fleet_->machines().byTag(tag).value().id).value().at(0);
    }
    std::vector<SideRow> rows(const std::string& moment, std::optional<double> order = {}) {
        const auto answer =
            sideBySide(*fleet_, {"FN-01", channelOf("FN-01").id, at(moment), order}, CancelToken{});
        EXPECT_TRUE(answer) << (answer ? "" : answer.error().sentence());
        return answer.value_or(std::vector<SideRow>{});
    }
};

TEST_F(Side, TheTwinStandsBesideAtTheSameMoment) {
    Heard high, low;
    high.velocityMmS = 4;
    low.velocityMmS = 1;
    hearDays("FN-01", "2026-05-01", "2026-05-06", high);
    hearDays("FN-02", "2026-05-01", "2026-05-04", low);
    const auto both = rows("2026-05-06T05:00:00Z");
    ASSERT_EQ(both.size(), 2u);
    EXPECT_EQ(both[0].beside, Beside::Here);
    EXPECT_EQ(both[0].tag, "FN-01");
    EXPECT_EQ(formatUtc(both[0].time), formatUtc(at("2026-05-06T06:00:00Z")));
    EXPECT_NEAR(both[0].velocityMmS.value_or(0), 4, 1e-6);
    EXPECT_EQ(both[1].beside, Beside::Twin);
    EXPECT_EQ(both[1].tag, "FN-02");
    EXPECT_EQ(formatUtc(both[1].time), formatUtc(at("2026-05-04T06:00:00Z")));
    EXPECT_NEAR(both[1].velocityMmS.value_or(0), 1, 1e-6);
    EXPECT_EQ(rows("2026-05-12T06:00:00Z").size(), 0u);  // nothing within three days
}

TEST_F(Side, AStoppedTwinIsNotCompared) {
    hearDays("FN-01", "2026-05-01", "2026-05-03", {});
    Heard stopped;
    stopped.running = "stopped";
    hearDays("FN-02", "2026-05-01", "2026-05-03", stopped);
    EXPECT_EQ(rows("2026-05-02T06:00:00Z").size(), 1u);
}

TEST_F(Side, OnlyMachinesOfTheSameBuildAreTwins) {
    Machine a;
    a.driver.powerKw = 45;
    a.driver.poles = 4;
    a.driven.kind = "fan";
    Machine b = a;
    EXPECT_TRUE(areTwins(a, b));
    b.driven.kind = "pump";
    EXPECT_FALSE(areTwins(a, b));
    b = a;
    b.driver.poles = 2;
    EXPECT_FALSE(areTwins(a, b));
    b = a;
    a.driver.powerKw = b.driver.powerKw = {};
    EXPECT_FALSE(areTwins(a, b));  // nothing known is no likeness
}

TEST_F(Side, TheBandIsOfTheBaselinesDaysAndALineThatCameLaterStandsOutOfIt) {
    Heard sound, later;
    hearDays("FN-01", "2026-03-02", "2026-04-20", sound);
    later.lineHz = 400;
    hearDays("FN-01", "2026-04-21", "2026-05-10", later);
    const auto machine = fleet_->machines().describedAt("FN-01").value();
    const auto answer =
        soundBand(*fleet_, "FN-01", *machine, channelOf("FN-01"), WaterfallKind::Velocity, 1484 / 60.0);
    ASSERT_TRUE(answer) << answer.error().sentence();
    EXPECT_EQ(answer->from, "2026-03-02");
    EXPECT_GE(answer->band.spectra, 30u);
    const auto spectra = fleet_->trends()
                             .spectra(channelOf("FN-01").id, WaterfallKind::Velocity,
                                      at("2026-05-10T00:00:00Z"), at("2026-05-11T00:00:00Z"))
                             .value();
    ASSERT_EQ(spectra.size(), 1u);
    const auto& today = spectra[0].lines;
    ASSERT_EQ(today.size(), answer->band.high.size());
    std::size_t above = 0;
    for (std::size_t i = 0; i < today.size(); ++i)
        above += today[i] > 2 * answer->band.high[i];
    EXPECT_EQ(above, 1u);  // the new line and nothing else
}

TEST_F(Side, WithoutABaselineItSaysWhy) {
    hearDays("FN-01", "2026-05-01", "2026-05-06", {});
    const auto machine = fleet_->machines().describedAt("FN-01").value();
    const auto answer =
        soundBand(*fleet_, "FN-01", *machine, channelOf("FN-01"), WaterfallKind::Velocity, 25);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->band.spectra, 0u);
    EXPECT_THAT(answer->why, HasSubstr("no baseline"));
}

}  // namespace
}  // namespace fettle::fleet_test
