#include "core/fleet/trial_reading.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <set>

#include "core/diagnosis/settings.h"
#include "core/fleet/machine_desk.h"
#include "core/machine/path.h"
#include "core/trend/change.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr std::size_t kFewestUsual = 5;
const double kToldDban = WeighingSettings().findingDban;
constexpr auto kForEver = std::chrono::hours(24 * 365 * 100);

using ByRecording = std::map<std::int64_t, double>;

struct Reading {
    FleetFile& fleet;
    const Trial& trial;
    std::int64_t machine = 0;
    Instant from{}, until{};
    std::vector<TrialRecording> recordings;
};

// Before, after, or in neither span.
std::optional<bool> sideOf(const Trial& trial, Instant time) {
    if (trial.beforeFrom && time < *trial.beforeFrom) return std::nullopt;
    if (!trial.changeFrom || time < *trial.changeFrom) return false;
    if (!trial.changeUntil || time < *trial.changeUntil) return std::nullopt;
    if (trial.afterUntil && time > *trial.afterUntil) return std::nullopt;
    return true;
}

Result<std::vector<RecordingEntry>> runningOnes(const Reading& reading) {
    auto all = reading.fleet.recordings().list(reading.machine, reading.from, reading.until);
    if (!all) return all;
    std::erase_if(*all, [](const RecordingEntry& one) { return !isRunning(one.running); });
    return all;
}

// Over a span the nearest points speak for a bearing, as they do over a week: a far one hears nothing of it.
Status keepNearest(const Reading& reading, std::vector<RecordingEntry>& running) {
    if (reading.trial.change.follows != TrialFollows::Weight || running.empty()) return {};
    const auto machine = describedAt(reading.fleet, reading.trial.machine, running.back().time);
    if (!machine) return fail(machine.error());
    const auto pathOf = [&](const RecordingEntry& one) {
        const Point* point = (*machine)->pointById(one.point);
        return point ? heardPath(**machine, *point, reading.trial.change.at) : std::nullopt;
    };
    std::optional<Path> nearest;
    for (const RecordingEntry& one : running)
        if (const auto path = pathOf(one); path && (!nearest || *path < *nearest)) nearest = path;
    if (nearest) std::erase_if(running, [&](const RecordingEntry& one) { return pathOf(one) != nearest; });
    return {};
}

Result<std::optional<ChannelEntry>> followedChannel(const Reading& reading) {
    const auto channels = reading.fleet.trends().channels(reading.machine);
    if (!channels) return fail(channels.error());
    for (const ChannelEntry& one : *channels)
        if (one.point == reading.trial.change.point && one.name == reading.trial.change.channel) return one;
    return std::nullopt;
}

ByRecording byRecording(const std::vector<TrendPoint>& points) {
    ByRecording values;
    for (const TrendPoint& point : points)
        values[point.recording] = point.value;
    return values;
}

Result<ByRecording> quantityOf(const Reading& reading, const ChannelEntry& channel, Quantity quantity) {
    const auto points = reading.fleet.trends().trend(channel.id, quantity, reading.from, reading.until);
    if (!points) return fail(points.error());
    return byRecording(*points);
}

// The measures of looseness on the channel.
Result<std::vector<ByRecording>> loosenessOf(const Reading& reading, const ChannelEntry& channel) {
    const auto series = reading.fleet.trends().measures(reading.machine);
    if (!series) return fail(series.error());
    std::vector<ByRecording> all;
    for (const MeasureSeries& one : *series) {
        if (one.fault != "looseness" || one.channel != channel.id) continue;
        const auto points = reading.fleet.trends().measured(one, reading.from, reading.until);
        if (!points) return fail(points.error());
        all.push_back(byRecording(*points));
    }
    return all;
}

// Values of the recordings before, without one of them.
std::vector<double> usualWithout(const Reading& reading, const ByRecording& values, std::int64_t without) {
    std::vector<double> usual;
    for (const TrialRecording& one : reading.recordings) {
        const auto value = values.find(one.recording);
        if (!one.after && one.recording != without && value != values.end() && value->second > 0)
            usual.push_back(value->second);
    }
    return usual;
}

// Mean of the e-values of all series on this recording.
std::optional<double> changeWeight(const Reading& reading, const std::vector<ByRecording>& series,
                                   std::int64_t recording) {
    double sum = 0;
    int count = 0;
    for (const ByRecording& values : series) {
        const auto value = values.find(recording);
        if (value == values.end() || !(value->second > 0)) continue;
        const auto weight = weightAgainst(usualWithout(reading, values, recording), value->second);
        if (!weight) continue;
        sum += std::pow(10, *weight / 10);
        ++count;
    }
    if (count == 0) return std::nullopt;
    return 10 * std::log10(sum / count);
}

