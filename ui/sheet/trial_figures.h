// Why: what came in a trial at one look, in the window and on paper: the weight of what is followed and 1x
// over the recordings, with the promise as a line and the moments of change and detection as marks. Plain
// data for a TrendPlot. Thread: the window's.
#pragma once

#include <vector>

#include "core/workshop/trial.h"
#include "ui/plot/trend_plot.h"

namespace fettle {

// The weight first, 1x beside it where there is one.
std::vector<TrendPlot::DataPtr> trialCurves(const Trial& trial, const TrialResult& result);
std::vector<TrendEvent> trialMoments(const Trial& trial, const TrialResult& result);
// From the first to the last recording or moment, a little more to either side.
TimeSpan trialTimes(const Trial& trial, const TrialResult& result);

}  // namespace fettle
