// Why: everything a balancing job answers, computed anew from what stands in it whenever a value is typed:
// masses for each plane, how they go over the places there are, what vibration to expect then, what
// unbalance is left by the check run beside the permissible one, and everything that is missing, doubtful or
// refused, each at the value it belongs to. One function, so that window, command and printed record cannot
// differ. Places of remarks are those of the document ("/trials/0/sensors/1"). Units: balance_job.h. Thread:
// pure, well under a millisecond. Errors: none; what cannot be computed is a remark.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/workshop/balance_job.h"
#include "core/workshop/four_runs.h"

namespace fettle {

struct BalanceRemark {
    enum class Kind { Missing, Doubt, Refusal };  // Missing: to be typed yet
    Kind kind = Kind::Missing;
    std::string place, words;  // "/rotor/mass_kg"; a sentence
};

struct PlaneAnswer {
    std::optional<double> trialMostG;  // advice: 10 % of the weight it carries as force (rule of thumb)
    std::optional<double> permissibleGmm;
    Polar toFit;                        // grams, beside what sits on the rotor after the trial runs
    SplitMass split;                    // of it
    std::optional<Polar> instead;       // one mass in place of the existing ones and of `toFit`
    double initialGmm = 0;              // unbalance as found
    std::optional<double> residualGmm;  // by the check run
    std::optional<Polar> trim;          // grams to add after the check run
    std::optional<SplitMass> trimSplit;
};

struct SensorAnswer {
    std::optional<Polar> initial, check;       // as read; four runs: amounts at 0 degrees
    std::vector<std::optional<Polar>> trials;  // by run
    std::optional<Polar> predicted;            // with the masses as split
};

struct BalanceAnswer {
    std::vector<BalanceRemark> remarks;  // refusals first
    bool solved = false;
    std::optional<Influence> influence;    // in the frame of phasor.h; not by four runs
    std::optional<FourRunResult> circles;  // of four runs; frame of phasor.h
    double condition = 1;
    std::vector<PlaneAnswer> planes;
    std::vector<SensorAnswer> sensors;
    std::optional<double> offsetUm, permissibleGmm;  // e_per, U_per of the whole rotor
    std::optional<bool> withinGrade;                 // of the check run, every plane

    bool refused() const;
    // Unit a gram of plane p at sensor s; empty: not solved.
    std::optional<double> perGram(std::size_t sensor, std::size_t plane) const;
};

BalanceAnswer solveBalance(const BalanceJob& job);
// To be used by a later job of the same machine; empty where nothing was solved, or by amounts alone.
std::optional<SavedInfluence> influenceToSave(const BalanceJob& job, const std::string& date);

}  // namespace fettle
