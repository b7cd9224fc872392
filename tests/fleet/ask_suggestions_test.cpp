// What is asked for settles the finding it is asked for. Lines an instrument has, and that N lines to f Hz
// take N / f seconds: arithmetic. Two radial directions for unbalance, 32 s for rotor bars: common practice.
#include "core/fleet/ask_suggestions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using testing::HasSubstr;

class AskSuggestions : public testing::Test {
  protected:
    std::vector<AskSuggestion> of(const std::string& fault, const std::string& at,
                                  const std::vector<std::string>& rivals = {}) {
        Hypothesis h;
        h.fault = fault;
        h.at = at;
        h.sentence = "found";
        h.urgency = "plan";
        for (const std::string& rival : rivals)
            h.rivals.push_back({rival, at, 3, ""});
        examination_.speed.rpm = 1484;
        return askSuggestions(made::machineOf(made::motorText()), examination_, h);
    }
    static const AskSuggestion* in(const std::vector<AskSuggestion>& all, const std::string& direction) {
        for (const AskSuggestion& one : all)
            if (one.direction == direction) return &one;
        return nullptr;
    }
    static void expectPair(const std::vector<AskSuggestion>& all) {
        for (const char* direction : {"horizontal", "vertical"}) {
            const AskSuggestion* one = in(all, direction);
            ASSERT_TRUE(one) << direction;
            EXPECT_TRUE(one->byHand);
            EXPECT_EQ(one->point, "driver DE");
            EXPECT_TRUE(one->spec.tachometer);
            EXPECT_THAT(one->why, HasSubstr("90 degrees apart"));
        }
        EXPECT_FALSE(in(all, "")) << "one place without a direction decides nothing";
    }
    Examination examination_;
};

TEST_F(AskSuggestions, UnbalanceIsAskedInTwoRadialDirectionsWithAMark) {
    expectPair(of("unbalance", "driver DE"));
}

TEST_F(AskSuggestions, SoIsMisalignmentBesideUnbalance) {
    expectPair(of("misalignment", "driver DE", {"unbalance"}));
    EXPECT_FALSE(in(of("misalignment", "driver DE"), "vertical"));
}

// 60 turns of 1484 r/min take 4 s; 6400 lines to 1000 Hz take 6.4 s.
TEST_F(AskSuggestions, ARecordIsAsLongAsItsLinesTake) {
    const auto all = of("unbalance", "driver DE");
    ASSERT_FALSE(all.empty());
    EXPECT_DOUBLE_EQ(in(all, "horizontal")->spec.seconds, 6.4);
    EXPECT_EQ(linesOf(in(all, "horizontal")->spec), 6400);
    for (const char* fault : {"unbalance", "bearing_outer_race", "rotor_bar"})
        for (const AskSuggestion& one : of(fault, "driver DE"))
            EXPECT_GE(one.spec.seconds * one.spec.topHz, linesOf(one.spec) * (1 - 1e-9)) << fault;
}

TEST_F(AskSuggestions, RotorBarsAreAskedForLongNarrowFluxOrCurrentUnderLoad) {
    bool flux = false;
    for (const AskSuggestion& one : of("rotor_bar", "driver")) {
        EXPECT_GE(one.spec.seconds, 32) << one.why;
        EXPECT_LE(one.spec.topHz, 1000) << one.why;
        flux |= one.why.find("stray flux") != std::string::npos &&
                one.why.find("motor current") != std::string::npos &&
                one.why.find("load of at least half") != std::string::npos;
    }
    EXPECT_TRUE(flux);
}

// A blind spot whose cure is more of the same says at least as much.
TEST_F(AskSuggestions, BarsThatCannotBeSeenAreAskedAtLeastThatLong) {
    Hypothesis h;
    h.fault = "rotor_bar";
    h.at = "driver";
    examination_.blind = {
        {"rotor_bar", "driver", "too short", "a long narrow recording of 9.0 s or more, 1 kHz is enough"}};
    const auto all = askSuggestions(made::machineOf(made::motorText()), examination_, h);
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(all[0].spec.seconds, 32);
    examination_.blind[0].cure = "a long narrow recording of 45 s or more, 1 kHz is enough";
    EXPECT_GE(askSuggestions(made::machineOf(made::motorText()), examination_, h).at(0).spec.seconds, 45);
}

}  // namespace
}  // namespace fettle
