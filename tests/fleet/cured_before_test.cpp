// Work that cured a machine before, on trends made by hand: 75 kW on a rigid base, B/C at 2.8 mm/s (ISO
// 20816-3 group 2, from memory), so that 0.7 mm/s is the change that counts (ISO 10816-1:1995 5.3.2,
// criterion II).
#include "core/fleet/cured_before.h"

#include "core/fleet/history.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;

class Cured : public MadeHistory {
  protected:
    // `before` up to 24 March, `after` for a month, then `now` to 10 May.
    void live(double before, double after, double now) {
        level("2026-03-01", "2026-03-24", before);
        level("2026-03-25", "2026-04-24", after);
        level("2026-04-25", "2026-05-10", now);
    }
    void level(const std::string& first, const std::string& last, double velocity) {
        Heard heard;
        heard.velocityMmS = velocity;
        hearDays("FN-01", first, last, heard);
    }
    void clean(const std::string& text = "11 kg of lime scraped off the impeller.") {
        tell("FN-01", "2026-03-24T12:00:00Z", "cleaning", "driven", text);
    }
    std::optional<CuredBefore> told() {
        const auto period = periodTo(fleet_->site().value(), "2026-05-10");
        const auto cure = curedBefore(*fleet_, "FN-01", *period);
        EXPECT_TRUE(cure) << (cure ? "" : cure.error().sentence());
        return cure ? *cure : std::nullopt;
    }
};

TEST_F(Cured, AFallWithWorkThatHasClimbedBackIsTold) {
    live(6.5, 0.8, 5.6);
    clean();
    const auto cure = told();
    ASSERT_TRUE(cure);
    EXPECT_EQ(cure->event.kind, "cleaning");
    EXPECT_DOUBLE_EQ(cure->before, 6.5);
    EXPECT_DOUBLE_EQ(cure->after, 0.8);
    EXPECT_EQ(cure->sentence,
              "After the cleaning of 24 March 2026 (11 kg of lime scraped off the impeller) P x velocity "
              "r.m.s. fell from 6.5 to 0.8 mm/s; since then it has climbed back to 5.6.");
}

TEST_F(Cured, AFallWithoutWorkOrWithANoteAloneIsNot) {
    live(6.5, 0.8, 5.6);
    EXPECT_FALSE(told());
    tell("FN-01", "2026-03-24T12:00:00Z", "note", "driven", "looked at from the stairs");
    EXPECT_FALSE(told());
}

TEST_F(Cured, WorkWithoutAFallIsNot) {
    live(5.6, 5.6, 5.6);
    clean();
    EXPECT_FALSE(told());
}

// 1.2 to 0.55 is more than half, yet less than 0.7 mm/s; 3.2 to 2 is more than that, yet less than half.
TEST_F(Cured, AFallTooSmallByEitherMeasureIsNot) {
    live(1.2, 0.55, 3);
    clean();
    EXPECT_FALSE(told());
}
TEST_F(Cured, AFallByLessThanHalfIsNot) {
    live(3.2, 2, 4);
    clean();
    EXPECT_FALSE(told());
}

TEST_F(Cured, WhatHasNotClimbedBackIsNot) {
    live(6.5, 0.8, 1.6);
    clean();
    EXPECT_FALSE(told());
}

// Four days later the level is down already: the inspection did not bring it there.
TEST_F(Cured, TheWorkNextToTheFallIsNamed) {
    live(6.5, 0.8, 5.6);
    clean();
    tell("FN-01", "2026-03-24T14:00:00Z", "inspection", "driven", "looks clean");
    tell("FN-01", "2026-03-26T14:00:00Z", "greasing", "driver DE", "20 g");
    const auto cure = told();
    ASSERT_TRUE(cure);
    EXPECT_EQ(cure->event.kind, "cleaning");
}

TEST_F(Cured, AMovedSensorMakesNoCure) {
    live(6.5, 0.8, 5.6);
    clean();
    tell("FN-01", "2026-03-24T13:00:00Z", "moved_node", "P", "to the other side");
    EXPECT_FALSE(told());
}

TEST_F(Cured, ACorrectionIsToldWithIt) {
    live(6.5, 0.8, 5.6);
    clean("11 kg of lime");
    const Event event = fleet_->log().events("FN-01")->at(0);
    tell("FN-01", "2026-03-25T12:00:00Z", "note", "", correctionText(event, "12 kg"));
    const auto cure = told();
    ASSERT_TRUE(cure);
    EXPECT_THAT(cure->sentence, HasSubstr("(11 kg of lime; corrected: 12 kg)"));
}

}  // namespace
}  // namespace fettle::fleet_test
