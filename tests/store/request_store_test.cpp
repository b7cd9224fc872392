// Requests as they are kept, and since when a hypothesis has weighed so much. common practice, no source.
#include "core/store/request_store.h"

#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

class RequestStoreTest : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        for (const char* tag : {"A", "B"})
            ASSERT_TRUE(fleet_->machines().put(machineJson(tag), "machine.json"));
    }
    std::int64_t add(const std::string& machine, const std::string& when) {
        Request request;
        request.machine = machine;
        request.byHand = true;
        request.point = "driven DE";
        request.direction = "axial";
        request.what = "{\"seconds\":8}";
        request.why = "blind there";
        request.askedAt = at(when);
        request.askedBy = "kim";
        const auto id = fleet_->requests().add(request);
        EXPECT_TRUE(id) << (id ? "" : id.error().sentence());
        return id.value_or(0);
    }
};

TEST_F(RequestStoreTest, ComeBackAsTheyWereByMachineAndAge) {
    add("B", "2026-05-04T06:20:00Z");
    const auto late = add("A", "2026-05-06T06:20:00Z"), early = add("A", "2026-05-05T06:20:00Z");
    const auto all = fleet_->requests().list();
    ASSERT_TRUE(all && all->size() == 3);
    EXPECT_EQ((*all)[0].id, early);
    EXPECT_EQ((*all)[1].id, late);
    EXPECT_EQ((*all)[2].machine, "B");
    const Request& one = (*all)[0];
    EXPECT_TRUE(one.byHand);
    EXPECT_EQ(one.point, "driven DE");
    EXPECT_EQ(one.direction, "axial");
    EXPECT_EQ(one.what, "{\"seconds\":8}");
    EXPECT_EQ(one.why, "blind there");
    EXPECT_EQ(one.askedBy, "kim");
    EXPECT_EQ(one.askedAt, at("2026-05-05T06:20:00Z"));
    EXPECT_FALSE(one.answeredAt || one.recording);
    EXPECT_EQ(fleet_->requests().list("B")->size(), 1u);
}

TEST_F(RequestStoreTest, AnAnswerStandsOnceAndTakesItOffTheOpenOnes) {
    const auto id = add("A", "2026-05-05T06:20:00Z");
    ASSERT_TRUE(fleet_->requests().answer(id, at("2026-05-07T00:00:00Z"), {}, "{\"outcome\":\"dropped\"}"));
    EXPECT_TRUE(fleet_->requests().list()->empty());
    const auto all = fleet_->requests().list("", true);
    ASSERT_EQ(all->size(), 1u);
    EXPECT_EQ((*all)[0].answeredAt, at("2026-05-07T00:00:00Z"));
    EXPECT_EQ((*all)[0].what, "{\"outcome\":\"dropped\"}");
    const auto again = fleet_->requests().answer(id, at("2026-05-08T00:00:00Z"), {}, "");
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().kind, ErrorKind::Invalid);
}

TEST_F(RequestStoreTest, ForNoMachineOrNoRequestIsNotFound) {
    Request request;
    request.machine = "NONE";
    const auto id = fleet_->requests().add(request);
    ASSERT_FALSE(id);
    EXPECT_EQ(id.error().kind, ErrorKind::NotFound);
    EXPECT_EQ(fleet_->requests().get(7).error().kind, ErrorKind::NotFound);
    EXPECT_FALSE(fleet_->requests().answer(7, at("2026-05-08T00:00:00Z"), {}, ""));
    const auto wrong = add("A", "2026-05-05T06:20:00Z");
    EXPECT_FALSE(fleet_->requests().answer(wrong, at("2026-05-08T00:00:00Z"), 99, "")) << "no such recording";
}

TEST_F(RequestStoreTest, SinceWhenAWeightWasReachedCountsFromThere) {
    const double weights[] = {12, 25, 19.9, 31};
    for (int i = 0; i < 4; ++i) {
        NewRecording one =
            newRecording(machine_, "2026-05-0" + std::to_string(i + 1) + "T06:20:00Z", std::uint64_t(i) + 1);
        one.weights = {{"bearing_outer_race", "driver DE", weights[i]}, {"bearing_cage", "driver DE", 3}};
        ASSERT_TRUE(fleet_->recordings().put(one));
    }
    const Instant end = at("2027-01-01T00:00:00Z");
    const auto reached = fleet_->recordings().weightsReached(machine_, 20, end);
    ASSERT_TRUE(reached && reached->size() == 1) << (reached ? "" : reached.error().sentence());
    EXPECT_EQ((*reached)[0].fault, "bearing_outer_race");
    EXPECT_EQ((*reached)[0].first, at("2026-05-02T06:20:00Z"));
    EXPECT_EQ((*reached)[0].last, at("2026-05-04T06:20:00Z"));
    EXPECT_EQ((*reached)[0].recordings, 2u);
    EXPECT_EQ(fleet_->recordings().weightsReached(machine_, 20, at("2026-05-01T23:00:00Z"))->size(), 0u);
    EXPECT_EQ(fleet_->recordings().weights(machine_, Instant{}, end, "bearing_cage")->size(), 4u);
    EXPECT_EQ(fleet_->recordings().weights(machine_, Instant{}, end)->size(), 8u);
}

}  // namespace
}  // namespace fettle
