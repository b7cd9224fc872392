#include "core/simulate/motion.h"

#include "core/simulate/exact_math.h"
#include "core/simulate/simulation.h"

namespace fettle::sim {

namespace {
constexpr double kFullTurn = 6.283185307179586;

// Slow swings: a value that moves as a sum of sines, none faster than a few Hz.
struct Swing {
    double share, hz, phase;
};

std::vector<Swing> drawSwings(RandomStream& chance) {
    std::vector<Swing> swings;
    for (const double hz : {0.07, 0.19, 0.47, 1.1, 2.3}) {
        const double trueHz = hz * chance.between(0.8, 1.25);
        swings.push_back({chance.between(0.3, 1) / 1.5, trueHz, chance.uniform()});
    }
    return swings;
}

// out[i] += gain x integral of the swing from 0 to t_i.
void addIntegral(const std::vector<Swing>& swings, double gain, double rateHz, std::vector<double>& out) {
    std::vector<double> phase(out.size());
    for (const Swing& swing : swings) {
        const double scale = gain * swing.share / (kFullTurn * swing.hz);
        const double step = swing.hz / rateHz;
        for (std::size_t i = 0; i < phase.size(); ++i)
            phase[i] = double(i) * step + swing.phase - 0.25;
        const double start = scale * exact::cosine(swing.phase);
        exact::addSines(phase, scale, out);
        for (double& value : out)
            value += start;
    }
}

int polesByRating(const Machine& machine) {
    if (machine.driver.poles) return *machine.driver.poles;
    const double turnHz = machine.driver.ratedRpm.value_or(1480) / 60;
    const double pairs = exact::nearestWhole(machine.mainsHz / turnHz);
    return 2 * int(pairs < 1 ? 1 : pairs);
}

bool hasCage(DriverKind kind) {
    return kind != DriverKind::PmSynchronous && kind != DriverKind::Reluctance;
}

double nominalHz(const Machine& machine) {
    return machine.driver.inverter ? machine.driver.ratedHz.value_or(machine.mainsHz) : machine.mainsHz;
}

// Slip at rated load, in Hz of the supply: a motor on an inverter keeps it over its whole range.
double ratedSlipHz(const Machine& machine) {
    if (!hasCage(machine.driver.kind)) return 0;
    const double synchronous = 2 * nominalHz(machine) / polesByRating(machine);
    const double rated = machine.driver.ratedRpm.value_or(synchronous * 60 * 0.98) / 60;
    return nominalHz(machine) * (1 - rated / synchronous);
}

std::vector<double> ratiosOf(const Machine& machine, double creepPlace) {
    std::vector<double> ratios;
    for (const Shaft& shaft : machine.shafts)
        ratios.push_back(exact::steady(shaft.ratio) *
                         (1 + exact::steady(shaft.ratioSpread) * (1 - 2 * creepPlace)));
    if (ratios.empty()) ratios.push_back(1);
    return ratios;
}
}  // namespace

double ratedShaftHz(const Machine& machine) {
    const double synchronous = 2 * nominalHz(machine) / polesByRating(machine);
    return machine.driver.ratedRpm.value_or(synchronous * 60 * 0.98) / 60;
}

Motion makeMotion(const Machine& machine, const Operation& operation, double trueRateHz, std::size_t samples,
                  RandomStream chance) {
    Motion motion;
    motion.trueRateHz = trueRateHz;
    motion.shaftRatios = ratiosOf(machine, operation.beltCreep);
    const double supplyHz = machine.driver.inverter ? operation.outputHz : operation.mainsHz;
    const double slipHz = ratedSlipHz(machine) * operation.slipFactor * operation.load;
    const auto supplySwing = drawSwings(chance), loadSwing = drawSwings(chance);
    motion.supplyTurns.assign(samples, 0);
    addIntegral(supplySwing, 0.003, trueRateHz, motion.supplyTurns);
    std::vector<double> slipTurns(samples, 0);
    addIntegral(loadSwing, slipHz * operation.loadSwing, trueRateHz, slipTurns);
    const double supplyStart = chance.uniform(), driverStart = chance.uniform();
    const double perSupply = 2.0 / polesByRating(machine);
    motion.driverTurns.resize(samples);
    for (std::size_t i = 0; i < samples; ++i) {
        const double t = double(i) / trueRateHz;
        const double supply = supplyHz * t + motion.supplyTurns[i];
        motion.driverTurns[i] = driverStart + perSupply * (supply - (slipHz * t + slipTurns[i]));
        motion.supplyTurns[i] = supplyStart + supply;
    }
    const double span = double(samples - 1) / trueRateHz;
    motion.supplyHz = (motion.supplyTurns.back() - motion.supplyTurns.front()) / span;
    motion.driverHz = (motion.driverTurns.back() - motion.driverTurns.front()) / span;
    motion.slip = 1 - motion.driverHz / (motion.supplyHz * perSupply);
    return motion;
}

}  // namespace fettle::sim
