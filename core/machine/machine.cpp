#include "core/machine/machine.h"

#include <algorithm>
#include <utility>

namespace fettle {

const Point* Machine::pointById(const std::string& id) const {
    const auto found = std::find_if(points.begin(), points.end(), [&](const Point& p) { return p.id == id; });
    return found == points.end() ? nullptr : &*found;
}

std::optional<std::size_t> Machine::shaftById(const std::string& id) const {
    const auto found =
        std::find_if(shafts.begin(), shafts.end(), [&](const Shaft& shaft) { return shaft.id == id; });
    if (found == shafts.end()) return std::nullopt;
    return static_cast<std::size_t>(found - shafts.begin());
}

std::optional<std::size_t> Machine::shaftOfDriven() const {
    for (std::size_t i = 0; i < shafts.size(); ++i)
        if (shafts[i].of == "driven") return i;
    if (shafts.size() == 1 && driven.known) return 0;
    return std::nullopt;
}

std::optional<double> Machine::synchronousRpm() const {
    if (driver.inverter || !driver.poles) return std::nullopt;
    return 120 * mainsHz / *driver.poles;
}

std::optional<double> Machine::nominalRpm() const {
    return driver.ratedRpm ? driver.ratedRpm : synchronousRpm();
}

std::optional<Place> Machine::placeOf(const std::string& at) const {
    std::vector<std::pair<std::string, std::size_t>> names{{"driver", 0}};
    if (driven.known) names.emplace_back("driven", shaftOfDriven().value_or(0));
    for (std::size_t i = 0; i < shafts.size(); ++i)
        names.emplace_back(shafts[i].id, i);
    for (const Gear& gear : gears)
        names.emplace_back(gear.id, shaftById(gear.from).value_or(0));
    for (const Belt& belt : belts)
        names.emplace_back(belt.id, shaftById(belt.from).value_or(0));
    for (const Box& box : boxes)
        names.emplace_back(box.id, box.shaft);
    const std::pair<std::string, std::size_t>* best = nullptr;
    for (const auto& name : names)
        if (at.starts_with(name.first) && (at.size() == name.first.size() || at[name.first.size()] == ' '))
            if (!best || name.first.size() > best->first.size()) best = &name;
    if (!best) return std::nullopt;
    return Place{best->first, at.size() == best->first.size() ? "" : at.substr(best->first.size() + 1),
                 best->second};
}

}  // namespace fettle
