#include "ui/sheet/trial_figures.h"

#include <algorithm>

#include "ui/theme/tr.h"

namespace fettle {

namespace {

using namespace std::chrono_literals;

template <class Value>
std::shared_ptr<TrendData> curve(const QString& quantity, const QString& unit, const TrialResult& result,
                                 Value value) {
    auto data = std::make_shared<TrendData>();
    data->quantity = quantity;
    data->unit = unit;
    for (const TrialRecording& one : result.recordings)
        if (value(one)) data->samples.push_back({toMs(one.time), *value(one), one.recording, true});
    return data;
}

}  // namespace

std::vector<TrendPlot::DataPtr> trialCurves(const Trial& trial, const TrialResult& result) {
    auto weight =
        curve(tr("weight"), tr("decibans"), result, [](const TrialRecording& one) { return one.weightDban; });
    weight->limits.push_back({tr("promised"), trial.promise.leastDban, true});
    std::vector<TrendPlot::DataPtr> curves{weight};
    auto once = curve(tr("1x"), QStringLiteral("mm/s"), result,
                      [](const TrialRecording& one) { return one.onceMmS; });
    if (once->samples.empty()) return curves;
    curves.push_back(once);
    return curves;
}

std::vector<TrendEvent> trialMoments(const Trial& trial, const TrialResult& result) {
    std::vector<TrendEvent> moments;
    if (trial.changeUntil)
        moments.push_back(
            {toMs(*trial.changeUntil), tr("change"), QString::fromStdString(trial.change.words)});
    if (result.toldAt) moments.push_back({toMs(*result.toldAt), tr("told: 3 of 5"), {}});
    return moments;
}

TimeSpan trialTimes(const Trial& trial, const TrialResult& result) {
    Instant from = trial.beforeFrom.value_or(Instant{}), until = from + 1h;
    if (!result.recordings.empty()) {
        from = result.recordings.front().time;
        until = result.recordings.back().time;
    }
    if (trial.changeUntil) {
        from = std::min(from, *trial.changeUntil);
        until = std::max(until, *trial.changeUntil);
    }
    const auto margin = std::max<std::chrono::milliseconds>((until - from) / 20, 30min);
    return {from - margin, until + margin};
}

}  // namespace fettle
