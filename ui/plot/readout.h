// Why: one way of saying a value under the pointer in every plot and panel: enough digits to act on, '.' as
// decimal mark, no grouping, always the unit.
#pragma once

#include <QString>

namespace fettle {

// `digits` significant ones, never an exponent: "0.00123", "4.18", "6215".
QString significant(double value, int digits = 3);
// "0.321 mm/s r.m.s."; amplitude ratios in decibels: "12.4 dB over floor".
QString valueText(double value, const QString& unit, bool decibels = false);
// "103.58 Hz, 4.182 x, 6214.8 r/min"; without the order where the shaft's speed is not known (0).
QString frequencyText(double hz, double shaftHz);

}  // namespace fettle
