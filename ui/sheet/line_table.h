// Why: the lines of the verdict as the sheet prints them. A long table is cut by importance: what adds or
// takes most stays, in its order; the rest becomes one row with its sum, so that what is printed still adds
// up to the weight. Decibans to a tenth, as core/exchange prints them. Thread: pure.
#pragma once

#include <QString>
#include <vector>

#include "core/exchange/arithmetic.h"

namespace fettle {

struct PrintedRow {
    int number = 0;  // of the line, also in the spectrum; 0: none
    QString name, expected, found, overFloor, dban;
    double printed = 0;
    ArithmeticRow::Kind kind = ArithmeticRow::Kind::Line;
};

struct PrintedTable {
    std::vector<PrintedRow> rows;
    int cut = 0;  // lines that stand together in one row
};

// At most `mostLines` lines, besides the rest's row, search, mean and weight.
PrintedTable printedTable(const std::vector<ArithmeticRow>& rows, std::size_t mostLines);
// The number a line has in the table and in the spectrum: its place among the lines, from 1.
int lineNumber(const std::vector<ArithmeticRow>& rows, const std::string& name);
QString dbanText(double dban);  // "-7.2", never "-0.0"

}  // namespace fettle
