// Why: recordings whose truth is known, for the sample fleet and for tests of the engine. The only thing
// shared with diagnosis is the machine description; the physics here is written on its own, so that agreement
// means something. Same bytes everywhere: see exact_math.h; every random number follows from `seed` and the
// machine's tag. Units in the names; severity 0 (sound) to 1 (fails soon), its meaning for each kind in
// severity_scale.h. Sources: bearing signals, R. B. Randall and J. Antoni, MSSP 25 (2011) 485-520, sec. 2;
// gears and motors, R. B. Randall, Vibration-based Condition Monitoring (Wiley 2011), ch. 2 (from memory);
// the rest is common practice, no source. Errors: a kind nobody knows, a place the machine does not have, a
// bearing without geometry. Thread: pure function.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/machine/machine.h"
#include "core/simulate/character.h"

namespace fettle::sim {

// One thing that is wrong (or, as a neighbour or a loose node, looks wrong) while the recording is made.
struct Condition {
    std::string kind;           // a row of condition_table.h
    std::string at;             // "driver DE", "driven", "G1"; the grammar of the machine description
    double severity = 0;        // 0 to 1
    double cageShift = 0.003;   // bearing kinds: true cage speed over expected, less 1
    double slipJitter = 0.004;  // bearing kinds: spread of each impact interval, relative
    double rpm = 0;             // neighbour: its speed
    double levelMmS = 0;        // neighbour: 1x, r.m.s., as it arrives at the point
    int blades = 0;             // neighbour: a line at blades x speed; 0: none
};

struct Operation {
    bool energised = true, turning = true;
    double load = 0.75;       // of rated
    double loadSwing = 0.01;  // relative, within the recording
    double mainsHz = 50;      // the grid at that moment
    double outputHz = 0;      // of an inverter; ignored on mains
    double slipFactor = 1;    // true rated slip over the nameplate's (heat, tolerance)
    double beltCreep = 0.4;   // 0 to 1: place within each belt's creep range
    double ambientC = 15;
    double levelFactor = 1, floorFactor = 1;  // the day's drift of lines and of noise
};

// The sensor as built. All channels of a node are sampled together.
struct NodeKind {
    std::string name;
    double rateHz = 12800;       // as stated
    double clockError = 0;       // true rate = stated x (1 + clockError)
    int bits = 16;               // 16 or 24
    double rangeG = 16;          // clips here; integer full scale
    double noisePerRtHz = 1e-4;  // g/sqrt(Hz)
    double mountHz = 0;          // resonance of magnet or glue; 0: none in reach
    double mountDamping = 0.04;
    bool gravity = false;   // measures down to 0 Hz: the vertical channel reads 1 g at rest
    double aliasShare = 0;  // share of a line above half the rate that folds back
};

struct SimulationSetup {
    Machine machine;
    std::size_t point = 0;
    NodeKind node;
    Operation operation;
    std::vector<Condition> conditions;
    MachineCharacter character;  // characterOf(machine) unless a test wants another
    double seconds = 4;          // as the node counts them: samples = seconds x stated rate
    std::uint64_t seed = 1;
};

struct SimulatedChannel {
    std::string name, unit;
    double scale = 1;                   // value = sample / 2^(bits-1) x scale
    std::vector<std::int32_t> samples;  // within the bits of the node
};

struct SimulatedRecording {
    double rateHz = 0;  // as stated
    int bits = 16;
    std::vector<SimulatedChannel> channels;
    // What really was, for truth and tests.
    double trueRateHz = 0, shaftHz = 0, supplyHz = 0, slip = 0, load = 0;
    double frameTempC = 0, ambientTempC = 0;
};

Result<SimulatedRecording> simulate(const SimulationSetup& setup);

// FNV-1a over all samples as little-endian 32-bit words, channel after channel.
std::uint64_t hashOf(const SimulatedRecording& recording);

}  // namespace fettle::sim
