// Why: cursors of a spectrum as plain arithmetic: one alone, two with what lies between them, a carrier with
// its harmonics, a carrier with pairs of sidebands; and the table of their lines. A line's height is the
// highest of the line nearest to its place and its two neighbours, its floor the median of the lines about
// it. Units: Hz, orders of the shaft, the plot's unit. Thread: any.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "ui/plot/spectrum_data.h"
#include "ui/plot/spectrum_reading.h"

namespace fettle {

enum class CursorKind { Single, Harmonics, Sidebands, Two };

struct SpectrumCursor {
    CursorKind kind = CursorKind::Single;
    int harmonics = 20;            // with the carrier itself
    int pairs = 5;                 // of sidebands
    double spacingHz = 0;          // of sidebands; 0: the shaft's
    std::optional<double> second;  // Hz, the other one of two
};

struct CursorPlace {
    double hz = 0;
    QString name;  // "1", "2" ..; "-1", "+1" ..; "A", "B"; empty: the only one
};
// The carrier first. `shaftHz` 0: not known.
std::vector<CursorPlace> cursorPlaces(const SpectrumCursor& cursor, double carrierHz, double shaftHz);

struct CursorRow {
    QString name;
    double hz = 0;                // of the line found
    std::optional<double> order;  // where the shaft's speed is known
    double value = 0;             // as shown
    double overFloorDb = 0;
};
// Places beyond the spectrum are left out.
std::vector<CursorRow> cursorRows(const std::vector<CursorPlace>& places, const SpectrumData& data,
                                  const SpectrumReading& reading);
// Median of the measured lines about one, itself left out with its skirt.
double floorAbout(const SpectrumData& data, std::size_t line);

}  // namespace fettle
