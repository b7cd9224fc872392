// What description and points alone keep from being seen, over all recordings of a span. Sources: which fault
// shows in which direction, common textbooks; noise in velocity by v = a / (2 pi f), worked out here.
#include "core/diagnosis/blind_machine.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

ChannelFacts channel(const std::string& name, const std::string& point, const std::string& direction,
                     double rateHz = 12800, double seconds = 4) {
    return {name, point, direction, "acceleration", rateHz, std::size_t(rateHz * seconds)};
}

RecordingFacts recording(std::vector<ChannelFacts> channels) {
    RecordingFacts facts;
    facts.channels = std::move(channels);
    facts.running = "running";
    facts.speed.rpm = 1484;
    facts.frameTempC = 60;
    return facts;
}

const BlindSpot* spotOf(const std::vector<BlindSpot>& spots, const std::string& fault,
                        const std::string& at) {
    for (const BlindSpot& s : spots)
        if (s.fault == fault && s.at == at) return &s;
    return nullptr;
}

Machine with(const std::string& more, const std::string& point = R"("at": "driver DE")") {
    return made::machineOf(R"({ "tag": "T-1", "mains_hz": 50, "driver": { "power_kw": 75, "poles": 4,
        "rated_rpm": 1484, "bearings": { "DE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 } } },)" +
                           more + R"( "points": [ { "id": "M", )" + point +
                           R"(, "channels": [ { "name": "x" }, { "name": "y" }, { "name": "z" } ] } ] })");
}

const std::vector<ChannelFacts> kThreeAxes = {channel("x", "M", "horizontal"), channel("y", "M", "vertical"),
                                              channel("z", "M", "axial")};

TEST(BlindMachine, ThreeAxesOnADescribedMotorMissNothing) {
    EXPECT_TRUE(blindByMachine(with(""), {recording(kThreeAxes)}).empty());
}

// 300 ug/sqrt(Hz) from 2 to 1000 Hz: 2.942 mm/s2 / (2 pi) x sqrt(1/2 - 1/1000) = 0.331 mm/s.
TEST(BlindMachine, TheSensorsNoiseIsToldInVelocity) {
    EXPECT_NEAR(noiseMmS(300e-6, 2, 1000), 0.331, 0.001);
    const Machine machine = with("", R"("at": "driver DE", "noise_per_rt_hz": 3e-4)");
    const auto spots = blindByMachine(machine, {recording(kThreeAxes)});
    const BlindSpot* noise = spotOf(spots, "", "driver DE");
    ASSERT_NE(noise, nullptr);
    EXPECT_THAT(noise->why, HasSubstr("0.33 mm/s from 2 Hz"));
    EXPECT_THAT(noise->why, HasSubstr("9 mg"));
    const Machine quiet = with("", R"("at": "driver DE", "noise_per_rt_hz": 8e-5)");
    EXPECT_TRUE(blindByMachine(quiet, {recording(kThreeAxes)}).empty());
}

// Horizontal and vertical lose what shows along the shaft; horizontal and axial what lifts a foot.
TEST(BlindMachine, EachPairOfAxesLosesItsOwn) {
    const auto noAxial = blindByMachine(with(""), {recording({kThreeAxes[0], kThreeAxes[1]})});
    EXPECT_NE(spotOf(noAxial, "misalignment", "driver"), nullptr);
    EXPECT_NE(spotOf(noAxial, "bent_shaft", "driver"), nullptr);
    EXPECT_EQ(spotOf(noAxial, "soft_foot", "driver"), nullptr);
    const auto noVertical = blindByMachine(with(""), {recording({kThreeAxes[0], kThreeAxes[2]})});
    EXPECT_EQ(spotOf(noVertical, "misalignment", "driver"), nullptr);
    for (const char* fault : {"looseness", "soft_foot", "resonance"})
        EXPECT_NE(spotOf(noVertical, fault, "driver"), nullptr) << fault;
    const auto noHorizontal = blindByMachine(with(""), {recording({kThreeAxes[1], kThreeAxes[2]})});
    EXPECT_EQ(spotOf(noHorizontal, "soft_foot", "driver"), nullptr);
    EXPECT_NE(spotOf(noHorizontal, "resonance", "driver"), nullptr);
    const auto axialOnly = blindByMachine(with(""), {recording({kThreeAxes[2]})});
    EXPECT_NE(spotOf(axialOnly, "unbalance", "driver"), nullptr);
}

// The axes may come in different recordings of the week.
TEST(BlindMachine, ASpanCountsTogether) {
    EXPECT_TRUE(blindByMachine(with(""), {recording({kThreeAxes[0]}), recording({kThreeAxes[1]}),
                                          recording({kThreeAxes[2]})})
                    .empty());
}

TEST(BlindMachine, WhatTheMotorsNodeHardlyHearsIsSaidUntilASensorSitsThere) {
    const Machine machine = made::fanSet();
    const auto motorOnly =
        blindByMachine(machine, {recording({channel("x", "M", "horizontal"), channel("z", "M", "axial")})});
    const BlindSpot* fan = spotOf(motorOnly, "bearing", "driven");
    ASSERT_NE(fan, nullptr);
    EXPECT_EQ(fan->why, "heard through the coupling only");
    EXPECT_EQ(fan->cure, "a recording of F");  // that point is described but silent
    EXPECT_TRUE(fan->machineWide);
    const auto both = blindByMachine(machine, {recording({channel("x", "M", "horizontal")}),
                                               recording({channel("x", "F", "horizontal")})});
    EXPECT_EQ(spotOf(both, "bearing", "driven"), nullptr);
}

TEST(BlindMachine, HearsSaysOtherwise) {
    const std::string pump =
        R"("driven": { "kind": "pump", "blades": 6, "bearings": { "DE": { "designation": "6310" } } },)";
    EXPECT_NE(spotOf(blindByMachine(with(pump), {recording(kThreeAxes)}), "bearing", "driven"), nullptr);
    const Machine same =
        with(pump, R"("at": "driver DE", "hears": [ { "at": "driven", "path": "same housing" } ])");
    EXPECT_EQ(spotOf(blindByMachine(same, {recording(kThreeAxes)}), "bearing", "driven"), nullptr);
}

TEST(BlindMachine, BearingsThatNobodyDescribedAreABlindSpot) {
    const auto spots =
        blindByMachine(with(R"("driven": { "kind": "pump", "blades": 6 },)"), {recording(kThreeAxes)});
    const BlindSpot* pump = spotOf(spots, "bearing", "driven");
    ASSERT_NE(pump, nullptr);
    EXPECT_THAT(pump->why, HasSubstr("not described"));
    EXPECT_THAT(pump->cure, HasSubstr("a sensor on the pump"));
    const Machine close = with(R"("coupling": "close-coupled", "driven": { "kind": "pump", "blades": 6 },)");
    EXPECT_EQ(spotOf(blindByMachine(close, {recording(kThreeAxes)}), "bearing", "driven"), nullptr);
}

// 24.7 Hz / 20 = 1.2 Hz, below the 2 Hz that is read from.
TEST(BlindMachine, AShaftSlowerThanTheSensorReads) {
    const Machine machine = with(
        R"("driven": { "kind": "mill", "speed_ratio": 0.05, "bearings": { "DE": { "designation": "6310" } } },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],)",
        R"("at": "driven DE")");
    const auto spots = blindByMachine(machine, {recording(kThreeAxes)});
    const BlindSpot* slow = spotOf(spots, "unbalance", "driven");
    ASSERT_NE(slow, nullptr);
    EXPECT_THAT(slow->why, HasSubstr("1.2 Hz"));
}

TEST(BlindMachine, ASlowSampleRateHearsEarlyDamageLate) {
    const auto spots = blindByMachine(
        with(""), {recording({channel("x", "M", "horizontal", 3200), channel("y", "M", "vertical", 3200),
                              channel("z", "M", "axial", 3200)})});
    const BlindSpot* early = spotOf(spots, "bearing", "driver");
    ASSERT_NE(early, nullptr);
    EXPECT_THAT(early->why, HasSubstr("1.5 kHz"));
}

TEST(BlindMachine, ASensorThatHidesTheMachineIsToldFromHalfOfItsRecordingsOn) {
    RecordingFacts clipped = recording(kThreeAxes);
    clipped.quality = {{"clipped", "x", ""}, {"clipped", "y", ""}, {"sample_rate", "", ""}};
    const RecordingFacts good = recording(kThreeAxes);
    const auto spots = blindByMachine(with(""), {clipped, good});
    const BlindSpot* sensor = spotOf(spots, "", "driver DE");
    ASSERT_NE(sensor, nullptr);
    EXPECT_EQ(sensor->why, "1 of 2 recordings of M are clipped");
    EXPECT_EQ(sensor->cure, "a wider range");
    EXPECT_TRUE(blindByMachine(with(""), {clipped, good, good}).empty());
}

TEST(BlindMachine, WhatIsNotMeasuredOrNotEntered) {
    RecordingFacts cold = recording(kThreeAxes);
    cold.frameTempC.reset();
    const auto spots = blindByMachine(with(R"("driven": { "kind": "fan" },)"), {cold});
    EXPECT_NE(spotOf(spots, "overheating", "driver"), nullptr);
    EXPECT_NE(spotOf(spots, "blade_pass", "driven"), nullptr);
    EXPECT_TRUE(blindByMachine(with(""), {}).empty());
}

}  // namespace
}  // namespace fettle
