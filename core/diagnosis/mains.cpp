#include "core/diagnosis/mains.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kCarrierZ = 100;        // a carrier stands 20 dB above its floor ..
constexpr double kCarrierShare = 0.02;   // .. and is not small beside the strongest line of the spectrum
constexpr double kLeads = 0.5;           // share of all flux power that makes it the leader
constexpr double kGridReach = 0.06;      // how far a bad clock may move the mains
constexpr double kVibrationZ = 20;       // of 2 x mains in vibration
constexpr double kOffGridZ = 100;        // of one that is not where a grid may be ..
constexpr double kAlone = 10;            // .. and stands this far, in power, above all others there
constexpr double kLeastSlip = 0.1;       // over the rated one
constexpr double kApartBins = 2.2;       // from the shaft order beside it: two Hann lines
constexpr double kMostSlipByLine = 1.6;  // over the rated one, as in the speed range
constexpr double kTold = 0.001, kGrid = 0.004, kMostClockError = 0.06;
constexpr double kClockByLine = 0.025;  // of a clock that vibration alone may correct
constexpr double kTwiceZ = 12;          // of 4 x mains, which must then be seen too

struct LineReach {
    double least, most;
};

LineReach outputReach(const Machine& machine, const Recording& recording) {
    const Driver& d = machine.driver;
    if (recording.outputHz && *recording.outputHz > 0)
        return {*recording.outputHz * (1 - kGridReach), *recording.outputHz * (1 + kGridReach)};
    const double pairs = d.poles.value_or(0) / 2.0;
    if (pairs > 0 && d.rpmMin && d.rpmMax)
        return {*d.rpmMin / 60 * pairs * (1 - kGridReach),
                *d.rpmMax / 60 * pairs * (1 + kGridReach) +
                    ratedSlipHz(machine).value_or(0) * pairs * kMostSlipByLine};
    if (d.outputHzLeast && d.outputHzMost)
        return {*d.outputHzLeast * (1 - kGridReach), *d.outputHzMost * (1 + kGridReach)};
    return {5, 1.3 * d.ratedHz.value_or(machine.mainsHz)};
}

std::optional<Mains> carrierIn(const FluxView& view, const LineReach& reach) {
    const auto line = strongestOf(linesBetween(view.spectrum, view.z, reach.least, reach.most, kCarrierZ));
    if (!line) return std::nullopt;
    const auto& values = view.spectrum.values;
    const auto from = std::min(values.size(), std::size_t(std::ceil(2 / view.spectrum.stepHz)));
    const double highest = *std::max_element(values.begin() + std::ptrdiff_t(from), values.end());
    if (line->power < kCarrierShare * highest) return std::nullopt;
    const double half = std::max(1.0, 4 * view.spectrum.stepHz);
    const double near = bandRms(view.spectrum, line->hz - half, line->hz + half),
                 all = bandRms(view.spectrum, 2, view.spectrum.frequencyHz(view.z.size()));
    Mains mains{line->hz, line->plusMinusHz, true, false, "flux"};
    mains.leads = near * near > kLeads * all * all;
    return mains;
}

// Mean of the channels' power over floor, as a spectrum that peaks can be placed in.
Spectrum meanOverFloor(const std::vector<ChannelViews>& views, double topHz) {
    Spectrum mean;
    mean.stepHz = views[0].df;
    mean.window = WindowKind::Hann;
    const std::size_t size = std::min(views[0].plainZ.size(), std::size_t(topHz / views[0].df) + 2);
    mean.values.assign(size, 0);
    for (const ChannelViews& v : views)
        for (std::size_t k = 0; k < std::min(size, v.plainZ.size()); ++k)
            mean.values[k] += v.plainZ[k] / double(views.size());
    return mean;
}

// The strongest line where a grid may be; else, for a clock that is off, one that stands alone.
std::optional<PlacedLine> inGridOrAlone(const std::vector<PlacedLine>& lines, double gridLeast,
                                        double gridMost) {
    std::vector<PlacedLine> inGrid;
    for (const PlacedLine& line : lines)
        if (line.hz >= gridLeast && line.hz <= gridMost) inGrid.push_back(line);
    const auto strongest = strongestOf(lines);
    if (!inGrid.empty() || !strongest) return strongestOf(inGrid);
    const bool alone = std::all_of(lines.begin(), lines.end(), [&](const PlacedLine& line) {
        return line.hz == strongest->hz || line.power * kAlone < strongest->power;
    });
    return alone && strongest->z >= kOffGridZ ? strongest : std::nullopt;
}

}  // namespace

