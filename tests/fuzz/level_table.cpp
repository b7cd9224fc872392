#include "core/intake/level_table.h"

#include <cmath>

#include "core/base/text.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

void requireSoundLevel(const LevelRow& row) {
    require(!row.machine.empty(), "a level tells its machine");
    std::size_t values = 0;
    for (const auto& value : row.values) {
        require(!value || std::isfinite(*value), "a level is finite");
        values += value.has_value();
    }
    require(values > 0, "a row that is taken has a level");
    for (const std::string* text : {&row.machine, &row.point, &row.channel, &row.channelUnit})
        require(isUtf8(*text), "names and units are UTF-8");
}

bool levelTable(const std::string& bytes) {
    isLevelTable(bytes);
    auto table = LevelTable::of(bytes, "levels.csv");
    if (!table) return false;
    bool taken = false;
    std::size_t line = 1;
    while (const auto row = table->next()) {
        require(table->line() > line, "every row stands on a later line");
        line = table->line();
        if (!*row) continue;
        requireSoundLevel(**row);
        taken = true;
    }
    return taken;
}

const Listed kLevelTable("level_table", levelTable);

}  // namespace
}  // namespace fettle::fuzz
