// Why: tests describe a machine by what differs from a plain sound one.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "core/base/json_object.h"
#include "core/machine/machine.h"

namespace fettle {

// A four-pole 50 Hz motor with one point: nothing to warn of.
inline Json plainMachine() {
    return Json::parse(R"({"tag": "CR-07", "mains_hz": 50, "support": "rigid",
        "driver": {"power_kw": 75, "poles": 4, "rated_rpm": 1480},
        "points": [{"id": "P1", "at": "driver DE", "mount": "bearing_housing",
                    "channels": [{"name": "v", "quantity": "acceleration", "unit": "g", "direction": "vertical"}]}]})");
}

// The plain machine with RFC 7396 changes: null takes a key away.
inline Json changed(const std::string& patch) {
    Json machine = plainMachine();
    machine.merge_patch(Json::parse(patch));
    return machine;
}

inline ParsedMachine parsed(const Json& machine) {
    auto result = parseMachine(machine.dump(), "m.json");
    if (result) return *result;
    ADD_FAILURE() << result.error().sentence();
    return {};
}

inline Error refused(const Json& machine) {
    const auto result = parseMachine(machine.dump(), "m.json");
    if (!result) return result.error();
    ADD_FAILURE() << "taken, but must be refused: " << machine.dump();
    return {};
}

}  // namespace fettle
