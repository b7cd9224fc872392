// Why: the commands that work on a fleet file are tested as a user works: a site is made, machines
// registered, recordings imported, all by the program. Made once and copied for each test. Week: 4 to 10 May
// 2026, UTC.
//   A-RACE   inner race of the driver DE bearing spalled, three recordings of one node
//   B-SOUND  sound, three recordings
//   C-SHAKE  unbalance far above the C/D limit, three recordings
//   D-MUTE   never sent a recording
#pragma once

#include <gmock/gmock.h>

#include <filesystem>

#include "core/base/json_object.h"
#include "tests/cli/run_program.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::cli_test {

using made::Ran;
using made::run;

inline const std::string kUntil = "2026-05-10";

inline std::string description(const std::string& tag) {
    std::string text = made::motorText();
    text.replace(text.find("T-1"), 3, tag);
    return text;
}

class Site : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        if (!template_) template_ = std::make_unique<Template>();
    }
    void SetUp() override {
        std::filesystem::copy_file(template_->fleet(), fleet_);
        ASSERT_TRUE(std::filesystem::exists(fleet_));
    }

    // The command on this test's fleet file.
    Ran on(const std::string& command, std::vector<std::string> more = {}) const {
        more.insert(more.begin(), {command, fleet_});
        return run(more);
    }
    Json jsonOf(const std::string& command, std::vector<std::string> more) const {
        more.push_back("--json");
        const Ran ran = on(command, more);
        EXPECT_EQ(ran.status, 0) << ran.err;
        const Json json = Json::parse(ran.out, nullptr, false);
        EXPECT_TRUE(json.is_object()) << ran.out.substr(0, 300);
        return json;
    }
    std::string recordings() const { return template_->recordings(); }
    std::string at(const std::string& name) const { return folder_ / name; }

    ScratchFolder folder_;
    std::string fleet_ = folder_ / "site.fettle";

  private:
    class Template {
      public:
        Template() {
            EXPECT_EQ(run({"new", fleet(), "--site", "Test works"}).status, 0);
            std::vector<std::string> files{"register", fleet()};
            for (const char* tag : {"A-RACE", "B-SOUND", "C-SHAKE", "D-MUTE"}) {
                files.push_back(folder_ / std::string(tag) + ".json");
                made::write(files.back(), description(tag));
            }
            EXPECT_EQ(run(files).status, 0);
            send("A-RACE", "bearing_inner_race", "driver DE", 0.8);
            send("B-SOUND", "", "", 0);
            send("C-SHAKE", "unbalance", "driver", 1);
            const Ran ran = run({"import", fleet(), recordings()});
            EXPECT_EQ(ran.status, 0) << ran.err;
        }
        std::string fleet() const { return folder_ / "site.fettle"; }
        std::string recordings() const { return folder_ / "in"; }

      private:
        void send(const std::string& tag, const std::string& kind, const std::string& at, double severity) {
            for (int day = 5; day <= 7; ++day) {
                auto setup = made::setupOf(made::machineOf(description(tag)), std::uint64_t(day), 4);
                if (!kind.empty()) setup = made::with(setup, kind, at, severity);
                const auto sent = intake_test::sent(setup);
                intake_test::Said said;
                said.machine = tag;
                said.time = "2026-05-0" + std::to_string(day) + "T06:20:00Z";
                said.scale = sent.scale;
                intake_test::send(recordings(), tag + "_" + std::to_string(day), sent.wav, said);
            }
        }
        ScratchFolder folder_;
    };
    static inline std::unique_ptr<Template> template_;
};

}  // namespace fettle::cli_test
