// `fettle-cli phantoms` and `sample`: the measured false-alarm curve, and the way from a made fleet to a
// verdict.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "core/base/json_object.h"
#include "tests/cli/run_program.h"

namespace fettle {
namespace {

using made::Ran;
using made::run;
using ::testing::HasSubstr;

// A fan of the sample fleet, its newest recordings.
class Fleet : public ::testing::Test {
  protected:
    void SetUp() override {
        const Ran ran = run({"sample", folder_ / "fleet", "--machine", "CW-FN-01", "--weeks", "1",
                             "--scenario", std::string(FETTLE_SOURCE_DIR) + "/sample_fleet"});
        ASSERT_EQ(ran.status, 0) << ran.err;
        EXPECT_EQ(ran.out, "");
        for (const auto& entry : std::filesystem::directory_iterator(folder_ / "fleet/recordings/CW-FN-01"))
            if (entry.path().extension() == ".flac") recordings_.push_back(entry.path().string());
        std::sort(recordings_.begin(), recordings_.end());
        ASSERT_FALSE(recordings_.empty());
    }

    Ran command(const std::string& name, std::vector<std::string> more) const {
        std::vector<std::string> arguments{name};
        arguments.insert(arguments.end(), recordings_.begin(), recordings_.end());
        arguments.insert(arguments.end(), {"--machine", folder_ / "fleet/machines/CW-FN-01.json"});
        arguments.insert(arguments.end(), more.begin(), more.end());
        return run(arguments);
    }

    ScratchFolder folder_;
    std::vector<std::string> recordings_;
};

TEST_F(Fleet, IsExaminedWithoutAComplaint) {
    const Ran ran = command("examine", {"--json"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    const Json json = Json::parse(ran.out, nullptr, false);
    ASSERT_TRUE(json.is_object());
    EXPECT_EQ(json["machine"], "CW-FN-01");
    EXPECT_EQ(json["recordings"].size(), recordings_.size());
}

TEST_F(Fleet, PhantomsGiveFourCurvesOfThreeSharesAndTheSameForOneSeed) {
    const Ran ran = command("phantoms", {"--per-recording", "20", "--json", "--seed", "5"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    const Json json = Json::parse(ran.out, nullptr, false);
    ASSERT_TRUE(json.is_object());
    ASSERT_EQ(json["curves"].size(), 4u);
    for (const Json& curve : json["curves"]) {
        EXPECT_EQ(curve["shares"].size(), 3u);
        EXPECT_GT(curve["phantoms"], 0);
        for (const Json& share : curve["shares"]) {
            EXPECT_LE(share["low"], share["share"]);
            EXPECT_GE(share["high"], share["share"]);
        }
    }
    EXPECT_EQ(command("phantoms", {"--per-recording", "20", "--json", "--seed", "5", "--threads", "1"}).out,
              ran.out);
    EXPECT_THAT(command("phantoms", {"--per-recording", "5"}).out, HasSubstr("outer-race defect"));
}

TEST_F(Fleet, PhantomsRefuseAndMisuseAsEveryCommand) {
    recordings_.push_back(folder_ / "nosuch.wav");
    const Ran refused = command("phantoms", {"--per-recording", "5", "--json"});
    EXPECT_EQ(refused.status, 1);
    EXPECT_THAT(refused.err, HasSubstr("nosuch.wav"));
    EXPECT_TRUE(Json::parse(refused.out, nullptr, false).is_object());
    EXPECT_EQ(command("phantoms", {"--per-recording", "0"}).status, 2);
    EXPECT_EQ(run({"phantoms", recordings_[0], "--machine", folder_ / "nosuch.json"}).status, 3);
}

TEST(Sample, AnUnknownMachineOrScenarioIsSaid) {
    const ScratchFolder folder;
    const std::string scenario = std::string(FETTLE_SOURCE_DIR) + "/sample_fleet";
    EXPECT_EQ(run({"sample", folder / "a", "--machine", "NO-SUCH", "--scenario", scenario}).status, 2);
    EXPECT_EQ(run({"sample", folder / "a", "--scenario", folder / "nowhere"}).status, 3);
    EXPECT_EQ(run({"sample"}).status, 2);
}

}  // namespace
}  // namespace fettle
