// Why: the place where all sources of one recording add up, channel by channel, as the sensor's foot would
// move. Sources say what a line or a noise is worth at its own housing; the scene knows the path, the
// direction and the sampling. Units: acceleration in g, flux in shares of full scale; levels of lines are
// velocity mm/s r.m.s. or g peak as named. Ownership: borrows the setup, which must outlive it. Thread: one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/simulate/motion.h"
#include "core/simulate/place.h"
#include "core/simulate/simulation.h"

namespace fettle::sim {

enum class Direction { Horizontal, Vertical, Axial };

// A line at perDriver x driver shaft + perSupply x supply; phase in turns.
struct Line {
    double perDriver = 0, perSupply = 0, phase = 0;
};

// How a force shows in the three directions, and how far its phase lags there, in turns.
struct Pattern {
    double horizontal = 1, vertical = 0.8, axial = 0.25;
    double verticalTurns = 0.25, axialTurns = 0;

    double share(Direction direction) const;
    double turns(Direction direction) const;
};

struct SceneChannel {
    std::string name, unit;
    bool flux = false;
    Direction direction = Direction::Horizontal;
    std::vector<double> signal;
};

class Scene {
  public:
    Scene(const SimulationSetup& setup, Motion motion, Place here);

    const SimulationSetup& setup() const { return setup_; }
    const Machine& machine() const { return setup_.machine; }
    const MachineCharacter& character() const { return setup_.character; }
    const Motion& motion() const { return motion_; }
    const Place& here() const { return here_; }
    std::vector<SceneChannel>& channels() { return channels_; }
    std::size_t samples() const { return motion_.samples(); }
    double rateHz() const { return motion_.trueRateHz; }
    double hzOf(const Line& line) const {
        return line.perDriver * motion_.driverHz + line.perSupply * motion_.supplyHz;
    }
    double antialiasGain(double hz) const;
    PathGain pathFrom(const Place& place) const { return pathGain(setup_.machine, here_, place); }

    // Chance of this recording, and chance that stays with the machine for ever.
    RandomStream chance(std::string_view purpose) const { return RandomStream(setup_.seed, purpose); }
    RandomStream voice(std::string_view purpose) const;

    void addVelocity(const Line& line, const Place& place, const Pattern& pattern, double rmsMmS);
    void addAcceleration(const Line& line, const Place& place, const Pattern& pattern, double peakG);
    void addFlux(const Line& line, double peak);
    // A line with a clock of its own, as it arrives here.
    void addForeignVelocity(const std::vector<double>& turns, double hz, const Pattern& pattern,
                            double rmsMmS);
    // A waveform above the shaft orders: takes the short path, and each channel hears each mode differently.
    void addHighBand(const std::vector<double>& signalG, const Place& place, std::string_view mode);
    // Turns of a line at every sample; valid until the next call.
    const std::vector<double>& turnsOf(const Line& line);

  private:
    void addPhasors(const Pattern& pattern, double peakG);

    const SimulationSetup& setup_;
    Motion motion_;
    Place here_;
    std::vector<SceneChannel> channels_;
    std::vector<double> turns_, cosines_, sines_;
};

// g peak of a velocity in mm/s r.m.s. at one frequency.
double peakGOf(double rmsMmS, double hz);

}  // namespace fettle::sim
