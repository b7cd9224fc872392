// Why: what is known of one machine: nameplate, shafts and what joins them, bearings by place, measuring
// points. All that diagnosis expects to hear follows from it. Plain data, checked once by parseMachine;
// nothing here computes a verdict. Units in the names. Shaft speeds are given as ratios to the driver's
// shaft.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/machine/bearing.h"

namespace fettle {

enum class DriverKind { Induction, WoundRotor, TwoSpeed, PmSynchronous, Reluctance };

struct Driver {
    DriverKind kind = DriverKind::Induction;
    std::optional<double> powerKw, ratedRpm, shaftHeightMm;
    std::optional<int> poles, rotorBars, statorSlots;
    std::string thermalClass;
    bool inverter = false;
    std::optional<double> outputHzLeast, outputHzMost, ratedHz, carrierHz, rpmMin, rpmMax;
};

// A shaft and how fast it turns for one turn of the driver's.
struct Shaft {
    std::string id;
    std::string of;          // "driver", "driven" or empty
    double ratio = 1;        // speed / driver speed
    double ratioSpread = 0;  // relative half-width: belt creep, an unknown ratio's tolerance
};

struct Gear {
    std::string id, from, to, kind;               // shaft ids
    std::array<int, 2> teeth{};                   // on `from`, on `to`; a planetary set: 0
    std::optional<std::array<int, 4>> planetary;  // sun, ring, planet, planets
    std::string fixed;                            // of a planetary set: ring, sun or carrier
};

struct Belt {
    std::string id, from, to, kind;    // kind: vee, flat, toothed
    std::array<double, 2> pulleyMm{};  // pitch diameters on `from`, `to`; 0 where only teeth are given
    std::array<int, 2> teeth{};
    double lengthMm = 0;
    std::array<double, 2> creepPct{0, 2};
};

// A bearing at its place. `at` is the grammar of the contracts: "driver DE", "driven NDE", "G1 box DE".
struct BearingPlace {
    std::string at;
    std::size_t shaft = 0;  // index into Machine::shafts
    std::string component;  // "driver", "driven", "G1 box": one housing
    Bearing bearing;
};

// A housing between driver and driven machine: a gearbox, a pillow block.
struct Box {
    std::string id;
    std::size_t shaft = 0;
};

struct Hears {
    std::string at;
    std::string path;  // same housing | same base | through coupling | through belt
};

struct PointChannel {
    std::string name, quantity, unit, direction;  // quantity: acceleration, velocity, flux, temperature
};

// Which sensor node sat at a point from one date to another ("2025-11-03"; empty: open end).
struct FittedNode {
    std::string id, from, to;
};

struct Point {
    std::string id, at;
    std::string mount = "unknown";  // bearing_housing end_shield frame foot fin_or_cowl unknown
    std::string fixing;             // stud adhesive magnet clamp, or empty
    std::optional<std::array<double, 2>> usableHz;
    std::optional<double> range, noisePerRtHz, intervalMin;  // range and noise in the unit of the channels
    std::vector<FittedNode> nodes;
    std::vector<Hears> hears;  // empty: by the default paths
    std::vector<PointChannel> channels;
};

struct Driven {
    std::string kind;  // fan, pump, compressor, conveyor, crusher, mill ...; empty: nothing driven known
    std::optional<int> blades;
    bool known = false;  // the description has a driven machine
};

// A place in the `at` grammar of machine descriptions: a component, perhaps with a position on it.
struct Place {
    std::string component;  // "driver", "driven", id of a gear, belt, shaft or box
    std::string position;   // "DE", "NDE", another, or empty: the whole component
    std::size_t shaft = 0;
};

struct Machine {
    std::string tag, asset, service, site, area, criticality = "B", coupling;
    bool standby = false;
    double mainsHz = 50;
    std::string support = "unknown";  // rigid flexible unknown
    Driver driver;
    Driven driven;
    std::vector<Shaft> shafts;  // [0] is the driver's
    std::vector<Gear> gears;
    std::vector<Belt> belts;
    std::vector<Box> boxes;
    std::vector<BearingPlace> bearings;
    std::vector<Point> points;  // at least one, each with at least one channel

    std::optional<std::size_t> shaftById(const std::string& id) const;
    const Point* pointById(const std::string& id) const;  // null: no such point
    std::optional<std::size_t> shaftOfDriven() const;
    // Synchronous speed in r/min of a mains-fed machine with known poles.
    std::optional<double> synchronousRpm() const;
    // Rated speed of the driver, else its synchronous speed.
    std::optional<double> nominalRpm() const;
    // The longest component name that starts `at` and ends there or at a space; nothing where none does.
    std::optional<Place> placeOf(const std::string& at) const;
};

struct ParsedMachine {
    Machine machine;
    std::vector<std::string> warnings;  // sentences: unknown keys, what was assumed
};

// Machine description of resources/schemas/machine.schema.json. Errors name file and place ("/driver/poles").
Result<ParsedMachine> parseMachine(const std::string& text, const std::string& file);
// All that keeps a description from being taken, in the order read, at most 20; empty: nothing.
std::vector<Error> machineFaults(const std::string& text, const std::string& file);

}  // namespace fettle
