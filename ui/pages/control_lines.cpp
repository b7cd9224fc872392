#include "ui/pages/control_lines.h"

#include <cmath>

#include "core/trend/baseline.h"
#include "core/trend/charts.h"
#include "core/trend/daily.h"
#include "core/trend/median.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kHalfDayMs = 12 * 3600 * 1e3;
constexpr double kSpreadsOfBand = 4;  // the band is two to either side

constexpr std::size_t kFewestOwnDays = 7;  // common practice, no source
constexpr double kSigmasOfMad = 1.4826;    // of a normal distribution

struct Days {
    std::vector<double> ms, values;  // on the scale
    Scale scale = Scale::Decibels;
    double shown(double value) const { return fromScale(value, scale); }
};

// Ratios to a level are what matters of a level; a temperature, a speed or decibels are as they are.
Scale scaleOf(const TrendData& data) {
    for (const char* linear : {"dB", "°C", "K", "r/min", "Hz"})
        if (data.unit.startsWith(QString::fromUtf8(linear))) return Scale::Linear;
    return data.unit == tr("decibans") ? Scale::Linear : Scale::Decibels;
}

Days daysOf(const TrendData& data, std::optional<int> from) {
    Days days;
    days.scale = scaleOf(data);
    std::vector<TimedValue> timed;
    for (const TrendSample& sample : data.samples)
        if (sample.running && (sample.value > 0 || days.scale == Scale::Linear))
            timed.push_back({toInstant(sample.ms), sample.value});
    for (const DayValue& day : dailyMedians(timed)) {
        if (from && day.day < *from) continue;
        days.ms.push_back(toMs(startOfDay(day.day)) + kHalfDayMs);
        days.values.push_back(onScale(day.value, days.scale));
    }
    return days;
}

ChartBasis basisOf(const BaselineBand& band, Scale scale) {
    const double low = onScale(band.low, scale), high = onScale(band.high, scale);
    return {(low + high) / 2, (high - low) / kSpreadsOfBand};
}

// Median and 1.4826 MAD: a fault of some days moves them little.
ChartBasis ownBasis(const Days& days) {
    const double middle = medianOf(days.values);
    std::vector<double> away;
    for (const double value : days.values)
        away.push_back(std::abs(value - middle));
    return {middle, kSigmasOfMad * medianOf(std::move(away))};
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
        smooth->samples.push_back({days.ms[i], days.shown(points[i].value), 0, true});
    if (!points.empty()) {
        smooth->limits.push_back({tr("EWMA low"), days.shown(points.back().low), true});
        smooth->limits.push_back({tr("EWMA high"), days.shown(points.back().high), true});
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

ControlLines linesOf(const TrendData& data, const Days& days, const ChartBasis& basis, ControlChart chart) {
    if (!(basis.sigma > 0))
        return {{}, tr("No control chart: its days do not differ."), tr("no control chart: no spread")};
    return chart == ControlChart::Ewma ? ewmaLines(data, days, basis) : cusumLines(days, basis);
}

QString lackOf(const TrendData& data, const TrendPast& past) {
    if (!past.why.empty()) return tr("%1.").arg(shown(past.why));
    return tr("No baseline is kept for %1, the round does not follow it.").arg(data.quantity);
}

// Without a baseline: about the middle of all its own days, and said to be that.
ControlLines ownLines(const TrendData& data, const TrendPast& past, ControlChart chart) {
    const Days days = daysOf(data, {});
    const QString lack = lackOf(data, past);
    if (days.values.size() < kFewestOwnDays)
        return {{},
                tr("%1 No control chart: it needs %2 days, there are %3.")
                    .arg(lack)
                    .arg(kFewestOwnDays)
                    .arg(days.values.size()),
                tr("no control chart: %1 of %2 days").arg(days.values.size()).arg(kFewestOwnDays)};
    ControlLines lines = linesOf(data, days, ownBasis(days), chart);
    if (lines.lines.empty()) {
        lines.words = tr("%1 %2").arg(lack, lines.words);
        return lines;
    }
    lines.words =
        tr("%1 The chart stands on the median of all %2 days instead: it shows a jump, but takes a slow "
           "growth for usual. %3")
            .arg(lack)
            .arg(days.values.size())
            .arg(lines.words);
    lines.note = tr("about the median of all days: no baseline");
    return lines;
}

}  // namespace

ControlLines controlLines(const TrendData& data, const TrendPast& past, ControlChart chart) {
    if (chart == ControlChart::None) return {};
    if (!past.baseline) return ownLines(data, past, chart);
    const Days days = daysOf(data, past.baseline->from);
    return linesOf(data, days, basisOf(*past.baseline, days.scale), chart);
}

}  // namespace fettle
