// The band of sound spectra: quantiles worked out by hand, lines that move with speed by kinematics (a line
// at order k stands at k times the shaft's frequency). No source needed.
#include "core/trend/spectrum_band.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fettle {

namespace {

SoundSpectrum flat(float value, double shaftHz = 25) {
    return {1000, shaftHz, std::vector<float>(800, value)};
}

}  // namespace

TEST(SpectrumBand, HalfOfElevenSpectraLieBelowTheMiddleAndATenthBeyondEitherEdge) {
    std::vector<SoundSpectrum> spectra;
    for (const float value : {3.F, 9.F, 1.F, 7.F, 5.F, 11.F, 4.F, 8.F, 2.F, 10.F, 6.F})
        spectra.push_back(flat(value));
    const SpectrumBand band = bandOf(spectra, 25);
    EXPECT_EQ(band.spectra, 11u);
    EXPECT_THAT(band.low, testing::Each(2));
    EXPECT_THAT(band.middle, testing::Each(6));
    EXPECT_THAT(band.high, testing::Each(10));
}

// 4.2 x at 24, 25 and 26 Hz: cells 80, 84, 87 of 1.25 Hz; at 25 Hz all three stand in cell 84.
TEST(SpectrumBand, AnOrderThatWandersWithSpeedStaysOneLineAndNothingIsLost) {
    std::vector<SoundSpectrum> spectra;
    for (const double shaft : {24.0, 25.0, 26.0}) {
        SoundSpectrum one = flat(0.1F, shaft);
        one.lines[std::size_t(4.2 * shaft / 1.25)] = 2;
        spectra.push_back(one);
    }
    const SpectrumBand band = bandOf(spectra, 25);
    EXPECT_EQ(band.middle[84], 2);
    EXPECT_EQ(band.middle[82], 0.1F);
    EXPECT_EQ(band.middle[86], 0.1F);
    for (const SoundSpectrum& one : spectra)
        EXPECT_THAT(movedToSpeed(one, 30), testing::Contains(2)) << one.shaftHz;
}

TEST(SpectrumBand, WithoutSpeedsOrSpectraOrOfAnotherShapeItSaysWhatThereIs) {
    EXPECT_EQ(bandOf({}, 25).spectra, 0u);
    EXPECT_EQ(movedToSpeed(flat(1, 0), 25), flat(1, 0).lines);
    SoundSpectrum other = flat(5);
    other.topHz = 500;
    const SpectrumBand band = bandOf({other, flat(1)}, 25);
    EXPECT_EQ(band.spectra, 1u);
    EXPECT_EQ(band.topHz, 1000);
}

}  // namespace fettle
