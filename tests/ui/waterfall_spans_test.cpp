#include "core/store/database.h"
#include "tests/store/store_fixture.h"
#include "ui/pages/history_requests.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/waterfall_words.h"

namespace fettle {
namespace {

constexpr WaterfallKind kShownKind = WaterfallKind::Acceleration;

// A series of spectra of one channel in a fleet file of its own.
class WaterfallSpans : public StoreTest {
  protected:
    // One every 20 minutes from the 4th of May; a single line of a single one stands out.
    void put(int count, int loud) {
        std::vector<NewRecording> all;
        for (int i = 0; i < count; ++i) {
            const Instant time = at("2026-05-04T00:00:00Z") + std::chrono::minutes(20 * i);
            NewRecording one = newRecording(machine_, formatUtc(time), std::uint64_t(i + 1), 16);
            std::vector<float> lines(100, 0.01f);
            if (i == loud) lines[42] = 5;
            one.spectra = {{"x", "M-DE", kShownKind, 1000, lines}};
            one.weights.clear();
            all.push_back(std::move(one));
        }
        ASSERT_TRUE(fleet_->recordings().putAll(all));
        const auto channels = fleet_->trends().channels(machine_).value();
        for (const ChannelEntry& entry : channels)
            if (entry.name == "x") request_ = {entry.id, kShownKind, false};
    }
    void keepOneADay() {
        auto database = Database::open(path_, Access::ReadWrite);
        const auto done =
            (*database)->script("DELETE FROM spectrum WHERE time < " +
                                std::to_string(at("2026-05-06T00:00:00Z").time_since_epoch().count()) +
                                " AND time % 86400000 <> 0");
        ASSERT_TRUE(done) << done.error().sentence();
    }
    static float largestOf(const WaterfallData& data, std::size_t row) {
        float largest = 0;
        for (std::size_t line = 0; line < data.lines(); ++line)
            largest = std::max(largest, data.cell(row, line));
        return largest;
    }

    WaterfallRequest request_;
};

// 26 days at 20 minutes: more than a plot is wide. The first look is of true maxima and says what it is.
TEST_F(WaterfallSpans, ALongHistoryComesFirstAsTheLargestOfEveryFourHours) {
    put(26 * 72, 1000);
    const auto coarse = coarseWaterfall(*fleet_, request_).value();
    ASSERT_EQ(coarse->rows(), 26u * 6);
    EXPECT_TRUE(coarse->coarse());
    EXPECT_TRUE(completeness(*coarse).contains(QStringLiteral("every 4 hours")));
    const std::size_t row = 1000 / 12;
    EXPECT_GT(coarse->cell(row, 42), 4.7f);
    EXPECT_EQ(toInstant(coarse->ms(row)), at("2026-05-04T00:00:00Z") + std::chrono::minutes(20 * 1000));
    EXPECT_EQ(coarse->recording(row), 1001);
    EXPECT_EQ(coarse->cover(row).from, toMs(at("2026-05-17T20:00:00Z")));
    EXPECT_EQ(coarse->cover(row).until, coarse->cover(row + 1).from);
    const auto all = waterfallOf(*fleet_, request_, {}).value();
    EXPECT_EQ(all->rows(), 26u * 72);
    EXPECT_FALSE(all->coarse());
    EXPECT_TRUE(completeness(*all).isEmpty());
}

// A few hours measured each day fill their days as single recordings do; days without any stay a gap.
TEST_F(WaterfallSpans, ADailySpanStandsForItsDay) {
    std::vector<WaterfallRow> rows;
    for (const int day : {0, 1, 2, 3, 4, 5, 6, 12, 13, 14, 15}) {
        const double start = toMs(at("2026-05-04T08:00:00Z")) + day * 24 * 3.6e6;
        rows.push_back({start + (day % 4) * 3.6e6, 1, 1000, 0, {1, 2}, Cover{start, start + 4 * 3.6e6}});
    }
    const auto data = WaterfallData::make(rows, {});
    std::size_t gaps = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        EXPECT_LE(data->cover(i).from, rows[i].span->from);
        EXPECT_GE(data->cover(i).until, rows[i].span->until);
        if (i == 0) continue;
        EXPECT_LE(data->cover(i - 1).until, data->cover(i).from);
        if (data->cover(i - 1).until + 1 < data->cover(i).from) ++gaps;
    }
    EXPECT_EQ(gaps, 1u);
}

// Where spectra were thinned the whole picture still holds what stood out in those that are gone.
TEST_F(WaterfallSpans, ThinnedDaysAreShownByTheirSpans) {
    put(3 * 72, 50);
    keepOneADay();
    const auto few = coarseWaterfall(*fleet_, request_).value();  // few enough to come whole at once
    EXPECT_FALSE(few->coarse());
    ASSERT_EQ(few->rows(), 12u + 72);
    EXPECT_GT(few->cell(50 / 12, 42), 4.7f);
    EXPECT_LT(largestOf(*few, 5), 0.02f);
    EXPECT_EQ(few->cover(11).until, toMs(at("2026-05-06T00:00:00Z")));
    EXPECT_GE(few->cover(12).from, few->cover(11).until);
    EXPECT_TRUE(completeness(*few).contains(QStringLiteral("no longer kept")));
    EXPECT_TRUE(completeness(*few).contains(QStringLiteral("6 May 2026")));
}

}  // namespace
}  // namespace fettle
