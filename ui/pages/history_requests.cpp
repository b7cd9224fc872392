#include "ui/pages/history_requests.h"

#include <algorithm>
#include <set>
#include <unordered_map>

#include "core/fleet/machine_desk.h"
#include "core/fleet/trend_past.h"
#include "core/machine/severity_limits.h"
#include "ui/model/words.h"
#include "ui/pages/control_lines.h"
#include "ui/sheet/trend_past_data.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

// Boundaries of the first set that applies; none where none does.
QString addLimits(const Machine& machine, const std::string& pointId, TrendData& data) {
    const Point* point = machine.pointById(pointId);
    if (!point) return {};
    const Result<ApplicableLimits> limits = limitsFor(machine, *point);
    if (!limits || limits->sets.empty()) return {};
    const ZoneLimits& set = limits->sets.front();
    const char* names[] = {"A/B", "B/C", "C/D"};
    for (std::size_t i = 0; i < 3; ++i)
        if (set.velocity[i] > 0) data.limits.push_back({QString::fromLatin1(names[i]), set.velocity[i]});
    QString basis = shown(set.basis);
    if (limits->indicative) basis += tr(", indicative");
    if (set.greyOnly) basis += tr(", a note only");
    return basis;
}

// What the quantity's own past says, in words for the tool tip.
QString pastWords(const TrendPast& past) {
    if (!past.baseline) return shown(past.why);
    const BaselineBand& band = *past.baseline;
    QString words = tr("Baseline: %1 days from %2 to %3, %4; its band is two spreads to either side.")
                        .arg(band.days)
                        .arg(dayText(band.from), dayText(band.to), shown(band.condition));
    if (past.limits)
        words += tr(" Own limits: mean + 3 s %1, log-normal %2, median + 3 MAD %3, 95 % of days %4, "
                    "tolerance 95/95 %5.")
                     .arg(past.limits->meanPlus3s, 0, 'g', 3)
                     .arg(past.limits->logNormal, 0, 'g', 3)
                     .arg(past.limits->medianMad, 0, 'g', 3)
                     .arg(past.limits->p95, 0, 'g', 3)
                     .arg(past.limits->tolerance, 0, 'g', 3);
    if (past.since) words += tr(" Apart since %1.").arg(dayText(*past.since));
    return words;
}

bool startsAtZero(Quantity quantity) {
    return quantity != Quantity::Offset && quantity != Quantity::SpeedRpm &&
           quantity != Quantity::FrameTempC && quantity != Quantity::AmbientTempC;
}

std::vector<TrendSample> samplesOf(const std::vector<TrendPoint>& points) {
    std::vector<TrendSample> samples;
    samples.reserve(points.size());
    for (const TrendPoint& point : points)
        samples.push_back({toMs(point.time), point.value, point.recording, isRunning(point.running)});
    return samples;
}

using DataResult = Result<std::shared_ptr<TrendData>>;

DataResult levelData(FleetFile& fleet, const TrendRequest& request, Quantity quantity) {
    auto points = fleet.trends().trend(request.channel.id, quantity, kBeginning, kEnd);
    if (!points) return fail(points.error());
    auto data = std::make_shared<TrendData>();
    data->quantity = quantityName(quantity);
    data->unit =
        quantity == Quantity::Offset ? shown(request.channel.unit) : QString::fromUtf8(unitOf(quantity));
    data->samples = samplesOf(*points);
    data->fromZero = startsAtZero(quantity);
    return data;
}

// Frame over ambient, of the recordings that have both.
DataResult riseData(FleetFile& fleet, const TrendRequest& request) {
    auto frame = levelData(fleet, request, Quantity::FrameTempC);
    if (!frame) return frame;
    const auto ambient = fleet.trends().trend(request.channel.id, Quantity::AmbientTempC, kBeginning, kEnd);
    if (!ambient) return fail(ambient.error());
    std::unordered_map<std::int64_t, double> around;
    for (const TrendPoint& point : *ambient)
        around[point.recording] = point.value;
    auto data = *frame;
    std::erase_if(data->samples,
                  [&](const TrendSample& sample) { return !around.contains(sample.recording); });
    for (TrendSample& sample : data->samples)
        sample.value -= around[sample.recording];
    data->quantity = tr("temperature rise over ambient");
    data->unit = QStringLiteral("K");
    data->fromZero = true;
    return data;
}

