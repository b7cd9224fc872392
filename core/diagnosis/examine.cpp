#include "core/diagnosis/examine.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <map>
#include <mutex>
#include <thread>

#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/hypotheses.h"
#include "core/diagnosis/shaft_faults.h"
#include "core/diagnosis/stage.h"
#include "core/diagnosis/urgency.h"
#include "core/diagnosis/wording.h"

namespace fettle {

namespace {

constexpr double kRivalDban = 10;  // weaker rivals are not told

// What one recording gives to the whole.
struct OneRecording {
    RecordingFacts facts;
    std::vector<Hypothesis> weighed;  // bearings, then shaft faults
    std::vector<BlindSpot> blind;
};

Rival rivalOf(const BearingHypothesis& h, const Weighed& w, const char* lines) {
    return {h.fault, h.at, w.beforeClaimsDban, lines};
}

// A rival of a finding: what claimed from it, and what it claimed from.
std::vector<Rival> rivalsOf(std::size_t self, const std::vector<BearingHypothesis>& asked,
                            const std::vector<Weighed>& all) {
    std::vector<Rival> rivals;
    for (const std::size_t by : all[self].claimedBy)
        rivals.push_back(rivalOf(asked[by], all[by], "claimed lines of this one"));
    for (std::size_t i = 0; i < all.size(); ++i) {
        const bool lost =
            std::find(all[i].claimedBy.begin(), all[i].claimedBy.end(), self) != all[i].claimedBy.end();
        if (lost && all[i].beforeClaimsDban >= kRivalDban)
            rivals.push_back(rivalOf(asked[i], all[i], "explained by the lines of this one"));
    }
    return rivals;
}

std::vector<Hypothesis> weighBearings(const PreparedRecording& prepared, const AskedBearings& asked,
                                      const WeighingSettings& settings) {
    std::vector<ChannelEvidence> evidence = prepared.evidence;
    const std::vector<Weighed> weighed = explainAway(asked.hypotheses, evidence, prepared.rates, settings);
    std::vector<Hypothesis> all;
    for (std::size_t i = 0; i < weighed.size(); ++i) {
        Hypothesis h;
        h.fault = asked.hypotheses[i].fault;
        h.at = asked.hypotheses[i].at;
        h.provedOn = asked.hypotheses[i].variants[0].provedOn;
        h.weightDban = weighed[i].now.weightDban;
        h.beforeClaimsDban = weighed[i].beforeClaimsDban;
        h.recordingCount = 1;
        h.best = weighed[i].now;
        h.severity = bearingStage(h.best, prepared.views[h.best.channel]);
        h.rivals = rivalsOf(i, asked.hypotheses, weighed);
        all.push_back(std::move(h));
    }
    return all;
}

OneRecording examineOne(const Machine& machine, const RecordingPtr& recording,
                        const ExamineOptions& options) {
    const PreparedRecording prepared = prepare(machine, recording, {options.ignoreSpeed, options.settings});
    OneRecording one;
    one.facts = prepared.facts;
    const AskedBearings asked = askBearings(machine, prepared);
    if (prepared.unfit.empty()) one.weighed = weighBearings(prepared, asked, options.settings);
    for (const auto& not_asked : asked.notAsked)
        for (const BearingElement element : kBearingElements) {
            Hypothesis h;
            h.fault = faultKey(element);
            h.at = not_asked.at;
            h.why = not_asked.why;
            one.weighed.push_back(std::move(h));
        }
    for (Hypothesis& h : shaftFaults(prepared))
        one.weighed.push_back(std::move(h));
    one.blind = blindSpots(machine, prepared, asked, options.settings);
    return one;
}

// The same hypothesis on several recordings: the mean of the e-values is an e-value whatever their
// dependence; the rows shown are those of the strongest recording.
Hypothesis meanOver(std::vector<std::pair<std::size_t, const Hypothesis*>> parts) {
    const auto stronger = [](const auto& a, const auto& b) {
        const auto rank = [](const Hypothesis& h) {
            return std::pair(h.weightDban.has_value(), h.severity.value);
        };
        return rank(*a.second) == rank(*b.second) || a.second->weightDban != b.second->weightDban
                   ? a.second->weightDban < b.second->weightDban
                   : rank(*a.second) < rank(*b.second);
    };
    const auto best = std::max_element(parts.begin(), parts.end(), stronger);
    Hypothesis h = *best->second;
    h.recording = best->first;
    double e = 0, before = 0;
    std::size_t n = 0;
    for (const auto& [index, part] : parts) {
        if (!part->weightDban) continue;
        ++n;
        e += std::pow(10.0, *part->weightDban / 10);
        before += std::pow(10.0, *part->beforeClaimsDban / 10);
    }
    h.recordingCount = n;
    if (n > 1) {
        const double mean = 10 * std::log10(e / double(n));
        h.meanDban = mean - *h.weightDban;
        h.weightDban = mean;
        h.beforeClaimsDban = 10 * std::log10(before / double(n));
    }
    return h;
}

// In the order in which the hypotheses first appear.
std::vector<Hypothesis> combined(const std::vector<OneRecording>& all) {
    std::vector<std::pair<std::string, std::string>> order;
    std::map<std::pair<std::string, std::string>, std::vector<std::pair<std::size_t, const Hypothesis*>>>
        parts;
    for (std::size_t r = 0; r < all.size(); ++r)
        for (const Hypothesis& h : all[r].weighed) {
            auto& list = parts[{h.fault, h.at}];
            if (list.empty()) order.push_back({h.fault, h.at});
            list.push_back({r, &h});
        }
    std::vector<Hypothesis> result;
    for (const auto& key : order)
        result.push_back(meanOver(parts[key]));
    return result;
}

bool isFinding(const Hypothesis& h, const WeighingSettings& settings) {
    return h.weightDban ? *h.weightDban >= settings.findingDban : !h.sentence.empty();
}

bool greyOnly(const Hypothesis& h, const RecordingFacts& facts) {
    for (const ChannelLevels& l : facts.levels)
        for (const ZoneNote& z : l.zones)
            if (z.basis == h.severity.basis && z.greyOnly) return true;
    return false;
}

void wordFindings(Examination& result, const Machine& machine, const UrgencyTable& urgency,
                  const WeighingSettings& settings) {
    for (Hypothesis& h : result.considered) {
        if (!isFinding(h, settings)) {
            h.severity = {};
            continue;
        }
        h.urgency =
            urgency.urgencyOf(h.severity, machine.criticality, greyOnly(h, result.recordings[h.recording]));
        if (h.weightDban) {
            h.sentence = bearingSentence(h);
            h.against = bearingAgainst(h.best);
        }
        result.findings.push_back(h);
    }
    std::stable_sort(result.findings.begin(), result.findings.end(),
                     [](const Hypothesis& a, const Hypothesis& b) { return a.weightDban > b.weightDban; });
}

// Blind spots said once; several recordings of one machine share most of them.
void addBlind(std::vector<BlindSpot>& all, const std::vector<BlindSpot>& more) {
    for (const BlindSpot& b : more) {
        const bool known = std::any_of(all.begin(), all.end(), [&](const BlindSpot& a) {
            return a.fault == b.fault && a.at == b.at && (!b.fault.empty() || a.why == b.why);
        });
        if (!known) all.push_back(b);
    }
}

// The speed of the recordings together: the strongest statement, that of the smallest uncertainty.
SpeedResult jointSpeed(const std::vector<RecordingFacts>& recordings) {
    SpeedResult best = recordings.front().speed;
    for (const RecordingFacts& r : recordings)
        if (r.speed.rpm && (!best.rpm || r.speed.plusMinusRpm < best.plusMinusRpm)) best = r.speed;
    return best;
}

std::vector<OneRecording> examineAll(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                                     const ExamineOptions& options) {
    std::vector<OneRecording> all(recordings.size());
    std::atomic<std::size_t> next{0}, done{0};
    std::mutex telling;
    const auto work = [&] {
        for (std::size_t i = next++; i < recordings.size() && !options.cancel.cancelled(); i = next++) {
            all[i] = examineOne(machine, recordings[i], options);
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

}  // namespace

Result<Examination> examine(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                            const ExamineOptions& options) {
    if (recordings.empty()) return fail(ErrorKind::Invalid, "", "", "no recording to examine");
    const auto urgency = UrgencyTable::load();
    if (!urgency) return fail(urgency.error());
    std::vector<OneRecording> all = examineAll(machine, recordings, options);
    if (options.cancel.cancelled()) return fail(ErrorKind::Cancelled, "", "", "stopped on request");
    Examination result;
    result.engine = options.settings.engine();
    result.machine = machine.tag;
    result.service = machine.service;
    for (OneRecording& one : all) {
        result.recordings.push_back(std::move(one.facts));
        addBlind(result.blind, one.blind);
    }
    result.speed = jointSpeed(result.recordings);
    result.considered = combined(all);
    wordFindings(result, machine, *urgency, options.settings);
    return result;
}

}  // namespace fettle
