// Why: asks the kept weeks what the shipped rule would have said then: the round is made at each week's end
// back from a failure, then at the days of the week in which it first lists the machine. A failure is a
// confirmed report, another fault found, a repair, part or cleaning, or a day that is given. As slow as that
// many rounds. Days in the site's calendar. Thread: as the FleetFile; reads only. Errors: those of the
// stores; NotFound where the machine has no such event.
#pragma once

#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/round/first_listed.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct Failure {
    int day = 0;
    std::string words;  // "repair: shaft seal renewed"
};
// Of the machine, oldest first, one a day.
Result<std::vector<Failure>> failuresOf(FleetFile& fleet, const std::string& tag);

struct Warning {
    Failure failure;
    int askedFrom = 0;  // first day asked of
    FirstListed result;
    int weeksAsked = 0, weeksThinned = 0;  // of the weeks asked, those that retention left fewer verdicts of
};
inline constexpr int kMostWeeksBack = 26;

// `before`: a day of its own instead of the failures; empty: all of them.
Result<std::vector<Warning>> warningsOf(FleetFile& fleet, const std::string& tag, const std::string& before,
                                        const Progress& progress = {}, const CancelToken& cancel = {});

}  // namespace fettle
