// Why: the rule by which a verdict is held against a known story, kept apart from printing so that it can be
// read and disputed by itself. A finding is named by fault and place; a story is what was put into the
// recordings. Thread: pure functions.
#pragma once

#include <string>
#include <vector>

#include "app/cli/sample_folder.h"
#include "core/diagnosis/examination.h"

namespace fettle {

enum class Mark {
    Hit,         // the fault was found where it is
    OtherName,   // a fault of the same kind was found there: another element of the bearing, another shaft
                 // fault
    Missed,      // it was weighed, and stayed below a finding
    NotVisible,  // too early, or beyond what these recordings can show; `why` says which
    False        // found, and no story stands behind it
};
std::string toText(Mark mark);

struct Marked {
    Mark mark;
    std::string why;               // where there is no finding: what else tells, or why nothing does
    const Story* story = nullptr;  // null for False
    const Hypothesis* finding =
        nullptr;  // null for Missed and NotVisible, and where the sensor's checks tell
};

// At work on any of the days first .. last ("2026-05-04")?
bool atWork(const Story& story, const std::string& first, const std::string& last);

// One mark a story at work that is no decoy, and one a finding that no such story explains.
std::vector<Marked> marksOf(const std::vector<const Story*>& atWork, const Examination& examination);

}  // namespace fettle
