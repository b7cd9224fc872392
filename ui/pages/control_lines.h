// Why: a control chart of daily medians becomes lines of a trend: EWMA in the quantity's own unit with its
// two limits, CUSUM up and down in standard deviations with its decision limit. Target and sigma are those of
// the baseline, on its scale (decibels of a level); without a baseline the median of all its own days and
// their spread about it, and the words say so and what is missing. How long the chart runs between false
// alarms is said with it: core/trend/charts.h, with sources. Thread: pure.
#pragma once

#include "core/fleet/trend_past.h"
#include "ui/pages/history_requests.h"

namespace fettle {

struct ControlLines {
    std::vector<std::shared_ptr<const TrendData>> lines;
    QString words, note;  // in full; and what a reader must not miss
};
ControlLines controlLines(const TrendData& data, const TrendPast& past, ControlChart chart);

}  // namespace fettle
