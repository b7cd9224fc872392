// Tables as data: carried inside, overridden file by file by a folder.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>

#include "core/machine/resource.h"
#include "core/machine/severity_limits.h"
#include "tests/machine/describe.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;
namespace files = std::filesystem;

// A folder of the test's own, named by FETTLE_RESOURCES while it lives.
class Override : public ::testing::Test {
  protected:
    void SetUp() override {
        folder_ = files::temp_directory_path() / ("fettle_resources_" + std::to_string(::getpid()));
        files::create_directories(folder_);
        ::setenv("FETTLE_RESOURCES", folder_.c_str(), 1);
    }
    void TearDown() override {
        ::unsetenv("FETTLE_RESOURCES");
        files::remove_all(folder_);
    }
    void put(const std::string& name, const std::string& text) { std::ofstream(folder_ / name) << text; }

    files::path folder_;
};

TEST_F(Override, OneFileOfTheFolderTakesThePlaceOfTheBuiltInOne) {
    put("bearings.json", R"({"bearings": [{"designation": "NU316", "rolling_elements": 13, "element_mm": 22,
        "pitch_mm": 125, "contact_deg": 0, "source": "maker's drawing", "sure": "read"}]})");
    const auto variants = typicalVariants("NU 316 ECM", TurningRing::Inner);
    ASSERT_TRUE(variants);
    ASSERT_EQ(variants->size(), 1u);
    EXPECT_EQ(variants->front().source, "maker's drawing");
    EXPECT_TRUE(typicalVariants("6316", TurningRing::Inner)->empty());
    EXPECT_TRUE(loadResource("severity_limits.json"));
}

TEST_F(Override, ABrokenTableIsNamed) {
    put("bearings.json",
        R"({"bearings": [{"designation": "6316", "rolling_elements": 8, "element_mm": 200, "pitch_mm": 125,
        "source": "typing error", "sure": "read"}]})");
    put("severity_limits.json", "{ not json");
    const auto variants = typicalVariants("6316", TurningRing::Inner);
    ASSERT_FALSE(variants);
    EXPECT_EQ(variants.error().place, "/bearings/0/pitch_mm");
    const Machine machine = parsed(plainMachine()).machine;
    const auto limits = limitsFor(machine, machine.points[0]);
    ASSERT_FALSE(limits);
    EXPECT_THAT(limits.error().file, HasSubstr("severity_limits.json"));
}

TEST_F(Override, ABrokenBearingTableDoesNotLoseTheMachine) {
    put("bearings.json", "[]");
    const auto [machine, warnings] =
        parsed(changed(R"({"driver": {"bearings": {"DE": {"designation": "6316"}}}})"));
    EXPECT_FALSE(machine.bearings[0].bearing.whyNone.empty());
    EXPECT_EQ(warnings.size(), 1u);
}

TEST(Resource, UnknownTable) {
    const auto found = loadResource("nosuch.json");
    ASSERT_FALSE(found);
    EXPECT_EQ(found.error().kind, ErrorKind::NotFound);
}

TEST(Resource, UrgencyIsSaidForEverySeverityAndCriticality) {
    const auto table = loadResource("urgency.json");
    ASSERT_TRUE(table);
    const std::set<std::string> words = {"leave", "watch", "plan", "act"};
    std::set<std::string> said;
    for (const Json& row : (*table)["rows"]) {
        EXPECT_TRUE(words.count(row["urgency"].get<std::string>())) << row;
        said.insert(row["kind"].get<std::string>() + row["value"].get<std::string>() +
                    row["criticality"].get<std::string>());
    }
    EXPECT_EQ(said.size(), 36u);  // (3 stages + 4 zones + 3 steps in dB + 2 in K) x 3 criticalities
    EXPECT_EQ(said.size(), (*table)["rows"].size());
}

}  // namespace
}  // namespace fettle
