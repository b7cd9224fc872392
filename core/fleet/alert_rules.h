// Why: what a rule says of a machine between two rounds. Never on one recording (at 24,000 hypotheses and 72
// recordings a day a bound of 1 % allows 17,280 chance lines a day): so many of the newest running recordings
// of one point, sensor checks passed; or two of them where the second was asked for because of the first;
// zone D at once. Levels are graded as the standard's zones, bearings by stage, never the other way round.
// Units: decibans, mm/s r.m.s., percent in a week, hours. Times UTC. Thread: pure functions over plain
// records; nothing here reads a file or a clock.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/base/time.h"
#include "core/store/alert_store.h"

namespace fettle {

// Names the field and the range where a rule is none.
Status checkAlertRule(const AlertRule& rule);
// Decibans of a rule on weight, percent a week of one on growth, times the interval of one on silence: as
// shipped where the rule says none; 0 of other kinds.
double leastOf(const AlertRule& rule);
// "3 of 5 recordings at 30 decibans or more, any fault, all machines".
std::string wordsOf(const AlertRule& rule);

// One running recording. Where a rule may alert because of it its sensor checks were asked, and passed.
struct HeardRecording {
    std::int64_t id = 0;
    Instant time{};
    std::vector<AlertStore::Weighed> weights;  // every hypothesis weighed
    struct Stage {
        std::string fault, at;
        int stage = 0;  // 1 early, 2 developed, 3 late
    };
    std::vector<Stage> stages;
    std::optional<double> levelMmS, nextLimitMmS;  // of the worst channel
    std::string zone;                              // of a limit that counts; empty: none
    bool indicative = false;                       // measured off a bearing housing
    bool askedFor = false;                         // it answered what a rule asked for
};

struct HeardPoint {
    std::string point, at;                   // id and place
    std::vector<HeardRecording> recordings;  // newest first
    std::optional<double> weekAgoMmS;        // level a week before them
    std::optional<double> limitBcMmS;        // zone boundary B/C there
    bool fitted = true;                      // a node is meant to be heard
    std::optional<double> intervalMin;       // as described
    std::optional<Instant> newest;           // recording of any kind
};

struct HeardMachine {
    std::string tag, area, criticality;
    std::vector<HeardPoint> points;
};

// A rule that holds now.
struct AlertNow {
    std::string fault, at, rule, kind, deliver;
    Instant since{};
    double value = 0;
    std::string unit, words;
};

// A second recording to be asked for.
struct AlertAsk {
    std::string point, why;
};

struct AlertsNow {
    std::vector<AlertNow> met;                                // one a fault and place
    std::set<std::pair<std::string, std::string>> lingering;  // fault, place: not met, not over
    std::vector<AlertAsk> asks;
};

// `silence`: rules on silence are asked as well.
AlertsNow alertsNow(const std::vector<AlertRule>& rules, const HeardMachine& machine, Instant now,
                    bool silence);

// What becomes of the alerts of one machine.
struct AlertStep {
    enum class Kind { Raise, Grow, Keep, End } kind = Kind::Raise;
    Alert alert;
};
// `standing`: those of the machine that are not cleared. An alert grows by 10 decibans, a quarter of its
// level, a stage, 50 percent points; one acknowledged is open again then. It ends where its rule no longer
// holds in any of the recordings it looks at and a newer one was heard.
std::vector<AlertStep> alertSteps(const AlertsNow& now, const std::vector<Alert>& standing,
                                  const HeardMachine& machine, Instant when, bool silence);

// now < day < digest < list; -1 for another word.
int deliverRank(const std::string& deliver);
// Whether `a` is read first: how urgently it is told, criticality (none as B), what kind of rule, and of one
// kind by how much; of two alike the older one.
bool isGraver(const Alert& a, const Alert& b);

}  // namespace fettle
