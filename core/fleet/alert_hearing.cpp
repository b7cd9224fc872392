// What the alert rules read of one machine.
#include <algorithm>
#include <map>
#include <set>

#include "core/diagnosis/sensor_checks.h"
#include "core/diagnosis/settings.h"
#include "core/fleet/alerts.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/severity_limits.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

using std::chrono::days;

constexpr std::size_t kBeside = 3;  // recordings that weigh nothing (long and narrow ones) among the others
constexpr std::size_t kWeekAgoOf = 5, kLeastWeekAgo = 3;  // recordings of a level a week ago
constexpr days kWeekAgo{7}, kNotBefore{35};

struct Wanted {
    double leastDban = WeighingSettings().findingDban;  // from here on the examination is read
    std::string leastZone;                              // empty: levels do not matter
    std::optional<double> leastGrown;  // times the level a week ago; empty: growth does not matter
    bool second = false;
    std::size_t most = 1;  // recordings of a point
};

Wanted wantedBy(const std::vector<AlertRule>& rules) {
    Wanted wanted;
    for (const AlertRule& rule : rules) {
        if (!rule.enabled) continue;
        wanted.most = std::max(wanted.most, std::size_t(rule.of) + kBeside);
        if (rule.kind == "growth")
            wanted.leastGrown = std::min(wanted.leastGrown.value_or(1e9), 1 + leastOf(rule) / 100);
        wanted.second |= rule.askSecond;
        if (rule.kind == "zone" && (wanted.leastZone.empty() || rule.grade < wanted.leastZone))
            wanted.leastZone = rule.grade;
    }
    return wanted;
}

bool isFittedOn(const Point& point, const std::string& day) {
    return point.nodes.empty() ||
           std::any_of(point.nodes.begin(), point.nodes.end(), [&](const FittedNode& node) {
               return node.from <= day && (node.to.empty() || node.to >= day);
           });
}

std::optional<double> limitBcOf(const Machine& machine, const Point& point) {
    const auto limits = limitsFor(machine, point);
    if (!limits || limits->sets.empty() || limits->sets.front().greyOnly) return std::nullopt;
    return limits->sets.front().velocity[1];
}

HeardPoint pointFrom(const Machine& machine, const Point& point, const std::string& day, bool growth) {
    HeardPoint heard;
    heard.point = point.id;
    heard.at = point.at;
    heard.fitted = isFittedOn(point, day);
    heard.intervalMin = point.intervalMin;
    if (growth) heard.limitBcMmS = limitBcOf(machine, point);
    return heard;
}

bool passedChecks(const Examination& one) {
    for (const RecordingFacts& recording : one.recordings)
        for (const QualityNote& note : recording.quality)
            if (speaksOfSensor(note.code)) return false;
    return true;
}

// A zone that is a note only is none here.
void addZone(const Examination& one, HeardRecording& recording) {
    for (const RecordingFacts& facts : one.recordings)
        for (const ChannelLevels& levels : facts.levels) {
            if (levels.zones.empty() || levels.zones[0].zone != recording.zone) continue;
            recording.indicative = levels.zones[0].indicative;
            if (levels.zones[0].greyOnly) recording.zone.clear();
            return;
        }
}

void addStages(const Examination& one, HeardRecording& recording) {
    static const std::map<std::string, int> stages = {{"early", 1}, {"developed", 2}, {"late", 3}};
    for (const Hypothesis& finding : one.findings)
        if (finding.severity.kind == "stage")
            if (const auto stage = stages.find(finding.severity.value); stage != stages.end())
                recording.stages.push_back({finding.fault, finding.at, stage->second});
}

class AlertHearing {
  public:
    AlertHearing(FleetFile& fleet, const MachineEntry& machine, const std::vector<AlertRule>& rules,
                 Instant now)
        : fleet_(fleet), machine_(machine), wanted_(wantedBy(rules)), now_(now) {}

    Result<HeardMachine> points() {
        HeardMachine heard;
        heard.tag = machine_.tag;
        heard.area = machine_.area;
        heard.criticality = machine_.criticality;
        if (auto good = addPoints(heard); !good) return fail(good.error());
        return heard;
    }
    Result<HeardMachine> hear() {
        auto heard = points();
        if (!heard) return heard;
        if (auto good = addRecordings(*heard); !good) return fail(good.error());
        return heard;
    }

  private:
    Status addPoints(HeardMachine& heard);
    Status addRecordings(HeardMachine& heard);
    Status addWeekAgo(HeardPoint& point, const std::vector<AlertStore::Heard>& newest);
    Status addRecordingsOf(HeardPoint& point, const std::set<std::int64_t>& answers);
    Result<std::optional<HeardRecording>> recordingFrom(const AlertStore::Heard& one, const HeardPoint& point,
                                                        const std::set<std::int64_t>& answers);
    // Whether some rule might alert because of this one.
    bool counts(const AlertStore::Heard& one, const HeardPoint& point,
                const std::vector<AlertStore::Weighed>& weights) const;
    Result<bool> failedChecks(std::int64_t recording);
    Result<std::set<std::int64_t>> answers();

    FleetFile& fleet_;
    const MachineEntry& machine_;
    Wanted wanted_;
    Instant now_;
};

Status AlertHearing::addPoints(HeardMachine& heard) {
    const auto site = fleet_.site();
    if (!site) return fail(site.error());
    const auto today = dateIn(site->timeZone, now_);
    if (!today) return fail(today.error());
    const auto described = fleet_.machines().describedOn(machine_.tag, *today);
    if (!described) return fail(described.error());
    const auto newest = fleet_.alerts().lastHeard(machine_.id, now_);
    if (!newest) return fail(newest.error());
    for (const Point& point : (*described)->points) {
        heard.points.push_back(pointFrom(**described, point, *today, wanted_.leastGrown.has_value()));
        for (const AlertStore::LastHeard& last : *newest)
            if (last.point == point.id) heard.points.back().newest = last.time;
    }
    return {};
}

