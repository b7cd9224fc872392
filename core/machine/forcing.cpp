#include "core/machine/forcing.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <numbers>

namespace fettle {

namespace {
constexpr int kGearHarmonics = 4, kGearSidebands = 3;
constexpr int kBeltHarmonics = 6;
constexpr int kBladeHarmonics = 4;
constexpr int kPolePassCarriers = 3, kPolePassSidebands = 2;
constexpr int kCarrierHarmonics = 2, kCarrierSidebands = 4;  // of the inverter's switching

std::string times(int h, const std::string& name) {
    return h == 1 ? name : fmt::format("{} x {}", h, name);
}

// " + 2 x name", " - 1 x name", or nothing.
std::string sideband(int j, const std::string& name) {
    if (j == 0) return "";
    return fmt::format(" {} {} x {}", j > 0 ? '+' : '-', std::abs(j), name);
}

const Shaft& shaftOf(const Machine& machine, const std::string& id) {
    return machine.shafts[machine.shaftById(id).value_or(0)];
}

class Lines {
  public:
    Lines(const Machine& machine, const ForcingExtent& extent)
        : machine_(machine), extent_(extent), electricalHz_(electricalHz()) {}

    std::vector<ForcingLine> all() {
        addShafts();
        addMains();
        addPolePass();
        addSlots();
        for (const Gear& gear : machine_.gears)
            addGear(gear);
        for (const Belt& belt : machine_.belts)
            addBelt(belt);
        addBlades();
        addCarrier();
        return std::move(lines_);
    }

  private:
    // Rough mains or output frequency, for the cut-off only.
    double electricalHz() const {
        const Driver& driver = machine_.driver;
        if (!driver.inverter) return machine_.mainsHz;
        if (driver.poles) return extent_.shaftHz * *driver.poles / 2;
        return driver.ratedHz.value_or(machine_.mainsHz);
    }

    void add(ForcingLine line) {
        const double hz = line.hz(extent_.shaftHz, electricalHz_);
        if (hz > 0 && hz <= extent_.mostHz) lines_.push_back(std::move(line));
    }

    std::string electrical() const { return machine_.driver.inverter ? "output" : "mains"; }

    std::string shaftName(std::size_t i) const {
        return machine_.shafts.size() == 1 ? "shaft" : machine_.shafts[i].id;
    }

    const Shaft& shaft(const std::string& id) const { return shaftOf(machine_, id); }

    void addShafts() {
        for (std::size_t i = 0; i < machine_.shafts.size(); ++i)
            for (int h = 1; h <= extent_.shaftHarmonics; ++h) {
                const Shaft& one = machine_.shafts[i];
                add({fmt::format("{} x {}", h, shaftName(i)), ForcingKind::Shaft, h * one.ratio, 0,
                     one.ratioSpread});
            }
    }

    void addMains() {
        const auto kind = machine_.driver.inverter ? ForcingKind::Inverter : ForcingKind::Mains;
        for (int h = 1; h <= extent_.mainsHarmonics; ++h)
            add({fmt::format("{} x {}", h, electrical()), kind, 0, static_cast<double>(h), 0});
    }

    bool slips() const {
        const DriverKind kind = machine_.driver.kind;
        return kind == DriverKind::Induction || kind == DriverKind::WoundRotor ||
               kind == DriverKind::TwoSpeed;
    }

    // Pole-pass frequency = poles x (synchronous speed - speed) = 2 f1 - poles x fr.
    void addPolePass() {
        if (!slips() || !machine_.driver.poles) return;
        const double poles = *machine_.driver.poles;
        for (int j = -kPolePassSidebands; j <= kPolePassSidebands; ++j) {
            if (j == 0) continue;
            const std::string pass = sideband(j, "pole pass");
            for (int k = 1; k <= kPolePassCarriers; ++k)
                add({fmt::format("{} x {}{}", k, shaftName(0), pass), ForcingKind::PolePass, k - j * poles,
                     2.0 * j, 0});
            add({fmt::format("2 x {}{}", electrical(), pass), ForcingKind::PolePass, -j * poles, 2 + 2.0 * j,
                 0});
        }
    }

