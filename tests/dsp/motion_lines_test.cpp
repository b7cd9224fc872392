// Lines as acceleration, velocity, displacement, and as what they are read. 1 g r.m.s. at 159.155 Hz (omega =
// 1000) is 9.80665 mm/s and 9.80665 um: a = omega v = omega^2 d.
#include "core/dsp/motion_lines.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/units.h"
#include "core/dsp/spectrum.h"
#include "tests/dsp/signals.h"

namespace fettle {

TEST(MotionLines, AKnownSineIntegratesOnceAndTwice) {
    const double stepHz = 1000 / kTwoPi / 4;
    const std::vector<float> g = {9, 9, 9, 9, 1};  // line 4 at omega = 1000
    EXPECT_NEAR(motionLines(g, stepHz, Motion::Acceleration, Motion::Velocity, 0)[4], 9.80665, 1e-4);
    EXPECT_NEAR(motionLines(g, stepHz, Motion::Acceleration, Motion::Displacement, 0)[4], 9.80665, 1e-4);
    const std::vector<float> mmS = {0, 0, 0, 0, 2};
    EXPECT_NEAR(motionLines(mmS, stepHz, Motion::Velocity, Motion::Displacement, 0)[4], 2, 1e-5);
    EXPECT_NEAR(motionLines(mmS, stepHz, Motion::Velocity, Motion::Acceleration, 0)[4], 2 / 9.80665, 1e-5);
}

TEST(MotionLines, BelowTheCornerNothingIsIntegrated) {
    const std::vector<float> g(10, 1.0F);
    const auto velocity = motionLines(g, 5, Motion::Acceleration, Motion::Velocity, 12);
    EXPECT_EQ(velocity[0], 0);
    EXPECT_EQ(velocity[2], 0);  // 10 Hz
    EXPECT_GT(velocity[3], 0);  // 15 Hz
    EXPECT_EQ(motionLines(g, 5, Motion::Acceleration, Motion::Acceleration, 12)[1], 1);
}

// A sine of peak 3: r.m.s. 3 / sqrt 2, peak 3, peak to peak 6; white noise reads the same density whatever
// the length of the record, as its r.m.s. a line does not.
TEST(MotionLines, ASineReadsItsPeakAndNoiseItsDensity) {
    const auto lines = periodogram(signals::sine(3, 100, 1000, 2000), 1000, {.kind = SpectrumKind::Rms});
    const double rms = lines.values[200];
    EXPECT_NEAR(lineReading(rms, LineReading::Peak, 1), 3, 1e-6);
    EXPECT_NEAR(lineReading(rms, LineReading::PeakToPeak, 1), 6, 1e-6);
    for (const std::size_t size : {1024u, 4096u}) {
        const auto u = signals::u();  // even in -0.5 .. 0.5: mean square 1 / 12 over 2048 Hz
        const auto noise = welch(u, 4096, {.kind = SpectrumKind::Rms, .segment = size});
        double sum = 0;
        for (const double line : noise.values)
            sum += lineReading(line, LineReading::Density, noise.stepHz * noise.noiseBandwidthBins);
        EXPECT_NEAR(decibels(sum / double(noise.values.size()) * 2048 * 12), 0, 0.3) << size;
    }
}

}  // namespace fettle
