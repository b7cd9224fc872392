#include "core/store/trend_store.h"

#include <gmock/gmock.h>

#include <cmath>

#include "core/store/packed_recording.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

class TrendStoreTest : public StoreTest {
  protected:
    TrendStore& trends() { return fleet_->trends(); }
    std::int64_t idOf(const std::string& name) {
        const auto channels = trends().channels(machine_).value();
        for (const ChannelEntry& channel : channels)
            if (channel.name == name) return channel.id;
        return 0;
    }
    void putDays(int days) {
        std::vector<NewRecording> all;
        for (int day = days; day >= 1; --day)  // newest first: as a backlog comes
            all.push_back(newRecording(machine_, "2026-05-0" + std::to_string(day) + "T06:00:00Z",
                                       std::uint64_t(day), 64));
        ASSERT_TRUE(fleet_->recordings().putAll(all));
    }
};

TEST_F(TrendStoreTest, ChannelsAsDescribed) {
    putDays(2);
    const auto channels = trends().channels(machine_).value();
    ASSERT_EQ(channels.size(), 3u);
    EXPECT_EQ(channels[0].name, "flux");
    EXPECT_EQ(channels[0].unit, "1");
    EXPECT_EQ(channels[1].name, "x");
    EXPECT_EQ(channels[1].point, "M-DE");
    EXPECT_EQ(channels[1].quantity, "acceleration");
    EXPECT_EQ(channels[1].direction, "horizontal");
    EXPECT_EQ(channels[1].machine, machine_);
    EXPECT_TRUE(trends().channels(machine_ + 1)->empty());
}

TEST_F(TrendStoreTest, AQuantityOldestFirstWithinItsEnds) {
    putDays(5);
    const auto points =
        trends().trend(idOf("x"), Quantity::Peak, at("2026-05-02T06:00:00Z"), at("2026-05-04T06:00:00Z"));
    ASSERT_EQ(points->size(), 3u);
    for (int i = 0; i < 3; ++i) {
        const TrendPoint& point = (*points)[std::size_t(i)];
        EXPECT_EQ(point.time, at("2026-05-0" + std::to_string(i + 2) + "T06:00:00Z"));
        EXPECT_EQ(point.value, 2 + (i + 2) / 16.0);
        EXPECT_EQ(point.running, "running");
        EXPECT_EQ(fleet_->recordings().entry(point.recording)->time, point.time);
    }
    EXPECT_TRUE(trends().trend(idOf("x"), Quantity::AmbientTempC, Instant::min(), Instant::max())->empty());
    EXPECT_TRUE(trends().trend(99, Quantity::Peak, Instant::min(), Instant::max())->empty());
}

TEST_F(TrendStoreTest, EveryQuantityHasItsOwnColumn) {
    putDays(1);
    for (std::size_t i = 0; i < kQuantities; ++i) {
        const Quantity quantity = Quantity(i);
        const auto points = trends().trend(idOf("z"), quantity, Instant::min(), Instant::max()).value();
        ASSERT_EQ(points.size(), quantity == Quantity::AmbientTempC ? 0u : 1u) << columnOf(quantity);
        if (!points.empty()) {
            EXPECT_EQ(points[0].value, double(i) + 1 / 16.0);
        }
    }
    EXPECT_STREQ(columnOf(Quantity::VelocityRms), "velocity_rms_mm_s");
    EXPECT_STREQ(unitOf(Quantity::VelocityRms), "mm/s");
}

TEST_F(TrendStoreTest, AllQuantitiesInOneReadingAndTheFirstRow) {
    putDays(4);
    const std::int64_t z = idOf("z");
    const auto all = trends().values(z, at("2026-05-02T06:00:00Z"), at("2026-05-03T06:00:00Z")).value();
    ASSERT_EQ(all.size(), 2u);
    EXPECT_EQ(all[0].time, at("2026-05-02T06:00:00Z"));
    EXPECT_EQ(all[0].running, "running");
    EXPECT_EQ(all[1].of(Quantity::Peak), trends().latest(z).value()->values[2].value() - 1 / 16.0);
    EXPECT_FALSE(all[1].of(Quantity::AmbientTempC));
    EXPECT_EQ(trends().first(z).value(), at("2026-05-01T06:00:00Z"));
    EXPECT_FALSE(trends().first(z + 99).value());
    EXPECT_TRUE(trends().values(z + 99, Instant::min(), Instant::max())->empty());
}

