// Why: the words of a seeded-fault trial, the same in the dialog and on the trial sheet. Thread: the
// window's.
#pragma once

#include <QString>
#include <vector>

#include "core/workshop/trial.h"
#include "ui/model/units.h"
#include "ui/model/words.h"

namespace fettle {

std::vector<Word> trialKinds();     // mass bearing bolt other
std::vector<Word> trialElements();  // bearing_outer_race ..
std::vector<Word> trialFollows();   // of something else: weight 1x velocity
QString trialOutcomeWord(const std::string& outcome);
QString trialMarkWord(TrialMark mark);
QString trialStateWord(const Trial& trial, bool closed);  // "planned", "passed"
// What is changed, in one line: "10 g at 100 mm, driven".
QString trialChangeText(const TrialChange& change);
// Sentences of the engine, one a line, with the units people read in beside the stored ones.
QString linesOf(const std::vector<std::string>& sentences, const Units& units);
// The frozen figures of what was expected, one row each: name and value.
struct TrialFigure {
    QString name, value;
};
std::vector<TrialFigure> trialFigures(const TrialChange& change, const TrialExpectation& expectation,
                                      const Units& units);

}  // namespace fettle
