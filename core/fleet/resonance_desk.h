// Why: the resonance map of a machine comes from what the fleet file keeps of each recording anyway: velocity
// spectra of 800 lines and the speed. No waveform is read. Running recordings alone, of the last half year up
// to the newest. Thread: as the FleetFile; reads only; a few hundred kilobytes a hundred recordings. Errors:
// those of the stores.
#pragma once

#include <memory>
#include <string>

#include "core/base/json_object.h"
#include "core/store/fleet_file.h"
#include "core/trend/resonance_map.h"

namespace fettle {

inline constexpr int kResonanceDays = 26 * 7;

struct MachineResonance {
    std::shared_ptr<const Machine> machine;
    Instant from{}, until{};
    std::string timeZone;
    ResonanceMap map;
};
Result<MachineResonance> resonanceOf(FleetFile& fleet, const std::string& tag, int days = kResonanceDays);

// What the map says, without the gathered spectra: resources/schemas/resonance.schema.json, but for its head.
Json toJson(const MachineResonance& found);

}  // namespace fettle
