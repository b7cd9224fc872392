#include <cmath>

#include "core/machine/forcing.h"
#include "core/machine/machine.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool machineDescription(const std::string& bytes) {
    const auto parsed = parseMachine(bytes, "m.json");
    require(parsed.has_value() == machineFaults(bytes, "m.json").empty(),
            "a description is refused where it has a fault, and only there");
    if (!parsed) return false;
    const Machine& machine = parsed->machine;
    require(!machine.tag.empty() && !machine.points.empty() && !machine.shafts.empty(),
            "a machine has a tag, a shaft and a point");
    for (const Shaft& shaft : machine.shafts)
        require(std::isfinite(shaft.ratio) && shaft.ratio > 0, "a shaft turns at a ratio");
    for (const ForcingLine& line : forcingLines(machine, {}))
        require(std::isfinite(line.hz(25, 50)), "a line has a frequency");
    for (const Point& point : machine.points)
        require(machine.placeOf(point.at).has_value(), "a point is at a place of the machine");
    return true;
}

const Listed kMachineDescription("machine_description", machineDescription);

}  // namespace
}  // namespace fettle::fuzz
