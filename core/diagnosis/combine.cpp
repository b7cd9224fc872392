#include "core/diagnosis/combine.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/diagnosis/urgency.h"
#include "core/diagnosis/wording.h"

namespace fettle {

namespace {

constexpr double kPersistsDban = 10;

// One hypothesis as one part weighed it; `first` is where the part's recordings start in the joint list.
struct Share {
    std::size_t first = 0, recordings = 1;
    const Hypothesis* hypothesis = nullptr;
};

bool isNamed(const Hypothesis& h) {
    return h.weightDban || !h.sentence.empty();
}

bool weaker(const Share& a, const Share& b) {
    const auto rank = [](const Hypothesis& h) {
        return std::tuple(h.weightDban.has_value(), isNamed(h), h.weightDban.value_or(0), h.severity.value);
    };
    return rank(*a.hypothesis) < rank(*b.hypothesis);
}

void takeMean(const std::vector<Share>& shares, Hypothesis& h) {
    double e = 0, before = 0, persists = 0;
    std::size_t n = 0;
    for (const Share& share : shares) {
        const Hypothesis& part = *share.hypothesis;
        if (!part.weightDban) continue;
        const auto count = double(std::max<std::size_t>(part.recordingCount, 1));
        n += std::size_t(count);
        e += count * std::pow(10.0, *part.weightDban / 10);
        before += count * std::pow(10.0, part.beforeClaimsDban.value_or(*part.weightDban) / 10);
        persists += count * part.persistence.value_or(*part.weightDban >= kPersistsDban);
    }
    if (n == 0) return;
    h.recordingCount = n;
    h.persistence = persists / double(n);
    if (n == 1) return;
    const double mean = 10 * std::log10(e / double(n));
    h.meanDban += mean - *h.weightDban;
    h.weightDban = mean;
    h.beforeClaimsDban = 10 * std::log10(before / double(n));
}

// What only a minority of the recordings names is not named for all of them: one knock is no looseness.
void takeMajority(const std::vector<Share>& shares, Hypothesis& h) {
    double named = 0, all = 0;
    for (const Share& share : shares) {
        const auto count = double(share.recordings);
        all += count;
        if (isNamed(*share.hypothesis)) named += count * share.hypothesis->persistence.value_or(1);
    }
    h.persistence = named / all;
    if (*h.persistence > 0.5 || !isNamed(h)) return;
    h.why = fmt::format("named in {:.0f} of {:.0f} recordings only", named, all);
    h.sentence.clear();
    h.severity = {};
}

Hypothesis joined(const std::vector<Share>& shares) {
    const Share& best = *std::max_element(shares.begin(), shares.end(), weaker);
    Hypothesis h = *best.hypothesis;
    h.recording = best.first + best.hypothesis->recording;
    if (h.weightDban)
        takeMean(shares, h);
    else
        takeMajority(shares, h);
    return h;
}

// In the order in which the hypotheses first appear.
std::vector<Hypothesis> joinedHypotheses(const std::vector<Examination>& parts) {
    std::vector<std::pair<std::string, std::string>> order;
    std::map<std::pair<std::string, std::string>, std::vector<Share>> shares;
    std::size_t first = 0;
    for (const Examination& part : parts) {
        for (const Hypothesis& h : part.considered) {
            std::vector<Share>& list = shares[{h.fault, h.at}];
            if (list.empty()) order.push_back({h.fault, h.at});
            list.push_back({first, part.recordings.size(), &h});
        }
        first += part.recordings.size();
    }
    std::vector<Hypothesis> all;
    for (const auto& key : order)
        all.push_back(joined(shares[key]));
    return all;
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
            h.urgency.clear();
            if (h.weightDban) h.sentence.clear();
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

}  // namespace

Result<Examination> combine(const Machine& machine, const std::vector<Examination>& parts,
                            const WeighingSettings& settings) {
    const auto urgency = UrgencyTable::load();
    if (!urgency) return fail(urgency.error());
    Examination all;
    all.machine = machine.tag;
    all.service = machine.service;
    for (const Examination& part : parts) {
        all.engine = part.engine;  // of the newest part
        all.recordings.insert(all.recordings.end(), part.recordings.begin(), part.recordings.end());
        addBlind(all.blind, part.blind);
        for (const std::string& warning : part.warnings)
            if (std::find(all.warnings.begin(), all.warnings.end(), warning) == all.warnings.end())
                all.warnings.push_back(warning);
    }
    if (all.recordings.empty()) return fail(ErrorKind::Invalid, "", "", "no recording to examine");
    all.speed = jointSpeed(all.recordings);
    all.considered = joinedHypotheses(parts);
    wordFindings(all, machine, *urgency, settings);
    return all;
}

}  // namespace fettle
