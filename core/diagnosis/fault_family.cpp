#include "core/diagnosis/fault_family.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/diagnosis/wording.h"

namespace fettle {

namespace {
constexpr double kMostOfZone = 0.8;  // of the overall velocity; from memory of common textbooks
}

const std::vector<FaultFamily>& faultFamilies() {
    static const std::vector<FaultFamily> all = {
        gearMeshFamily(),        gearToothFamily(),      beltFamily(),
        bladePassFamily(),       cavitationFamily(),     flowFamily(),
        rotorBarFamily(),        twiceMainsFamily(),     airGapFamily(),
        supplyUnbalanceFamily(), bearingCurrentFamily(), dryBearingFamily(),
    };
    return all;
}

const FaultFamily* faultFamily(const std::string& fault) {
    for (const FaultFamily& family : faultFamilies())
        if (family.fault == fault) return &family;
    return nullptr;
}

void FamilyReport::add(const Listening& of, std::string name, std::string unit, std::size_t channel,
                       double value) {
    if (std::isfinite(value))
        measures.push_back({of.family.fault, of.at, std::move(name), std::move(unit), channel, value});
}

void FamilyReport::addBlind(const Listening& of, std::string why, std::string cure) {
    blind.push_back({of.family.fault, of.at, std::move(why), std::move(cure)});
}

Hypothesis possibleAt(const Listening& of, std::string why) {
    Hypothesis h;
    h.fault = of.family.fault;
    h.at = of.at;
    h.provedOn = of.family.provedOn;
    h.recordingCount = 1;
    h.why = std::move(why);
    h.against = {std::string("would speak against it: ") + of.family.against,
                 std::string("draws the same: ") + of.family.rivals};
    return h;
}

void addPossible(const Listening& of, std::size_t channel, double mmS, const std::string& lines,
                 FamilyReport& report) {
    const ChannelLevels& levels = of.prepared.facts.levels[channel];
    if (levels.zones.empty() || levels.zones[0].zone < "C" || !levels.velocityRmsMmS) return;
    if (mmS < kMostOfZone * *levels.velocityRmsMmS) return;
    const auto same = [&](const Hypothesis& h) { return h.fault == of.family.fault && h.at == of.at; };
    if (std::any_of(report.hypotheses.begin(), report.hypotheses.end(), same)) return;
    const ZoneNote& zone = levels.zones[0];
    Hypothesis h = possibleAt(of, "possible: no baseline, one recording cannot say more");
    h.severity = {"zone", zone.zone, levels.velocityRmsMmS, zone.limit, "mm/s", zone.basis};
    h.sentence = fmt::format("Possible {} at {}: {:.1f} mm/s is zone {} ({}{}); {}. No baseline yet; {}.",
                             faultName(h.fault), h.at, *levels.velocityRmsMmS, zone.zone, zone.basis,
                             zone.indicative ? ", indicative" : "", lines, of.family.test);
    report.hypotheses.push_back(std::move(h));
}

}  // namespace fettle
