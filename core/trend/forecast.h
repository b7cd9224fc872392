// Why: the date on which a growing level meets its limit, with an interval that keeps its word: nominal 80 %
// holds the true date in about 80 of 100 (`fettle-trials forecast-cover` measures it). A straight and an
// exponential growth are carried on side by side, each as far as the days speak for it; the interval counts
// that neighbouring days are alike (autocorrelation of the residuals) and that weather and product let a
// level drift (an allowance, common practice, no source). Only for levels with a limit, never for bearings:
// they get a date by stage. Source of the line: growth.h; of the effective number of days: G. E. P. Box, G.
// M. Jenkins, Time Series Analysis (1970), section 2.1.5. Thread: pure.
#pragma once

#include <optional>
#include <span>

#include "core/trend/growth.h"

namespace fettle {

struct LimitDate {
    std::optional<int> median, from, to;  // days since 1970-01-01; `to` empty: open end
};

struct ForecastOptions {
    GrowthOptions window;
    double cover = 0.8;         // of the interval from .. to
    double driftShare = 0.015;  // of the level: spread of a slow drift that no line shows
    int mostDays = 365;         // no date farther than this from the last day with a value
};

// Empty where there are too few days, where the level is at or above the limit already, where one in ten or
// more of the growths that fit never get there, and where the middle date lies too far away.
std::optional<LimitDate> forecastLimit(std::span<const DayValue> days, double limit,
                                       const ForecastOptions& options = {});

}  // namespace fettle
