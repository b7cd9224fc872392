// Why: machines of known truth by the thousand: the sample fleet's descriptions under new tags, so each with
// a voice of its own, a week of recordings each, examined as a user's would be. Given speeds, loads and nodes
// are those of the description. Everything follows from tag and key. Thread: one call at a time a maker; many
// makers at once. Errors: end the program with a word, a trial has nobody to ask.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/signal/recording.h"
#include "core/simulate/sample_plan.h"

namespace fettle::trials {

sim::Scenario sampleScenario(const std::string& folder);

struct WeekOrder {
    std::size_t like = 0;  // index into the scenario's machines
    std::string tag;       // of the made machine
    std::vector<sim::Condition> conditions;
    int perNode = 7;         // recordings of a node in the week
    double noiseFactor = 1;  // of the node's own noise
    std::string nodeKind;    // of another machine's node in the scenario; empty: its own
    std::uint64_t key = 1;
    std::size_t weeksIn = 3;  // which week of the scenario's weather
    int weeks = 1;            // in a row
    bool everyDay = false;    // captures with days of their own as well
};

struct MadeWeek {
    Machine machine;
    std::string description;  // its JSON
    std::vector<RecordingPtr> recordings;
};
MadeWeek madeWeek(const sim::Scenario& scenario, const WeekOrder& order);

// The same one recording at a time, each made when it is asked for: for who stops before the end.
class WeekMaker {
  public:
    WeekMaker(const sim::Scenario& scenario, const WeekOrder& order);
    const Machine& machine() const { return one_.machines[0].machine; }
    std::string description() const { return one_.machines[0].description.dump(); }
    Instant start() const { return one_.start; }
    std::size_t size() const { return plan_.size(); }
    Instant time(std::size_t i) const { return plan_[i].time; }  // oldest first
    RecordingPtr make(std::size_t i) const;

  private:
    sim::Scenario one_;
    std::uint64_t key_;
    std::vector<sim::PlannedRecording> plan_;
};
Examination examinedWeek(const MadeWeek& week);

// Names of the scenario's node kinds, in the order in which machines use them.
std::vector<std::string> nodeKinds(const sim::Scenario& scenario);

// Runs work(0) .. work(count - 1) on all cores, with a line of progress on stderr.
void onAllCores(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace fettle::trials
