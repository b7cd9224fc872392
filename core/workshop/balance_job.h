// Why: a balancing is a job of hours with runs, readings and masses that must be there next year, when the
// same rotor is balanced again: everything that was typed or read, as plain data; whatever can be computed
// from it is computed by balance_solve.h. It is kept as a JSON document in the fleet file (kind "balance").
// Units in the names; angles in degrees as the job's convention counts them (phasor.h), masses in grams at
// the radius of their plane, vibration in `unit`. Thread: plain data. Errors of reading: Invalid, Damaged or
// Unsupported with the place in the document.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/machine/machine.h"
#include "core/workshop/influence.h"
#include "core/workshop/split_mass.h"

namespace fettle {

enum class BalanceMethod { OnePlane, TwoPlanes, FourRuns };

inline std::size_t planesOf(BalanceMethod method) {
    return method == BalanceMethod::TwoPlanes ? 2 : 1;
}

struct VibrationReading {
    double amount = 0;
    std::optional<double> degrees;  // not used by four runs
};

struct BalanceRun {
    std::optional<Polar> trial;                          // of a trial run: grams at degrees
    std::vector<std::vector<VibrationReading>> sensors;  // repeat readings of each sensor
    std::optional<double> rpm, loadPct;
    std::string source;          // "the recording of .."; empty: typed
    std::int64_t recording = 0;  // of the fleet file; 0: typed
};

struct BalancePlane {
    std::string name;
    double radiusMm = 0;                 // 0: not said yet
    std::optional<double> fromCentreMm;  // from the rotor's centre of mass
    PlacesOnRotor places;
    std::vector<FittedMass> existing;  // on the rotor before
};

struct BalanceSensor {
    std::string name;     // "DE horizontal"
    std::string channel;  // of the fleet file, "M-DE x"; empty: a hand instrument elsewhere
    double degrees = 0;   // its place round the shaft, as the drawing shows it
};

struct BalanceRotor {
    std::string component = "driver";  // driver | driven
    std::optional<double> massKg, rpm;
    double grade = 6.3;
    std::string viewedFrom;  // the side angles are looked at from: "coupling side"
    bool clockwise = true;   // as seen from there
};

// Coefficients of an earlier job of this machine; per gram at these radii.
struct SavedInfluence {
    std::string from, date;  // name of the job, "2026-05-10"
    Influence influence;
    std::vector<double> radiiMm;
    std::optional<double> rpm, loadPct;
};

struct BalanceJob {
    std::string machine, name, by, note;
    bool cautionsRead = false;
    BalanceMethod method = BalanceMethod::OnePlane;
    AngleConvention convention;
    TrialMasses trialMasses = TrialMasses::Removed;
    std::string unit = "mm/s r.m.s.";
    BalanceRotor rotor;
    std::vector<BalancePlane> planes;
    std::vector<BalanceSensor> sensors;
    std::optional<SavedInfluence> saved;  // then there are no trial runs
    BalanceRun initial;
    std::vector<BalanceRun> trials;
    std::optional<BalanceRun> check;  // after the correction was fitted
};

std::size_t trialsOf(const BalanceJob& job);
// Lists get the lengths the method asks for; what is there stays, what is too much goes.
void fitToMethod(BalanceJob& job);
// Speed, grade, places and names as the machine's description suggests them.
BalanceJob proposedJob(const Machine& machine, const std::string& component);

std::string toText(BalanceMethod method);  // one_plane two_planes four_runs
std::string balanceJson(const BalanceJob& job);
Result<BalanceJob> readBalance(const std::string& json, const std::string& file);

}  // namespace fettle
