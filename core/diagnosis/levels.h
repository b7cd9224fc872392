// Why: how bad it is, never whether it is there: velocity r.m.s. against the zones of a standard,
// acceleration, crest factor, kurtosis, and the first shaft orders. Source: ISO 20816-1:2016 (zones A to D,
// 10 to 1000 Hz r.m.s. velocity; from 2 Hz below 600 r/min).
#pragma once

#include "core/diagnosis/examination.h"
#include "core/diagnosis/prepare.h"

namespace fettle {

ChannelLevels levelsOf(const Machine& machine, const Channel& channel, const ChannelRole& role,
                       const ChannelViews* views);
// Fills order1MmS .. order3MmS once the speed is known.
void addShaftOrders(ChannelLevels& levels, const ChannelViews& views, double shaftHz);

}  // namespace fettle
