// Why: the engine weighs and words in English, and what it said is kept as it said it. What of that is one of
// a fixed set (names of faults, stages, dates of a job, cautions of sheets and trials, boxes of the sheet,
// reasons of blind spots) is shown in the window's language all the same: the sentence itself is the key.
// What holds numbers or places of its own stays English. A sentence that is added to the engine and belongs
// to such a set is listed in the .cpp, where Qt's lupdate finds it. Thread: any.
#pragma once

#include <QString>
#include <string>

#include "core/diagnosis/blind_rows.h"

namespace fettle {

QString engineText(const std::string& text);  // as it is where it is none of them
// What a trial lacks to be started: "2 of 5 cautions are confirmed".
QString trialLackText(const std::string& lack);
// What a round lacks to be closed, with its count and tags: "2 listed machines have no decision: A, B".
QString roundLackText(const std::string& lack);
QString faultNameText(const std::string& fault);  // of a key: "outer-race defect"
QString blindWhatText(const BlindRow& row);       // "worn gear mesh, damaged gear tooth at G1"

}  // namespace fettle
