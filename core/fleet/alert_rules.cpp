#include "core/fleet/alert_rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>

#include "core/base/text.h"
#include "core/diagnosis/blind_rows.h"
#include "core/diagnosis/wording.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

using Recordings = std::vector<HeardRecording>;
using FaultAt = std::pair<std::string, std::string>;

constexpr double kLongSilentHours = 60 * 24;  // longer is no news: the round lists it as unseen
constexpr double kDayMin = 24 * 60;           // interval of a point whose description says none
// Common practice: a rise matters from a quarter of the B/C boundary; without one, from twice the level.
constexpr double kShareOfBc = 0.25, kTwice = 2;

int stageOf(const std::string& word) {
    return word == "late" ? 3 : word == "developed" ? 2 : 1;
}

const char* stageWord(int stage) {
    return stage >= 3 ? "late" : stage == 2 ? "developed" : "early";
}

bool covers(const AlertRule& rule, const HeardMachine& machine) {
    return rule.enabled && (rule.machine.empty() || rule.machine == machine.tag) &&
           (rule.area.empty() || rule.area == machine.area) &&
           (rule.criticality.empty() || rule.criticality == machine.criticality);
}

std::string placeOf(const HeardPoint& point) {
    return point.at.empty() ? point.point : point.at;
}

// What the newest recordings of a point say for one fault and place: those that could say something.
struct Hits {
    std::size_t hits = 0, looked = 0;
    double strongest = 0, newest = 0;
    Instant since{};
    bool newestHit = false, askedFor = false;

    void add(const AlertRule& rule, const HeardRecording& recording, double value, bool hit) {
        if (looked >= std::size_t(rule.of)) return;
        if (looked++ == 0) newestHit = hit, newest = value;
        if (!hit) return;
        ++hits;
        strongest = std::max(strongest, value);
        since = recording.time;
        askedFor |= recording.askedFor;
    }
    bool met(const AlertRule& rule) const {
        return hits >= std::size_t(rule.hits) || (rule.askSecond && hits >= 2 && askedFor);
    }
    // One alone, just now: worth another look.
    bool wantsSecond(const AlertRule& rule) const { return rule.askSecond && newestHit && hits == 1; }
};

std::string hitsWords(const Hits& hits) {
    return fmt::format("{} of {} recordings", hits.hits, hits.looked);
}

// Gathers what the rules say; of several that meet on one fault and place the most urgent is told.
class RuleGathering {
  public:
    RuleGathering(const HeardMachine& machine, Instant now) : machine_(machine), now_(now) {}

    void ask(const AlertRule& rule, const HeardPoint& point) {
        if (rule.kind == "weight") weight(rule, point);
        if (rule.kind == "stage") stage(rule, point);
        if (rule.kind == "zone") zone(rule, point);
        if (rule.kind == "growth") growth(rule, point);
        if (rule.kind == "silence") silence(rule, point);
    }

    AlertsNow take() {
        for (auto& [key, one] : met_)
            out_.met.push_back(std::move(one));
        return std::move(out_);
    }

  private:
    void weight(const AlertRule& rule, const HeardPoint& point);
    void stage(const AlertRule& rule, const HeardPoint& point);
    void zone(const AlertRule& rule, const HeardPoint& point);
    void growth(const AlertRule& rule, const HeardPoint& point);
    void silence(const AlertRule& rule, const HeardPoint& point);

    void meet(const AlertRule& rule, const FaultAt& key, AlertNow one) {
        one.fault = key.first;
        one.at = key.second;
        one.rule = rule.name;
        one.kind = rule.kind;
        one.deliver = rule.deliver;
        const auto [there, fresh] = met_.try_emplace(key, one);
        if (fresh) return;
        const int was = deliverRank(there->second.deliver), is = deliverRank(rule.deliver);
        if (is < was || (is == was && one.kind == there->second.kind && one.value > there->second.value))
            there->second = std::move(one);
    }

    void judge(const AlertRule& rule, const HeardPoint& point, const FaultAt& key, const Hits& hits,
               const std::string& unit, const std::string& words) {
        if (hits.met(rule))
            return meet(rule, key, {"", "", "", "", "", hits.since, hits.strongest, unit, words});
        if (hits.hits > 0) out_.lingering.insert(key);
        if (hits.wantsSecond(rule))
            out_.asks.push_back({point.point, fmt::format("alert rule {}: {}", rule.name, words)});
    }

    const HeardMachine& machine_;
    Instant now_;
    std::map<FaultAt, AlertNow> met_;
    AlertsNow out_;
};

