// Why: what the program claims about false alarms, cover and detection is measured by a command anybody can
// run, not by a test with a clock. One function a trial, one row in main.cpp; each prints its figures with
// their intervals and how they were made, and returns 0, 2 for wrong usage or 3 where it could not run.
// Arguments are those after the trial's name.
#pragma once

#include <string>
#include <vector>

namespace fettle::trials {

using Arguments = std::vector<std::string>;

// The number, or the word, after `--name`, or `otherwise`.
long numberAfter(const Arguments& arguments, const std::string& name, long otherwise);
std::string textAfter(const Arguments& arguments, const std::string& name, const std::string& otherwise);

int healthyWeeks(const Arguments& arguments);
int quietRecords(const Arguments& arguments);
int simulatedFleets(const Arguments& arguments);
int seededMatrix(const Arguments& arguments);
int healthyAlerts(const Arguments& arguments);
int faultAlerts(const Arguments& arguments);
int speedTrial(const Arguments& arguments);

int forecastCover(const Arguments& arguments);
int shuffledDates(const Arguments& arguments);
int healthyTrends(const Arguments& arguments);
int runToFailure(const Arguments& arguments);

}  // namespace fettle::trials
