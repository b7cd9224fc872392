// Speeds through gears, belts and planetary sets.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/machine/describe.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

const char* const kShafts =
    R"("shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}, {"id": "S3", "of": "driven"}])";

Json train(const std::string& joints) {
    return changed(std::string(R"({"driven": {"kind": "mill"}, )") + kShafts + ", " + joints + "}");
}

const Shaft& shaft(const Machine& machine, const std::string& id) {
    return machine.shafts[*machine.shaftById(id)];
}

// 21/67 teeth: a pinion at 1480 r/min = 24.666667 Hz drives the wheel at 7.731343 Hz (computed, kinematics).
TEST(Train, GearThenBelt) {
    const Machine machine =
        parsed(
            train(R"("gears": [{"id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67], "kind": "helical"}],
        "belts": [{"id": "B1", "from": "S2", "to": "S3", "pulley_mm": [200, 315], "length_mm": 2500, "kind": "vee",
                   "creep_pct": [0, 2]}],
        "intermediate": [{"id": "G1 box", "shaft": "S2", "bearings": {"DE": {"designation": "6310"}}}])"))
            .machine;
    EXPECT_NEAR(1480 / 60.0 * shaft(machine, "S2").ratio, 7.731343, 1e-6);
    EXPECT_EQ(shaft(machine, "S2").ratioSpread, 0);
    const Shaft& last = shaft(machine, "S3");
    const double noCreep = 21.0 / 67 * 200 / 315;
    EXPECT_NEAR(last.ratio * (1 + last.ratioSpread), noCreep, 1e-12);
    EXPECT_NEAR(last.ratio * (1 - last.ratioSpread), noCreep * 0.98, 1e-12);
    EXPECT_EQ(machine.bearings[0].shaft, *machine.shaftById("S2"));
    EXPECT_EQ(machine.bearings[0].at, "G1 box DE");
}

// Textbook (Willis): ring fixed, sun drives, carrier follows at 1 / (1 + R/S); sun fixed, ring drives: 1 / (1
// + S/R); carrier fixed: a plain train, S/R.
TEST(Train, PlanetarySets) {
    const auto ratio = [](const std::string& fixed) {
        const Json machine =
            train(R"("gears": [{"id": "P1", "from": "S1", "to": "S2", "kind": "planetary", "sun": 21,
            "ring": 93, "planet": 36, "planets": 3, "fixed": ")" +
                  fixed + R"("},
            {"id": "G2", "from": "S2", "to": "S3", "teeth": [1, 1]}])");
        return shaft(parsed(machine).machine, "S2").ratio;
    };
    EXPECT_NEAR(ratio("ring"), 1 / (1 + 93.0 / 21), 1e-12);
    EXPECT_NEAR(ratio("sun"), 1 / (1 + 21.0 / 93), 1e-12);
    EXPECT_NEAR(ratio("carrier"), 21.0 / 93, 1e-12);
}

TEST(Train, PlanetaryAsAnObjectOfItsOwn) {
    const Machine machine = parsed(train(R"("gears": [{"id": "P1", "from": "S1", "to": "S2",
        "planetary": {"sun": 20, "ring": 80, "planet": 30, "planets": 4, "fixed": "ring"}},
        {"id": "G2", "from": "S2", "to": "S3", "teeth": [2, 1]}])"))
                                .machine;
    EXPECT_NEAR(shaft(machine, "S3").ratio, 2 * 0.2, 1e-12);
}

TEST(Train, PlanetThatDoesNotFitBetweenSunAndRingIsWarnedOf) {
    const auto warnings = parsed(changed(R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
        "gears": [{"id": "P1", "from": "S1", "to": "S2", "sun": 21, "ring": 93, "planet": 30, "planets": 3, "fixed": "ring"}]})"))
                              .warnings;
    ASSERT_EQ(warnings.size(), 1u);
    EXPECT_THAT(warnings[0], HasSubstr("/gears/0/planet"));
}

// A toothed belt cannot creep: exact ratio, no spread.
TEST(Train, ToothedBelt) {
    const Machine machine =
        parsed(train(R"("belts": [{"id": "B1", "from": "S1", "to": "S2", "teeth": [24, 60]},
        {"id": "B2", "from": "S2", "to": "S3", "kind": "toothed", "teeth": [30, 30], "length_mm": 900}])"))
            .machine;
    EXPECT_DOUBLE_EQ(shaft(machine, "S3").ratio, 0.4);
    EXPECT_EQ(shaft(machine, "S3").ratioSpread, 0);
}

// Creep slows the pulley that is driven, whichever way round the belt was written down.
TEST(Train, CreepFollowsThePowerNotTheWriting) {
    const auto ratio = [](const std::string& ends, const std::string& pulleys) {
        const Json machine =
            changed(R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}], "belts": [{"id": "B1", )" +
                    ends + R"(, "creep_pct": [1, 1], "pulley_mm": )" + pulleys + "}]}");
        return shaft(parsed(machine).machine, "S2").ratio;
    };
    EXPECT_NEAR(ratio(R"("from": "S1", "to": "S2")", "[100, 200]"), 0.5 * 0.99, 1e-12);
    EXPECT_NEAR(ratio(R"("from": "S2", "to": "S1")", "[200, 100]"), 0.5 * 0.99, 1e-12);
}