bool slips(const Machine& machine) {
    const DriverKind kind = machine.driver.kind;
    return kind == DriverKind::Induction || kind == DriverKind::WoundRotor || kind == DriverKind::TwoSpeed;
}

std::optional<double> ratedSlipHz(const Machine& machine) {
    const Driver& d = machine.driver;
    if (!slips(machine) || !d.ratedRpm || !d.poles) return std::nullopt;
    const double supply = d.inverter ? d.ratedHz.value_or(machine.mainsHz) : machine.mainsHz;
    const double slip = 2 * supply / *d.poles - *d.ratedRpm / 60;
    if (slip <= 0) return std::nullopt;
    return slip;
}

Mains statedMains(const Machine& machine, const Recording& recording, const WeighingSettings& settings) {
    Mains mains{machine.mainsHz, settings.mainsSpreadHz, false, machine.driver.inverter, "nameplate"};
    if (!machine.driver.inverter) return mains;
    if (recording.outputHz) mains.from = "given";
    mains.hz = recording.outputHz.value_or(machine.driver.ratedHz.value_or(machine.mainsHz));
    return mains;
}

std::optional<Mains> mainsInFlux(const Machine& machine, const Recording& recording,
                                 const std::vector<FluxView>& flux) {
    const bool output = machine.driver.inverter;
    const LineReach reach =
        output ? outputReach(machine, recording)
               : LineReach{machine.mainsHz * (1 - kGridReach), machine.mainsHz * (1 + kGridReach)};
    std::optional<Mains> best;
    for (const FluxView& view : flux) {
        auto mains = carrierIn(view, reach);
        if (!mains || (best && best->plusMinusHz <= mains->plusMinusHz)) continue;
        mains->output = output;
        best = mains;
    }
    return best;
}

std::optional<Mains> mainsInVibration(const Machine& machine, const std::vector<ChannelViews>& views,
                                      double shaftHz) {
    const auto ratedSlip = ratedSlipHz(machine);
    if (!ratedSlip || machine.driver.inverter || views.empty() || shaftHz <= 0) return std::nullopt;
    const int poles = *machine.driver.poles;
    const double order = poles * shaftHz, df = views[0].df;
    const double least = std::max(order + kApartBins * df, order + kLeastSlip * *ratedSlip * poles),
                 most = order + 1.25 * kMostSlipByLine * *ratedSlip * poles;
    const double grid = 2 * machine.mainsHz;
    // Where the grid's own place is hidden by the order, a line farther up is not the mains, unless the shaft
    // would have to run above synchronous speed.
    if (least > grid && order < grid) return std::nullopt;
    const Spectrum mean = meanOverFloor(views, 2 * most + 4 * df);
    const std::vector<float> z(mean.values.begin(), mean.values.end());
    const auto lines = linesBetween(mean, z, least, most, kVibrationZ);
    const auto line = inGridOrAlone(lines, grid * (1 - kGrid) - df / 4, grid * (1 + kGrid) + df / 4);
    if (!line) return std::nullopt;
    const double error = std::abs(line->hz / grid - 1);
    if (error > kGrid + df / grid &&
        (error > kClockByLine ||
         linesBetween(mean, z, 2 * (line->hz - df), 2 * (line->hz + df), kTwiceZ).empty()))
        return std::nullopt;
    const double sure = std::max(line->plusMinusHz, df / 2);  // another line may lean on it
    return Mains{line->hz / 2, sure / 2, true, false, "2 x mains in vibration"};
}

ClockCheck checkClock(const Machine& machine, const Mains& mains) {
    ClockCheck check;
    if (!mains.measured || mains.output) return check;
    check.error = mains.hz / machine.mainsHz - 1;
    const double off = std::abs(check.error) - mains.plusMinusHz / mains.hz;
    check.told = off > kTold;
    check.corrected = off > kGrid && off < kMostClockError;
    if (check.told)
        check.detail = fmt::format(
            "the mains reads {:.3f} +- {:.3f} Hz ({}) where the grid has {:g} Hz: {}", mains.hz,
            mains.plusMinusHz, mains.from, machine.mainsHz,
            check.corrected
                ? fmt::format("the stated sample rate is {:+.2f} % off and was corrected by it",
                              check.error * 100)
                : fmt::format("grid or sample rate is {:+.2f} % off; not corrected, a grid may be so far off",
                              check.error * 100));
    return check;
}

}  // namespace fettle
