// Factors: 9.80665 m/s2 is standard gravity (ISO 80000-3:2019), 25.4 mm an inch, the rest of r.m.s., peak and
// peak to peak of a sine.
#include "core/intake/level_jumps.h"

#include <gmock/gmock.h>

#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::HasSubstr;

const std::vector<double> kSteady = {0.31, 0.30, 0.305, 0.31, 0.298, 0.302, 0.307, 0.30, 0.303, 0.306};

TEST(JumpOf, EveryFactorBothWays) {
    const double usual = 0.304;
    for (const auto& [factor, word] :
         std::vector<std::pair<double, const char*>>{{9.80665, "g and m/s2"},
                                                     {1000, "g and mg"},
                                                     {25.4, "inch and mm"},
                                                     {1.41421, "r.m.s. and peak"},
                                                     {2, "gain"},
                                                     {2.82843, "r.m.s. and peak to peak"}}) {
        for (const double level : {usual * factor, usual / factor}) {
            const auto jump = jumpOf(kSteady, level);
            ASSERT_TRUE(jump) << factor;
            EXPECT_THAT(*jump, HasSubstr(word));
        }
    }
}

TEST(JumpOf, OtherChangesAreTheMachines) {
    for (const double times : {1.0, 1.1, 1.25, 1.6, 1.7, 2.3, 4.0, 6.0, 15.0, 100.0, 0.8, 0.6, 0.0})
        EXPECT_FALSE(jumpOf(kSteady, 0.304 * times)) << times;
}

// Levels that scatter by a third: 1.4 and 2 times is nothing, 9.8 times still is.
TEST(JumpOf, ScatterHidesSmallFactors) {
    const std::vector<double> wild = {0.2, 0.31, 0.25, 0.4, 0.29, 0.35, 0.22, 0.38};
    EXPECT_FALSE(jumpOf(wild, 0.3 * 1.414));
    EXPECT_FALSE(jumpOf(wild, 0.3 * 2));
    EXPECT_TRUE(jumpOf(wild, 0.3 * 9.80665));
}

// A conveyor that runs empty or full is at one of two levels; the first recordings at the other one of them
// look like a unit, later ones do not.
TEST(JumpOf, ALevelThatWasThereIsNoJump) {
    std::vector<double> empty = {0.22, 0.222, 0.225, 0.221, 0.226, 0.223, 0.224};
    EXPECT_TRUE(jumpOf(empty, 0.223 * 9.80665));
    for (const double full : {2.0, 2.4})
        empty.push_back(full);
    EXPECT_FALSE(jumpOf(empty, 0.223 * 9.80665));
    EXPECT_TRUE(jumpOf(empty, 0.223 / 9.80665));
}

TEST(JumpOf, FiveBeforeAreNeeded) {
    EXPECT_FALSE(jumpOf({0.3, 0.3, 0.3, 0.3}, 3));
    EXPECT_TRUE(jumpOf({0.3, 0.3, 0.3, 0.3, 0.3}, 0.3 * 9.80665));
}

class JumpTest : public IntakeTest {
  protected:
    void sendRunning(const std::string& name, const std::string& time, double times) {
        const auto setup = made::with(made::setupOf(made::motor(), 7, 3), "looseness", "driver", 0.6);
        const Sent node = sent(setup);
        Said said;
        said.time = time;
        said.scale = node.scale * times;
        send(in_, name, node.wav, said);
    }
};

// Taken in, with a word, whether the earlier ones came in the same import or before.
TEST_F(JumpTest, IsTakenInWithAWord) {
    for (int i = 1; i <= 6; ++i)
        sendRunning("r" + std::to_string(i), "2026-05-0" + std::to_string(i) + "T06:20:00Z", 1);
    const ImportReport usual = taken();
    EXPECT_EQ(usual.stored, 6u);
    for (const RecordingEntry& entry : entriesOf("T-1"))
        ASSERT_EQ(entry.running, "running");
    EXPECT_TRUE(usual.warnings.empty()) << usual.warnings[0].text;
    sendRunning("r7", "2026-05-07T06:20:00Z", kStandardGravity);
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u);
    ASSERT_EQ(report.warnings.size(), 2u);  // both axes
    EXPECT_THAT(report.warnings[0].text, HasSubstr("T-1 P x: level about 9.81 times"));
    EXPECT_THAT(report.warnings[0].path, HasSubstr("r7"));
}

// A fault moves one level more than the other.
TEST_F(JumpTest, AFaultIsNoUnit) {
    for (int i = 1; i <= 6; ++i)
        sendRunning("r" + std::to_string(i), "2026-05-0" + std::to_string(i) + "T06:20:00Z", 1);
    const auto setup = made::with(made::with(made::setupOf(made::motor(), 7, 3), "looseness", "driver", 0.6),
                                  "bearing_outer_race", "driver DE", 1);
    const Sent node = sent(setup);
    Said said;
    said.time = "2026-05-07T06:20:00Z";
    said.scale = node.scale;
    send(in_, "r7", node.wav, said);
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 7u);
    EXPECT_TRUE(report.warnings.empty()) << report.warnings[0].text;
    const auto x = fleet_->trends().channels(entriesOf("T-1")[0].machine).value()[0];
    const auto g =
        fleet_->trends().trend(x.id, Quantity::AccelerationRms, at("2026-05-06T00:00:00Z"), kNow).value();
    ASSERT_EQ(g.size(), 2u);
    EXPECT_GT(g[1].value, 1.3 * g[0].value);
}

}  // namespace
}  // namespace fettle::intake_test
