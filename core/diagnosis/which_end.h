// Why: a motor often has the same bearing at both ends, and one point cannot tell them apart: "driver DE or
// NDE". A week may: a recording long enough parts orders that are not quite alike, and of two points the one
// at the damaged end shakes more at its lines. What parts them is said; where nothing does, both are ordered
// or a reading is taken at the other end. Thresholds: common practice, no source. Thread: pure.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/view.h"
#include "core/machine/machine.h"

namespace fettle {

// How much of a band's r.m.s. swings at the first lines of what was weighed, in g: from their height over the
// floor, taken for that of random noise of the band's level (its squared envelope has 8 s^4 / B a hertz). For
// comparing points, not for limits. 0: none of the lines could be judged.
double swingG(const Weighing& weighed, const ChannelViews& views);

// Which end each "or" of a week stands for.
class EndsOfWeek {
  public:
    EndsOfWeek(const Machine& machine, const std::vector<Examination>& parts);

    // The place that a hypothesis of one recording counts for in the week: the end that was found out, or
    // both where recordings differ in what they part and nothing tells.
    std::string placeOf(const std::string& fault, const std::string& at) const;
    // What is said of it with a finding at a place of the week; empty: there is nothing to tell apart.
    std::string words(const std::string& fault, const std::string& at) const;

  private:
    using Key = std::pair<std::string, std::string>;  // fault, place
    std::map<Key, std::string> places_, words_;
};

}  // namespace fettle