DataResult measureData(FleetFile& fleet, const HistoryQuantity& wanted) {
    auto points = fleet.trends().measured(wanted.measure, kBeginning, kEnd);
    if (!points) return fail(points.error());
    auto data = std::make_shared<TrendData>();
    data->unit = shown(wanted.measure.unit);
    data->samples = samplesOf(*points);
    data->fromZero = data->unit != QStringLiteral("Hz") && data->unit != QStringLiteral("dB");
    return data;
}

DataResult weightData(FleetFile& fleet, const TrendRequest& request, const HistoryQuantity& wanted) {
    auto weights = weightHistory(fleet, request.tag, wanted.fault, wanted.at, kBeginning, kEnd);
    if (!weights) return fail(weights.error());
    auto data = std::make_shared<TrendData>();
    data->unit = tr("decibans");
    for (const WeightAt& weight : *weights)
        data->samples.push_back({toMs(weight.time), weight.weightDban, weight.recording, true});
    data->fromZero = true;
    return data;
}

DataResult dataOf(FleetFile& fleet, const TrendRequest& request, const HistoryQuantity& wanted) {
    DataResult data = wanted.kind == HistoryQuantity::Kind::Level  ? levelData(fleet, request, wanted.level)
                      : wanted.kind == HistoryQuantity::Kind::Rise ? riseData(fleet, request)
                      : wanted.kind == HistoryQuantity::Kind::Measure ? measureData(fleet, wanted)
                                                                      : weightData(fleet, request, wanted);
    if (!data) return data;
    (*data)->quantity = wanted.text;
    if ((*data)->unit == QStringLiteral("1")) (*data)->unit.clear();  // a ratio
    return data;
}

Result<std::shared_ptr<const ScatterData>> scatterOf(FleetFile& fleet, const TrendRequest& request,
                                                     const TrendData& of) {
    const auto points = fleet.trends().trend(request.channel.id, *request.against, kBeginning, kEnd);
    if (!points) return fail(points.error());
    std::unordered_map<std::int64_t, double> x;
    for (const TrendPoint& point : *points)
        x[point.recording] = point.value;
    auto scatter = std::make_shared<ScatterData>();
    scatter->xName = quantityName(*request.against);
    scatter->xUnit = QString::fromUtf8(unitOf(*request.against));
    scatter->yName = of.quantity;
    scatter->yUnit = of.unit;
    scatter->limits = of.limits;
    for (const TrendSample& sample : of.samples)
        if (const auto at = x.find(sample.recording); at != x.end() && sample.running)
            scatter->points.push_back({sample.ms, at->second, sample.value, sample.recording});
    return scatter;
}

}  // namespace

QString quantityName(Quantity quantity) {
    switch (quantity) {
        case Quantity::VelocityRms:
            return tr("velocity r.m.s.");
        case Quantity::AccelerationRms:
            return tr("acceleration r.m.s.");
        case Quantity::Peak:
            return tr("peak");
        case Quantity::CrestFactor:
            return tr("crest factor");
        case Quantity::Kurtosis:
            return tr("kurtosis");
        case Quantity::Order1:
            return tr("1x");
        case Quantity::Order2:
            return tr("2x");
        case Quantity::Order3:
            return tr("3x");
        case Quantity::HighBand:
            return tr("above 1 kHz");
        case Quantity::Offset:
            return tr("mean value");
        case Quantity::SpeedRpm:
            return tr("speed");
        case Quantity::FrameTempC:
            return tr("frame temperature");
        case Quantity::AmbientTempC:
            return tr("ambient temperature");
        case Quantity::LoadPct:
            return tr("load");
    }
    return {};
}

bool HistoryQuantity::isOf(const ChangeFacts& change) const {
    constexpr std::pair<Followed, Quantity> levels[] = {{Followed::Velocity, Quantity::VelocityRms},
                                                        {Followed::Order1, Quantity::Order1},
                                                        {Followed::Order2, Quantity::Order2},
                                                        {Followed::Order3, Quantity::Order3},
                                                        {Followed::HighBand, Quantity::HighBand}};
    if (kind == Kind::Rise) return change.quantity == followedName(Followed::TemperatureRise);
    if (kind == Kind::Measure)
        return measure.name == change.quantity && measure.point == change.point &&
               measure.channelName == change.channel;
    return kind == Kind::Level && std::any_of(std::begin(levels), std::end(levels), [&](const auto& one) {
               return one.second == level && followedName(one.first) == change.quantity;
           });
}