TEST(Train, TheDriversShaftComesFirst) {
    const Machine machine = parsed(changed(R"({"shafts": [{"id": "low"}, {"id": "high", "of": "driver"}],
        "gears": [{"id": "G", "from": "high", "to": "low", "teeth": [10, 40]}]})"))
                                .machine;
    EXPECT_EQ(machine.shafts[0].id, "high");
    EXPECT_EQ(machine.shafts[0].ratio, 1);
    EXPECT_EQ(machine.shafts[1].ratio, 0.25);
}

TEST(Train, GivenRatioWhereNothingIsKnown) {
    const Machine machine =
        parsed(changed(R"({"driven": {"kind": "mill", "speed_ratio": 0.2, "speed_ratio_tol": 0.01,
                           "bearings": {"DE": {"designation": "6310"}}}})"))
            .machine;
    ASSERT_EQ(machine.shafts.size(), 2u);
    EXPECT_EQ(machine.shaftOfDriven(), 1u);
    EXPECT_EQ(machine.shafts[1].ratio, 0.2);
    EXPECT_EQ(machine.shafts[1].ratioSpread, 0.01);
    EXPECT_EQ(machine.bearings[0].shaft, 1u);
}

TEST(Train, GivenRatioReachesWhatHangsOnTheDrivenShaft) {
    const Machine machine = parsed(changed(R"({"driven": {"kind": "mill", "speed_ratio": 0.1},
        "shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}, {"id": "S3", "of": "driven"}],
        "gears": [{"id": "G", "from": "S2", "to": "S3", "teeth": [20, 60]}]})"))
                                .machine;
    EXPECT_NEAR(shaft(machine, "S2").ratio, 0.3, 1e-12);
}

TEST(Train, GivenRatioIsNotUsedWhereTeethAreKnown) {
    const auto [machine, warnings] = parsed(changed(R"({"driven": {"kind": "mill", "speed_ratio": 0.1},
        "shafts": [{"id": "S1", "of": "driver"}, {"id": "S2", "of": "driven"}],
        "gears": [{"id": "G", "from": "S1", "to": "S2", "teeth": [20, 60]}]})"));
    EXPECT_NEAR(machine.shafts[1].ratio, 1 / 3.0, 1e-12);
    ASSERT_EQ(warnings.size(), 1u);
    EXPECT_THAT(warnings[0], HasSubstr("/driven/speed_ratio"));
}

TEST(Train, ABearingMayNameItsOwnShaft) {
    const Machine machine = parsed(changed(R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
        "gears": [{"id": "G", "from": "S1", "to": "S2", "teeth": [20, 60]}],
        "intermediate": [{"id": "box", "shaft": "S2", "bearings": {"in": {"designation": "6310", "shaft": "S1"},
                                                                   "out": {"designation": "6310"}}}]})"))
                                .machine;
    EXPECT_EQ(machine.bearings[0].shaft, 0u);
    EXPECT_EQ(machine.bearings[1].shaft, 1u);
}

TEST(Train, AShaftNothingTurnsIsRefusedByName) {
    const Error error =
        refused(train(R"("gears": [{"id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67]}])"));
    EXPECT_EQ(error.place, "/shafts");
    EXPECT_THAT(error.rule, HasSubstr("S3"));
}

TEST(Train, TwoWaysToOneShaftMustAgree) {
    const Error error = refused(train(R"("gears": [{"id": "G1", "from": "S1", "to": "S2", "teeth": [20, 40]},
        {"id": "G2", "from": "S2", "to": "S3", "teeth": [20, 40]}, {"id": "G3", "from": "S1", "to": "S3", "teeth": [20, 70]}])"));
    EXPECT_THAT(error.rule, HasSubstr("disagree"));
}

TEST(Train, Refused) {
    const std::vector<std::pair<std::string, const char*>> cases = {
        {R"({"gears": [{"id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67]}]})", "/shafts"},
        {R"({"shafts": [{"id": "S1"}]})", "/shafts"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2", "of": "driver"}]})", "/shafts/1/of"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}], "gears": [{"id": "G", "from": "S1", "to": "S7", "teeth": [1, 2]}]})",
         "/gears/0/to"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}], "gears": [{"id": "G", "from": "S1", "to": "S1", "teeth": [1, 2]}]})",
         "/gears/0/to"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
             "gears": [{"id": "G", "from": "S1", "to": "S2", "teeth": [21.5, 67]}]})",
         "/gears/0/teeth"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
             "gears": [{"id": "G", "from": "S1", "to": "S2", "sun": 90, "ring": 30, "fixed": "ring"}]})",
         "/gears/0/ring"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}], "belts": [{"id": "B", "from": "S1", "to": "S2"}]})",
         "/belts/0/pulley_mm"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
             "belts": [{"id": "B", "from": "S1", "to": "S2", "pulley_mm": [200, 315], "length_mm": 700}]})",
         "/belts/0/length_mm"},
        {R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
             "belts": [{"id": "B", "from": "S1", "to": "S2", "pulley_mm": [200, 315], "creep_pct": [3, 1]}]})",
         "/belts/0/creep_pct"},
        {R"({"driven": {"bearings": {"DE": {}}}, "shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
             "gears": [{"id": "G", "from": "S1", "to": "S2", "teeth": [21, 67]}]})",
         "/shafts"},
        {R"({"intermediate": [{"id": "box", "shaft": "S4"}]})", "/intermediate/0/shaft"}};
    for (const auto& [patch, place] : cases)
        EXPECT_EQ(refused(changed(patch)).place, place) << patch;
}

}  // namespace
}  // namespace fettle
