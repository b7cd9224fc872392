// Why: what stands between a quantity as it is stored and its line in a plot: brought into the unit people
// read in with its limits, its past and its fan; cut where there are gaps; dressed so that several lines stay
// apart for every eye (colour and kind of line). Plain functions. Thread: any, but for dressLine.
#pragma once

#include "ui/model/units.h"
#include "ui/plot/line_item.h"
#include "ui/plot/trend_plot.h"

namespace fettle {

std::shared_ptr<const TrendData> inUnits(const TrendData& stored, const Units& units);
SeriesPtr seriesOf(const TrendData& data);  // of the running recordings
const TrendSample* nearestSample(const TrendData& data, double ms);
// Least and most within the span; least > most where there is nothing.
std::pair<double, double> extremesWithin(const TrendData& data, double fromMs, double untilMs);

Role inkOf(std::size_t line);  // of the first, second, .. line
void dressLine(LineItem& line, std::size_t at, const Theme& theme);

}  // namespace fettle
