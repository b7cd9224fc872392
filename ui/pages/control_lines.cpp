#include "ui/pages/control_lines.h"

#include "core/trend/baseline.h"
#include "core/trend/charts.h"
#include "core/trend/daily.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kHalfDayMs = 12 * 3600 * 1e3;
constexpr double kSpreadsOfBand = 4;  // the band is two to either side

struct Days {
    std::vector<double> ms, values;  // on the scale
};

// From the baseline's first day on.
Days daysOf(const TrendData& data, const BaselineBand& band) {
    std::vector<TimedValue> timed;
    for (const TrendSample& sample : data.samples)
        if (sample.running && sample.value > 0) timed.push_back({toInstant(sample.ms), sample.value});
    Days days;
    for (const DayValue& day : dailyMedians(timed)) {
        if (day.day < band.from) continue;
        days.ms.push_back(toMs(startOfDay(day.day)) + kHalfDayMs);
        days.values.push_back(onScale(day.value, Scale::Decibels));
    }
    return days;
}

std::shared_ptr<TrendData> line(const QString& name, const QString& unit) {
    auto data = std::make_shared<TrendData>();
    data->quantity = name;
    data->unit = unit;
    data->smooth = true;
    return data;
}

QString noteOf(double runLength) {
    return tr("a false alarm in %1 days on average").arg(fixedText(runLength, 0));
}

ControlLines ewmaLines(const TrendData& data, const Days& days, const ChartBasis& basis) {
    EwmaOptions options;
    options.fixedLimits = true;
    const std::vector<EwmaPoint> points = ewma(days.values, basis, options);
    auto smooth = line(tr("EWMA"), data.unit);
    for (std::size_t i = 0; i < points.size(); ++i)
        smooth->samples.push_back({days.ms[i], fromScale(points[i].value, Scale::Decibels), 0, true});
    if (!points.empty()) {
        smooth->limits.push_back({tr("EWMA low"), fromScale(points.back().low, Scale::Decibels), true});
        smooth->limits.push_back({tr("EWMA high"), fromScale(points.back().high, Scale::Decibels), true});
    }
    return {{smooth},
            tr("EWMA of daily medians, lambda %1, limits at %2 sigma: one false alarm in %3 days on average.")
                .arg(options.lambda)
                .arg(options.width)
                .arg(fixedText(ewmaRunLength(options, 0), 0)),
            noteOf(ewmaRunLength(options, 0))};
}

ControlLines cusumLines(const Days& days, const ChartBasis& basis) {
    const CusumOptions options;
    const CusumChart chart = cusum(days.values, basis, options);
    auto up = line(tr("CUSUM up"), tr("sigma")), down = line(tr("CUSUM down"), tr("sigma"));
    for (std::size_t i = 0; i < chart.points.size(); ++i) {
        up->samples.push_back({days.ms[i], chart.points[i].up, 0, true});
        down->samples.push_back({days.ms[i], chart.points[i].down, 0, true});
    }
    up->limits.push_back({tr("decision"), options.h, true});
    return {{up, down},
            tr("CUSUM of daily medians, k %1, h %2 sigma: one false alarm in %3 days on average.")
                .arg(options.k)
                .arg(options.h)
                .arg(fixedText(cusumRunLength(options, 0), 0)),
            noteOf(cusumRunLength(options, 0))};
}

}  // namespace

ControlLines controlLines(const TrendData& data, const TrendPast& past, ControlChart chart) {
    if (chart == ControlChart::None) return {};
    if (!past.baseline) {
        const QString why =
            past.why.empty() ? tr("%1 has no baseline that is followed").arg(data.quantity) : shown(past.why);
        return {{}, tr("No control chart: %1.").arg(why), tr("no control chart: no baseline")};
    }
    const double low = onScale(past.baseline->low, Scale::Decibels);
    const double high = onScale(past.baseline->high, Scale::Decibels);
    const ChartBasis basis{(low + high) / 2, (high - low) / kSpreadsOfBand};
    if (!(basis.sigma > 0))
        return {{}, tr("No control chart: the baseline has no spread."), tr("no control chart: no spread")};
    const Days days = daysOf(data, *past.baseline);
    return chart == ControlChart::Ewma ? ewmaLines(data, days, basis) : cusumLines(days, basis);
}

}  // namespace fettle