void RuleGathering::weight(const AlertRule& rule, const HeardPoint& point) {
    const double least = leastOf(rule);
    std::map<FaultAt, Hits> found;
    for (const HeardRecording& recording : point.recordings)
        for (const AlertStore::Weighed& w : recording.weights)
            if (w.fault.starts_with(rule.fault))
                found[{w.fault, w.at}].add(rule, recording, w.dban, w.dban >= least);
    for (const auto& [key, hits] : found)
        if (hits.hits > 0)
            judge(rule, point, key, hits, "dban",
                  fmt::format("{}, {}: {} at {:.0f} decibans or more, the strongest {:.0f}",
                              faultName(key.first), key.second, hitsWords(hits), least, hits.strongest));
}

void RuleGathering::stage(const AlertRule& rule, const HeardPoint& point) {
    const int least = stageOf(rule.grade);
    std::set<FaultAt> named;
    for (const HeardRecording& recording : point.recordings)
        for (const HeardRecording::Stage& s : recording.stages)
            if (s.fault.starts_with(rule.fault) && s.stage >= least) named.insert({s.fault, s.at});
    for (const FaultAt& key : named) {
        Hits hits;
        for (const HeardRecording& recording : point.recordings) {
            int stage = 0;
            for (const HeardRecording::Stage& s : recording.stages)
                if (FaultAt(s.fault, s.at) == key) stage = std::max(stage, s.stage);
            hits.add(rule, recording, stage, stage >= least);
        }
        judge(rule, point, key, hits, "stage",
              fmt::format("{}, {}: {} stage in {}", faultName(key.first), key.second,
                          stageWord(int(hits.strongest)), hitsWords(hits)));
    }
}

void RuleGathering::zone(const AlertRule& rule, const HeardPoint& point) {
    Hits hits;
    bool indicative = false;
    for (const HeardRecording& recording : point.recordings) {
        if (!recording.levelMmS || recording.zone.empty()) continue;
        const bool hit = recording.zone >= rule.grade;
        indicative |= hit && recording.indicative;
        hits.add(rule, recording, *recording.levelMmS, hit);
    }
    if (hits.hits > 0)
        judge(rule, point, {"", placeOf(point)}, hits, "mm/s",
              fmt::format("Vibration at {} ({}): zone {} in {}, up to {:.1f} mm/s r.m.s.{}", placeOf(point),
                          point.point, rule.grade, hitsWords(hits), hits.strongest,
                          indicative ? ", indicative: not on a bearing housing" : ""));
}

void RuleGathering::growth(const AlertRule& rule, const HeardPoint& point) {
    std::vector<double> levels;
    Instant since{};
    for (const HeardRecording& recording : point.recordings)
        if (recording.levelMmS && levels.size() < std::size_t(rule.of)) {
            levels.push_back(*recording.levelMmS);
            since = recording.time;
        }
    if (levels.size() < std::size_t(rule.hits) || !point.weekAgoMmS || *point.weekAgoMmS <= 0) return;
    const double was = *point.weekAgoMmS, is = medianOf(std::move(levels)), percent = 100 * (is / was - 1);
    const double least = leastOf(rule);
    const bool matters = point.limitBcMmS ? is - was >= kShareOfBc * *point.limitBcMmS : is >= kTwice * was;
    const FaultAt key("", placeOf(point));
    if (percent >= least && matters)
        return meet(
            rule, key,
            {"", "", "", "", "", since, percent, "%",
             fmt::format("Vibration at {} ({}) grew by {:.0f} % in a week: from {:.1f} to {:.1f} mm/s "
                         "r.m.s.",
                         placeOf(point), point.point, percent, was, is)});
    if (percent >= least / 2) out_.lingering.insert(key);
}

void RuleGathering::silence(const AlertRule& rule, const HeardPoint& point) {
    if (!point.fitted || !point.newest) return;
    const double hours = std::chrono::duration<double, std::ratio<3600>>(now_ - *point.newest).count();
    if (hours > kLongSilentHours) return;
    const double interval = point.intervalMin.value_or(kDayMin) / 60;
    if (hours < std::max(leastOf(rule) * interval, rule.leastHours.value_or(0))) return;
    meet(rule, {"sensor", point.point},
         {"", "", "", "", "", *point.newest, hours, "h",
          fmt::format("No recording of {} for {:.0f} h; one every {:.3g} h {}", point.point, hours, interval,
                      point.intervalMin ? "is described" : "is assumed, the description says none")});
}

double grownFrom(const Alert& alert) {
    if (alert.unit == "dban") return alert.told + 10;
    if (alert.unit == "mm/s") return alert.told * 1.25;
    if (alert.unit == "stage") return alert.told + 1;
    if (alert.unit == "%") return alert.told + 50;
    return std::numeric_limits<double>::infinity();  // silence only lasts
}

