#include "core/diagnosis/examine.h"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <thread>

#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/combine.h"
#include "core/diagnosis/hypotheses.h"
#include "core/diagnosis/measures.h"
#include "core/diagnosis/shaft_faults.h"
#include "core/diagnosis/stage.h"
#include "core/diagnosis/unlisted_combs.h"
#include "core/diagnosis/which_end.h"
#include "core/dsp/spectrum.h"
#include "core/dsp/statistics.h"

namespace fettle {

namespace {

constexpr double kRivalDban = 10;  // weaker rivals are not told

Rival rivalOf(const BearingHypothesis& h, const Weighed& w, const char* lines) {
    return {h.fault, h.at, w.beforeClaimsDban, lines};
}

// A rival of a finding: what claimed from it, and what it claimed from.
std::vector<Rival> rivalsOf(std::size_t self, const std::vector<BearingHypothesis>& asked,
                            const std::vector<Weighed>& all) {
    std::vector<Rival> rivals;
    for (const std::size_t by : all[self].claimedBy)
        rivals.push_back(rivalOf(asked[by], all[by], kClaimedByRival));
    for (std::size_t i = 0; i < all.size(); ++i) {
        const bool lost =
            std::find(all[i].claimedBy.begin(), all[i].claimedBy.end(), self) != all[i].claimedBy.end();
        if (lost && all[i].beforeClaimsDban >= kRivalDban)
            rivals.push_back(rivalOf(asked[i], all[i], kClaimedFromRival));
    }
    return rivals;
}

std::vector<Hypothesis> bearingHypotheses(const Machine& machine, const PreparedRecording& prepared,
                                          const AskedBearings& asked, const WeighingSettings& settings) {
    std::vector<ChannelEvidence> evidence = prepared.evidence;
    BearingsWeighed bearings = weighBearings(machine, prepared, asked, evidence, settings);
    const std::vector<Weighed>& weighed = bearings.described;
    std::vector<Hypothesis> all;
    for (std::size_t i = 0; i < weighed.size(); ++i) {
        Hypothesis h;
        h.fault = asked.hypotheses[i].fault;
        h.at = asked.hypotheses[i].at;
        h.provedOn = asked.hypotheses[i].variants[0].provedOn;
        h.weightDban = weighed[i].now.weightDban;
        h.beforeClaimsDban = weighed[i].beforeClaimsDban;
        h.recordingCount = 1;
        h.path = asked.hypotheses[i].path;
        h.best = weighed[i].now;
        const ChannelViews& views = prepared.views[h.best.channel];
        h.best.point = prepared.facts.channels[views.channel].point;
        h.best.levelG = swingG(h.best, views);
        h.severity = bearingStage(h.best, views);
        h.best.channel = views.channel;  // from here on of the recording
        h.rivals = rivalsOf(i, asked.hypotheses, weighed);
        h.rivals.insert(h.rivals.end(), bearings.combs[i].begin(), bearings.combs[i].end());
        all.push_back(std::move(h));
    }
    for (Hypothesis& h : bearings.unknown) {
        h.best.channel = prepared.views[h.best.channel].channel;
        all.push_back(std::move(h));
    }
    return all;
}

// Everything else: followed by its measures, weighed by their change.
void addFamilies(const Machine& machine, const PreparedRecording& prepared, Examination& one) {
    FamilyReport report = measuresOf(machine, prepared, one.considered);
    std::vector<FaultMeasure>& measures = one.recordings[0].measures;
    measures = std::move(report.measures);
    for (FaultMeasure& measure : shaftMeasures(machine, prepared))
        measures.push_back(std::move(measure));
    for (Hypothesis& h : report.hypotheses)
        one.considered.push_back(std::move(h));
    for (BlindSpot& spot : report.blind)
        one.blind.push_back(std::move(spot));
}

// What was asked of one recording, not yet graded or worded.
Examination weighOne(const Machine& machine, const PreparedRecording& prepared,
                     const WeighingSettings& settings) {
    Examination one;
    one.engine = settings.engine();
    one.recordings.push_back(prepared.facts);
    const AskedBearings asked = askBearings(machine, prepared, settings);
    if (prepared.unfit.empty()) one.considered = bearingHypotheses(machine, prepared, asked, settings);
    for (const auto& not_asked : asked.notAsked)
        for (const BearingElement element : kBearingElements) {
            Hypothesis h;
            h.fault = faultKey(element);
            h.at = not_asked.at;
            h.why = not_asked.why;
            one.considered.push_back(std::move(h));
        }
    for (Hypothesis& h : shaftFaults(machine, prepared))
        one.considered.push_back(std::move(h));
    one.blind = blindSpots(machine, prepared, asked, settings);
    for (BlindSpot& spot : shaftBlindSpots(machine))
        one.blind.push_back(std::move(spot));
    addFamilies(machine, prepared, one);
    return one;
}

// Each recording by itself, in the order given.
std::vector<Examination> weighAll(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                                  const ExamineOptions& options) {
    std::vector<Examination> all(recordings.size());
    std::atomic<std::size_t> next{0}, done{0};
    std::mutex telling;
    const auto work = [&] {
        for (std::size_t i = next++; i < recordings.size() && !options.cancel.cancelled(); i = next++) {
            const PreparedRecording prepared =
                prepare(machine, recordings[i], {options.ignoreSpeed, options.settings});
            all[i] = weighOne(machine, prepared, options.settings);
            const std::lock_guard hold(telling);
            ++done;
            if (options.progress) options.progress(done, recordings.size(), recordings[i]->file);
        }
    };
    std::vector<std::jthread> helpers;
    for (int t = 1; t < std::min<int>(options.threads, int(recordings.size())); ++t)
        helpers.emplace_back(work);
    work();
    helpers.clear();  // joins
    return all;
}

ChannelExtras extrasOf(const PreparedRecording& prepared, std::size_t channel) {
    const std::vector<double>& samples = prepared.recording->channels[channel].samples;
    ChannelExtras extras;
    extras.offset = mean(samples);
    const ChannelViews* views = prepared.viewsOf(channel);
    if (!views) return extras;
    double highest = 0;
    for (const double sample : samples)
        highest = std::max(highest, std::abs(sample - extras.offset));
    extras.peakG = highest * prepared.roles[channel].toG;
    const double top = views->spectrum.topHz();
    if (top > kHighBandHz) extras.highBandG = bandRms(views->spectrum, kHighBandHz, top);
    return extras;
}

}  // namespace

Result<Examination> examine(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                            const ExamineOptions& options) {
    const std::vector<Examination> all = weighAll(machine, recordings, options);
    if (options.cancel.cancelled()) return fail(ErrorKind::Cancelled, "", "", "stopped on request");
    return combine(machine, all, options.settings);
}

Result<ExaminedRecording> examineRecording(const Machine& machine, const RecordingPtr& recording,
                                           const ExamineOptions& options) {
    const PreparedRecording prepared = prepare(machine, recording, {options.ignoreSpeed, options.settings});
    auto examination = combine(machine, {weighOne(machine, prepared, options.settings)}, options.settings);
    if (!examination) return fail(examination.error());
    ExaminedRecording examined{std::move(*examination), {}, {}};
    for (std::size_t i = 0; i < recording->channels.size(); ++i) {
        examined.extras.push_back(extrasOf(prepared, i));
        if (const ChannelViews* views = prepared.viewsOf(i))
            for (WaterfallLines& lines : waterfallLines(*views, prepared.facts.levels[i].velocityLeastHz))
                examined.waterfalls.push_back(std::move(lines));
    }
    return examined;
}

}  // namespace fettle