Result<std::set<std::int64_t>> AlertHearing::answers() {
    std::set<std::int64_t> recordings;
    if (!wanted_.second) return recordings;
    const auto requests = fleet_.requests().list(machine_.tag, true);
    if (!requests) return fail(requests.error());
    for (const Request& request : *requests)
        if (request.recording) recordings.insert(*request.recording);
    return recordings;
}

bool AlertHearing::counts(const AlertStore::Heard& one, const HeardPoint& point,
                          const std::vector<AlertStore::Weighed>& weights) const {
    const bool strong = std::any_of(weights.begin(), weights.end(), [&](const AlertStore::Weighed& w) {
        return w.dban >= wanted_.leastDban;
    });
    const bool loud = !wanted_.leastZone.empty() && one.zone >= wanted_.leastZone;
    const bool grown = wanted_.leastGrown && point.weekAgoMmS && one.levelMmS &&
                       *one.levelMmS >= *wanted_.leastGrown * *point.weekAgoMmS;
    return strong || loud || grown;
}

// Nothing where a sensor check failed, or where none can be asked: thinned, or a ready-made level.
Result<std::optional<HeardRecording>> AlertHearing::recordingFrom(const AlertStore::Heard& one,
                                                                  const HeardPoint& point,
                                                                  const std::set<std::int64_t>& answers) {
    auto weights = fleet_.alerts().weighed(machine_.id, one.time, one.id);
    if (!weights) return fail(weights.error());
    const bool examine = counts(one, point, *weights);
    HeardRecording recording;
    recording.id = one.id;
    recording.time = one.time;
    recording.levelMmS = one.levelMmS;
    recording.nextLimitMmS = one.nextLimitMmS;
    recording.zone = one.zone;
    recording.askedFor = answers.count(one.id) > 0;
    recording.weights = std::move(*weights);
    if (!examine) return std::optional(std::move(recording));
    const auto examined = examinationOf(fleet_, one.id);
    if (!examined && examined.error().kind == ErrorKind::NotFound) return std::nullopt;
    if (!examined) return fail(examined.error());
    if (!passedChecks(*examined)) return std::nullopt;
    addZone(*examined, recording);
    addStages(*examined, recording);
    return std::optional(std::move(recording));
}

Status AlertHearing::addRecordings(HeardMachine& heard) {
    const auto answered = answers();
    if (!answered) return fail(answered.error());
    for (HeardPoint& point : heard.points)
        if (auto good = addRecordingsOf(point, *answered); !good) return good;
    return {};
}

// Some may have failed a sensor check: twice as many are looked at.
Status AlertHearing::addRecordingsOf(HeardPoint& point, const std::set<std::int64_t>& answers) {
    const auto newest =
        fleet_.alerts().heard(machine_.id, point.point, now_ - kAlertWindow, now_, 2 * wanted_.most);
    if (!newest) return fail(newest.error());
    if (wanted_.leastGrown)
        if (auto good = addWeekAgo(point, *newest); !good) return good;
    for (const AlertStore::Heard& one : *newest) {
        if (point.recordings.size() >= wanted_.most) break;
        auto recording = recordingFrom(one, point, answers);
        if (!recording) return fail(recording.error());
        if (*recording) point.recordings.push_back(std::move(**recording));
    }
    return {};
}

// What is no longer kept failed nothing.
Result<bool> AlertHearing::failedChecks(std::int64_t recording) {
    const auto examined = examinationOf(fleet_, recording);
    if (!examined && examined.error().kind == ErrorKind::NotFound) return false;
    if (!examined) return fail(examined.error());
    return !passedChecks(*examined);
}

// The level to compare with may be a bad sensor's as well; it is asked where something may have grown.
Status AlertHearing::addWeekAgo(HeardPoint& point, const std::vector<AlertStore::Heard>& newest) {
    auto old =
        fleet_.alerts().heard(machine_.id, point.point, now_ - kNotBefore, now_ - kWeekAgo, kWeekAgoOf);
    if (!old) return fail(old.error());
    std::erase_if(*old, [](const AlertStore::Heard& one) { return !one.levelMmS; });
    const auto lowest = std::min_element(
        old->begin(), old->end(),
        [](const AlertStore::Heard& a, const AlertStore::Heard& b) { return *a.levelMmS < *b.levelMmS; });
    const bool grown = std::any_of(newest.begin(), newest.end(), [&](const AlertStore::Heard& one) {
        return lowest != old->end() && one.levelMmS &&
               *one.levelMmS >= *wanted_.leastGrown * *lowest->levelMmS;
    });
    std::vector<double> levels;
    for (const AlertStore::Heard& one : *old) {
        const auto failed = grown ? failedChecks(one.id) : Result<bool>(false);
        if (!failed) return fail(failed.error());
        if (!*failed) levels.push_back(*one.levelMmS);
    }
    if (levels.size() >= kLeastWeekAgo) point.weekAgoMmS = medianOf(std::move(levels));
    return {};
}

}  // namespace

Result<HeardMachine> heardMachine(FleetFile& fleet, const MachineEntry& machine,
                                  const std::vector<AlertRule>& rules, Instant now) {
    return AlertHearing(fleet, machine, rules, now).hear();
}

Result<HeardMachine> heardPoints(FleetFile& fleet, const MachineEntry& machine, Instant now) {
    return AlertHearing(fleet, machine, {}, now).points();
}

}  // namespace fettle
