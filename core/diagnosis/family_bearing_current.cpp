// Source: fluting of bearings on inverter motors, a hump of vibration about 1 to 3 kHz beside race lines;
// common practice, no source. Shaft grounding and an insulated bearing as in IEC TS 60034-25 (cited by
// title).
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/line_reading.h"

namespace fettle {

namespace {

constexpr double kHumpLowHz = 1000, kHumpHighHz = 3000;
constexpr double kBelowLowHz = 500, kBelowHighHz = 800, kAboveLowHz = 3600, kAboveHighHz = 5000;
constexpr double kAboveNeedsHz = 4000;
constexpr double kHumpDb = 6;          // over the noise on either side
constexpr double kRaceLinesDban = 20;  // a finding

std::vector<std::string> inverterDriver(const Machine& machine) {
    if (machine.driver.inverter) return {"driver"};
    return {};
}

const Hypothesis* raceFinding(const Listening& of) {
    const Hypothesis* strongest = nullptr;
    for (const Hypothesis& h : of.weighed) {
        const bool race = h.fault == "bearing_outer_race" || h.fault == "bearing_inner_race";
        if (!race || !h.at.starts_with("driver") || h.weightDban.value_or(0) < kRaceLinesDban) continue;
        if (!strongest || h.weightDban > strongest->weightDban) strongest = &h;
    }
    return strongest;
}

void addPossibleCurrent(const Listening& of, double humpDb, FamilyReport& report) {
    const Hypothesis* race = raceFinding(of);
    if (!race || humpDb < kHumpDb) return;
    Hypothesis h;
    h.fault = of.family.fault;
    h.at = of.at;
    h.provedOn = of.family.provedOn;
    h.recordingCount = 1;
    h.why = "possible: race lines and a hump beside them";
    h.severity = race->severity;
    h.against = {std::string("would speak against it: ") + of.family.against};
    h.sentence = fmt::format(
        "Possible bearing current at {}: an inverter, race lines of {:.0f} decibans, and noise from 1 to 3 "
        "kHz {:.0f} "
        "dB above its neighbours. A new bearing alone fails again; {}.",
        race->at, *race->weightDban, humpDb, of.family.test);
    report.hypotheses.push_back(std::move(h));
}

void measureHump(const Listening& of, FamilyReport& report) {
    double largest = -100;
    for (const ChannelViews* views : of.near) {
        const double top = usableTopHz(*views, of.prepared.roles[views->channel].point);
        if (top < kAboveNeedsHz) {
            report.addBlind(
                of,
                fmt::format("its hump at 1 to 3 kHz needs noise beside it, this channel can be read "
                            "to {:.0f} Hz",
                            top),
                "a sample rate of 9 kHz or more and a stud or adhesive mount");
            continue;
        }
        const double beside = (floorDb(*views, kBelowLowHz, kBelowHighHz) +
                               floorDb(*views, kAboveLowHz, std::min(top, kAboveHighHz))) /
                              2;
        const double hump = floorDb(*views, kHumpLowHz, kHumpHighHz) - beside;
        report.add(of, "hump 1-3 kHz", "dB", views->channel, hump);
        largest = std::max(largest, hump);
    }
    addPossibleCurrent(of, largest, report);
}

}  // namespace

FaultFamily bearingCurrentFamily() {
    return {"bearing_current",
            "lines of both races with a hump of noise at 1 to 3 kHz",
            "radial",
            "no race lines, or a hump at standstill too",
            "a structural or mounting resonance at 1 to 3 kHz, a dry bearing",
            "an inverter motor, a point at its bearing, readable to 4 kHz or more",
            "shaft voltage with a brush by qualified staff, and the washboard pattern in the opened bearing, "
            "decide; "
            "then shaft grounding or an insulated bearing at one end",
            "common practice, no source",
            "simulation only",
            inverterDriver,
            measureHump};
}

}  // namespace fettle
