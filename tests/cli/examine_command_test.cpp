// `fettle-cli examine` as a user meets it: statuses, streams, names.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/file_system.h"
#include "core/base/json_object.h"
#include "core/signal/sound_file.h"
#include "tests/cli/run_program.h"
#include "tests/diagnosis/made_recordings.h"
#include "tests/exchange/schema_check.h"

namespace fettle {
namespace {

using made::Ran;
using made::run;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

class ExamineCommand : public ::testing::Test {
  protected:
    void SetUp() override {
        made::write(machine(), made::motorText());
        setup_ = made::with(made::setupOf(made::motor(), 2, 4), "bearing_outer_race", "driver DE", 0.75);
        made_ = made::made(setup_);
        putRecording("good.wav");
    }

    std::string at(const std::string& name) const { return folder_ / name; }
    std::string machine() const { return at("machine.json"); }

    // A sound file with its sidecar.
    std::string putRecording(const std::string& name, const std::string& tag = "T-1",
                             double speedFactor = 1) {
        std::vector<std::vector<double>> channels;
        for (const Channel& channel : made_.recording->channels)
            channels.push_back(channel.samples);
        const auto bytes = writeSoundFile(channels, 12800, SoundFormat::WavFloat32, name);
        EXPECT_TRUE(bytes);
        made::write(at(name), bytes.value_or(""));
        Json sidecar = {{"machine", tag}, {"point", "P"}, {"speed_rpm", made_.shaftHz * 60 * speedFactor}};
        for (const Channel& channel : made_.recording->channels)
            sidecar["channels"].push_back({{"name", channel.name}, {"unit", "g"}});
        made::write(withExtension(at(name), ".json"), sidecar.dump());
        return at(name);
    }

    Ran examine(std::vector<std::string> arguments) const {
        arguments.insert(arguments.begin(), "examine");
        arguments.insert(arguments.end(), {"--machine", machine()});
        return run(arguments);
    }

