// Source: W. T. Thomson, I. Culbert, Current Signature Analysis (2017), ch. 8 and 9 (eccentricity f1 +- fr,
// slot lines); S. Nandi, H. Toliyat, X. Li, Condition monitoring and fault diagnosis of electrical motors,
// IEEE Trans. Energy Conversion 20 (2005) 719-729; twice the mains as in common textbooks; all from memory.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/units.h"
#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/line_reading.h"

namespace fettle {

namespace {

constexpr double kPartedBins = 5;  // of two lines under a Hann window
constexpr double kFluxPartedBins = 8;
constexpr int kSlotSidebands = 1;  // R fr +- 2 k f1

std::vector<std::string> driverPlace(const Machine&) {
    return {"driver"};
}

std::vector<std::string> driverWithAirGap(const Machine& machine) {
    if (machine.driver.kind == DriverKind::Reluctance) return {};
    return {"driver"};
}

bool supplyUnknown(const Listening& of, FamilyReport& report) {
    if (of.supply.hz > 0) return false;
    report.addBlind(of, "the inverter's output frequency is not known",
                    "stray flux, or output_hz with the recording");
    return true;
}

// The shaft order nearest to a frequency, on any shaft.
struct NearOrder {
    double apartHz = 1e9, plusMinusHz = 0;
    std::string name;
};

NearOrder nearestOrder(const Listening& of, double hz) {
    NearOrder nearest;
    for (const Shaft& shaft : of.machine.shafts) {
        const double turn = shaft.ratio * of.prepared.rates.shaftHz;
        const double order = std::max(1.0, std::round(hz / turn));
        if (std::abs(hz - order * turn) >= nearest.apartHz) continue;
        nearest.apartHz = std::abs(hz - order * turn);
        nearest.plusMinusHz =
            order * shaft.ratio *
            (of.prepared.rates.shaftSpreadHz + shaft.ratioSpread * of.prepared.rates.shaftHz);
        nearest.name = fmt::format("{:.0f} x {}", order,
                                   of.machine.shafts.size() == 1 ? std::string("shaft") : shaft.id);
    }
    return nearest;
}

// Highest line within reach of twice the supply: it need not stand on a bin, nor the mains at 50.000 Hz.
double whereTwiceIs(const Listening& of, const ChannelViews& views) {
    const double middle = 2 * of.supply.hz, reach = 2 * of.supply.plusMinusHz + views.df;
    const auto first = std::size_t(std::max(1.0, (middle - reach) / views.df));
    const auto last = std::min(views.spectrum.values.size(), std::size_t((middle + reach) / views.df) + 2);
    const auto top = std::max_element(views.spectrum.values.begin() + std::ptrdiff_t(std::min(first, last)),
                                      views.spectrum.values.begin() + std::ptrdiff_t(last));
    return double(top - views.spectrum.values.begin()) * views.df;
}

// True where twice the supply stands clear of every shaft order in this record; else a blind spot.
bool parted(const Listening& of, const ChannelViews& views, FamilyReport& report) {
    const NearOrder near = nearestOrder(of, 2 * of.supply.hz);
    const double unsure = near.plusMinusHz + 2 * of.supply.plusMinusHz;
    if (near.apartHz - unsure >= kPartedBins * views.df) return true;
    const double left = near.apartHz - unsure;
    const bool byLength = left > 0;
    report.addBlind(
        of,
        fmt::format("2 x {} at {:.2f} Hz lies {:.2f} Hz from {}: they cannot be parted in {}",
                    of.machine.driver.inverter ? "output" : "mains", 2 * of.supply.hz, near.apartHz,
                    near.name, secondsText(1 / views.df)),
        byLength ? fmt::format("a long narrow recording of {} or more, 1 kHz is enough",
                               secondsText(std::ceil(kPartedBins / left)))
                 : "a long narrow recording with stray flux, so that mains and speed are known better");
    return false;
}

void measureTwice(const Listening& of, FamilyReport& report) {
    if (supplyUnknown(of, report)) return;
    for (const ChannelViews* views : of.near) {
        if (2 * of.supply.hz > usableTopHz(*views, of.prepared.roles[views->channel].point)) continue;
        if (!parted(of, *views, report)) continue;
        const double mmS = lineMmS(*views, {whereTwiceIs(of, *views), 0});
        report.add(of, "2 x mains", "mm/s", views->channel, mmS);
        addPossible(of, views->channel, mmS, fmt::format("twice the mains makes up {:.1f} mm/s of it", mmS),
                    report);
    }
}

bool fluxMissing(const Listening& of, FamilyReport& report) {
    if (!of.supply.flux.empty()) return false;
    report.addBlind(of, "no stray flux in this recording", "a node with a flux channel at the motor's frame");
    return true;
}

void measureSupply(const Listening& of, FamilyReport& report) {
    if (supplyUnknown(of, report) || fluxMissing(of, report)) return;
    for (const FluxView* flux : of.supply.flux) {
        const double third = 3 * of.supply.hz;
        if (third + 4 * flux->spectrum.stepHz >
            flux->spectrum.stepHz * double(flux->spectrum.values.size())) {
            report.addBlind(of, "the third harmonic lies above what this flux channel carries",
                            "a higher sample rate");
            continue;
        }
        report.add(of, "3 x mains in flux", "dB", flux->channel,
                   decibels(linePower(flux->spectrum, third) / linePower(flux->spectrum, of.supply.hz)));
    }
}

// f1 - fr and f1 + fr over the mains, where they stand clear of it: with two poles f1 - fr is the slip
// itself.
void measureEccentricity(const Listening& of, const FluxView& flux, FamilyReport& report) {
    const double f1 = of.supply.hz, fr = of.prepared.rates.shaftHz;
    const double apart = std::abs(f1 - fr);
    if (apart < kFluxPartedBins * flux.spectrum.stepHz) {
        report.addBlind(
            of,
            fmt::format("f1 +- fr lie {:.2f} Hz from the mains and twice the mains: they cannot be "
                        "parted in {}",
                        apart, secondsText(1 / flux.spectrum.stepHz)),
            fmt::format("a long narrow recording of {} or more, 1 kHz is enough",
                        secondsText(std::ceil(kFluxPartedBins / std::max(apart, 0.01)))));
        return;
    }
    const double both = linePower(flux.spectrum, f1 - fr) + linePower(flux.spectrum, f1 + fr);
    report.add(of, "f1 +- fr in flux", "dB", flux.channel, decibels(both / linePower(flux.spectrum, f1)));
}

void measureSlots(const Listening& of, FamilyReport& report) {
    if (!of.machine.driver.rotorBars) {
        report.addBlind(of, "the number of rotor bars is not known, so the slot lines are not",
                        "enter rotor_bars, from the maker or a slot count");
        return;
    }
    const double bars = *of.machine.driver.rotorBars;
    const Rates& rates = of.prepared.rates;
    for (const ChannelViews* views : of.near) {
        std::vector<LineAt> lines;
        for (int k = -kSlotSidebands; k <= kSlotSidebands; ++k)
            lines.push_back({bars * rates.shaftHz + 2 * k * of.supply.hz,
                             bars * rates.shaftSpreadHz + 2 * std::abs(k) * of.supply.plusMinusHz});
        const double top = usableTopHz(*views, of.prepared.roles[views->channel].point);
        if (lines.back().hz > top)
            report.addBlind(of,
                            fmt::format("slot lines at {:.0f} Hz lie above {:.0f} Hz", lines.back().hz, top),
                            fmt::format("a sample rate of {:.0f} Hz or more", 2.5 * lines.back().hz));
        else
            report.add(of, "slot passing over floor", "g", views->channel, linesOverFloorG(*views, lines));
    }
}

void measureAirGap(const Listening& of, FamilyReport& report) {
    if (supplyUnknown(of, report)) return;
    if (!fluxMissing(of, report))
        for (const FluxView* flux : of.supply.flux)
            measureEccentricity(of, *flux, report);
    if (hasCage(of.machine)) measureSlots(of, report);
}

}  // namespace

FaultFamily twiceMainsFamily() {
    return {
        "electrical_2x_mains",
        "2 x mains (inverter: output) in velocity, without sidebands",
        "radial at the frame",
        "a line that stays when the supply is cut: it is 2 x shaft then",
        "2 x shaft beside it, a twisted frame on a soft foot, unbalanced supply, a frame resonance near it",
        "long enough to part it from the nearest shaft order: 4 s at 1484 r/min, 8 s for two poles",
        "first three voltages and currents, by qualified staff; then whether the line goes at once when the "
        "supply is cut decides. It may be unbalanced supply, a twisted frame, a static gap or a loose core",
        "common textbooks, from memory",
        "simulation only",
        driverPlace,
        measureTwice};
}

FaultFamily airGapFamily() {
    return {"air_gap",
            "f1 +- fr in stray flux, slot-passing lines bars x fr +- 2 f1 in acceleration",
            "radial; flux at the frame",
            "slot lines rising with load alone, and falling with it",
            "load, a changed sensor place (flux), a resonance at the slot lines",
            "stray flux; for the slot lines their number and a sample rate of 2.5 x their frequency",
            "the gap at four places at standstill by qualified staff, and a check of the feet under "
            "lock-out, decide",
            "Thomson and Culbert (2017), ch. 8; Nandi, Toliyat and Li (2005); from memory",
            "simulation only",
            driverWithAirGap,
            measureAirGap};
}

FaultFamily supplyUnbalanceFamily() {
    return {"supply_unbalance",
            "third harmonic in stray flux, with 2 x mains in velocity",
            "radial; flux at the frame",
            "2 x mains alone: frame, gap or core are as likely",
            "saturation, an inverter nearby, a changed sensor place",
            "stray flux to 3 x mains, at one spot",
            "three voltages and currents, by qualified staff, decide",
            "NEMA MG 1 section 12.45 (what unbalance is), the pattern from memory",
            "simulation only",
            driverPlace,
            measureSupply};
}

}  // namespace fettle
