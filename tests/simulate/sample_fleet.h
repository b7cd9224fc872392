// Why: the sample fleet as the tests ask for it, read once.
#pragma once

#include <gtest/gtest.h>

#include "core/simulate/sample_plan.h"

namespace fettle::sim::probe {

inline const Scenario& fleet() {
    static const Scenario scenario = [] {
        const RealFileSystem files;
        auto loaded = loadScenario(files, FETTLE_SOURCE_DIR "/sample_fleet");
        EXPECT_TRUE(loaded) << (loaded ? "" : loaded.error().sentence());
        return loaded ? *loaded : Scenario{};
    }();
    return scenario;
}

inline const FleetMachine* byTag(const std::string& tag) {
    for (const FleetMachine& machine : fleet().machines)
        if (machine.machine.tag == tag) return &machine;
    return nullptr;
}

inline Instant utc(const char* text) {
    return *parseUtc(text);
}

inline SampleOptions lastWeek(const std::string& tag = "") {
    SampleOptions options;
    options.weeks = 1;
    options.machine = tag;
    return options;
}

}  // namespace fettle::sim::probe