    ScratchFolder folder_;
    sim::SimulationSetup setup_;
    made::Made made_;
};

TEST_F(ExamineCommand, OneGoodRecordingIsDone) {
    const Ran ran = examine({at("good.wav")});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("Outer-race defect of the driver DE bearing"));
    EXPECT_THAT(ran.err, Not(HasSubstr("refused")));
}

TEST_F(ExamineCommand, JsonIsOneObjectAndNothingElseOnStandardOutput) {
    const Ran ran = examine({at("good.wav"), "--json"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    const Json json = Json::parse(ran.out, nullptr, false);
    ASSERT_TRUE(json.is_object()) << ran.out.substr(0, 200);
    const auto schema =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/examination.schema.json");
    ASSERT_TRUE(schema);
    const Json parsed = Json::parse(*schema);
    EXPECT_THAT(made::SchemaCheck(parsed).faultsOf(json), IsEmpty());
    EXPECT_EQ(json["findings"][0]["fault"], "bearing_outer_race");
    double sum = json["findings"][0]["search_dban"].get<double>();
    for (const Json& line : json["findings"][0]["lines"])
        sum += line["weight_dban"].get<double>();
    EXPECT_NEAR(sum, json["findings"][0]["weight_dban"].get<double>(), 1e-9);
}

// Done, but something was refused: one line naming file, place and rule, and the rest is examined.
TEST_F(ExamineCommand, ARefusedRecordingIsOneLineOnStandardErrorAndStatus1) {
    const std::string whole = made::contentOf(at("good.wav"));
    made::write(at("cut.wav"), whole.substr(0, 30));
    made::write(at("text.wav"), "this is no sound file");
    made::write(at("rate.csv"), "# sample_rate_hz: 0\nx [g]\n1\n2\n");
    for (const char* name : {"cut.wav", "text.wav", "rate.csv", "nosuch.wav"}) {
        const Ran ran = examine({at("good.wav"), at(name), "--json"});
        EXPECT_EQ(ran.status, 1) << name;
        int refusals = 0;
        for (const std::string& line : ran.errLines())
            if (line.find(at(name)) != std::string::npos && line.find("refused") != std::string::npos) {
                ++refusals;
                EXPECT_GT(line.size(), line.find(at(name)) + at(name).size() + 5)
                    << "without a rule: " << line;
            }
        EXPECT_EQ(refusals, 1) << name << ": " << ran.err;
        const Json json = Json::parse(ran.out, nullptr, false);
        ASSERT_TRUE(json.is_object()) << name;
        EXPECT_EQ(json["recordings"].size(), 1u);
        EXPECT_THAT(ran.out, Not(HasSubstr("refused")));
        EXPECT_THAT(ran.out, Not(HasSubstr(name)));
    }
    EXPECT_THAT(examine({at("good.wav"), at("cut.wav")}).err, HasSubstr("byte"));
}

TEST_F(ExamineCommand, WithNothingLeftToExamineStandardOutputIsEmpty) {
    const Ran ran = examine({at("nosuch.wav"), "--json"});
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.out, "");
    EXPECT_THAT(ran.err, HasSubstr("nosuch.wav"));
}

TEST_F(ExamineCommand, AnotherMachinesRecordingIsRefused) {
    const Ran ran = examine({at("good.wav"), putRecording("other.wav", "T-2")});
    EXPECT_EQ(ran.status, 1);
    EXPECT_THAT(ran.err, HasSubstr("other.wav"));
    EXPECT_THAT(ran.err, HasSubstr("T-2"));
}

TEST_F(ExamineCommand, ABrokenSidecarIsRefusedWithItsPlace) {
    made::write(at("good.json"), R"({ "machine": "T-1", "speed_rpm": "fast" })");
    const Ran ran = examine({at("good.wav")});
    EXPECT_EQ(ran.status, 1);
    EXPECT_THAT(ran.err, HasSubstr("good.json"));
    EXPECT_THAT(ran.err, HasSubstr("/speed_rpm"));
}

TEST_F(ExamineCommand, WithoutAMachineDescriptionItCannotRun) {
    EXPECT_EQ(run({"examine", at("good.wav"), "--machine", at("nosuch.json")}).status, 3);
    made::write(at("broken.json"), R"({ "tag": "T-1", "mains_hz": 50, "driver": { "poles": "four" } })");
    const Ran broken = run({"examine", at("good.wav"), "--machine", at("broken.json"), "--json"});
    EXPECT_EQ(broken.status, 3);
    EXPECT_EQ(broken.out, "");
    EXPECT_THAT(broken.err, HasSubstr("broken.json"));
    EXPECT_THAT(broken.err, HasSubstr("/driver/poles"));
    made::write(at("half.json"), R"({ "tag": )");
    EXPECT_EQ(run({"examine", at("good.wav"), "--machine", at("half.json")}).status, 3);
}

TEST_F(ExamineCommand, WrongUsageIsTwoAndKeepsStandardOutputClean) {
    const std::vector<std::vector<std::string>> wrong = {
        {},
        {"exmaine"},
        {"examine"},
        {"examine", at("good.wav")},
        {"examine", "--machine", machine()},
        {"examine", at("good.wav"), "--machine", machine(), "--colour"},
        {"examine", at("good.wav"), "--machine", machine(), "--threads", "0"},
        {"examine", at("good.wav"), "--machine", machine(), "--threads", "many"},
        {"examine", at("good.wav"), "--machine"}};
    for (const auto& arguments : wrong) {
        const Ran ran = run(arguments);
        EXPECT_EQ(ran.status, 2) << arguments.size();
        EXPECT_EQ(ran.out, "") << arguments.size();
        EXPECT_NE(ran.err, "") << arguments.size();
    }
}

TEST_F(ExamineCommand, HelpAndVersionAreResults) {
    for (const std::vector<std::string>& asked :
         {std::vector<std::string>{"--help"}, {"examine", "--help"}, {"--version"}}) {
        const Ran ran = run(asked);
        EXPECT_EQ(ran.status, 0);
        EXPECT_NE(ran.out, "");
        EXPECT_EQ(ran.err, "");
    }
}

TEST_F(ExamineCommand, AnyNameOfAFileIsTaken) {
    const std::vector<std::string> names = {"with space.wav", "quote'and\"double.wav", "$(touch oops).wav",
                                            "<b>bold.wav",    "line\nbreak.wav",       "\xff\xfe.wav",
                                            "-dash.wav"};
    for (const std::string& name : names) {
        const Ran ran = examine({putRecording(name), "--json"});
        EXPECT_EQ(ran.status, 0) << name << ran.err;
        const Json json = Json::parse(ran.out, nullptr, false);
        ASSERT_TRUE(json.is_object()) << name;
        EXPECT_EQ(json["findings"][0]["fault"], "bearing_outer_race");
        const Ran text = examine({at(name)});
        EXPECT_EQ(text.status, 0);
        EXPECT_TRUE(isUtf8(text.out)) << name;
        made::write(at(name), "damaged");
        const Ran refused = examine({at(name), at("good.wav")});
        EXPECT_EQ(refused.status, 1);
        EXPECT_TRUE(isUtf8(refused.err)) << name;
        EXPECT_EQ(refused.errLines().size(), 1u) << refused.err;
    }
}

TEST_F(ExamineCommand, IgnoreSpeedLooksForItInstead) {
    const std::string off = putRecording("off.wav", "T-1", 1.06);
    const Json given = Json::parse(examine({off, "--json"}).out, nullptr, false);
    const Json found = Json::parse(examine({off, "--json", "--ignore-speed"}).out, nullptr, false);
    ASSERT_TRUE(given.is_object() && found.is_object());
    EXPECT_NEAR(given["recordings"][0]["speed"]["given_rpm"].get<double>(), made_.shaftHz * 63.6, 1e-6);
    EXPECT_EQ(found["recordings"][0]["speed"]["from"], "found");
    EXPECT_TRUE(found["recordings"][0]["speed"]["given_rpm"].is_null());
    EXPECT_NEAR(found["recordings"][0]["speed"]["rpm"].get<double>() / (made_.shaftHz * 60), 1, 0.003);
}

TEST_F(ExamineCommand, AnyNumberOfThreadsWritesTheSame) {
    const std::string more = putRecording("more.wav"), third = putRecording("third.wav");
    const std::vector<std::string> paths = {at("good.wav"), more, third};
    std::vector<std::string> one = paths, two = paths;
    one.insert(one.end(), {"--json", "--threads", "1"});
    two.insert(two.end(), {"--json", "--threads", "2"});
    const Ran first = examine(one), second = examine(two);
    EXPECT_EQ(first.status, 0);
    EXPECT_FALSE(first.out.empty());
    EXPECT_EQ(first.out, second.out);
}

TEST_F(ExamineCommand, ARecordingWithoutASidecarIsExaminedAndSaysWhatItAssumed) {
    std::filesystem::remove(at("good.json"));
    const Ran ran = examine({at("good.wav"), "--json"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.err, HasSubstr("good"));
    EXPECT_TRUE(Json::parse(ran.out, nullptr, false).is_object());
}

// A result that could not be written is not a result.
TEST_F(ExamineCommand, AFullDiskIsNotDone) {
    if (!std::filesystem::exists("/dev/full")) GTEST_SKIP() << "no /dev/full here";
    const Ran ran = run({"examine", at("good.wav"), "--machine", machine(), "--json"}, "/dev/full");
    EXPECT_EQ(ran.status, 3);
    EXPECT_NE(ran.err, "");
}

}  // namespace
}  // namespace fettle
