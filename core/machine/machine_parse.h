// Why: parseMachine in parts, one file each: train, bearings, points. Each reads its share of the document
// into the Machine and leaves complaints in the report; all are total, so a broken value is reported once and
// reading goes on. Only core/machine/machine_*.cpp include this.
#pragma once

#include <set>
#include <string>

#include "core/base/json_object.h"
#include "core/machine/machine.h"

namespace fettle::machine_parse {

inline constexpr std::size_t kMostShafts = 64;  // also gears, belts and boxes, each
inline constexpr std::size_t kMostBearings = 512;
inline constexpr std::size_t kMostPoints = 256;
inline constexpr std::size_t kMostChannels = 1024;  // of all points together

// What parts of one document share.
struct Reading {
    Machine& machine;
    JsonReport& report;
    std::set<std::string> ids{"driver", "driven"};  // taken: `at` must mean one thing
};

// What the driven machine says of its own speed, until the train is known.
struct DrivenSpeed {
    std::optional<double> ratio;
    double tolerance = 0;
};

// A name on one line, 1 to 100 bytes; `fallback` where absent (with a warning) unless that is empty: then
// required.
std::string readName(JsonObject& object, const std::string& key, const std::string& fallback);
// One of the words, or `otherwise` where absent.
std::string readWord(JsonObject& object, const std::string& key, const std::vector<std::string>& words,
                     const std::string& otherwise);
// The elements of a list of objects, at most `most`; longer lists are reported and cut.
std::vector<const Json*> readList(JsonObject& object, const std::string& key, std::size_t most);

// shafts, gears, belts, intermediate (without its bearings), and every shaft's ratio.
void readTrain(JsonObject& root, const DrivenSpeed& driven, Reading& reading);
// The object of bearings by position of one component.
void readBearings(const Json& bearings, const std::string& place, const std::string& component,
                  std::size_t shaft, Reading& reading);
// Ratios of all shafts from gears, belts and the driven machine's own word; nothing where the report has an
// error already.
void setRatios(const DrivenSpeed& driven, Reading& reading);
void readPoints(JsonObject& root, Reading& reading);

}  // namespace fettle::machine_parse
