#include "core/fleet/register_csv.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <optional>
#include <set>

#include "core/base/text.h"
#include "core/exchange/csv_cell.h"
#include "core/signal/csv_text.h"

namespace fettle {

namespace {

constexpr std::size_t kMostColumns = 16'384;  // of the usual spreadsheet: common practice, no source
constexpr std::size_t kManyColumns = 12'000;  // from then on lists and objects stand in one cell
constexpr std::size_t kMostFilled = 100'000;  // elements that a row makes to reach the numbers it names
constexpr std::size_t kDeepest = 12;
constexpr std::size_t kLongestList = 1000;

using Names = std::set<std::string>;

const Names& numberKeys() {
    static const Names keys = {"mains_hz",
                               "power_kw",
                               "poles",
                               "rated_rpm",
                               "shaft_height_mm",
                               "rotor_bars",
                               "stator_slots",
                               "rated_hz",
                               "carrier_hz",
                               "rpm_min",
                               "rpm_max",
                               "output_hz_range",
                               "blades",
                               "speed_ratio",
                               "speed_ratio_tol",
                               "rolling_elements",
                               "element_mm",
                               "pitch_mm",
                               "contact_deg",
                               "bpfo",
                               "bpfi",
                               "bsf",
                               "ftf",
                               "rows",
                               "teeth",
                               "sun",
                               "ring",
                               "planet",
                               "planets",
                               "pulley_mm",
                               "length_mm",
                               "creep_pct",
                               "usable_hz",
                               "range",
                               "noise_per_rt_hz",
                               "interval_min",
                               "schema"};
    return keys;
}
const Names& textKeys() {
    static const Names keys = {
        "tag",    "asset",         "service",  "site",        "area",  "criticality", "support", "kind",
        "supply", "thermal_class", "coupling", "designation", "type",  "turning",     "source",  "id",
        "of",     "from",          "to",       "fixed",       "shaft", "at",          "mount",   "fixing",
        "name",   "quantity",      "unit",     "direction",   "path",  "engine"};
    return keys;
}

bool isNumber(const std::string& text) {
    const auto number = parseNumber(text);
    return number && *number - *number == 0;
}

// The number a token of a column's name counts in a list; none for a key.
std::optional<std::size_t> indexOf(std::string_view token) {
    const auto number = parseInteger(token);
    if (!number || *number < 0 || *number >= (long long)(kLongestList) || std::to_string(*number) != token)
        return std::nullopt;
    return std::size_t(*number);
}

// A key as a token of a column's name: what parts names (/), breaks a line, is trimmed off or would count as
// a list's number stands as a sign: ~0 for ~, ~1 for /, ~x and two hexadecimal digits, ~e for the empty key.
std::string escaped(const std::string& key) {
    if (key.empty()) return "~e";
    std::string out;
    for (std::size_t i = 0; i < key.size(); ++i) {
        const char c = key[i];
        const bool end = i == 0 || i + 1 == key.size();
        const bool mark = i == 0 && (indexOf(key) || (c == '\'' && startsFormula(key.substr(1))));
        if (c == '~' || c == '/')
            out += c == '~' ? "~0" : "~1";
        else if (mark || (end && c == ' ') || (unsigned char)(c) < 0x20 || c == 0x7f)
            out += fmt::format("~x{:02x}", (unsigned char)(c));
        else
            out += c;
    }
    return out;
}

// Of "x0a" the line feed.
std::optional<char> signOf(std::string_view token) {
    unsigned char code = 0;
    if (token.size() < 3 || token[0] != 'x') return std::nullopt;
    const char* const end = token.data() + 3;
    if (std::from_chars(token.data() + 1, end, code, 16).ptr != end) return std::nullopt;
    return char(code);
}

std::string unescaped(std::string_view token) {
    std::string out;
    for (std::size_t i = 0; i < token.size(); ++i) {
        const char sign = token[i] == '~' && i + 1 < token.size() ? token[i + 1] : ' ';
        const auto code = sign == 'x' ? signOf(token.substr(i + 1)) : std::nullopt;
        if (sign == '0' || sign == '1') {
            out += sign == '0' ? '~' : '/';
            ++i;
        } else if (sign == 'e') {
            ++i;
        } else if (code) {
            out += *code;
            i += 3;
        } else {
            out += token[i];
        }
    }
    return out;
}

// Cells that a spreadsheet would take for a formula are JSON strings as well.
bool looksLikeMore(const std::string& text, const std::string& key) {
    if (text.empty() || text != oneLine(text) || text != trimmed(text)) return true;
    if (std::string_view("\"[{").find(text.front()) != std::string_view::npos || text == "null") return true;
    if (startsFormula(text) && !(text.front() == '-' && isNumber(text))) return true;
    if (textKeys().count(key)) return false;
    return isNumber(text) || text == "true" || text == "false" || text == "yes" || text == "no";
}

// JSON leaves the delete character as it is, a table refuses it.
std::string jsonCell(const Json& value) {
    std::string cell;
    for (const char c : value.dump(-1, ' ', false, Json::error_handler_t::replace))
        cell += c == 0x7f ? std::string("\\u007f") : std::string(1, c);
    return cell;
}

std::string cellOf(const Json& value, const std::string& key) {
    if (value.is_boolean()) return value.get<bool>() ? "yes" : "no";
    if (!value.is_string()) return jsonCell(value);
    const auto& text = value.get_ref<const std::string&>();
    return looksLikeMore(text, key) ? jsonCell(value) : text;
}

using Row = std::map<std::string, std::string>;

// What a cell says.
Json valueOf(std::string cell, const std::string& key, bool decimalComma) {
    if (const char first = cell.front(); first == '"' || first == '[' || first == '{')
        if (auto parsed = parseJson(cell, ""); parsed) return *parsed;
    if (cell == "null") return nullptr;
    if (textKeys().count(key)) return cell;
    if (key == "standby" || !numberKeys().count(key)) {
        if (cell == "yes" || cell == "true") return true;
        if (cell == "no" || cell == "false") return false;
    }
    std::string plain = cell;
    if (decimalComma && std::count(plain.begin(), plain.end(), ',') == 1 && plain.find('.') == plain.npos)
        std::replace(plain.begin(), plain.end(), ',', '.');
    if (const auto whole = parseInteger(plain)) return *whole;
    if (!isNumber(plain)) return cell;
    const auto exact = parseJson(plain, "");  // a whole number too large for the integer above
    return exact ? *exact : Json(*parseNumber(plain));
}

// Whether a list or object comes back from a column for each of its parts; else it is one JSON cell.
bool standsAsColumns(const Json& node, const std::string& key, std::size_t depth) {
    if (depth == kDeepest || (node.is_array() && node.size() > kLongestList)) return false;
    const auto items = node.items();
    return std::all_of(items.begin(), items.end(), [&](const auto& item) {
        const std::string& itsKey = node.is_array() ? key : item.key();
        return item.value().is_structured() ||
               valueOf(cellOf(item.value(), itsKey), itsKey, false) == item.value();
    });
}

void flatten(const Json& node, const std::string& path, const std::string& key, std::size_t depth, Row& row,
             std::vector<std::string>& columns, Names& known) {
    if (depth == 0 || (node.is_structured() && !node.empty() && columns.size() < kManyColumns &&
                       standsAsColumns(node, key, depth))) {
        for (const auto& item : node.items()) {
            const std::string token = node.is_array() ? item.key() : escaped(item.key());
            flatten(item.value(), path.empty() ? token : path + "/" + token,
                    node.is_array() ? key : item.key(), depth + 1, row, columns, known);
        }
    } else {
        if (known.insert(path).second) columns.push_back(path);
        row[path] = cellOf(node, key);
    }
}

// A key may be anything; a spreadsheet must not compute it (csv_cell.h).
std::string headCell(const std::string& name) {
    return startsFormula(name) ? "'" + name : name;
}

std::string inQuotes(const std::string& cell) {
    if (cell.find_first_of(",;\t\"\r\n") == std::string::npos) return cell;
    std::string out = "\"";
    for (const char c : cell)
        out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + "\"";
}

// ---- and back

struct Token {
    std::string key;
    std::optional<std::size_t> index;
};

struct Column {
    std::vector<Token> tokens;
    std::string key;  // its values belong to: of a list the list's
};

// Whether a token that counts for no element means one all the same.
bool isTooFar(const Token& token) {
    return !token.index && parseInteger(token.key).value_or(-1) >= (long long)(kLongestList);
}

// The rule that is broken where the column's place is something else already. `filled`: elements made so far
// to reach a number.
std::string put(Json& root, const std::vector<Token>& tokens, Json value, std::size_t& filled) {
    static const std::string contradicts = "contradicts another column of this row";
    Json* node = &root;
    for (const Token& token : tokens) {
        if (token.index && (node->is_null() || node->is_array())) {
            if (node->is_null()) *node = Json::array();
            for (; node->size() <= *token.index; ++filled)
                node->push_back(nullptr);
            node = &(*node)[*token.index];
        } else {
            if (node->is_null()) *node = Json::object();
            if (node->is_array() && isTooFar(token))
                return fmt::format("counts farther than {}, the last element of a list", kLongestList - 1);
            if (!node->is_object()) return contradicts;
            node = &(*node)[token.key];
        }
    }
    if (!node->is_null()) return contradicts;
    *node = std::move(value);
    return {};
}

Result<std::vector<Column>> columnsOf(CsvFields& fields, std::string_view head, char separator,
                                      const std::string& file, std::size_t line) {
    if (!fields.split(head, separator, kMostColumns + 1))
        return fail(ErrorKind::Invalid, file, csvPlace(line, fields.count()), "a quote is not closed");
    if (fields.count() > kMostColumns)
        return fail(ErrorKind::Invalid, file, csvPlace(line, fields.count()),
                    fmt::format("more than {} columns", kMostColumns));
    if (const std::size_t column = fields.notUtf8())
        return fail(ErrorKind::Invalid, file, csvPlace(line, column), kCsvNotUtf8);
    std::vector<Column> columns;
    Names seen;
    for (std::size_t i = 0; i < fields.count(); ++i) {
        const std::string name(withoutCsvMark(trimmed(fields[i])));
        Column column;
        for (const std::string_view token : split(name, '/')) {
            column.tokens.push_back({unescaped(token), indexOf(token)});
            if (!column.tokens.back().index) column.key = column.tokens.back().key;
        }
        if (name.empty() || column.tokens.size() > kDeepest || !seen.insert(name).second)
            return fail(ErrorKind::Invalid, file, csvPlace(line, i + 1),
                        "each column has a name of its own, keys parted by /");
        columns.push_back(std::move(column));
    }
    if (!seen.count("tag"))
        return fail(ErrorKind::Invalid, file, csvPlace(line, 1), "a column \"tag\" is needed");
    return columns;
}

// Rows that a spreadsheet left below its table.
bool saysNothing(const CsvFields& fields) {
    for (std::size_t i = 0; i < fields.count(); ++i)
        if (!trimmed(fields[i]).empty()) return false;
    return true;
}

CsvMachine machineOf(const CsvFields& fields, const std::vector<Column>& columns, bool decimalComma,
                     const std::string& file, std::size_t line) {
    CsvMachine machine;
    machine.line = line;
    const auto broken = [&](std::size_t column, const std::string& rule) {
        machine.json.clear();
        machine.refusal = {ErrorKind::Invalid, file, csvPlace(line, column), rule};
        return machine;
    };
    if (fields.count() > columns.size())
        return broken(columns.size() + 1, fmt::format("the head names {} columns", columns.size()));
    if (const std::size_t column = fields.notUtf8()) return broken(column, kCsvNotUtf8);
    Json root = Json::object();
    std::size_t filled = 0;
    for (std::size_t i = 0; i < fields.count(); ++i) {
        const std::string cell(trimmed(fields[i]));
        if (cell.empty()) continue;
        const std::string rule =
            put(root, columns[i].tokens, valueOf(cell, columns[i].key, decimalComma), filled);
        if (!rule.empty()) return broken(i + 1, rule);
        if (filled > kMostFilled)
            return broken(i + 1, fmt::format("lists of more than {} elements in all", kMostFilled));
    }
    machine.json = root.dump(2, ' ', false, Json::error_handler_t::replace);
    if (auto good = parseJson(machine.json, file); !good) return broken(1, good.error().rule);
    return machine;
}

}  // namespace

std::string machinesAsCsv(const std::vector<Json>& machines) {
    std::vector<std::string> columns{"tag"};
    Names known{"tag"};
    std::vector<Row> rows;
    for (const Json& machine : machines)
        flatten(machine, "", "", 0, rows.emplace_back(), columns, known);
    std::string text;
    for (std::size_t i = 0; i < columns.size(); ++i)
        text += (i ? "," : "") + inQuotes(headCell(columns[i]));
    text += kCsvEnd;
    for (const Row& row : rows) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const auto cell = row.find(columns[i]);
            text += (i ? "," : "") + (cell == row.end() ? std::string() : inQuotes(cell->second));
        }
        text += kCsvEnd;
    }
    return text;
}

