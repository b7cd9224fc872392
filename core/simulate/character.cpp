#include "core/simulate/character.h"

#include <cmath>

#include "core/simulate/random_stream.h"

namespace fettle::sim {

namespace {
constexpr std::uint64_t kCharacterKey = 20260105;

double mobility(const Support& support, double hz) {
    const double r = hz / support.hz;
    const double stiff = 1 - r * r, damped = 2 * support.damping * r;
    return r / std::sqrt(stiff * stiff + damped * damped);
}

std::vector<double> harmonicsOf(RandomStream& chance) {
    std::vector<double> shares;
    double envelope = 0.3;
    for (int order = 2; order <= 10; ++order) {
        shares.push_back(envelope * chance.between(0.4, 1));
        envelope *= 0.5;
    }
    return shares;
}

// A rigid support's first resonance lies well above running speed, a flexible one's below (ISO 20816-3, from
// memory).
void drawSupports(MachineCharacter& character, const Machine& machine, RandomStream& chance) {
    const double turnHz = machine.driver.ratedRpm.value_or(1480) / 60;
    const double ratio = machine.support == "flexible" ? 0.55 : 2.4;
    character.horizontal = {turnHz * ratio * chance.between(0.9, 1.15), chance.between(0.05, 0.1)};
    character.vertical = {character.horizontal.hz * chance.between(1.3, 1.7), chance.between(0.04, 0.08)};
    character.axial = {character.horizontal.hz * chance.between(1.6, 2.2), chance.between(0.04, 0.08)};
}
}  // namespace

MachineCharacter characterOf(const Machine& machine) {
    RandomStream chance(kCharacterKey, machine.tag);
    MachineCharacter character;
    const double size = machine.driver.powerKw.value_or(30) < 15 ? 0.75 : 1;
    character.unbalanceMmS = size * chance.between(0.5, 1.0);
    character.shaftHarmonics = harmonicsOf(chance);
    character.twiceMainsMmS = chance.between(0.06, 0.22);
    character.slotPeakG = chance.between(0.004, 0.015);
    character.bladePassMmS = chance.between(0.12, 0.35);
    character.meshPeakG = chance.between(0.04, 0.1);
    character.beltMmS = chance.between(0.04, 0.15);
    character.floorG = chance.between(0.03, 0.08);
    character.fluxCarrier = chance.between(0.15, 0.4);
    character.fluxEccentricDb = chance.between(-54, -44);
    character.barAsymmetryDb = chance.between(-66, -58);
    character.rumbleMmS = chance.between(0.07, 0.18);
    drawSupports(character, machine, chance);
    return character;
}

std::vector<Mode> modesOf(const std::string& tag, const std::string& component) {
    RandomStream chance(fnv1a(tag, kFnvStart ^ kCharacterKey), component);
    std::vector<Mode> modes;
    const auto draw = [&](double least, double most, double weight) {
        const double hz = chance.between(least, most);
        const double damping = chance.between(0.02, 0.045);
        modes.push_back({hz, damping, weight * chance.between(0.8, 1.2)});
    };
    draw(130, 240, 0.03);
    draw(420, 950, 0.12);
    draw(1500, 2400, 0.25);
    draw(2700, 3900, 0.35);
    draw(4300, 5900, 0.28);
    double sum = 0;
    for (const Mode& mode : modes)
        sum += mode.weight;
    for (Mode& mode : modes)
        mode.weight /= sum;
    return modes;
}

double mobilityRatio(const Support& support, double hz, double referenceHz) {
    return mobility(support, hz) / mobility(support, referenceHz);
}

}  // namespace fettle::sim
