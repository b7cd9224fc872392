// Why: the desks are tested on a small site whose truth is known: five machines of the simulator, one week of
// recordings in a scratch fleet file, made once and copied for each test. Week: 4 to 10 May 2026, UTC.
//   A-RACE   inner race of the driver DE bearing spalled, three recordings
//   B-SOUND  sound, three recordings
//   C-SHAKE  unbalance far above the C/D limit, three recordings
//   D-MUTE   never sent a recording
//   E-FLAT   silent since a month ago; its low battery was noted
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "core/fleet/round_desk.h"
#include "core/intake/import.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::fleet_test {

inline const std::string kUntil = "2026-05-10";
inline const std::vector<std::string> kTags = {"A-RACE", "B-SOUND", "C-SHAKE", "D-MUTE", "E-FLAT"};

inline std::string description(const std::string& tag) {
    std::string text = made::motorText();
    text.replace(text.find("T-1"), 3, tag);
    return text;
}

class SmallSite : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        if (!template_) template_ = std::make_unique<Template>();
    }
    void SetUp() override {
        std::filesystem::copy_file(template_->path(), path_);
        auto opened = FleetFile::open(path_);
        ASSERT_TRUE(opened) << opened.error().sentence();
        fleet_ = std::move(*opened);
    }

    KeptRound opened() {
        auto kept = openRound(*fleet_, kUntil);
        EXPECT_TRUE(kept) << (kept ? "" : kept.error().sentence());
        return kept ? std::move(*kept) : KeptRound{};
    }
    static const RoundMachine& machineIn(const RoundList& list, const std::string& tag) {
        static const RoundMachine none;
        for (const RoundMachine& m : list.machines)
            if (m.tag == tag) return m;
        ADD_FAILURE() << tag << " is not in the list";
        return none;
    }

    ScratchFolder folder_;
    std::string path_ = folder_ / "site.fettle";
    std::unique_ptr<FleetFile> fleet_;

  private:
    // The file that every test starts from.
    class Template {
      public:
        Template() {
            auto made = FleetFile::create(path(), {"Test works", "UTC", 0.1});
            EXPECT_TRUE(made);
            for (const std::string& tag : kTags)
                EXPECT_TRUE((*made)->machines().put(description(tag), tag + ".json"));
            send("A-RACE", "bearing_inner_race", "driver DE", 0.8, "2026-05-");
            send("B-SOUND", "", "", 0, "2026-05-");
            send("C-SHAKE", "unbalance", "driver", 1, "2026-05-");
            send("E-FLAT", "", "", 0, "2026-04-");
            EXPECT_TRUE((*made)->log().addEvent(
                {0, "E-FLAT", intake_test::at("2026-04-09T08:00:00Z"), "low_battery", "", "3.1 V", "test"}));
            ImportOptions options;
            options.now = intake_test::kNow;
            options.recursive = true;
            const auto report = import(**made, RealFileSystem(), {folder_ / "in"}, options);
            EXPECT_TRUE(report && report->stored == 12 && report->refusals.empty());
        }
        std::string path() const { return folder_ / "template.fettle"; }

      private:
        void send(const std::string& tag, const std::string& kind, const std::string& at, double severity,
                  const std::string& month) {
            for (int day = 5; day <= 7; ++day) {
                auto setup = made::setupOf(made::machineOf(description(tag)), std::uint64_t(day), 4);
                if (!kind.empty()) setup = made::with(setup, kind, at, severity);
                const auto sent = intake_test::sent(setup);
                intake_test::Said said;
                said.machine = tag;
                said.time = month + "0" + std::to_string(day) + "T06:20:00Z";
                said.scale = sent.scale;
                intake_test::send(folder_ / "in", tag + "_" + std::to_string(day), sent.wav, said);
            }
        }
        ScratchFolder folder_;
    };
    static inline std::unique_ptr<Template> template_;
};

}  // namespace fettle::fleet_test
