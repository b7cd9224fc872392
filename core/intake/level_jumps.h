// Why: a level that jumps by exactly a unit's factor has most likely changed its unit, not its machine:
// 9.80665 (g and m/s2), 1000 (g and mg), 25.4 (inch and mm), 1.414, 2 and 2.828 (r.m.s., peak, peak to peak).
// The recording is taken in, with a word. Only told where velocity and acceleration jump alike (a fault or
// another sample rate moves one more than the other), where the channel's last recordings are so alike that
// the factor cannot be their scatter and were not at the new level already, and only among running ones.
// Source: factors of units; the thresholds: common practice, no source. Units: mm/s and g r.m.s. Thread: one;
// reads the trend store the first time a channel is met.
#pragma once

#include <deque>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

// "level about 9.81 times that of the recordings before, as if g and m/s2 were taken for each other";
// nothing where `now` is within reach of `before` or jumps by another factor. Fewer than 5 before: nothing.
std::optional<std::string> jumpOf(const std::vector<double>& before, double now);

class LevelJumps {
  public:
    explicit LevelJumps(FleetFile& fleet) : fleet_(fleet) {}
    // Of a recording about to be stored; its levels are remembered. Errors: those of the trend store.
    Result<std::vector<std::string>> of(const NewRecording& recording);

  private:
    using Key = std::tuple<std::int64_t, std::string, Quantity>;  // machine; point and channel
    Result<std::string> jumpOfLevel(const NewRecording& recording, const TrendRow& row, Quantity quantity);
    Result<std::deque<double>*> last(const NewRecording& recording, const TrendRow& row, Quantity quantity);
    Result<std::deque<double>> stored(std::int64_t machine, const TrendRow& row, Quantity quantity);

    FleetFile& fleet_;
    std::map<Key, std::deque<double>> last_;
};

}  // namespace fettle
