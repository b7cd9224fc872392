// Why: a point hears best what sits in its own housing, less through the base, a coupling, a gearbox or a
// belt. One notion, with one table of what is left of it: how often a line of a bearing fault is expected
// there, which channels are read for a gear or a pump, and what the verdict says of the way. `hears` of the
// description says how a place is heard where the drawing of the train does not. Otherwise the way follows
// from shafts, gears, belts and boxes: places of one housing, housings coupled by a shaft they share, belts.
// Shares: common practice, no source. Thread: pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/machine/machine.h"

namespace fettle {

// From near to far.
enum class Path { OwnPlace, SameHousing, SameBase, ThroughCoupling, ThroughCouplings, ThroughBelt };

// "through coupling": as `hears` has it, and as it is kept.
std::string nameOf(Path path);
// "through the coupling only", for a sentence; empty for a path that takes nothing away.
std::string wordsOf(Path path);
// As a hypothesis keeps it: empty for a path that takes nothing away.
std::string keptName(Path path);
// What is left along the way of a kept name.
double keptCut(const std::string& name);
// The words of a kept name; empty for one that is none.
std::string pathWords(const std::string& name);
// What is left of the share of true faults that show a line.
double wCutOf(Path path);

// What lies between a point and a place of the `at` grammar, heard or not.
Path pathBetween(const Machine& machine, const Point& point, const std::string& at);
// The same where the point hears the place: a point with `hears` hears what it names and where it sits, any
// other point all that no belt parts from it.
std::optional<Path> heardPath(const Machine& machine, const Point& point, const std::string& at);
// From the nearest point of the machine.
Path nearestPath(const Machine& machine, const std::string& at);

// The box, driver, driven machine or gear that a place sits in: its housing's name. A belt or a shaft has
// none of its own: that of the first housing on it.
std::string housingOf(const Machine& machine, const std::string& at);

// "driver DE or NDE" -> "driver DE", "driver NDE"; one place alone as it is.
std::vector<std::string> placesIn(const std::string& at);
// Whether they have a place in common: "driver DE or NDE" and "driver NDE".
bool placesMeet(const std::string& a, const std::string& b);
// The other way round, for two places.
std::string eitherOf(const std::string& a, const std::string& b);

}  // namespace fettle
