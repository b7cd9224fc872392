// What is asked for: kept, listed in the order of the walk, answered by what comes in and by nothing else.
// Lengths, bands and lines: 1 / T and the usual numbers of lines of instruments (common practice, no source).
#include "core/fleet/asks.h"

#include "core/fleet/ask_suggestions.h"
#include "core/fleet/machine_desk.h"
#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using intake_test::at;

class Asks : public SmallSite {
  protected:
    static Ask asked(const std::string& machine, const std::string& point, double seconds = 0,
                     double topHz = 0) {
        Ask ask;
        ask.request.machine = machine;
        ask.request.point = point;
        ask.request.why = "to see";
        ask.request.askedBy = "test";
        ask.request.askedAt = at("2026-01-01T00:00:00Z");
        ask.spec.seconds = seconds;
        ask.spec.topHz = topHz;
        return ask;
    }
    std::int64_t put(const Ask& ask) {
        const auto id = putAsk(*fleet_, ask);
        EXPECT_TRUE(id) << (id ? "" : id.error().sentence());
        return id.value_or(0);
    }
    const Ask& only(const std::vector<Ask>& asks) {
        EXPECT_EQ(asks.size(), 1u);
        return asks.at(0);
    }
};

TEST(AskSpec, LinesFollowFromLengthAndBand) {
    EXPECT_EQ(linesOf({8, 1000, false, "", ""}), 12800);  // 8000 and up
    EXPECT_EQ(linesOf({4, 400, false, "", ""}), 1600);
    EXPECT_EQ(linesOf({0, 400, false, "", ""}), 0);
}

TEST(AskSpec, WhatIsWrittenIsReadBack) {
    const AskSpec spec{32, 1000, true, "dropped", "belt changed; \"seen\""};
    const auto back = askSpecFrom(toText(spec), "x");
    ASSERT_TRUE(back);
    EXPECT_EQ(*back, spec);
    EXPECT_EQ(*askSpecFrom(toText(AskSpec{}), "x"), AskSpec{});
    for (const char* bad :
         {"", "[]", "{\"seconds\": -1}", "{\"outcome\": \"perhaps\"}", "{\"top_hz\": \"x\"}"})
        EXPECT_FALSE(askSpecFrom(bad, "x")) << bad;
}

TEST_F(Asks, StandByMachineOnceAndSayWhoseTheyAre) {
    const auto b = put(asked("B-SOUND", "driver DE"));
    const auto a = put(asked("A-RACE", "driver NDE", 8));
    EXPECT_EQ(put(asked("A-RACE", "driver NDE", 8)), a) << "alike and open: stands once";
    EXPECT_NE(put(asked("A-RACE", "driver NDE", 16)), a);
    const auto all = asksOf(*fleet_);
    ASSERT_TRUE(all);
    ASSERT_EQ(all->size(), 3u);
    EXPECT_EQ((*all)[0].request.machine, "A-RACE");
    EXPECT_EQ((*all)[2].request.id, b);
    EXPECT_EQ((*all)[0].spec.seconds, 8);
    EXPECT_EQ(asksOf(*fleet_, "B-SOUND")->size(), 1u);
}

TEST_F(Asks, WithoutPlaceReasonOrMachineTheyAreRefused) {
    Ask nowhere = asked("A-RACE", " "), why = asked("A-RACE", "driver DE"), whose = asked("NOT-THERE", "x"),
        way = asked("A-RACE", "driver DE"), length = asked("A-RACE", "driver DE", 1e9);
    why.request.why.clear();
    way.request.direction = "up";
    for (const Ask& bad : {nowhere, why, whose, way, length})
        EXPECT_FALSE(putAsk(*fleet_, bad));
    EXPECT_TRUE(asksOf(*fleet_)->empty());
}

TEST_F(Asks, ByHandTheyAreAnsweredOrDroppedOnce) {
    const auto id = put(asked("A-RACE", "driver DE"));
    EXPECT_FALSE(closeAsk(*fleet_, id, "perhaps", ""));
    ASSERT_TRUE(closeAsk(*fleet_, id, "dropped", "belt changed"));
    EXPECT_FALSE(closeAsk(*fleet_, id, "answered", ""));
    EXPECT_TRUE(asksOf(*fleet_)->empty());
    const Ask kept = only(*asksOf(*fleet_, "", true));
    EXPECT_EQ(kept.state(), "dropped");
    EXPECT_EQ(kept.spec.note, "belt changed");
    EXPECT_FALSE(kept.request.recording);
}

