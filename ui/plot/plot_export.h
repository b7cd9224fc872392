// Why: what is seen in a plot is wanted in a report, a mail, a spreadsheet: as a picture sharp enough for
// print, as lines of a drawing, or as the numbers behind it, and always with the words that say what it is
// of. A table says whether it holds what is shown or all there is. Numbers: '.' as decimal mark, no grouping,
// units in the head, SI. Files are written beside and put in place when whole. Thread: the window's. Errors:
// a sentence with the file.
#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>
#include <functional>

#include "core/base/result.h"

class QIODevice;

namespace fettle {

class PlotFrame;

enum class TableExtent { AsShown, All };

// Writes a table as CSV; holds all it needs, runs on any thread; false where the device took it not.
using TableWriter = std::function<bool(QIODevice&)>;

QImage plotPicture(PlotFrame& plot, double scale = 2);  // pixels a pixel of the window
QByteArray plotSvg(PlotFrame& plot);
QString asCsv(const QString& tabbed);  // of a table with tabs
void copyPicture(PlotFrame& plot);     // to the clipboard, as pixels and as SVG
void copyTable(const QString& table);
// By the ending of the name: .png .svg .pdf .csv; another ending is refused.
Status savePlot(PlotFrame& plot, const QString& path, TableExtent extent);
// Beside the window; `done` on its thread, not where `plot` is gone by then.
void saveTableBeside(PlotFrame& plot, const QString& path, TableWriter writer,
                     std::function<void(Status)> done);

}  // namespace fettle