std::vector<HistoryQuantity> levelQuantities() {
    std::vector<HistoryQuantity> all;
    for (std::size_t i = 0; i < kQuantities; ++i) {
        HistoryQuantity& one = all.emplace_back();
        one.level = Quantity(i);
        one.key = QStringLiteral("level:") + QString::fromLatin1(columnOf(one.level));
        one.text = quantityName(one.level);
        one.group = tr("Levels of the channel");
    }
    HistoryQuantity& rise = all.emplace_back();
    rise.kind = HistoryQuantity::Kind::Rise;
    rise.key = QStringLiteral("rise");
    rise.text = tr("temperature rise over ambient");
    rise.group = tr("Levels of the channel");
    return all;
}

Result<std::vector<HistoryQuantity>> furtherQuantities(FleetFile& fleet, std::int64_t machine) {
    std::vector<HistoryQuantity> all;
    const auto newest = fleet.recordings().newest(machine);
    if (!newest) return fail(newest.error());
    if (!*newest) return all;
    const auto weights = fleet.recordings().weights(machine, **newest, **newest);
    if (!weights) return fail(weights.error());
    std::set<std::pair<std::string, std::string>> weighed;
    for (const WeightEntry& weight : *weights)
        if (weighed.emplace(weight.fault, weight.at).second) {
            HistoryQuantity& one = all.emplace_back();
            one.kind = HistoryQuantity::Kind::Weight;
            one.fault = weight.fault;
            one.at = weight.at;
            one.key = QStringLiteral("weight:%1|%2").arg(shown(weight.fault), shown(weight.at));
            one.text = tr("weight: %1").arg(faultWords(weight.fault, weight.at));
            one.group = tr("Weights");
        }
    const auto measures = fleet.trends().measures(machine);
    if (!measures) return fail(measures.error());
    for (const MeasureSeries& series : *measures) {
        HistoryQuantity& one = all.emplace_back();
        one.kind = HistoryQuantity::Kind::Measure;
        one.measure = series;
        one.key = QStringLiteral("measure:%1|%2|%3|%4 %5")
                      .arg(shown(series.fault), shown(series.at), shown(series.name), shown(series.point),
                           shown(series.channelName));
        one.text = tr("%1, %2 (%3 %4)")
                       .arg(shown(series.name), faultWords(series.fault, series.at), shown(series.point),
                            shown(series.channelName));
        one.group = tr("Measures of faults");
    }
    return all;
}

Result<TrendAnswer> trendsOf(FleetFile& fleet, const TrendRequest& request, const CancelToken& cancel) {
    TrendAnswer answer;
    for (const HistoryQuantity& wanted : request.quantities) {
        if (cancel.cancelled()) return fail(ErrorKind::Cancelled, "", "", "stopped on request");
        auto data = dataOf(fleet, request, wanted);
        if (!data) return fail(data.error());
        const bool velocity =
            wanted.kind == HistoryQuantity::Kind::Level && wanted.level == Quantity::VelocityRms;
        if (velocity && request.machine)
            answer.basis = addLimits(*request.machine, request.channel.point, **data);
        answer.all.push_back(std::move(*data));
    }
    if (!request.against || answer.all.empty()) return answer;
    auto scatter = scatterOf(fleet, request, *answer.all.front());
    if (!scatter) return fail(scatter.error());
    answer.scatter = std::move(*scatter);
    return answer;
}

Result<PastAnswer> pastOf(FleetFile& fleet, const TrendRequest& request,
                          std::shared_ptr<const TrendData> data, ControlChart chart) {
    PastAnswer answer;
    TrendPast past;
    const bool level =
        !request.quantities.empty() && request.quantities.front().kind == HistoryQuantity::Kind::Level;
    if (level && request.machine) {
        auto told = trendPast(fleet, request.tag, *request.machine, request.channel,
                              request.quantities.front().level);
        if (!told) return fail(told.error());
        past = std::move(*told);
    }
    auto with = std::make_shared<TrendData>(*data);
    addPast(past, *with);
    answer.past = pastWords(past);
    answer.lacksBaseline = !past.baseline && !past.why.empty();
    ControlLines lines = controlLines(*with, past, chart);
    answer.chart = std::move(lines.lines);
    answer.chartWords = std::move(lines.words);
    answer.chartNote = std::move(lines.note);
    answer.data = std::move(with);
    return answer;
}

}  // namespace fettle
