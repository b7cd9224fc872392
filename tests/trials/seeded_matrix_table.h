// Why: what a reader of the matrix asks: is the fault named, how surely, what stands there instead, what had
// the blind spots said, and what is named where nothing was seeded. A verdict is reduced to that, cell by
// cell, then counted. "Possible" findings count as named and are told apart. Thread: pure.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "tests/trials/seeded_matrix_bench.h"

namespace fettle::trials {

inline constexpr std::array<double, 4> kSeverities = {0.25, 0.5, 0.75, 1.0};
inline constexpr std::size_t kUpper = 2;  // severities from here on are the two upper ones

enum class Named { Outright, Possible, Otherwise, Nothing };  // Otherwise: something else is listed

struct Told {
    std::string kind, at, node;  // seeded; kind empty: sound
    double noise = 1;
    std::size_t severity = 0;
    std::string machine = {};
    Named named = Named::Nothing;
    std::string top = "nothing";        // the finding named on top
    std::vector<std::string> findings;  // "fault @ place"
    std::string blind;                  // why it cannot be seen; empty: called visible
    bool unbased = false;               // nothing that speaks for it has a baseline, and the round says so
    std::vector<std::string> changes;   // what the week did to each quantity that speaks for it
    bool isNamed() const { return named == Named::Outright || named == Named::Possible; }
    bool isUpper() const { return severity >= kUpper; }
};

void read(const CellVerdict& said, Told& told);

void printMatrix(const std::vector<Told>& told);
// One line a cell that is not named at the two upper severities, and a sound week in which something is;
// `detail`: with the changes; `all`: cells that are named as well.
void printMissed(const std::vector<Told>& told, bool detail, bool all);

}  // namespace fettle::trials
