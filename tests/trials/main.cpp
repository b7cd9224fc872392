#include <fmt/format.h>

#include <cstdlib>

#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

struct Trial {
    const char *name, *usage, *what;
    int (*run)(const Arguments&);
};

// A further trial is a row here, a line in trials.h and a file.
const std::vector<Trial> kTrials = {
    {"healthy-weeks", "[--weeks 2000] [--per-node 7] [--scenario sample_fleet]",
     "sound machines through engine and round: false entries per 100 machines and month", healthyWeeks},
    {"quiet-records", "[--each 300] [--list] [--scenario sample_fleet]",
     "noise, tones, combs, knocks, pickup, neighbours, standstill: what is named though no fault is there",
     quietRecords},
    {"fleets", "[--fleets 200] [--pool 400] [--scenario sample_fleet]",
     "e-BH over simulated fleets: chance share of the list, power", simulatedFleets},
    {"speed", "[--scenario sample_fleet] [--key 1] [--open-only] [--list]",
     "speed not given, simulated and on FETTLE_OPEN_RECORDS: right, unknown, sure and wrong; slip; sample "
     "rate",
     speedTrial},
    {"matrix", "[--scenario sample_fleet] [--cells N] [--kinds KIND,KIND] [--upper 1] [--list 1, 2 or 3]",
     "seeded faults x severities x noise x nodes, each after sound weeks: detection and confusion",
     seededMatrix},
    {"healthy-alerts", "[--machines 400] [--weeks 5] [--per-week 7] [--list 1] [--scenario sample_fleet]",
     "sound machines, each recording heard by the shipped alert rules: alerts per 100 machines and month; "
     "gateway outages",
     healthyAlerts},
    {"fault-alerts", "[--per-week 84] [--cells N] [--kinds KIND,KIND] [--list 1] [--scenario sample_fleet]",
     "seeded faults of the two upper severities: share the alert rules tell, hours until then", faultAlerts},
    {"forecast-cover", "[--machines 1000] [--seed 1]",
     "date at a limit on simulated growth: how often the nominal 80 % interval holds it", forecastCover},
    {"shuffled-dates", "[FLEET] [--machines 2000] [--seed 1]",
     "weight of a change where the dates of the days are shuffled: share at 10, 20 and 30 decibans",
     shuffledDates},
    {"healthy-trends", "[--weeks 2000] [--seed 1]",
     "simulated trends of sound machines: entries by change per 100 machines and month", healthyTrends},
    {"run-to-failure", "[FOLDER] [--baseline 42]",
     "records of bearings run to their end: first alert, false alerts in the first half", runToFailure},
};

int usage() {
    fmt::print(stderr, "fettle-trials TRIAL [ARGUMENTS]; figures on the standard output\n");
    for (const Trial& trial : kTrials)
        fmt::print(stderr, "  {} {}\n      {}\n", trial.name, trial.usage, trial.what);
    return 2;
}

}  // namespace

long numberAfter(const Arguments& arguments, const std::string& name, long otherwise) {
    for (std::size_t i = 0; i + 1 < arguments.size(); ++i)
        if (arguments[i] == name) return std::atol(arguments[i + 1].c_str());
    return otherwise;
}

std::string textAfter(const Arguments& arguments, const std::string& name, const std::string& otherwise) {
    for (std::size_t i = 0; i + 1 < arguments.size(); ++i)
        if (arguments[i] == name) return arguments[i + 1];
    return otherwise;
}

}  // namespace fettle::trials

int main(int argc, char** argv) {
    using namespace fettle::trials;
    if (argc < 2) return usage();
    for (const Trial& trial : kTrials)
        if (std::string(argv[1]) == trial.name) return trial.run(Arguments(argv + 2, argv + argc));
    return usage();
}
