// Why: the words of what happens between rounds and of what comes before the list, the same in the ledger, in
// dialogs and on paper. A key without a word is shown as it is. Thread: the window's.
#pragma once

#include <QString>

#include "core/fleet/due.h"
#include "core/round/comparison.h"

namespace fettle {

QString moveWord(RoundMove move);                // "came on the list"
QString dueKindWord(const std::string& kind);    // "to be verified"
QString unseenOwner(const std::string& reason);  // whose matter it is: "production"
QString spelledDates(const QString& text);       // every "2026-06-01" in it as "1 June 2026"
// "plan to act", "on the list: plan", "plan, now left"
QString urgencyStep(const MachineMove& move);

// A recording is weighed by itself; whether the trend has a baseline by now is another matter, and it may
// stand drawn beside these words. The engine's sentences are English (ui/model/language.h).
QString weighedAlone(QString sentence);

}  // namespace fettle
