// Why: hand instruments and other systems give ready-made levels: a table (CSV), one row a level or one row a
// moment. Columns, in any order: time (UTC), machine, point, and either quantity, unit, value, or the columns
// of `export trends` by their names (velocity_rms_mm_s ..); besides direction, channel, running, and of the
// channel quantity and unit. Units are turned into those of the fleet file; peak values of velocity are
// refused, as only a sine tells its r.m.s. from its peak. Rows come one at a time: a bad one is an objection
// with its line, the next one follows. Parted by comma, semicolon or tab, decimal point or comma. Thread:
// one. Errors: of the head alone, "line 1, column C".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/base/result.h"
#include "core/signal/csv_text.h"
#include "core/store/trend_store.h"

namespace fettle {

// Whether the first line is the head of such a table.
bool isLevelTable(const std::string& bytes);

// The text of a file of such a name and head; nothing where it is none. Reads the file.
std::optional<std::string> levelTableOf(const FileSystem& files, const std::string& path);

struct LevelRow {
    std::size_t line = 0;
    std::string machine, point, direction;
    std::string channel, channelQuantity, channelUnit;  // channel empty: a series of the instrument's own
    std::string running;                                // empty: not said
    Instant time{};
    std::optional<double> values[kQuantities];
};

class LevelTable {
  public:
    static Result<LevelTable> of(const std::string& text, const std::string& file);  // `text` outlives it
    // The next row; a rule instead where it breaks one. Nothing after the last.
    std::optional<tl::expected<LevelRow, std::string>> next();
    std::size_t line() const { return line_; }  // of the row that came last

  private:
    explicit LevelTable(const std::string& text) : lines_(text) {}
    using Row = tl::expected<LevelRow, std::string>;
    std::string field(const char* name) const;
    Row rowOf();
    std::string takeValue(LevelRow& row);
    std::string takeValues(LevelRow& row);

    CsvLines lines_;
    CsvFields fields_;
    DecimalMark mark_;
    char separator_ = CsvFields::kNone;
    std::vector<std::string> columns_;
    bool isLong_ = false;
    std::size_t line_ = 0;
};

}  // namespace fettle