Result<std::vector<ByRecording>> followedSeries(const Reading& reading, const ChannelEntry& channel) {
    if (reading.trial.change.follows == TrialFollows::Looseness) return loosenessOf(reading, channel);
    const bool once = reading.trial.change.follows == TrialFollows::Once;
    auto values = quantityOf(reading, channel, once ? Quantity::Order1 : Quantity::VelocityRms);
    if (!values) return fail(values.error());
    return std::vector<ByRecording>{std::move(*values)};
}

Status addChannel(Reading& reading) {
    const auto channel = followedChannel(reading);
    if (!channel) return fail(channel.error());
    if (!*channel) return {};
    const auto once = quantityOf(reading, **channel, Quantity::Order1);
    if (!once) return fail(once.error());
    for (TrialRecording& one : reading.recordings)
        if (const auto value = once->find(one.recording); value != once->end()) one.onceMmS = value->second;
    if (reading.trial.change.follows == TrialFollows::Weight) return {};
    const auto series = followedSeries(reading, **channel);
    if (!series) return fail(series.error());
    for (TrialRecording& one : reading.recordings)
        one.weightDban = changeWeight(reading, *series, one.recording);
    // A recording of another point says nothing of this channel.
    std::erase_if(reading.recordings, [&](const TrialRecording& one) {
        return std::none_of(series->begin(), series->end(),
                            [&](const ByRecording& values) { return values.contains(one.recording); });
    });
    return {};
}

Status addWeights(Reading& reading) {
    if (reading.trial.change.follows != TrialFollows::Weight) return {};
    const auto weights = reading.fleet.recordings().weights(reading.machine, reading.from, reading.until);
    if (!weights) return fail(weights.error());
    std::map<std::int64_t, TrialRecording*> rows;
    for (TrialRecording& one : reading.recordings)
        rows[one.recording] = &one;
    std::map<std::int64_t, const WeightEntry*> strongest;  // of other faults
    for (const WeightEntry& w : *weights) {
        const auto row = rows.find(w.recording);
        if (row == rows.end()) continue;
        const bool own = w.fault == reading.trial.promise.fault && placesMeet(w.at, reading.trial.promise.at);
        if (own)
            row->second->weightDban = std::max(row->second->weightDban.value_or(-1e9), w.weightDban);
        else if (!strongest[w.recording] || strongest[w.recording]->weightDban < w.weightDban)
            strongest[w.recording] = &w;
    }
    for (auto& [recording, w] : strongest)
        if (w && w->weightDban >= kToldDban && w->weightDban > rows[recording]->weightDban.value_or(-1e9))
            rows[recording]->strongest = w->fault + ", " + w->at;
    std::erase_if(reading.recordings, [](const TrialRecording& one) { return !one.weightDban; });
    return {};
}

}  // namespace

std::optional<double> weightAgainst(const std::vector<double>& usual, double value) {
    if (usual.size() < kFewestUsual || !(value > 0)) return std::nullopt;
    Baseline baseline;
    for (std::size_t i = 0; i < usual.size(); ++i) {
        baseline.days.push_back({int(i), usual[i], 1});
        baseline.mean += onScale(usual[i], baseline.scale) / double(usual.size());
    }
    for (const double one : usual)
        baseline.spread += std::pow(onScale(one, baseline.scale) - baseline.mean, 2);
    baseline.spread = std::sqrt(baseline.spread / double(usual.size() - 1));
    baseline.median = medianOf(usual);
    ChangeOptions options;
    options.fewestWeekDays = 1;
    const DayValue now{0, value, 1};
    const auto change = weighChange(baseline, std::span(&now, 1), options);
    return change ? std::optional(change->weightDban) : std::nullopt;
}

Result<std::vector<TrialRecording>> trialRecordings(FleetFile& fleet, const Trial& trial) {
    const auto machine = fleet.machines().byTag(trial.machine);
    if (!machine) return fail(machine.error());
    Reading reading{fleet, trial, machine->id, trial.beforeFrom.value_or(Instant{}), {}, {}};
    reading.until = trial.afterUntil.value_or(reading.from + kForEver);
    auto running = runningOnes(reading);
    if (!running) return fail(running.error());
    if (auto good = keepNearest(reading, *running); !good) return fail(good.error());
    for (const RecordingEntry& one : *running)
        if (const auto after = sideOf(trial, one.time))
            reading.recordings.push_back({one.id, one.time, *after, {}, {}, one.speedRpm, ""});
    if (auto good = addChannel(reading); !good) return fail(good.error());
    if (auto good = addWeights(reading); !good) return fail(good.error());
    return std::move(reading.recordings);
}

}  // namespace fettle
