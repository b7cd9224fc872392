#include "core/store/spectrum_codec.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace fettle {
namespace {

TEST(SpectrumCodec, LevelsComeBackWithinHalfAStep) {
    std::vector<float> lines;
    for (double db = -119.9; db < 70; db += 0.31)  // re 1: from 1e-6 to 3.2e3
        lines.push_back(static_cast<float>(std::pow(10, db / 20)));
    const auto back = fromQuantised(quantised(lines));
    ASSERT_EQ(back.size(), lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i)
        EXPECT_LE(std::abs(20 * std::log10(back[i] / lines[i])), 0.376) << lines[i];
}

TEST(SpectrumCodec, NothingStaysNothingAndTheTopStays) {
    const float nan = std::numeric_limits<float>::quiet_NaN(), inf = std::numeric_limits<float>::infinity();
    const auto back = fromQuantised(quantised(std::vector<float>{0, -1, nan, 1e-9f, 1e-6f, 1e6f, inf}));
    EXPECT_EQ(back[0], 0);
    EXPECT_EQ(back[1], 0);
    EXPECT_EQ(back[2], 0);
    EXPECT_EQ(back[3], 0);
    EXPECT_FLOAT_EQ(back[4], 1e-6f);
    EXPECT_EQ(back[5], back[6]);
    EXPECT_NEAR(20 * std::log10(back[5] / 1e-6), 254 * 0.75, 1e-3);
    EXPECT_TRUE(fromQuantised(quantised({})).empty());
}

TEST(SpectrumCodec, WhatWasQuantisedStaysSo) {
    std::string all;
    for (int byte = 0; byte < 256; ++byte)
        all += char(byte);
    EXPECT_EQ(quantised(fromQuantised(all)), all);
}

}  // namespace
}  // namespace fettle
