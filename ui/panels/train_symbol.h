// Why: the strokes of the train's symbols, in one pen, so that they look alike and print. Simplified after
// the usual signs of machine drawings: a circle with M, a square with an upright cross for a rolling bearing
// (ISO 8826-1), circles for wheels. Thread: the painter's.
#pragma once

#include <QPainter>

#include "ui/panels/train_parts.h"

namespace fettle {

// Within `box`, the shaft at half its height; the pen is the caller's.
void paintTrainSymbol(QPainter& painter, TrainSymbol symbol, const QRectF& box, const QColor& ground);

}  // namespace fettle
