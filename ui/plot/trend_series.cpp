#include "ui/plot/trend_series.h"

#include <algorithm>

#include "ui/plot/time_cover.h"

namespace fettle {

namespace {

struct Dress {
    Role ink;
    Qt::PenStyle style;
    double width;
};
constexpr Dress kDresses[] = {{Role::Curve, Qt::SolidLine, 1.3},   {Role::SecondCurve, Qt::SolidLine, 1.6},
                              {Role::Cursor, Qt::DashLine, 1.5},   {Role::MutedInk, Qt::DotLine, 1.8},
                              {Role::Limit, Qt::DashDotLine, 1.5}, {Role::Accent, Qt::DashDotDotLine, 1.5}};

const Dress& dressOf(std::size_t line) {
    return kDresses[line % std::size(kDresses)];
}

}  // namespace

std::shared_ptr<const TrendData> inUnits(const TrendData& stored, const Units& units) {
    auto data = std::make_shared<TrendData>(stored);
    const ShownUnit unit = shownUnit(stored.unit, units);
    data->unit = unit.unit;
    if (unit.factor == 1 && unit.offset == 0) return data;
    for (TrendSample& sample : data->samples)
        sample.value = unit.shown(sample.value);
    for (TrendLimit& limit : data->limits)
        limit.value = unit.shown(limit.value);
    if (data->baseline)
        for (double* value : {&data->baseline->low, &data->baseline->middle, &data->baseline->high})
            *value = unit.shown(*value);
    if (data->fan)
        for (double* value : {&data->fan->value, &data->fan->limit})
            *value = unit.shown(*value);
    return data;
}

SeriesPtr seriesOf(const TrendData& data) {
    auto series = std::make_shared<Series>();
    for (const TrendSample& sample : data.samples) {
        if (!sample.running) continue;
        series->x.push_back(sample.ms);
        series->y.push_back(float(sample.value));
    }
    const std::vector<Cover> covers = coversOf(series->x);
    for (std::size_t i = 0; i < covers.size(); ++i)
        series->endsHere.push_back(gapAfter(covers, i));
    return series;
}

const TrendSample* nearestSample(const TrendData& data, double ms) {
    const auto& samples = data.samples;
    if (samples.empty()) return nullptr;
    auto after = std::lower_bound(samples.begin(), samples.end(), ms,
                                  [](const TrendSample& s, double at) { return s.ms < at; });
    if (after == samples.end()) return &samples.back();
    if (after != samples.begin() && ms - (after - 1)->ms < after->ms - ms) --after;
    return &*after;
}

std::pair<double, double> extremesWithin(const TrendData& data, double fromMs, double untilMs) {
    double least = 1e300, most = -1e300;
    for (const TrendSample& sample : data.samples) {
        if (sample.ms < fromMs || sample.ms > untilMs) continue;
        least = std::min(least, sample.value);
        most = std::max(most, sample.value);
    }
    return {least, most};
}

Role inkOf(std::size_t line) {
    return dressOf(line).ink;
}

void dressLine(LineItem& line, std::size_t at, const Theme& theme) {
    line.setColour(theme.colour(dressOf(at).ink));
    line.setStyle(dressOf(at).style);
    line.setWidth(dressOf(at).width);
}

}  // namespace fettle
