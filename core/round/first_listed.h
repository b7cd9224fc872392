// Why: the time machine: of a failure, the first day on which the shipped rule would have listed the machine,
// and so how long the warning was. What was listed before the machine's last event belongs to that one. Days
// since 1970-01-01, each standing for the round that ends on it. Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/round/round.h"

namespace fettle {

// What the round that ends on `day` says of the machine.
struct DayOnList {
    int day = 0;
    bool listed = false;  // by evidence, change or zone; an entry by hand is nobody's rule
    std::string words;    // "plan, by evidence: outer-race defect, driver DE"
};
DayOnList dayOnList(const RoundMachine& machine, int day);

struct FirstListed {
    std::optional<DayOnList> first;
    int daysBefore = 0;
    int roundsAsked = 0, roundsListed = 0;  // from the first listed on; of all where none is
};
// `asked`: in any order. Those in (after, before) count; `weekEnds` alone are counted as rounds.
FirstListed firstListed(std::span<const DayOnList> asked, int after, int before,
                        std::span<const int> weekEnds);

}  // namespace fettle
