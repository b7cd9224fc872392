#include "core/simulate/truth.h"

#include <gtest/gtest.h>

#include <set>

#include "tests/simulate/sample_fleet.h"

namespace fettle::sim {
namespace {

using namespace probe;

TEST(Truth, TellsEveryStoryWithItsEnd) {
    const Json truth = truthOf(fleet(), lastWeek());
    EXPECT_EQ(truth["stories"].size(), 22u);  // two machines have two
    EXPECT_EQ(truth["from"], "2026-06-29");
    std::set<std::string> tags;
    for (const Json& story : truth["stories"]) {
        tags.insert(story["tag"].get<std::string>());
        if (story["visible_now"] == true) {
            EXPECT_GT(story["severity"].get<double>(), 0.3) << story["tag"];
            EXPECT_TRUE(story["to"].is_null());
            EXPECT_EQ(story["expect"].size(), 1u);
        }
        if (story["decoy"] == true) {
            EXPECT_TRUE(story["fault"].is_null());
            EXPECT_FALSE(story["must_not"].empty());
        }
    }
    EXPECT_EQ(tags.size(), 20u);
}

// The fan was cleaned on 24 March, in the twelfth week; the pump only cavitates in hot weeks.
TEST(Truth, SeverityByWeekFollowsTheStory) {
    const Json truth = truthOf(fleet(), {});
    const auto weeksOf = [&](const char* tag) {
        for (const Json& story : truth["stories"])
            if (story["tag"] == tag) return story["severity_by_week"].get<std::vector<double>>();
        return std::vector<double>{};
    };
    const auto fan = weeksOf("KL-ID-01"), pump = weeksOf("CW-PU-02");
    ASSERT_EQ(fan.size(), 26u);
    EXPECT_GT(fan[10], 0.5);
    EXPECT_LT(fan[12], 0.15);
    EXPECT_GT(fan[25], 0.5);
    EXPECT_EQ(pump[13], 0);
    EXPECT_GT(pump[25], 0.5);
}

TEST(Truth, ListsSpoiledRecordingsWithTheirFiles) {
    const Json intake = truthOf(fleet(), {})["intake"];
    ASSERT_EQ(intake.size(), 4u);
    std::set<std::string> should;
    for (const Json& entry : intake) {
        should.insert(entry["should"].get<std::string>());
        ASSERT_FALSE(entry["files"].empty());
        const std::string file = entry["files"][0].get<std::string>();
        EXPECT_EQ(file.find("recordings/" + entry["machine"].get<std::string>() + "/"), 0u);
        EXPECT_TRUE(file.ends_with(".flac"));
    }
    EXPECT_EQ(should, (std::set<std::string>{"park", "refuse", "recognise", "take"}));
    EXPECT_TRUE(truthOf(fleet(), lastWeek())["intake"].empty());
}

// What the site noted goes with what was put into the recordings.
TEST(Events, AreDatedAndGoWithTheStories) {
    const Json events = eventsOf(fleet(), {});
    ASSERT_GT(events.size(), 15u);
    std::string before;
    std::set<std::string> seen;
    for (const Json& event : events) {
        const std::string time = event["time"].get<std::string>();
        EXPECT_LE(before, time);
        before = time;
        EXPECT_TRUE(parseUtc(time));
        EXPECT_FALSE(event["text"].get<std::string>().empty());
        seen.insert(event["machine"].get<std::string>() + " " + event["kind"].get<std::string>() + " " +
                    time.substr(0, 10));
    }
    EXPECT_TRUE(seen.count("KL-ID-01 cleaning 2026-03-24"));
    EXPECT_TRUE(seen.count("HY-PU-01 repair 2026-04-15"));
    EXPECT_TRUE(seen.count("PK-FN-04 other 2026-04-20"));  // the greasing that was missed
}

}  // namespace
}  // namespace fettle::sim
