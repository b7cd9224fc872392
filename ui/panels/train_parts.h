// Why: a train as a row of places from driver to driven: what stands there and which measuring points are on
// it. Data that the drawn line shows and a test can read. It follows the shafts: what a shaft carries, then
// what leads to the next. Every bearing and point stands in it once, even where nothing leads to its shaft.
// Thread: any.
#pragma once

#include <QString>
#include <vector>

#include "core/machine/machine.h"

namespace fettle {

enum class TrainSymbol { Motor, Coupling, Gear, Belt, Box, Fan, Pump, Driven, Bearing };

struct TrainPoint {
    QString id, tip;
};

struct TrainSlot {
    TrainSymbol symbol = TrainSymbol::Motor;
    QString key;      // of a bearing its place ("driver DE"); of another its component ("driver", "G1")
    QString caption;  // short: "6316", "75 kW"
    QString tip;      // whole sentence, also for screen readers
    std::vector<TrainPoint> points;
    bool isBearing() const { return symbol == TrainSymbol::Bearing; }
};

std::vector<TrainSlot> trainSlots(const Machine& machine);

}  // namespace fettle
