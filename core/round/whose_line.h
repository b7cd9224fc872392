// Why: a line that does not belong to a machine comes through the floor or the coupling from another; when
// that one stops, the line stops with it. Each stop of a neighbour is one question, answered by the
// recordings in it; a run before it in which the line was there makes it a question at all. How often chance
// alone gives as many absences among the stops: hypergeometric over the neighbour's stops and runs, each one
// vote whatever its length (R. A. Fisher, The Design of Experiments (1935), chapter II), times the number of
// machines asked. It takes stops and runs for exchangeable: a line that faded for good part-way may mislead
// it. Times UTC. Thread: pure.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/time.h"

namespace fettle {

struct LineSeen {
    Instant time{};
    bool there = false;
};
enum class Turning { Yes, No, Unknown };
struct TurningAt {
    Instant time{};
    Turning turning = Turning::Unknown;
};
struct Neighbour {
    std::string machine;
    bool itself = false;             // the machine on which the line was seen
    std::vector<TurningAt> turning;  // oldest first
};

struct LeavesWith {
    std::string machine;
    bool itself = false;
    std::size_t stops = 0, left = 0;  // stops asked; of these the line was gone
    std::size_t runs = 0, gone = 0;   // runs with recordings; of these the line was gone
    double chance = 1;                // of as many absences among its stops, times the machines asked
    std::string words;                // "leaves with FN-02 in 31 of 32 stops"
};
// A neighbour's state holds between two recordings alike and no farther apart than this (common practice).
inline constexpr std::chrono::hours kStateHolds{36};
// And so long before and after a recording of it, half-way to another state at most (common practice).
inline constexpr std::chrono::hours kStateReaches{6};

// Most likely first; those without a stop that could be asked last.
std::vector<LeavesWith> leavesWith(std::span<const LineSeen> seen, std::span<const Neighbour> neighbours);

// P(X >= hits) of X marked among `drawn` from `all` of which `marked` are.
double hypergeometricTail(std::size_t all, std::size_t marked, std::size_t drawn, std::size_t hits);

}  // namespace fettle