// The simulated node records 4 s; the rate over 2.56 is what it can be read to.
TEST_F(Asks, ARecordingAnswersWhatItBringsAndNoMore) {
    const auto machine = fleet_->machines().describedAt("A-RACE");
    ASSERT_TRUE(machine);
    const auto entry = fleet_->machines().byTag("A-RACE");
    const auto recordings = fleet_->recordings().list(entry->id, Instant{}, at("2027-01-01T00:00:00Z"));
    ASSERT_FALSE(recordings->empty());
    const RecordingEntry& r = recordings->front();
    const std::string place = (*machine)->pointById(r.point)->at;
    const auto fits = [&](const Ask& ask) { return brings(**machine, r, ask); };
    EXPECT_TRUE(fits(asked("A-RACE", r.point)));
    EXPECT_TRUE(fits(asked("A-RACE", place)));
    EXPECT_TRUE(fits(asked("A-RACE", r.point, r.seconds, r.sampleRateHz / 2.56)));
    EXPECT_FALSE(fits(asked("A-RACE", r.point, r.seconds * 1.1)));
    EXPECT_FALSE(fits(asked("A-RACE", r.point, 0, r.sampleRateHz / 2.4)));
    EXPECT_FALSE(fits(asked("A-RACE", "driven DE")));
    Ask tacho = asked("A-RACE", r.point);
    tacho.spec.tachometer = true;
    EXPECT_FALSE(fits(tacho)) << "no such channel";
    RecordingEntry still = r;
    still.running = "stopped";
    EXPECT_FALSE(brings(**machine, still, asked("A-RACE", r.point)));
}

TEST_F(Asks, WhatComesInAnswersWhatWasAskedBefore) {
    const auto wanted = put(asked("B-SOUND", "driver DE", 3)),
               longer = put(asked("B-SOUND", "driver DE", 30));
    Ask later = asked("B-SOUND", "driver DE", 2);
    later.request.askedAt = at("2200-01-01T00:00:00Z");
    const auto notYet = put(later);
    auto setup = made::setupOf(made::machineOf(description("B-SOUND")), 77, 4);
    const auto sent = intake_test::sent(setup);
    intake_test::Said said;
    said.machine = "B-SOUND";
    said.time = "2026-05-09T06:20:00Z";
    said.scale = sent.scale;
    intake_test::send(folder_ / "in", "new", sent.wav, said);
    ImportOptions options;
    options.now = intake_test::kNow;
    options.recursive = true;
    const auto report = import(*fleet_, RealFileSystem(), {folder_ / "in"}, options);
    ASSERT_TRUE(report && report->stored == 1) << (report ? "" : report.error().sentence());
    EXPECT_EQ(report->answered, 1u);
    const auto open = asksOf(*fleet_, "B-SOUND");
    ASSERT_EQ(open->size(), 2u);
    EXPECT_EQ((*open)[0].request.id, longer);
    EXPECT_EQ((*open)[1].request.id, notYet);
    const auto answered = fleet_->requests().get(wanted);
    ASSERT_TRUE(answered && answered->recording);
    EXPECT_TRUE(answerAsks(*fleet_)->empty()) << "answered once";
}

// A finding to plan or act for is read by hand before the job; what a length would cure is asked of the node.
TEST_F(Asks, SuggestionsFollowFromVerdictAndBlindSpots) {
    const auto span =
        examinationOfSpan(*fleet_, "A-RACE", at("2026-05-04T00:00:00Z"), at("2026-05-10T23:59:59Z"));
    ASSERT_TRUE(span && *span);
    Examination e = (*span)->examination;
    Hypothesis h = e.findings.at(0);
    h.urgency = "plan";
    e.blind = {{h.fault, h.at, "too short", "a recording of 8 s or more"},
               {h.fault, h.at, "narrow", "a long narrow recording of 16.0 s or more, 1 kHz is enough"},
               {h.fault, h.at, "not described", "enter their designations"},
               {"rotor_bar", "driver", "too short", "a recording of 64 s or more"}};
    const auto all = askSuggestions(*(*span)->machine, e, h);
    std::size_t node = 0, hand = 0;
    for (const AskSuggestion& s : all) {
        ++(s.byHand ? hand : node);
        EXPECT_TRUE(s.byHand ? s.spec.topHz > 0 : s.spec.seconds == 16) << s.why;
        EXPECT_FALSE(s.why.empty());
    }
    EXPECT_EQ(node, 1u);
    EXPECT_GE(hand, 1u);
    h.urgency = "leave";
    h.rivals.clear();
    e.blind.clear();
    EXPECT_TRUE(askSuggestions(*(*span)->machine, e, h).empty());
}

TEST_F(Asks, TheListGoesOutWithEveryValue) {
    Ask ask = asked("A-RACE", "driver DE", 8, 1000);
    ask.request.byHand = true;
    ask.request.direction = "axial";
    ask.request.why = "=cmd()";
    put(ask);
    const auto all = asksOf(*fleet_);
    const Json json = toJson(*all);
    ASSERT_EQ(json.size(), 1u);
    EXPECT_EQ(json[0]["by"], "hand");
    EXPECT_EQ(json[0]["lines"], 12800);
    EXPECT_EQ(json[0]["state"], "open");
    const std::string csv = csvOf(*all);
    EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 2);
    EXPECT_EQ(csv.find(",=cmd"), std::string::npos) << "no cell starts a formula";
}

}  // namespace
}  // namespace fettle::fleet_test
