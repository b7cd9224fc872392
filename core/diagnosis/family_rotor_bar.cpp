// Source: W. T. Thomson, I. Culbert, Current Signature Analysis for Condition Monitoring of Cage Induction
// Motors (2017), ch. 3 to 5 (sidebands f1 (1 +- 2 s), why load and record length decide); three published
// formulae for the number of bars; all from memory. Limits: resources/tables/rotor_bar_limits.json.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/units.h"
#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/line_reading.h"
#include "core/diagnosis/rotor_bar_limits.h"

namespace fettle {

namespace {

constexpr double kTurnsOfPolePass = 8;  // of the record: two lobes of the window apart
constexpr double kLoadNeeded = 0.5;     // of rated, where it is given
constexpr double kSlipNeeded = 0.4;     // of rated slip: the nameplate allows 20 %, heat adds a quarter
constexpr double kStandsOutDb = 6;      // a sideband over the lines farther out

std::vector<std::string> cageDriver(const Machine& machine) {
    if (hasCage(machine)) return {"driver"};
    return {};
}

struct Slip {
    double polePassHz = 0, plusMinusHz = 0;
    std::optional<double> shareOfRated;
};

Slip slipOf(const Listening& of) {
    const int poles = *of.machine.driver.poles;
    const Rates& rates = of.prepared.rates;
    Slip slip;
    slip.polePassHz = 2 * of.supply.hz - poles * rates.shaftHz;
    slip.plusMinusHz = 2 * of.supply.plusMinusHz + poles * rates.shaftSpreadHz;
    const auto rated = of.machine.driver.ratedRpm;
    if (!rated || of.machine.driver.inverter) return slip;
    const double ratedPass = 2 * of.machine.mainsHz - poles * *rated / 60;
    if (ratedPass > 0) slip.shareOfRated = slip.polePassHz / ratedPass;
    return slip;
}

// Why this recording shows no bars; empty: it may.
struct Blind {
    std::string why, cure;
};

Blind blindIn(const Listening& of, const Slip& slip) {
    const double seconds = of.prepared.recording->seconds();
    if (slip.plusMinusHz > slip.polePassHz / 2 || slip.polePassHz <= 0)
        return {fmt::format("pole pass {:.2f} +- {:.2f} Hz: slip is not known well enough", slip.polePassHz,
                            slip.plusMinusHz),
                "stray flux, or a longer recording: speed is needed within 0.02 %"};
    if (seconds < kTurnsOfPolePass / slip.polePassHz)
        return {fmt::format("sidebands {:.2f} Hz from the line cannot be parted from it in {}",
                            slip.polePassHz, secondsText(seconds)),
                fmt::format("a long narrow recording of {} or more, 1 kHz is enough",
                            secondsText(kTurnsOfPolePass / slip.polePassHz))};
    const auto load = of.prepared.recording->loadPct;
    if (load ? *load < 100 * kLoadNeeded : slip.shareOfRated.value_or(1) < kSlipNeeded)
        return {load ? fmt::format("{:.0f} % load: bars carry too little current to show", *load)
                     : fmt::format("slip is {:.0f} % of the rated: bars carry too little current to show",
                                   100 * *slip.shareOfRated),
                "a recording at half load or more"};
    return {};
}

struct Sidebands {
    double lowerDb = 0, upperDb = 0;  // re the carrier, negative
    double polePassHz = 0;
};

// The pair at one distance that stands out most, within what the slip is known.
Sidebands sidebandsOf(const Spectrum& sharp, double carrierHz, const Slip& slip) {
    const double carrier = linePower(sharp, carrierHz), step = sharp.stepHz / 2;
    Sidebands best;
    double largest = -1;
    const double least = std::max(slip.polePassHz - slip.plusMinusHz, 5 * sharp.stepHz);
    for (double d = least; d <= slip.polePassHz + slip.plusMinusHz + step / 2; d += step) {
        const double lower = linePower(sharp, carrierHz - d), upper = linePower(sharp, carrierHz + d);
        if (lower * upper <= largest) continue;
        largest = lower * upper;
        best = {decibels(lower / carrier), decibels(upper / carrier), d};
    }
    return best;
}

// How far the pair stands above what lies beside it: half a pole pass farther out.
bool standsOut(const Spectrum& sharp, double carrierHz, const Sidebands& found) {
    const double beside = linePower(sharp, carrierHz - 1.5 * found.polePassHz);
    const double line = linePower(sharp, carrierHz - found.polePassHz);
    return line > beside * std::pow(10, kStandsOutDb / 10);
}

// Broken bars by three formulae that disagree: a range, never a number.
std::string barsText(const Machine& machine, double belowDb) {
    if (!machine.driver.rotorBars) return "";
    const double bars = *machine.driver.rotorBars, pairs = *machine.driver.poles / 2.0;
    const double ratio = std::pow(10, -belowDb / 20);
    const double byLevel = 2 * bars / (1 / ratio + pairs);
    const double bySum = ratio * bars;
    double bySine = 0;  // ratio = sin(a) / (2 p (2 pi - a)), a = 2 pi n p / R
    for (double n = 0; n < bars / (2 * pairs); n += 0.01) {
        const double a = kTwoPi * n * pairs / bars;
        if (std::sin(a) / (2 * pairs * (kTwoPi - a)) > ratio) break;
        bySine = n;
    }
    const double least = std::min({byLevel, bySum, bySine}), most = std::max({byLevel, bySum, bySine});
    return fmt::format("; by the published formulae {:.0f} to {:.0f} of {:.0f} bars",
                       std::max(1.0, std::floor(least)), std::max(1.0, std::ceil(most)), bars);
}

void addVerdict(const Listening& of, double belowDb, FamilyReport& report) {
    const auto limits = RotorBarLimits::load();
    if (!limits) return;
    const RotorBarLimits::Row* row = limits->rowOf(belowDb);
    if (!row) return;
    Hypothesis h = possibleAt(of, "possible: one recording by a limit, no baseline");
    h.severity = {"db_below_carrier", row->value, belowDb, row->belowDb, "dB", limits->basis};
    h.sentence = fmt::format(
        "Possible broken or cracked rotor bars: the lower pole-pass sideband of the mains stands {:.0f} dB "
        "below "
        "it in flux, over the mark of {:.0f} dB below ({}){}; {}.",
        belowDb, row->belowDb, limits->basis, row->countBars ? barsText(of.machine, belowDb) : "",
        of.family.test);
    report.hypotheses.push_back(std::move(h));
}

void measureFlux(const Listening& of, const Slip& slip, FamilyReport& report) {
    for (const FluxView* flux : of.supply.flux) {
        const Sidebands found = sidebandsOf(flux->spectrum, of.supply.hz, slip);
        if (found.polePassHz <= 0) continue;
        report.add(of, "lower pole-pass sideband of mains", "dB", flux->channel, found.lowerDb);
        if (report.hypotheses.empty() || report.hypotheses.back().fault != of.family.fault)
            if (standsOut(flux->spectrum, of.supply.hz, found)) addVerdict(of, -found.lowerDb, report);
    }
}

// Power between the sidebands about 1x, over 1x: in which sidebands would stand.
double noiseBesideDb(const ChannelViews& views, double shaftHz, const Slip& slip) {
    double sum = 0;
    int places = 0;
    for (const double times : {-2.5, -1.5, 1.5, 2.5}) {
        const double hz = shaftHz + times * slip.polePassHz;
        if (hz <= 0) continue;
        sum += linePower(views.sharp, hz);
        ++places;
    }
    return decibels(sum / places / linePower(views.sharp, shaftHz));
}

// Without flux: noise as high as the sidebands of bars that are probably broken.
void sayIfHidden(const Listening& of, const Slip& slip, FamilyReport& report) {
    const auto limits = RotorBarLimits::load();
    if (!limits || limits->rows.empty()) return;
    const double gravest = -limits->rows.back().belowDb;
    double least = 0;
    for (const ChannelViews* views : of.near)
        least = std::min(least, noiseBesideDb(*views, of.prepared.rates.shaftHz, slip));
    if (least > gravest)
        report.addBlind(
            of,
            fmt::format("noise about 1x stands {:.0f} dB below it: sidebands {:.0f} dB below it hide there",
                        -least, -gravest),
            "stray flux, or a longer recording");
}

void measureBars(const Listening& of, FamilyReport& report) {
    if (!of.machine.driver.poles) {
        report.addBlind(of, "the number of poles is not known", "enter it from the nameplate");
        return;
    }
    if (of.supply.hz <= 0) {
        report.addBlind(of, "the inverter's output frequency is not known",
                        "stray flux, or output_hz with the recording");
        return;
    }
    const Slip slip = slipOf(of);
    const Blind blind = blindIn(of, slip);
    if (!blind.why.empty()) {
        report.addBlind(of, blind.why, blind.cure);
        return;
    }
    measureFlux(of, slip, report);
    if (report.measures.empty() || report.measures.back().fault != of.family.fault)
        sayIfHidden(of, slip, report);
    for (const ChannelViews* views : of.near) {
        const Sidebands found = sidebandsOf(views->sharp, of.prepared.rates.shaftHz, slip);
        if (found.polePassHz > 0)
            report.add(of, "pole-pass sidebands of 1x", "dB", views->channel,
                       (found.lowerDb + found.upperDb) / 2);
    }
}

}  // namespace

FaultFamily rotorBarFamily() {
    return {
        "rotor_bar",
        "sidebands at the pole-pass frequency about 1x in velocity and about the mains in stray flux",
        "radial; flux at the frame",
        "sidebands that stay when the load goes; the same at the sister machine",
        "load swinging at the same rate (gears, mills, belts), axial vents of the rotor, magnetic anisotropy",
        "a record of 8 pole-pass periods or more (8 s at 1 Hz), half load or more, speed within 0.02 %; flux "
        "best",
        "motor current at 75 % load or more by qualified staff, and the same again at another load, decide",
        "W. T. Thomson, I. Culbert, Current Signature Analysis (2017), ch. 3 to 5, from memory",
        "simulation only",
        cageDriver,
        measureBars};
}

}  // namespace fettle
