// Why: that a fault would be found is proved by making one: a known change on purpose, its effect computed
// and promised first, then held against what came. A Trial is the document of it: what is changed, what is
// expected, the promise (frozen when the trial is started), the spans before and after, and at the end what
// was found. Plain data; trial_expect.h computes, trial_judge.h compares, trial_json.h keeps. Units in the
// names; times UTC. Thread: plain data.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/time.h"

namespace fettle {

enum class TrialKind {
    Mass,     // a mass at a radius
    Bearing,  // a bearing with a defect that is known
    Bolt,     // a bolt slackened while the machine stands
    Other     // in words
};
// What is followed recording by recording.
enum class TrialFollows {
    Weight,     // of a bearing fault, as the engine weighs it
    Once,       // 1x of one channel against the recordings before
    Looseness,  // orders 4 to 10 and half orders of one channel, likewise
    Velocity    // overall velocity of one channel, likewise
};
std::string toText(TrialKind kind);  // mass bearing bolt other: as kept
std::string toText(TrialFollows follows);

struct TrialChange {
    TrialKind kind = TrialKind::Mass;
    TrialFollows follows = TrialFollows::Once;
    std::string at;              // place in the grammar of machine descriptions: "driven", "driver DE"
    std::string words;           // of whoever makes it: "M10 bolt and nut in the third hole"
    std::string point, channel;  // that is followed; empty for a weight
    double massG = 0, radiusMm = 0;
    std::optional<double> rotorKg;
    std::optional<double> angleDeg;  // from the heavy spot, where that is known: 0 adds to it
    double grade = 6.3;              // asked of this rotor, mm/s
    std::string fault;               // bearing_outer_race ..; of a bearing, or of what else is weighed
};

struct ExpectedLine {
    std::string name;  // "BPFO", "2 x BPFI - 1 x shaft", "0.5 x"
    double order = 0;  // of the shaft of the place
    double hz = 0;     // 0: no speed is known
};

// What follows from the change by itself.
struct TrialExpectation {
    double speedRpm = 0;  // of the shaft of the place; 0: not known
    std::optional<double> unbalanceGmm, forceN, weightShare;
    std::optional<double> permissibleGmm, permissibleMassG;     // of the grade asked, alone at this radius
    std::optional<double> equivalentGrade;                      // of what is added alone, mm/s
    std::optional<double> moveLowMmS, moveHighMmS;              // what is added to 1x, r.m.s., as a vector
    std::optional<double> onceNowMmS, onceLowMmS, onceHighMmS;  // 1x before, and its range afterwards
    std::string how;                                            // where that range comes from
    std::vector<ExpectedLine> lines;
    std::vector<std::string> notes;     // what else follows
    std::vector<std::string> warnings;  // too heavy, too few recordings before
    std::string lacking;                // why nothing can be promised; empty: it can
};

struct TrialPromise {
    std::string fault, at;  // that is to be told
    double leastDban = 20;
    int within = 10;  // running recordings after the change
    std::optional<double> onceLowMmS, onceHighMmS;
    std::vector<std::string> sentences;
};

// One recording of the trial as it was found.
struct TrialRecording {
    std::int64_t recording = 0;
    Instant time{};
    bool after = false;
    std::optional<double> weightDban;  // of what is followed; empty: not weighed
    std::optional<double> onceMmS;     // of the channel followed
    std::optional<double> speedRpm;
    std::string strongest;  // fault and place of the greatest weight, where that is a finding and not the
                            // promised one
};

enum class TrialMark { Passed, Failed, Open };
std::string toText(TrialMark mark);  // passed failed open

struct TrialCheck {
    std::string what, promised, found;
    TrialMark mark = TrialMark::Open;
};

struct TrialResult {
    std::vector<TrialRecording> recordings;  // running ones, oldest first
    std::size_t before = 0, after = 0;
    std::optional<Instant> firstAt, toldAt;  // first recording that reaches; the rule (3 of 5) is met
    std::optional<int> toldAfter;            // recordings that took
    std::size_t falseBefore = 0;             // recordings before that reached the weight all the same
    std::optional<double> onceBeforeMmS, onceAfterMmS, weightBeforeDban, weightAfterDban;  // medians
    std::vector<TrialCheck> checks;
    std::string outcome;             // passed | failed | open | not comparable
    std::string verdict;             // one sentence
    std::vector<std::string> notes;  // what the figures cannot carry
};

struct Trial {
    std::string name, machine;  // machine: tag
    TrialChange change;
    TrialExpectation expectation;
    TrialPromise promise;
    std::vector<std::string> precautions;  // confirmed, in words
    std::string stopAt, responsible, permit;
    std::string startedBy;
    std::optional<Instant> startedAt;                // the promise is frozen from then on
    std::optional<Instant> beforeFrom;               // recordings from then on count as before
    std::optional<Instant> changeFrom, changeUntil;  // taken out of service; turning again, changed
    std::optional<Instant> afterUntil;               // the change was taken back; empty: still there
    std::optional<TrialResult> result;               // as it was at closing
    std::string remarks;

    bool started() const { return startedAt.has_value(); }
    bool changed() const { return changeUntil.has_value(); }
};

// A span of one machine whose recordings a trial stands on.
struct TrialSpan {
    std::string trial, machine;
    Instant from{}, until{};
};
// Of a trial that was started: before and after; one without an end runs to `now`. Recordings in there are to
// be kept with their waveforms as long as the trial is.
std::vector<TrialSpan> spansOf(const Trial& trial, Instant now);

}  // namespace fettle
