// Gravity as witness: means of axes made by hand, angles worked out on paper.
#include "core/round/node_pose.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace fettle {
namespace {

using testing::HasSubstr;

const Instant kHung = *parseUtc("2026-05-04T06:20:00Z");
const std::vector<PoseAxis> kThree{{"x", "horizontal"}, {"y", "vertical"}, {"z", "axial"}};

// One reading a day.
std::vector<PoseReading> days(const std::vector<std::vector<double>>& g) {
    std::vector<PoseReading> all;
    for (std::size_t i = 0; i < g.size(); ++i)
        all.push_back({kHung + std::chrono::hours(24 * i), g[i]});
    return all;
}

std::vector<double> tilted(double degrees) {
    const double a = degrees * std::acos(-1) / 180;
    return {std::sin(a), std::cos(a), 0};
}

TEST(NodePose, SaysWhichAxisStandsUpright) {
    const NodePose pose = askGravity(kThree, days({{0.01, 0.99, -0.02}, {0.01, 0.99, -0.02}}));
    EXPECT_TRUE(pose.felt);
    EXPECT_EQ(pose.words, "y up with 0.99 g");
    EXPECT_EQ(pose.misfit, "");
    EXPECT_TRUE(pose.moves.empty());
}

TEST(NodePose, AxesThatAreNotAsTheRegisterHasThem) {
    const NodePose pose = askGravity(kThree, days({{-0.98, 0.05, 0.1}, {-0.98, 0.05, 0.1}}));
    EXPECT_EQ(pose.words, "x down with 0.98 g");
    EXPECT_THAT(pose.misfit, HasSubstr("calls x horizontal, gravity reads -0.98 g"));
}

TEST(NodePose, AKnockIsDatedBetweenTwoRecordings) {
    const NodePose pose = askGravity(
        kThree, days({tilted(1), tilted(1.2), tilted(0.9), tilted(1), tilted(35), tilted(35.2), tilted(35)}));
    ASSERT_EQ(pose.moves.size(), 1u);
    EXPECT_EQ(pose.moves[0].before, kHung + std::chrono::hours(24 * 3));
    EXPECT_EQ(pose.moves[0].after, kHung + std::chrono::hours(24 * 4));
    EXPECT_NEAR(pose.moves[0].degrees, 34, 0.3);
    EXPECT_EQ(moveWords(pose.moves[0], "noon", "one"),
              "knocked, turned or swapped between noon and one: 34 degrees");
}

TEST(NodePose, ATurnIsAMoveTooThoughTheSameAxisStaysUpright) {
    const NodePose pose =
        askGravity(kThree, days({{0.1, 0.99, 0}, {0.1, 0.99, 0}, {-0.1, 0.99, 0}, {-0.1, 0.99, 0}}));
    ASSERT_EQ(pose.moves.size(), 1u);
    EXPECT_NEAR(pose.moves[0].degrees, 2 * std::asin(0.1 / std::hypot(0.1, 0.99)) * 180 / std::acos(-1),
                0.01);
}

TEST(NodePose, OneOddRecordingAndTheDriftOfASensorAreNoMove) {
    EXPECT_TRUE(askGravity(kThree, days({tilted(1), tilted(1), tilted(40), tilted(1), tilted(1), tilted(1)}))
                    .moves.empty());
    std::vector<std::vector<double>> drift;
    for (int i = 0; i < 20; ++i)
        drift.push_back({0.02 + 0.001 * i, 0.99, 0.01});
    EXPECT_TRUE(askGravity(kThree, days(drift)).moves.empty());
    // The newest alone is not told yet.
    EXPECT_TRUE(askGravity(kThree, days({tilted(1), tilted(1), tilted(1), tilted(40)})).moves.empty());
}

TEST(NodePose, TwoAxesSayByHowMuchAtLeast) {
    const std::vector<PoseAxis> two{{"x", "horizontal"}, {"z", "axial"}};
    const NodePose pose = askGravity(two, days({{0.5, 0}, {0.5, 0}, {0.5, 0}, {0.866, 0}, {0.866, 0}}));
    ASSERT_EQ(pose.moves.size(), 1u);
    EXPECT_NEAR(pose.moves[0].degrees, 30, 0.1);  // 30 to 60 degrees over the level
    EXPECT_THAT(moveWords(pose.moves[0], "a", "b"), HasSubstr("at least 30 degrees"));
}

TEST(NodePose, WithoutGravityNothingIsTold) {
    const NodePose held = askGravity(kThree, days({{0.001, 0, 0}, {0, 0.002, 0}, {0, 0, 0}}));
    EXPECT_FALSE(held.felt);
    EXPECT_THAT(held.words, HasSubstr("no gravity"));
    const NodePose odd = askGravity(kThree, days({{9.6, 0.1, 0.2}, {9.6, 0.1, 0.2}}));  // m/s2 taken for g
    EXPECT_THAT(odd.words, HasSubstr("9.60 g long: not gravity alone"));
    EXPECT_FALSE(askGravity({}, {}).felt);
}

}  // namespace
}  // namespace fettle
