// Why: what core/fleet tells of a quantity's past becomes what a trend draws, alike on the machine page and
// on the sheet. Days of the site's calendar stand at their noon. Thread: any.
#pragma once

#include <QString>

#include "core/fleet/trend_past.h"
#include "ui/plot/trend_plot.h"

namespace fettle {

QString dayText(int day);  // "13 July 2026"
// Baseline, limit of its own, the day since when, and the fan.
void addPast(const TrendPast& past, TrendData& data);

}  // namespace fettle
