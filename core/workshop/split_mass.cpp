#include "core/workshop/split_mass.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fettle {

namespace {

constexpr int kMostSweeps = 20000;
constexpr double kPrice = 1e-4;  // of a gram, in the least sum of masses
constexpr double kNothingG = 1e-9;

struct FreePlace {
    int number = 0;
    Phasor direction;
    double massG = 0;
};

std::vector<FreePlace> freePlaces(const PlacesOnRotor& places) {
    std::vector<FreePlace> free;
    for (int number = 1; number <= places.count; ++number)
        if (places.isFree(number)) free.push_back({number, phasorOf({1, places.degreesOf(number)}), 0});
    return free;
}

Phasor sumOf(const std::vector<FreePlace>& places) {
    Phasor sum;
    for (const FreePlace& place : places)
        sum += place.massG * place.direction;
    return sum;
}

// Masses of two places that make up `wanted`; nothing where one would have to pull the other way.
bool solvePair(Phasor wanted, FreePlace& a, FreePlace& b) {
    const double cross = (std::conj(a.direction) * b.direction).imag();
    if (std::abs(cross) < 1e-9) return false;
    const double first = (std::conj(wanted) * b.direction).imag() / cross;
    const double second = (std::conj(a.direction) * wanted).imag() / cross;
    if (first < -kNothingG || second < -kNothingG) return false;
    a.massG = std::max(first, 0.0);
    b.massG = std::max(second, 0.0);
    return true;
}

// The free neighbours to either side of the angle, less than half a turn apart.
bool byNeighbours(const Polar& mass, double most, std::vector<FreePlace>& free) {
    FreePlace *before = nullptr, *after = nullptr;
    double back = 360, on = 360;
    for (FreePlace& place : free) {
        const double way = turned(polarOf(place.direction).degrees - mass.degrees + 1e-9);
        if (way < on) {
            on = way;
            after = &place;
        }
        if (360 - way < back) {
            back = 360 - way;
            before = &place;
        }
    }
    if (on < 1e-6 && mass.amount <= most) {
        after->massG = mass.amount;
        return true;
    }
    if (!before || before == after || back + on >= 179.9) return false;
    if (!solvePair(phasorOf(mass), *before, *after)) return false;
    if (before->massG <= most && after->massG <= most) return true;
    before->massG = after->massG = 0;
    return false;
}

// Bounded least squares with a small price on every gram, place by place; convex, so it comes to rest.
void byAll(Phasor wanted, double most, std::vector<FreePlace>& free) {
    const double price = kPrice * std::abs(wanted);
    Phasor left = wanted;
    for (int sweep = 0; sweep < kMostSweeps; ++sweep) {
        double moved = 0;
        for (FreePlace& place : free) {
            const double pull = (std::conj(place.direction) * left).real() + place.massG - price;
            const double next = std::clamp(pull, 0.0, most);
            left -= (next - place.massG) * place.direction;
            moved = std::max(moved, std::abs(next - place.massG));
            place.massG = next;
        }
        if (moved < 1e-10 * std::abs(wanted)) return;
    }
}

// Without the price: where two places are neither empty nor full they take what is left exactly.
void polish(Phasor wanted, double most, std::vector<FreePlace>& free) {
    std::vector<FreePlace*> loose;
    for (FreePlace& place : free)
        if (place.massG > 1e-4 * std::abs(wanted) && place.massG < most * (1 - 1e-9)) loose.push_back(&place);
    if (loose.size() != 2) return;
    const Phasor rest =
        wanted - sumOf(free) + loose[0]->massG * loose[0]->direction + loose[1]->massG * loose[1]->direction;
    FreePlace a = *loose[0], b = *loose[1];
    if (!solvePair(rest, a, b) || a.massG > most || b.massG > most) return;
    *loose[0] = a;
    *loose[1] = b;
}

void roundTo(double stepG, double most, std::vector<FreePlace>& free) {
    if (!(stepG > 0)) return;
    for (FreePlace& place : free) {
        place.massG = std::round(place.massG / stepG) * stepG;
        if (place.massG > most) place.massG = std::floor(most / stepG) * stepG;
    }
}

}  // namespace

bool PlacesOnRotor::isFree(int number) const {
    return std::find(taken.begin(), taken.end(), number) == taken.end();
}

SplitMass splitOver(const Polar& mass, const PlacesOnRotor& places) {
    SplitMass split;
    const double most = places.mostG.value_or(std::numeric_limits<double>::max());
    std::vector<FreePlace> free = freePlaces(places);
    if (places.count <= 0) free = {{0, phasorOf({1, mass.degrees}), std::min(mass.amount, most)}};
    const Phasor wanted = phasorOf(mass);
    if (places.count > 0 && mass.amount > 0 && !byNeighbours(mass, most, free)) {
        byAll(wanted, most, free);
        polish(wanted, most, free);
    }
    roundTo(places.stepG, most, free);
    for (const FreePlace& place : free)
        if (place.massG > 1e-4 * mass.amount && place.massG > kNothingG)
            split.masses.push_back({place.number, {place.massG, polarOf(place.direction).degrees}});
    Phasor left = wanted;
    for (const PlacedMass& placed : split.masses)
        left -= phasorOf(placed.mass);
    split.leftOver = std::abs(left) > kNothingG ? polarOf(left) : Polar{};
    return split;
}

Polar combined(std::span<const FittedMass> masses, double radiusMm) {
    Phasor gmm;
    for (const FittedMass& one : masses)
        gmm += one.radiusMm * phasorOf(one.mass);
    return radiusMm > 0 ? polarOf(gmm / radiusMm) : Polar{};
}

}  // namespace fettle
