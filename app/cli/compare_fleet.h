// Why: verdict against story not of recordings examined on the spot but of the list a fleet file gives for a
// week: what a person would have been shown. A machine's findings are those it is on the list for; what it
// was weighed at else comes from the week's examination. Thread: one.
#pragma once

#include <string>

#include "app/cli/compare_report.h"

namespace fettle {

// Exit status. `until`: the last day of the week; empty: that of the newest recording. `everyWeek`: each week
// of the sample in short, and the sum.
int compareFleet(const SampleFolder& sample, const std::string& fleetPath, const std::string& until,
                 bool everyWeek);

}  // namespace fettle
