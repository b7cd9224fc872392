// Why: what `compare` prints: a machine's stories and findings of a span of days side by side, and the
// counts. In short form only the counts of the span and its false findings are printed. Times UTC. Thread:
// one.
#pragma once

#include <map>
#include <string>

#include "app/cli/compare_marks.h"
#include "core/machine/machine.h"

namespace fettle {

struct Span {
    Instant from, until;  // until itself is not in it
};

// Counts over machines and spans.
struct Tally {
    std::map<Mark, int> marks;
    int quiet = 0, unheard = 0;
    int machines = 0;         // machines times spans
    int falseByEvidence = 0;  // of the false findings, those with a weight
    int falseOnSound = 0;     // of these, on machines where no fault is at work
    double days = 0;          // machines times days

    int of(Mark mark) const { return marks.count(mark) ? marks.at(mark) : 0; }
    int stories() const {
        return of(Mark::Hit) + of(Mark::OtherName) + of(Mark::Missed) + of(Mark::NotVisible);
    }
    void add(const Tally& other);
};

class CompareReport {
  public:
    // `start`: the Monday from which the stories' severities are counted by week.
    CompareReport(Instant start, Span span, bool brief);

    const Span& span() const { return span_; }
    const Tally& tally() const { return tally_; }
    void add(const SampleMachine& sample, const Machine& machine, const Examination& examination);
    // A silent node is known by its silence; whatever else is the matter there cannot be seen.
    void addUnheard(const SampleMachine& sample, const Machine& machine);
    void close() const;

  private:
    std::vector<Story> storiesNow(const SampleMachine& sample) const;
    void head(const Machine& machine, const std::string& state) const;
    void show(const Machine& machine, const Marked& marked);
    void count(const Marked& marked, bool sound);

    Instant start_;
    Span span_;
    bool brief_;
    std::string first_, last_;  // as dates
    Tally tally_;
};

// The sum over several spans, with false entries per 100 machines and month of 30 days.
void printSum(const Tally& sum);

}  // namespace fettle
