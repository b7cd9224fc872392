// Why: a table that is copied or saved goes into a spreadsheet, and names in it are a user's or a stranger's:
// a cell that would start a formula (= + - @, not a number) begins with an apostrophe, as in the exported
// tables of the command program (core/exchange/csv_cell.h). Cells are parted by tabs, rows by line ends.
// Thread: any.
#pragma once

#include <QString>

namespace fettle {

QString withoutFormulas(const QString& tabbed);

}  // namespace fettle