Result<std::string> registerAsCsv(FleetFile& fleet) {
    const auto entries = fleet.machines().all();
    if (!entries) return fail(entries.error());
    std::vector<Json> machines;
    for (const MachineEntry& entry : *entries) {
        if (!entry.removedOn.empty()) continue;
        const auto history = fleet.machines().history(entry.tag);
        if (!history) return fail(history.error());
        if (history->empty()) continue;
        auto parsed = parseJson(history->back().json, entry.tag);
        if (!parsed) return fail(parsed.error());
        machines.push_back(std::move(*parsed));
    }
    return machinesAsCsv(machines);
}

Result<std::vector<CsvMachine>> machinesOfCsv(const std::string& text, const std::string& file) {
    if (auto good = checkCsvText(text, file); !good) return fail(good.error());
    CsvLines lines(text);
    const char separator = csvSeparatorOf(lines.line());
    CsvFields fields;
    const auto columns = columnsOf(fields, lines.line(), separator, file, lines.number());
    if (!columns) return fail(columns.error());
    std::vector<CsvMachine> machines;
    for (lines.next(); !lines.atEnd(); lines.next()) {
        if (trimmed(lines.line()).empty()) continue;
        if (fields.split(lines.line(), separator, columns->size() + 1)) {
            if (saysNothing(fields)) continue;
            machines.push_back(machineOf(fields, *columns, separator != ',', file, lines.number()));
        } else {
            CsvMachine machine;
            machine.line = lines.number();
            machine.refusal = {ErrorKind::Invalid, file, csvPlace(lines.number(), fields.count()),
                               "a quote is not closed on its line"};
            machines.push_back(std::move(machine));
        }
    }
    if (machines.empty())
        return fail(ErrorKind::Invalid, file, fmt::format("line {}", lines.number()),
                    "has no rows below its head: one row a machine is expected");
    return machines;
}

}  // namespace fettle