TEST_F(TrendStoreTest, TheLatestRowWhole) {
    putDays(3);
    const TrendRow row = trends().latest(idOf("z")).value().value();
    EXPECT_EQ(row.time, at("2026-05-03T06:00:00Z"));
    EXPECT_EQ(row.channel, "z");
    EXPECT_EQ(row.point, "M-DE");
    EXPECT_EQ(row.direction, "axial");
    EXPECT_EQ(row.running, "running");
    EXPECT_EQ(row.zone, "C");
    EXPECT_EQ(row.nextLimitMmS, 4.5);
    EXPECT_EQ(row.values[std::size_t(Quantity::Kurtosis)], 4 + 3 / 16.0);
    EXPECT_EQ(row.values[std::size_t(Quantity::AmbientTempC)], std::nullopt);
    EXPECT_EQ(trends().latest(idOf("flux")).value(), std::nullopt);
}

TEST_F(TrendStoreTest, MeasuresOfFaultsOldestFirst) {
    for (const int day : {3, 1, 2}) {
        auto one =
            newRecording(machine_, "2026-05-0" + std::to_string(day) + "T06:00:00Z", std::uint64_t(day), 64);
        one.measures = {{"x", "M-DE", "gear_mesh", "G1", "mesh 1-3 x", "g", day / 4.0},
                        {"flux", "M-DE", "rotor_bar", "driver", "mains - pole pass", "dB", -50.0 - day}};
        if (day == 2) one.measures.push_back({"x", "M-DE", "belt", "B1", "belt 1-4 x", "mm/s", 0.5});
        ASSERT_TRUE(fleet_->recordings().put(one));
    }
    const auto all = trends().measures(machine_).value();
    ASSERT_EQ(all.size(), 3u);
    EXPECT_EQ(all[0].fault, "belt");
    EXPECT_EQ(all[1].at, "G1");
    EXPECT_EQ(all[1].unit, "g");
    EXPECT_EQ(all[1].channelName, "x");
    EXPECT_EQ(all[1].direction, "horizontal");
    EXPECT_EQ(all[2].name, "mains - pole pass");
    EXPECT_EQ(all[2].channel, idOf("flux"));
    const auto mesh = trends().measured(all[1], at("2026-05-02T00:00:00Z"), Instant::max()).value();
    ASSERT_EQ(mesh.size(), 2u);
    EXPECT_EQ(mesh[0].time, at("2026-05-02T06:00:00Z"));
    EXPECT_EQ(mesh[0].value, 0.5);
    EXPECT_EQ(mesh[0].running, "running");
    EXPECT_EQ(mesh[1].value, 0.75);
    EXPECT_EQ(trends().measured(all[0], Instant::min(), Instant::max())->size(), 1u);
    EXPECT_TRUE(trends().measures(machine_ + 1)->empty());
    expectClean();
}

// Weighed again, a recording has the new measures and none of the old.
TEST_F(TrendStoreTest, MeasuresAreReplacedWithTheExamination) {
    auto one = newRecording(machine_, "2026-05-04T06:20:00Z");
    one.measures = {{"x", "M-DE", "flow", "driven", "below 1x", "mm/s", 0.5},
                    {"x", "M-DE", "belt", "B1", "belt 1-4 x", "mm/s", 0.5}};
    ASSERT_TRUE(fleet_->recordings().put(one));
    one.measures = {{"x", "M-DE", "flow", "driven", "below 1x", "mm/s", 0.75}};
    ASSERT_TRUE(fleet_->recordings().replaceExamination(1, packComputed(one)));
    const auto all = trends().measures(machine_).value();
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(trends().measured(all[0], Instant::min(), Instant::max())->at(0).value, 0.75);
    expectClean();
}

TEST_F(TrendStoreTest, SpectraForTheWaterfall) {
    putDays(3);
    const auto all =
        trends().spectra(idOf("x"), WaterfallKind::Velocity, at("2026-05-02T00:00:00Z"), Instant::max());
    ASSERT_EQ(all->size(), 2u);
    EXPECT_EQ((*all)[0].time, at("2026-05-02T06:00:00Z"));
    EXPECT_EQ((*all)[0].topHz, 1000);
    ASSERT_EQ((*all)[0].lines.size(), 800u);
    for (const float line : (*all)[0].lines)
        EXPECT_LE(std::abs(20 * std::log10(line / 0.25)), 0.376);
    EXPECT_TRUE(
        trends().spectra(idOf("x"), WaterfallKind::Envelope, Instant::min(), Instant::max())->empty());
}

}  // namespace
}  // namespace fettle
