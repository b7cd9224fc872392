// Why: all nodes on one grid hear one mains, so at one moment they must agree on its frequency: who does not
// has a wrong sample rate, and whose readings follow the grid's wander of another hour has a wrong clock. The
// grid is the other nodes' median in the same ten minutes, else hour, else day, three of them at least; what
// is left between their own clocks is in the interval. Fewer: the grid's name, +- 0.4 % (50 +- 0.2 Hz: from
// memory of European operating rules). A rate is told from 0.1 % on, interval and all (a crystal is within
// 0.01 %: common practice, no source). A clock is told only where the wander at another hour is followed
// closely and that of the stated hour is not; a grid that hardly moved shows no clock. Units: Hz as read by
// the stated sample rate; errors are shares, stated over true minus 1; times UTC; days since 1970-01-01, UTC.
// Thread: pure.
#pragma once

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/time.h"

namespace fettle {

struct GridReading {
    Instant time{};
    double hz = 0, plusMinusHz = 0;
};
struct GridNode {
    double nominalHz = 50;              // nodes of one nominal frequency are on one grid
    std::vector<GridReading> readings;  // oldest first
};

struct RateError {
    double error = 0, plusMinus = 0;  // 95 %
    std::size_t readings = 0;
    std::size_t neighbours = 0;     // other nodes it was held against, as a rule; 0: the grid's name
    std::chrono::minutes within{};  // how near in time they were
    bool off = false;               // by more than 0.1 %
    std::optional<int> since;       // day from which it has been off, one reading after the other
    bool sinceFirst = false;        // `since` is the first day that was asked
};

struct ClockError {
    std::chrono::minutes ahead{};       // stated less true time; negative: behind
    double likeness = 0, asStated = 0;  // correlation with the grid's wander, put right and as stated
    std::size_t readings = 0;
};

struct GridVerdict {
    std::optional<RateError> rate;    // empty: the mains was not read in those days
    std::optional<ClockError> clock;  // where told
};

// One verdict a node, in the order given, of the readings from `from` on; earlier ones date its beginning.
std::vector<GridVerdict> askGrid(std::span<const GridNode> nodes, Instant from);

// "sample rate 1.90 % (+- 0.03 %) too high against the grid of 12 neighbours, since 2026-05-04"; empty where
// it is in order.
std::string rateWords(const RateError& rate);
// "clock 60 min ahead: its readings follow the grid of an hour that is not theirs (0.96 against 0.10)"
std::string clockWords(const ClockError& clock);

}  // namespace fettle
