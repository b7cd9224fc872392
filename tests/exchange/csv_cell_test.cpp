// Text in a CSV cell: quoting as RFC 4180, section 2, rules 5 to 7; the apostrophe before what a spreadsheet
// would take for a formula: common practice, no source.
#include "core/exchange/csv_cell.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

TEST(CsvCell, QuotesAndKeepsAFormulaFromStarting) {
    EXPECT_EQ(csvCell("plain"), "\"plain\"");
    EXPECT_EQ(csvCell("a \"b\", c"), "\"a \"\"b\"\", c\"");
    for (const char* start : {"=", "+", "-", "@"})
        EXPECT_EQ(csvCell(start + std::string("2*3")), "\"'" + std::string(start) + "2*3\"");
    for (const char* wide : {"\uFF1D", "\uFF0B", "\uFF0D", "\uFF20"})
        EXPECT_EQ(csvCell(wide + std::string("2*3")), "\"'" + std::string(wide) + "2*3\"");
    EXPECT_EQ(csvCell("\t=1"), "\"'?=1\"");
    EXPECT_EQ(csvCell("two\nlines"), "\"two?lines\"");
    EXPECT_EQ(csvCell("2026-05-04"), "\"2026-05-04\"");
}

TEST(CsvCell, TheApostropheGoesWhereItWasPut) {
    for (const std::string text : {"=2*3", "-5", "\uFF1D2", "plain", "'quoted'", ""}) {
        const std::string cell = csvCell(text);
        EXPECT_EQ(withoutCsvMark(std::string_view(cell).substr(1, cell.size() - 2)), text);
    }
}

TEST(CsvCell, ALineEndsAsRfc4180Says) {
    EXPECT_EQ(csvLine({"a", "=b"}), "\"a\",\"'=b\"\r\n");
}

TEST(CsvCell, CutsNothing) {
    const std::string text(5000, 'x');
    EXPECT_EQ(csvCell(text), '"' + text + '"');
}

}  // namespace
}  // namespace fettle
