#include "core/simulate/place.h"

#include <algorithm>
#include <vector>

namespace fettle::sim {

namespace {
const Gear* gearById(const Machine& machine, const std::string& id) {
    for (const Gear& gear : machine.gears)
        if (gear.id == id) return &gear;
    return nullptr;
}

bool isBox(const Machine& machine, const std::string& id) {
    return std::any_of(machine.boxes.begin(), machine.boxes.end(),
                       [&](const Box& box) { return box.id == id; });
}

// The box that has a bearing on one of the gear's shafts; a gear without one is its own housing.
std::string housingOf(const Machine& machine, const Gear& gear) {
    const auto from = machine.shaftById(gear.from), to = machine.shaftById(gear.to);
    for (const BearingPlace& bearing : machine.bearings)
        if ((bearing.shaft == from || bearing.shaft == to) && isBox(machine, bearing.component))
            return bearing.component;
    return gear.id;
}

std::string housingOf(const Machine& machine, const Place& place) {
    if (place.component == "driven" || isBox(machine, place.component)) return place.component;
    if (const Gear* gear = gearById(machine, place.component)) return housingOf(machine, *gear);
    return machine.shaftOfDriven() == place.shaft && place.shaft != 0 ? "driven" : "driver";
}

// Shafts that turn together without a belt between carry one number.
std::vector<std::size_t> beltlessGroups(const Machine& machine) {
    std::vector<std::size_t> group(machine.shafts.size());
    for (std::size_t i = 0; i < group.size(); ++i)
        group[i] = i;
    for (const Gear& gear : machine.gears) {
        const auto from = machine.shaftById(gear.from), to = machine.shaftById(gear.to);
        if (!from || !to) continue;
        const std::size_t old = group[*to];
        std::replace(group.begin(), group.end(), old, group[*from]);
    }
    return group;
}

bool beltBetween(const Machine& machine, std::size_t one, std::size_t other) {
    const auto group = beltlessGroups(machine);
    return one < group.size() && other < group.size() && group[one] != group[other];
}
}  // namespace

Result<Place> placeOf(const Machine& machine, const std::string& at) {
    auto place = machine.placeOf(at);
    if (!place) return fail(ErrorKind::Invalid, machine.tag, at, "is not a place of this machine");
    for (const auto& bearing : machine.bearings)
        if (bearing.at == at) place->shaft = bearing.shaft;
    place->component = housingOf(machine, *place);
    return *place;
}

PathGain pathGain(const Machine& machine, const Place& from, const Place& to) {
    if (from.component == to.component) {
        const bool sameEnd = from.position.empty() || to.position.empty() || from.position == to.position;
        return sameEnd ? PathGain{1, 1} : PathGain{0.7, 0.4};
    }
    if (beltBetween(machine, from.shaft, to.shaft)) return {0.12, 0.02};
    return {0.4, 0.08};
}

}  // namespace fettle::sim