Alert raised(const AlertNow& now, const HeardMachine& machine, Instant when) {
    Alert alert;
    alert.machine = machine.tag;
    alert.area = machine.area;
    alert.criticality = machine.criticality;
    alert.fault = now.fault;
    alert.at = now.at;
    alert.rule = now.rule;
    alert.kind = now.kind;
    alert.deliver = now.deliver;
    alert.since = now.since;
    alert.raised = alert.seen = when;
    alert.value = alert.told = now.value;
    alert.unit = now.unit;
    alert.words = now.words;
    return alert;
}

void take(const AlertNow& now, Alert& alert) {
    alert.rule = now.rule;
    alert.kind = now.kind;
    alert.unit = now.unit;
    alert.deliver = now.deliver;
    alert.value = alert.told = now.value;
    alert.words = now.words;
}

void reopen(Alert& alert) {
    if (!alert.acknowledged) return;
    alert.words += fmt::format("; grown since {} acknowledged it", alert.acknowledgedBy);
    alert.acknowledged.reset();
    alert.acknowledgedBy.clear();
    alert.acknowledgedWhy.clear();
}

AlertStep standsOn(const AlertNow& now, Alert alert, Instant when) {
    alert.seen = when;
    alert.ended.reset();
    const bool same = now.kind == alert.kind && now.unit == alert.unit;
    const bool graver = deliverRank(now.deliver) < deliverRank(alert.deliver);
    if (graver || (same && now.value >= grownFrom(alert))) {
        take(now, alert);
        reopen(alert);
        return {AlertStep::Kind::Grow, std::move(alert)};
    }
    if (same) {
        alert.value = now.value;
        alert.words = now.words;
    }
    return {AlertStep::Kind::Keep, std::move(alert)};
}

bool heardAgain(const Alert& alert, const HeardPoint& point) {
    if (alert.kind == "silence") return !point.fitted || (point.newest && *point.newest > alert.since);
    return !point.recordings.empty() && point.recordings.front().time > alert.since;
}

// Whether something was heard since that would have said so. A point that went silent says nothing: what it
// told is not over.
bool heardSince(const Alert& alert, const HeardMachine& machine) {
    bool heard = false;
    for (const HeardPoint& point : machine.points) {
        const bool level = alert.kind == "zone" || alert.kind == "growth";
        if (alert.kind == "silence" ? point.point != alert.at : level && placeOf(point) != alert.at) continue;
        if (alert.kind != "silence" && (!point.fitted || !point.newest)) continue;
        if (!heardAgain(alert, point)) return false;
        heard = true;
    }
    return heard;
}

Status checkRange(const AlertRule& rule, const char* what, double value, double least, double most) {
    if (value >= least && value <= most) return {};
    return fail(ErrorKind::Invalid, "", fmt::format("alert rule \"{}\"", oneLine(rule.name, 80)),
                fmt::format("{} is {}, must be {} to {}", what, value, least, most));
}

Status checkWord(const AlertRule& rule, const char* what, const std::string& word,
                 const std::vector<std::string>& allowed) {
    if (std::find(allowed.begin(), allowed.end(), word) != allowed.end()) return {};
    return fail(
        ErrorKind::Invalid, "", fmt::format("alert rule \"{}\"", oneLine(rule.name, 80)),
        fmt::format("{} is \"{}\", must be one of {}", what, oneLine(word, 80), joined(allowed, ", ")));
}

// A word that begins no key would never be met.
Status checkFault(const AlertRule& rule) {
    const auto& keys = faultKeys();
    if (std::any_of(keys.begin(), keys.end(),
                    [&](const std::string& key) { return key.starts_with(rule.fault); }))
        return {};
    return fail(ErrorKind::Invalid, "", fmt::format("alert rule \"{}\"", oneLine(rule.name, 80)),
                fmt::format("fault is \"{}\", must be a key or how keys begin: {}", oneLine(rule.fault, 80),
                            joined(keys, ", ")));
}

Status checkKind(const AlertRule& r) {
    if (auto good = checkWord(r, "kind", r.kind, {"weight", "zone", "stage", "growth", "silence"}); !good)
        return good;
    if (auto good = checkFault(r); !good) return good;
    if (r.kind == "weight") return checkRange(r, "weight in decibans", leastOf(r), 20, 200);
    if (r.kind == "zone") return checkWord(r, "zone", r.grade, {"C", "D"});
    if (r.kind == "stage") return checkWord(r, "stage", r.grade, {"early", "developed", "late"});
    if (r.kind == "growth") return checkRange(r, "growth in percent", leastOf(r), 10, 1000);
    if (auto good = checkRange(r, "times the interval", leastOf(r), 2, 1000); !good) return good;
    return checkRange(r, "hours", r.leastHours.value_or(0), 0, 10000);
}

}  // namespace

int deliverRank(const std::string& deliver) {
    static const std::vector<std::string> order = {"now", "day", "digest", "list"};
    const auto at = std::find(order.begin(), order.end(), deliver);
    return at == order.end() ? -1 : int(at - order.begin());
}

