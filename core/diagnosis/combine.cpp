#include "core/diagnosis/combine.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/mixed_damage.h"
#include "core/diagnosis/urgency.h"
#include "core/diagnosis/which_end.h"
#include "core/diagnosis/wording.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr double kPersistsDban = 10;

using Key = std::pair<std::string, std::string>;  // fault, place

// One hypothesis as one part weighed it; `first` is where the part's recordings start in the joint list.
struct Share {
    std::size_t first = 0, recordings = 1;
    const Hypothesis* hypothesis = nullptr;
    bool outranked = false;  // it claimed the lines of what the week makes the stronger
    double part = 1;         // a half where the recording says it of two ends that the week does not part

    double weightDban() const {
        const double weight = hypothesis->weightDban.value_or(0);
        return outranked ? std::min(weight, 0.0) : weight;
    }
    double count() const { return part * double(std::max<std::size_t>(hypothesis->recordingCount, 1)); }
};
using Shares = std::map<Key, std::vector<Share>>;

bool isNamed(const Hypothesis& h) {
    return h.weightDban || !h.sentence.empty();
}

bool weaker(const Share& a, const Share& b) {
    const auto rank = [](const Share& s) {
        const Hypothesis& h = *s.hypothesis;
        return std::tuple(h.weightDban.has_value(), isNamed(h), s.weightDban(), h.severity.value);
    };
    return rank(a) < rank(b);
}

double eOf(double dban) {
    return std::pow(10.0, dban / 10);
}

// Mean e-value over the recordings before anything was claimed.
double meanBefore(const std::vector<Share>& shares) {
    double e = 0, n = 0;
    for (const Share& share : shares) {
        const Hypothesis& h = *share.hypothesis;
        if (!h.weightDban) continue;
        e += share.count() * eOf(h.beforeClaimsDban.value_or(*h.weightDban));
        n += share.count();
    }
    return n > 0 ? e / n : 0;
}

// In a recording of its own each fault claims in the order of that recording; the week's order is surer.
void markOutranked(const EndsOfWeek& ends, Shares& all) {
    std::map<Key, double> before;
    for (const auto& [key, shares] : all)
        before[key] = meanBefore(shares);
    for (auto& [key, shares] : all)
        for (Share& share : shares)
            for (const Rival& rival : share.hypothesis->rivals) {
                const auto stronger = before.find({rival.fault, ends.placeOf(rival.fault, rival.at)});
                share.outranked |= share.recordings == 1 && rival.lines == kClaimedFromRival &&
                                   stronger != before.end() && stronger->second > before[key];
            }
}

void takeMean(const std::vector<Share>& shares, Hypothesis& h) {
    double e = 0, persists = 0, n = 0;
    int weighed = 0;
    for (const Share& share : shares) {
        const Hypothesis& part = *share.hypothesis;
        if (!part.weightDban) continue;
        ++weighed;
        n += share.count();
        e += share.count() * eOf(share.weightDban());
        const double persisted = part.persistence.value_or(*part.weightDban >= kPersistsDban);
        persists += share.outranked ? 0 : share.count() * persisted;
    }
    if (n == 0) return;
    h.recordingCount = std::size_t(std::lround(n));
    h.persistence = persists / n;
    if (weighed == 1) return;
    const double mean = 10 * std::log10(e / n);
    h.meanDban += mean - *h.weightDban;
    h.weightDban = mean;
    h.beforeClaimsDban = 10 * std::log10(meanBefore(shares));
}

// What only a minority of the recordings names is not named for all of them: one knock is no looseness.
// Recordings that could not judge it (recordingCount 0) have no say.
void takeMajority(const std::vector<Share>& shares, Hypothesis& h) {
    double named = 0, all = 0;
    std::size_t judged = 0;
    for (const Share& share : shares) {
        const auto count = double(share.hypothesis->recordingCount);
        judged += share.hypothesis->recordingCount;
        all += count;
        if (isNamed(*share.hypothesis)) named += count * share.hypothesis->persistence.value_or(1);
    }
    h.recordingCount = judged;
    if (judged == 0) return;
    h.persistence = named / all;
    if (*h.persistence > 0.5 || !isNamed(h)) return;
    h.why = fmt::format("named in {:.0f} of {:.0f} recordings only", named, all);
    h.sentence.clear();
    h.causeNotes.clear();
    h.severity = {};
}

