// Whose line is it: stops and runs made by hand. Hypergeometric tails: SciPy 1.10.1, hypergeom.sf.
#include "core/round/whose_line.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

using std::chrono::hours;

const Instant kFirstDay = *parseUtc("2026-05-04T00:00:00Z");

// Day by day: 'r' turns, 's' stands, '?' is not known.
Neighbour neighbour(const std::string& tag, const std::string& days) {
    Neighbour one{tag, false, {}};
    for (std::size_t i = 0; i < days.size(); ++i)
        for (const int hour : {2, 20})
            one.turning.push_back({kFirstDay + hours(24 * i + hour), days[i] == 'r'   ? Turning::Yes
                                                                     : days[i] == 's' ? Turning::No
                                                                                      : Turning::Unknown});
    return one;
}

// At noon: 'x' the line is there, '.' it is not, ' ' not recorded.
std::vector<LineSeen> seen(const std::string& days) {
    std::vector<LineSeen> all;
    for (std::size_t i = 0; i < days.size(); ++i)
        if (days[i] != ' ') all.push_back({kFirstDay + hours(24 * i + 12), days[i] == 'x'});
    return all;
}

TEST(WhoseLine, HypergeometricTailsAsSciPy) {
    EXPECT_NEAR(hypergeometricTail(200, 60, 32, 31) / 1.359170667218039e-18, 1, 1e-9);
    EXPECT_NEAR(hypergeometricTail(9, 4, 4, 4), 1.0 / 126, 1e-12);  // 1 of 9 choose 4
    EXPECT_EQ(hypergeometricTail(9, 4, 4, 0), 1);
}

// One recording a day each, two hours apart: a stop of one day is one recording.
TEST(WhoseLine, AStopOfOneRecordingTellsToo) {
    Neighbour fan{"FN-02", false, {}};
    std::vector<LineSeen> line;
    for (int day = 0; day < 30; ++day) {
        const bool stands = day % 5 == 4;
        fan.turning.push_back({kFirstDay + hours(24 * day + 10), stands ? Turning::No : Turning::Yes});
        line.push_back({kFirstDay + hours(24 * day + 12), !stands});
    }
    const auto found = leavesWith(line, std::vector<Neighbour>{fan});
    EXPECT_EQ(found[0].words, "leaves with FN-02 in 6 of 6 stops");
    // Eight hours apart nobody knows.
    for (LineSeen& one : line)
        one.time += hours(6);
    EXPECT_EQ(leavesWith(line, std::vector<Neighbour>{fan})[0].stops, 0u);
}

TEST(WhoseLine, LeavesWithTheOneThatStops) {
    const std::string line = "xx..xx..xx..xx..xx";
    const std::vector<Neighbour> others{neighbour("FN-01", "rrrrrrssrrrrrrrrrr"),
                                        neighbour("FN-02", "rrssrrssrrssrrssrr")};
    const auto all = leavesWith(seen(line), others);
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].machine, "FN-02");
    EXPECT_EQ(all[0].words, "leaves with FN-02 in 4 of 4 stops");
    EXPECT_EQ(all[0].runs, 5U);
    EXPECT_NEAR(all[0].chance, 2.0 / 126, 1e-12);  // two machines were asked
    EXPECT_GT(all[1].chance, 0.5);                 // one stop of three says nothing
}

TEST(WhoseLine, ALineThatStaysIsSaidToStay) {
    const auto all = leavesWith(seen("xxxxxxxx"), std::vector{neighbour("FN-01", "rrssrrss")});
    EXPECT_EQ(all[0].left, 0U);
    EXPECT_EQ(all[0].words, "stays when FN-01 stops: it left in 0 of 2 stops");
    EXPECT_EQ(all[0].chance, 1);
}

TEST(WhoseLine, AStopBeforeWhichTheLineWasGoneIsNoQuestion) {
    const auto all = leavesWith(seen("......xx..xx"), std::vector{neighbour("FN-01", "rrssrrrrssrr")});
    EXPECT_EQ(all[0].stops, 1U);
}

TEST(WhoseLine, WithoutAStopNothingIsSaid) {
    const auto all =
        leavesWith(seen("xxxx"), std::vector{neighbour("FN-01", "rrrr"), neighbour("FN-02", "????")});
    EXPECT_EQ(all[0].words, "no stop of FN-01 tells");
    EXPECT_EQ(all[1].stops, 0U);
}

TEST(WhoseLine, AGapInTheRecordingsIsNeitherStopNorRun) {
    Neighbour gap{"FN-01", false, {}};
    gap.turning = {{kFirstDay, Turning::No}, {kFirstDay + hours(24 * 5), Turning::No}};
    EXPECT_EQ(leavesWith(seen("....."), std::vector{gap})[0].stops, 0U);
}

}  // namespace
}  // namespace fettle
