// Why: a plot of the window stands on paper as well: laid out as large as its place there although it is
// never seen, its labels in the sheet's letters. `rect` in the painter's own units. Thread: the window's.
#pragma once

#include <QRectF>

class QPainter;

namespace fettle {

class PlotFrame;

void setPaperLabels(PlotFrame& frame);
// Lays it out without drawing: axes may be set for this size afterwards.
void prepareOnPaper(PlotFrame& frame, const QPainter& painter, const QRectF& rect);
void drawOnPaper(PlotFrame& frame, QPainter& painter, const QRectF& rect);

}  // namespace fettle