// A mean of shares that sum to 1 sums to 1 again.
void takeCauseShare(const std::vector<Share>& shares, Hypothesis& h) {
    double sum = 0, all = 0;
    for (const Share& share : shares) {
        if (!share.hypothesis->causeShare) continue;
        sum += double(share.recordings) * *share.hypothesis->causeShare;
        all += double(share.recordings);
    }
    if (all > 0) h.causeShare = sum / all;
}

Hypothesis joinedOf(const std::vector<Share>& shares) {
    const Share& best = *std::max_element(shares.begin(), shares.end(), weaker);
    Hypothesis h = *best.hypothesis;
    h.recording = best.first + best.hypothesis->recording;
    takeCauseShare(shares, h);
    if (h.weightDban)
        takeMean(shares, h);
    else
        takeMajority(shares, h);
    return h;
}

// Recordings of a point that is near speak for a bearing, others only where none is.
void keepNearest(std::vector<Share>& shares) {
    double nearest = 0;
    for (const Share& share : shares)
        if (share.hypothesis->weightDban) nearest = std::max(nearest, keptCut(share.hypothesis->path));
    std::erase_if(shares, [&](const Share& share) {
        return share.hypothesis->weightDban && keptCut(share.hypothesis->path) < nearest;
    });
}

// In the order in which the hypotheses first appear.
std::vector<Hypothesis> joinedHypotheses(const std::vector<Examination>& parts, const EndsOfWeek& ends) {
    std::vector<Key> order;
    Shares shares;
    std::size_t first = 0;
    for (const Examination& part : parts) {
        for (const Hypothesis& h : part.considered) {
            const Key key{h.fault, ends.placeOf(h.fault, h.at)};
            std::vector<Share>& list = shares[key];
            if (list.empty()) order.push_back(key);
            const double share = !list.empty() && list.back().first == first ? 0.5 : 1;
            if (share < 1) list.back().part = share;
            list.push_back({first, part.recordings.size(), &h, false, share});
        }
        first += part.recordings.size();
    }
    for (auto& [key, list] : shares)
        keepNearest(list);
    if (parts.size() > 1) markOutranked(ends, shares);
    std::vector<Hypothesis> all;
    for (const Key& key : order) {
        all.push_back(joinedOf(shares[key]));
        all.back().at = key.second;
    }
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

void wordBearing(const EndsOfWeek& ends, Hypothesis& h) {
    h.sentence = bearingSentence(h);
    if (const std::string words = ends.words(h.fault, h.at); !words.empty()) h.sentence += " " + words;
    h.against = bearingAgainst(h);
}

void wordFindings(Examination& result, const Machine& machine, const EndsOfWeek& ends,
                  const UrgencyTable& urgency, const WeighingSettings& settings) {
    for (Hypothesis& h : result.considered) {
        if (!isFinding(h, settings)) {
            h.severity = {};
            h.urgency.clear();
            if (h.weightDban) h.sentence.clear();
            continue;
        }
        h.urgency =
            urgency.urgencyOf(h.severity, machine.criticality, greyOnly(h, result.recordings[h.recording]));
        if (h.weightDban) wordBearing(ends, h);
    }
    wordMixedDamage(result.considered);
    for (const Hypothesis& h : result.considered)
        if (isFinding(h, settings)) result.findings.push_back(h);
    std::stable_sort(result.findings.begin(), result.findings.end(),
                     [](const Hypothesis& a, const Hypothesis& b) { return a.weightDban > b.weightDban; });
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
        for (const std::string& warning : part.warnings)
            if (std::find(all.warnings.begin(), all.warnings.end(), warning) == all.warnings.end())
                all.warnings.push_back(warning);
    }
    if (all.recordings.empty()) return fail(ErrorKind::Invalid, "", "", "no recording to examine");
    all.speed = jointSpeed(all.recordings);
    const EndsOfWeek ends(machine, parts);
    all.blind = jointBlindSpots(machine, parts);
    all.considered = joinedHypotheses(parts, ends);
    wordFindings(all, machine, ends, *urgency, settings);
    return all;
}

}  // namespace fettle
