// Why: retention is tested on half a year of one machine, recorded three times a day: at noon a little
// stronger than in the morning and in the evening, so that the noon's is the one that stays of a day. Days
// from Monday 5 January to 28 June 2026; the computer's clock is past all of them.
#pragma once

#include "core/fleet/retention.h"
#include "tests/fleet/made_history.h"
#include "tests/store/every_recording.h"

namespace fettle::fleet_test {

class RetentionSite : public MadeHistory {
  protected:
    void SetUp() override {
        MadeHistory::SetUp();
        hearDaysAt("FN-01", kFirst, kLast, {{"06:00", heard(-3)}, {"12:00", heard(1)}, {"18:00", heard(-3)}});
        hearDays("FN-02", "2026-06-20", kLast, {});
    }
    static Heard heard(double raceDban) {
        Heard one;
        one.raceDban = raceDban;
        return one;
    }

    std::int64_t machineId(const std::string& tag = "FN-01") {
        return fleet_->machines().byTag(tag).value().id;
    }
    std::int64_t idAt(const std::string& time) {
        const auto found = fleet_->recordings().list(machineId(), at(time), at(time)).value();
        EXPECT_EQ(found.size(), 1u) << time;
        return found.empty() ? 0 : found[0].id;
    }
    // Of a day and hour, which kinds are there: "WSE", "-SE" ..
    std::string left(const std::string& time, const std::string& tag = "FN-01") {
        const auto all = store_test::everyRecording(fleet_->path(), machineId(tag));
        for (const KeptRecording& one : all)
            if (one.time == at(time)) {
                std::string text;
                for (const KeptKind kind : kAllKept)
                    text += one.has(kind) ? "WSE"[std::size_t(kind)] : '-';
                return text;
            }
        return "no recording";
    }
    std::string content() {
        std::string text;
        const auto all = store_test::everyRecording(fleet_->path(), machineId());
        for (const KeptRecording& one : all) {
            text += formatUtc(one.time);
            for (const std::int64_t bytes : one.bytes)
                text += bytes > 0 ? "+" : "-";
        }
        return text;
    }
    RetentionDone apply(const RetentionOptions& options = {}) {
        auto done = applyRetention(*fleet_, options);
        EXPECT_TRUE(done) << (done ? "" : done.error().sentence());
        return done ? *done : RetentionDone{};
    }
    void expectClean() {
        const auto faults = fleet_->check(true);
        ASSERT_TRUE(faults) << faults.error().sentence();
        EXPECT_TRUE(faults->empty()) << faults->front();
    }
    // Nothing of what is older than so many days, but for what is held.
    void keepOnly(int allDays) {
        RetentionRules rules;
        rules.of = {KeepRule{allDays, 0, 0}, KeepRule{allDays, 0, 0}, KeepRule{allDays, 0, 0}};
        ASSERT_TRUE(fleet_->retention().setRules(rules));
    }

    static inline const std::string kFirst = "2026-01-05", kLast = "2026-06-28";
};

}  // namespace fettle::fleet_test