    void addSlots() {
        if (!machine_.driver.rotorBars) return;
        for (int k = -2; k <= 2; ++k)
            add({"rotor slots" + sideband(2 * k, electrical()), ForcingKind::Slots,
                 static_cast<double>(*machine_.driver.rotorBars), 2.0 * k, 0});
    }

    void addGear(const Gear& gear) {
        const double mesh = meshOrder(machine_, gear), spread = shaft(gear.from).ratioSpread;
        for (int h = 1; h <= kGearHarmonics; ++h) {
            const std::string name = times(h, gear.id + " mesh");
            add({name, ForcingKind::GearMesh, h * mesh, 0, spread});
            for (const std::string* id : {&gear.from, &gear.to})
                addSidebands(name, ForcingKind::GearMesh, h * mesh, kGearSidebands, *id, shaft(*id).ratio,
                             spread);
            if (gear.planetary && gear.fixed != "carrier")
                addSidebands(name, ForcingKind::GearMesh, h * mesh, 1, "planet pass of " + gear.to,
                             (*gear.planetary)[3] * shaft(gear.to).ratio, spread);
        }
    }

    void addSidebands(const std::string& carrier, ForcingKind kind, double order, int most,
                      const std::string& of, double step, double spread) {
        for (int j = -most; j <= most; ++j)
            if (j != 0) add({carrier + sideband(j, of), kind, order + j * step, 0, spread});
    }

    // Creep leaves the belt at most that much slower than the rim.
    void addBelt(const Belt& belt) {
        const Shaft& from = shaft(belt.from);
        const double spread = from.ratioSpread + belt.creepPct[1] / 100;
        const double order = beltOrder(machine_, belt);
        for (int h = 1; h <= kBeltHarmonics; ++h) {
            add({times(h, belt.id), ForcingKind::Belt, h * order, 0, spread});
            add({times(h, belt.id + " tooth mesh"), ForcingKind::Belt, h * belt.teeth[0] * from.ratio, 0,
                 from.ratioSpread});
        }
    }

    void addBlades() {
        const auto at = machine_.shaftOfDriven();
        if (!machine_.driven.blades || !at) return;
        const Shaft& turning = machine_.shafts[*at];
        for (int h = 1; h <= kBladeHarmonics; ++h) {
            const std::string name = times(h, "blade pass");
            const double order = h * *machine_.driven.blades * turning.ratio;
            add({name, ForcingKind::BladePass, order, 0, turning.ratioSpread});
            addSidebands(name, ForcingKind::BladePass, order, 1, shaftName(*at), turning.ratio,
                         turning.ratioSpread);
        }
    }

    // Switching does not follow the speed: a fixed frequency with sidebands of the output.
    void addCarrier() {
        if (!machine_.driver.inverter || !machine_.driver.carrierHz) return;
        for (int h = 1; h <= kCarrierHarmonics; ++h)
            for (int j = -kCarrierSidebands; j <= kCarrierSidebands; ++j)
                add({times(h, "carrier") + sideband(j, "output"), ForcingKind::Inverter, 0,
                     static_cast<double>(j), 0, h * *machine_.driver.carrierHz});
    }

    const Machine& machine_;
    const ForcingExtent& extent_;
    double electricalHz_;
    std::vector<ForcingLine> lines_;
};
}  // namespace

double meshOrder(const Machine& machine, const Gear& gear) {
    if (!gear.planetary) return gear.teeth[0] * shaftOf(machine, gear.from).ratio;
    const double sun = (*gear.planetary)[0], ring = (*gear.planetary)[1];
    if (gear.fixed == "carrier") return sun * shaftOf(machine, gear.from).ratio;
    return (gear.fixed == "sun" ? sun : ring) * shaftOf(machine, gear.to).ratio;
}

double beltOrder(const Machine& machine, const Belt& belt) {
    if (belt.lengthMm <= 0) return 0;
    return std::numbers::pi * belt.pulleyMm[0] / belt.lengthMm * shaftOf(machine, belt.from).ratio;
}

std::vector<ForcingLine> forcingLines(const Machine& machine, const ForcingExtent& extent) {
    return Lines(machine, extent).all();
}

}  // namespace fettle
