#include "core/diagnosis/supply_lines.h"

#include <cmath>

namespace fettle {

namespace {

bool atDriver(const Machine& machine, const ChannelRole& role) {
    if (!role.point) return false;
    const auto place = machine.placeOf(role.point->at);
    return place && place->component == "driver";
}

}  // namespace

SupplyLines supplyLinesOf(const Machine& machine, const PreparedRecording& prepared) {
    SupplyLines supply;
    for (const FluxView& flux : prepared.flux)
        if (atDriver(machine, prepared.roles[flux.channel])) supply.flux.push_back(&flux);
    const bool stated = !machine.driver.inverter || prepared.recording->outputHz;
    if (!prepared.mains.measured && !stated) return supply;
    supply.hz = prepared.mains.hz;
    supply.plusMinusHz = prepared.mains.measured ? prepared.mains.plusMinusHz : prepared.rates.mainsSpreadHz;
    return supply;
}

double linePower(const Spectrum& sharp, double hz) {
    constexpr std::ptrdiff_t kReach = 2;
    const auto middle = std::ptrdiff_t(std::lround(hz / sharp.stepHz));
    double sum = 0;
    for (std::ptrdiff_t k = middle - kReach; k <= middle + kReach; ++k)
        if (k >= 0 && k < std::ptrdiff_t(sharp.values.size())) sum += sharp.values[std::size_t(k)];
    return sum / sharp.noiseBandwidthBins;
}

bool hasCage(const Machine& machine) {
    return machine.driver.kind == DriverKind::Induction || machine.driver.kind == DriverKind::TwoSpeed;
}

}  // namespace fettle
