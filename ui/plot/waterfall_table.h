// Why: weeks of spectra are wanted as numbers too: one row a spectrum, one column a line of the upright axis.
// A year is some 20 million numbers, so they are written row by row, never held as one text, and what writes
// them holds the spectra itself, so that it can run beside the window. SI: time in UTC, Hz or orders (middle
// of the line), amplitude in the unit of the spectra, decibels where they are amplitude ratios; '.' as
// decimal mark; empty where nothing was recorded. Thread: any.
#pragma once

#include <QString>
#include <memory>

#include "ui/plot/plot_export.h"
#include "ui/plot/waterfall_data.h"

namespace fettle {

struct WaterfallTable {
    std::shared_ptr<const WaterfallData> data;
    WaterfallData::Part rows, lines;
    QString head;  // first rows, each with '#'

    std::size_t cells() const { return (rows.last - rows.first) * (lines.last - lines.first); }
    bool write(QIODevice& to, char separator) const;  // false: the device took it not
};

// The part that meets the span of time (ms) and of the upright axis (units of the data), or all of it.
WaterfallTable waterfallTable(std::shared_ptr<const WaterfallData> data, TableExtent extent,
                              const std::pair<double, double>& time, const std::pair<double, double>& upright,
                              const QString& caption);
QString clipboardText(const WaterfallTable& table);  // empty: too many for a clipboard
TableWriter writerOf(WaterfallTable table);

}  // namespace fettle
