// Why: what waterfall, trend and scatter of a machine ask of the fleet file, as functions that run on a
// worker and give plain data back. Long histories come twice: at once the largest of spans of time, said to
// be coarse, then all; where single spectra are no longer kept their spans stay. Waterfalls are asked for in
// waterfall_requests.cpp. A trend comes without its past first, because a baseline is slower than a line.
// Every reading goes by the clustered keys. Times UTC; values in stored units. Thread: any, one FleetFile at
// a time. Errors: those of the stores; Cancelled.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/store/fleet_file.h"
#include "ui/panels/quantity_picker.h"
#include "ui/plot/scatter_plot.h"
#include "ui/plot/trend_plot.h"
#include "ui/plot/waterfall_data.h"

namespace fettle {

// All of a history.
inline constexpr Instant kBeginning{};
inline constexpr Instant kEnd{
    std::chrono::milliseconds(253402300799000)};  // the last second of the year 9999

struct WaterfallRequest {
    std::int64_t channel = 0;
    WaterfallKind kind = WaterfallKind::Velocity;
    bool orders = false;
};
using WaterfallPtr = std::shared_ptr<const WaterfallData>;
Result<WaterfallPtr> coarseWaterfall(FleetFile& fleet, const WaterfallRequest& request);  // all, where few
Result<WaterfallPtr> waterfallOf(FleetFile& fleet, const WaterfallRequest& request,
                                 const CancelToken& cancel);

QString quantityName(Quantity quantity);  // "velocity r.m.s."

// What can be followed of one machine on one channel; `key` as in PickedQuantity.
struct HistoryQuantity {
    enum class Kind { Level, Rise, Measure, Weight };
    Kind kind = Kind::Level;
    Quantity level = Quantity::VelocityRms;  // of the channel
    MeasureSeries measure;
    std::string fault, at;  // of a weight
    QString key, text, group;
    PickedQuantity picked() const { return {key, text, group}; }
    // Whether it is what changed.
    bool isOf(const ChangeFacts& change) const;
};
std::vector<HistoryQuantity> levelQuantities();
// Measures that were stored, weights of what the newest recording was weighed for.
Result<std::vector<HistoryQuantity>> furtherQuantities(FleetFile& fleet, std::int64_t machine);

enum class ControlChart { None, Ewma, Cusum };

struct TrendRequest {
    std::string tag;
    std::shared_ptr<const Machine> machine;
    ChannelEntry channel;
    std::vector<HistoryQuantity> quantities;  // the first one's past is told
    std::optional<Quantity> against;          // scatter against it
};
struct TrendAnswer {
    std::vector<std::shared_ptr<const TrendData>> all;
    std::shared_ptr<const ScatterData> scatter;  // of the first one; empty: not asked for
    QString basis;                               // of the limits: "ISO 20816-3 group 2 rigid, indicative"
};
Result<TrendAnswer> trendsOf(FleetFile& fleet, const TrendRequest& request, const CancelToken& cancel);

// Of the first quantity: the same with its past, a control chart's lines beside it, and all in words.
struct PastAnswer {
    std::shared_ptr<const TrendData> data;
    std::vector<std::shared_ptr<const TrendData>> chart;
    QString past, chartWords, chartNote;
    bool lacksBaseline = false;  // of a quantity that could have one
};
Result<PastAnswer> pastOf(FleetFile& fleet, const TrendRequest& request,
                          std::shared_ptr<const TrendData> data, ControlChart chart);

}  // namespace fettle
