// Why: the weekly list: what each machine's week says, in the order in which somebody should look. Plain data
// in (a machine's week as examined, its trend, when it was last heard), plain data out (the contracts' `round
// --json`); nothing here reads a file or a clock. One e-value a bearing (its families averaged), one a
// machine (bearings averaged, each with the same prior), e-BH over the machines that could be weighed with
// criticality as prior weight, then the choice within the machine. Entries by zone, by change or by hand
// stand beside, outside the stated share. Times UTC; dates "2026-05-04" in the site's calendar. Thread: pure
// functions.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/time.h"
#include "core/diagnosis/cause_table.h"
#include "core/diagnosis/examination.h"
#include "core/trend/followed.h"
#include "core/trend/forecast.h"

namespace fettle {

// What the grid or gravity says against a node of the machine (grid_clock.h, node_pose.h).
struct NodeDoubt {
    std::string at, words;  // the point's place; a sentence
};

// What one machine brings to the round.
struct MachineWeek {
    std::string tag, asset, service, area, criticality = "B";
    bool standby = false;
    bool byHand = false;
    std::string byHandWhy;
    bool fitted = true;               // has a point whose node is fitted now
    std::optional<Examination> week;  // its running recordings of the period together; empty: none
    std::optional<Instant> newest;    // newest recording at all, up to the end of the period
    std::size_t recordings = 0;       // in the period
    std::size_t turning = 0;          // of these with a turning shaft that could be weighed
    std::size_t levels = 0;           // of those in the period: ready-made levels without a waveform
    std::size_t unknown = 0;          // of those in the period whose running state could not be told
    std::size_t poor = 0;             // that failed a sensor check: of the turning ones; none turns: of all
    std::vector<std::string> failedChecks;  // of these, "clipped on x"
    std::optional<std::string> told;        // an event that explains silence: low_battery | moved
    // The governing quantity: velocity r.m.s. of the point and direction with the worst zone.
    std::string governing;  // "M-DE x velocity r.m.s."
    std::string unit = "mm/s";
    std::vector<DayValue> days;      // daily medians up to the end of the period, 26 weeks or more
    std::optional<double> limit;     // next zone boundary up
    std::string zone;                // of the period's median; empty: none applies
    ZoneNote zoneBy;                 // that zone with the limits it stands on, as the description gives them
    std::size_t lateRecordings = 0;  // arrived for weeks whose round is closed
    std::string workDone;            // an event since the last round: "cleaned on 2026-05-06"; empty: none
    std::vector<FollowedChange> changes;    // everything followed, against its own baseline
    std::vector<CauseFeature> dependences;  // what 1x follows over the weeks, where told
    std::vector<NodeDoubt> nodes;
};

// The change a finding stands on: the strongest of its quantities.
struct ChangeFacts {
    std::string quantity, point, channel, direction, unit;   // "1x", "M-DE", "x", "horizontal", "mm/s"
    double was = 0, now = 0, step = 0;                       // step: dB of a level, else in the unit
    int baselineDays = 0, baselineFrom = 0, baselineTo = 0;  // daily medians; days since 1970-01-01
    std::optional<int> since;                                // day from which it has stayed apart
    std::optional<StatisticalLimits> limits;                 // of the baseline's days, in the unit
};

// The verdict only: of `finding.best` view, variant and cage shift; its lines stay in the week's examination.
// `finding.fault` is empty for raised vibration whose cause is not named. Level, growth and limit date are
// those of the week's median, for findings graded by zone alone: a bearing is graded by stage.
struct RoundFinding {
    Hypothesis finding;
    double persistence = 0;            // share of the week's recordings at 10 decibans or more / that name it
    std::optional<double> causeShare;  // among the causes of raised shaft vibration: this one's share
    std::optional<double> growthPerWeek;
    std::optional<LimitDate> limitDate;
    std::optional<ChangeFacts> change;  // then the weight is that of the change, outside the list's share
};

enum class ListedBy { None, Evidence, Change, Zone, Hand };
std::string toText(ListedBy by);  // none evidence change zone hand
std::optional<ListedBy> listedByFrom(const std::string& text);

struct RoundMachine {
    std::string tag, asset, service, area, criticality;
    std::string urgency = "leave";  // leave watch plan act; unseen where unseenReason is set
    ListedBy listedBy = ListedBy::None;
    std::optional<double> weightDban;  // of the machine's e-value
    double priorDban = 0;              // added by criticality; weight + prior against RoundList's need
    std::string changed;               // one sentence: what changed since the last round
    std::optional<Instant> newest;
    std::string unseenReason;  // silent low_battery poor_data moved idle not_fitted not_judged; empty: seen
    std::string unseenWords;   // "no recording since 2026-06-20"
    std::string foundBefore;   // of an unseen machine: what it was listed for when last seen
    std::string byHandWhy;     // of an entry by hand
    std::vector<RoundFinding> findings;  // what put it there, most urgent first, then by weight
    std::string governing, unit;
    std::vector<double> strip;  // 26 weekly medians of the governing quantity, oldest first; NaN: none
    std::optional<double> limit;
    std::string zone;
    std::size_t lateRecordings = 0;
    bool inSample = false;  // drawn among the leave machines
    std::string baseline;   // which days changes are weighed against, or why none is; empty: nothing followed
};

struct RoundList {
    std::string from, until;  // first and last day, site's calendar
    double alpha = 0.1;
    double listNeedsDban = 0;
    std::string engine;
    std::vector<RoundMachine> machines;  // act, plan, watch, unseen, leave; within: weight, zone, tag
    std::vector<std::string> warnings;
};

const RoundMachine* rowOf(const RoundList& list, const std::string& tag);  // null: not among them
int groupOf(const std::string& urgency);  // 0 act, 1 plan, 2 watch, 3 unseen, 4 leave
// "outer-race defect, driver DE"; "raised vibration, cause not named".
std::string findingName(const Hypothesis& finding);
// How much more often a machine is expected to deserve an entry, by criticality: A 2, B 1, C 0.5; common
// practice, no source. Brought to a mean of 1 before use (e_bh.h).
double criticalityPrior(const std::string& criticality);

struct RoundSettings {
    std::string from, until;
    Instant end{};  // first moment after the period
    double alpha = 0.1;
    double findingDban = 20;  // within a listed machine
    int silentDays = 7;       // no recording for so long: silent
};

// `last`: the round before, for "what changed"; null: none.
// Order of the input does not matter. Where the urgency table cannot be read, a warning and a built-in one.
RoundList makeRound(const std::vector<MachineWeek>& weeks, const RoundSettings& settings,
                    const RoundList* last);

// A random sample of the leave machines, drawn from `seed`: 15 or 3 %, whichever is more, at most all. Marks
// inSample; the same tags and seed give the same sample on every computer.
void drawSample(RoundList& list, std::uint64_t seed);

// What a round still needs before it may be closed.
// Withdraw: the decision before was a slip; the machine is undecided again.
enum class DecisionKind { Accept, Dispute, Defer, Withdraw };
std::string toText(DecisionKind kind);  // accept dispute defer withdraw

struct Decision {
    std::int64_t id = 0;
    std::string machine, reason, deferTo, by;  // deferTo: date; reason needed for dispute and defer
    DecisionKind kind = DecisionKind::Accept;
    Instant at{};
};

struct RoundState {
    std::vector<Decision> decisions;          // newest of a machine holds
    std::vector<std::string> opened;          // tags of sampled leave machines that were looked at
    std::vector<std::string> unseenAnswered;  // tags of unseen machines whose reason was confirmed or given
    bool leaveAccepted = false;               // as a block, after the sample
};

struct RoundProgress {
    std::size_t listed = 0, decided = 0;  // act, plan, watch and by hand
    std::size_t unseen = 0, unseenDone = 0;
    std::size_t sample = 0, sampleOpened = 0;
    bool leaveAccepted = false;
    std::vector<std::string> missing;  // sentences; empty: may be closed
};
RoundProgress progressOf(const RoundList& list, const RoundState& state);
// Whether leave may be accepted as a block: a sample was drawn and every machine of it opened.
bool mayAcceptLeave(const RoundList& list, const RoundState& state);
// The next machine after `tag` that the round still asks something about (a decision, a reason, to be opened
// as one of the sample), in the order of the list, wrapping round; empty: none.
std::string nextUndecided(const RoundList& list, const RoundState& state, const std::string& tag);

}  // namespace fettle