bool isGraver(const Alert& a, const Alert& b) {
    static const std::vector<std::string> kinds = {"zone", "stage", "weight", "growth", "silence"};
    const auto key = [](const Alert& alert) {
        const auto kind = std::find(kinds.begin(), kinds.end(), alert.kind) - kinds.begin();
        return std::tuple(deliverRank(alert.deliver), alert.criticality.empty() ? "B" : alert.criticality,
                          kind, -alert.value, alert.since, alert.id);
    };
    return key(a) < key(b);
}

double leastOf(const AlertRule& rule) {
    static const std::map<std::string, double> shipped = {{"weight", 30}, {"growth", 50}, {"silence", 6}};
    const auto found = shipped.find(rule.kind);
    return rule.least.value_or(found == shipped.end() ? 0 : found->second);
}

Status checkAlertRule(const AlertRule& rule) {
    if (trimmed(rule.name).empty()) return fail(ErrorKind::Invalid, "", "alert rule", "has no name");
    if (auto good = checkKind(rule); !good) return good;
    if (auto good = checkRange(rule, "number of recordings looked at", rule.of, 1, 12); !good) return good;
    if (auto good = checkRange(rule, "number of recordings", rule.hits, 1, rule.of); !good) return good;
    const bool atOnce = rule.kind == "silence" || (rule.kind == "zone" && rule.grade == "D");
    if (rule.hits < (rule.kind == "growth" ? 3 : 2) && !atOnce)
        return fail(ErrorKind::Invalid, "", fmt::format("alert rule \"{}\"", oneLine(rule.name, 80)),
                    "would alert on too few recordings: chance lines alone would raise it (zone D may alert "
                    "at once, growth needs three, others two)");
    if (auto good = checkWord(rule, "criticality", rule.criticality, {"", "A", "B", "C"}); !good) return good;
    return checkWord(rule, "delivery", rule.deliver, {"now", "day", "digest", "list"});
}

std::string wordsOf(const AlertRule& r) {
    std::string words;
    const std::string recordings = fmt::format("{} of {} recordings", r.hits, r.of);
    const std::string fault = r.fault.empty() ? "any fault" : r.fault;
    if (r.kind == "weight")
        words = fmt::format("{} at {:g} decibans or more, {}", recordings, leastOf(r), fault);
    if (r.kind == "stage") words = fmt::format("{} at {} stage, {}", recordings, r.grade, fault);
    if (r.kind == "zone") words = fmt::format("{} in zone {}", recordings, r.grade);
    if (r.kind == "growth")
        words = fmt::format("level grown by {:g} % in a week, median of {}", leastOf(r), r.of);
    if (r.kind == "silence")
        words = fmt::format("silent for {:g} times its interval, at least {:g} h", leastOf(r),
                            r.leastHours.value_or(0));
    if (r.askSecond) words += ", or on 2 with the second asked for";
    if (!r.machine.empty()) words += ", machine " + oneLine(r.machine);
    if (!r.area.empty()) words += ", area " + oneLine(r.area);
    if (!r.criticality.empty()) words += ", criticality " + r.criticality;
    return words;
}

AlertsNow alertsNow(const std::vector<AlertRule>& rules, const HeardMachine& machine, Instant now,
                    bool silence) {
    RuleGathering gathering(machine, now);
    for (const AlertRule& rule : rules)
        if (covers(rule, machine) && (silence || rule.kind != "silence"))
            for (const HeardPoint& point : machine.points)
                gathering.ask(rule, point);
    return gathering.take();
}

std::vector<AlertStep> alertSteps(const AlertsNow& now, const std::vector<Alert>& standing,
                                  const HeardMachine& machine, Instant when, bool silence) {
    std::vector<AlertStep> steps;
    const auto standingOn = [&](const AlertNow& one) {
        return std::find_if(standing.begin(), standing.end(),
                            [&](const Alert& a) { return a.fault == one.fault && a.at == one.at; });
    };
    for (const AlertNow& one : now.met) {
        const auto alert = standingOn(one);
        if (alert == standing.end())
            steps.push_back({AlertStep::Kind::Raise, raised(one, machine, when)});
        else
            steps.push_back(standsOn(one, *alert, when));
    }
    for (const Alert& alert : standing) {
        const bool met = std::any_of(now.met.begin(), now.met.end(), [&](const AlertNow& one) {
            return one.fault == alert.fault && one.at == alert.at;
        });
        if (met || alert.ended || now.lingering.count({alert.fault, alert.at})) continue;
        if (alert.kind == "silence" && !silence) continue;
        if (!heardSince(alert, machine)) continue;
        steps.push_back({AlertStep::Kind::End, alert});
        steps.back().alert.ended = when;
    }
    return steps;
}

}  // namespace fettle
