#include "core/intake/level_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/exchange/csv_cell.h"
#include "core/signal/capture_facts.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {

constexpr std::size_t kMostColumns = 200, kMostHeadBytes = 10000;

// How much of the fleet file's unit one of this unit is, and what is added before.
struct UnitFactor {
    const char* unit;
    double factor, before = 0;
};
using Factors = std::vector<UnitFactor>;

const Factors& velocityUnits() {
    static const Factors all = {{"mm/s", 1}, {"m/s", 1000}, {"in/s", 25.4}, {"ips", 25.4}, {"um/s", 1e-3}};
    return all;
}
const Factors& accelerationUnits() {
    static const Factors all = {
        {"g", 1}, {"m/s2", 1 / 9.80665}, {"m/s^2", 1 / 9.80665}, {"m/s²", 1 / 9.80665}, {"mg", 1e-3}};
    return all;
}
const Factors& temperatureUnits() {
    static const Factors all = {{"°c", 1},
                                {"c", 1},
                                {"degc", 1},
                                {"k", 1, -273.15},
                                {"°f", 1 / 1.8, -32},
                                {"f", 1 / 1.8, -32},
                                {"degf", 1 / 1.8, -32}};
    return all;
}
const Factors& speedUnits() {
    static const Factors all = {{"r/min", 1}, {"rpm", 1}, {"1/min", 1}, {"min-1", 1}, {"hz", 60}};
    return all;
}
const Factors& plainUnits() {
    static const Factors all = {{"1", 1}, {"", 1}};
    return all;
}
const Factors& shareUnits() {
    static const Factors all = {{"%", 1}, {"1", 100}};
    return all;
}

struct QuantityWord {
    const char* word;
    Quantity quantity;
    const Factors& (*units)();
};
const std::vector<QuantityWord>& quantityWords() {
    static const std::vector<QuantityWord> all = {
        {"velocity", Quantity::VelocityRms, velocityUnits},
        {"velocity rms", Quantity::VelocityRms, velocityUnits},
        {"acceleration", Quantity::AccelerationRms, accelerationUnits},
        {"acceleration rms", Quantity::AccelerationRms, accelerationUnits},
        {"acceleration peak", Quantity::Peak, accelerationUnits},
        {"peak", Quantity::Peak, accelerationUnits},
        {"high band", Quantity::HighBand, accelerationUnits},
        {"crest factor", Quantity::CrestFactor, plainUnits},
        {"kurtosis", Quantity::Kurtosis, plainUnits},
        {"1x", Quantity::Order1, velocityUnits},
        {"2x", Quantity::Order2, velocityUnits},
        {"3x", Quantity::Order3, velocityUnits},
        {"speed", Quantity::SpeedRpm, speedUnits},
        {"temperature", Quantity::FrameTempC, temperatureUnits},
        {"frame temperature", Quantity::FrameTempC, temperatureUnits},
        {"ambient temperature", Quantity::AmbientTempC, temperatureUnits},
        {"load", Quantity::LoadPct, shareUnits},
    };
    return all;
}

// What a level can be at all, so that a slipped decimal mark or unit is told and not stored. Below: an
// r.m.s., a peak and a speed have no sign (load has: a machine may be driven), nothing is colder than -273.15
// °C. Above: velocity a thousand times the C/D boundaries of ISO 20816-3, acceleration as far as shock
// sensors read, speed and temperatures as a sidecar may say them (core/signal/capture_facts), load as there
// either way: common practice, no source.
struct Bounds {
    double least, most;
};
Bounds boundsOf(Quantity quantity) {
    switch (quantity) {
        case Quantity::VelocityRms:
        case Quantity::Order1:
        case Quantity::Order2:
        case Quantity::Order3:
            return {0, 10'000};
        case Quantity::AccelerationRms:
        case Quantity::Peak:
        case Quantity::HighBand:
            return {0, 100'000};
        case Quantity::SpeedRpm:
            return {0, 200'000};
        case Quantity::FrameTempC:
            return {-273.15, 500};
        case Quantity::AmbientTempC:
            return {-273.15, 200};
        case Quantity::LoadPct:
            return {-500, 500};
        case Quantity::CrestFactor:
        case Quantity::Kurtosis:
            return {0, kLargestSample};
        case Quantity::Offset:
            break;
    }
    return {-kLargestSample, kLargestSample};
}

// Empty where it can be; without the value, so that rows of one trouble are told together.
std::string outOfBounds(Quantity quantity, double value) {
    const Bounds bounds = boundsOf(quantity);
    if (value >= bounds.least && value <= bounds.most) return {};
    return fmt::format("{} cannot be: must be {:g} to {:g} {}", columnOf(quantity), bounds.least, bounds.most,
                       unitOf(quantity));
}

std::string plainWord(const std::string& text) {
    std::string word = lowerAscii(trimmed(text));
    std::replace(word.begin(), word.end(), '_', ' ');
    std::erase(word, '.');
    return word;
}

// "mm/s rms" is mm/s.
std::string plainUnit(const std::string& text) {
    std::string unit = lowerAscii(trimmed(text));
    for (const char* word : {" r.m.s.", " rms", " (rms)"})
        if (unit.ends_with(word)) unit.resize(unit.size() - std::string(word).size());
    return unit;
}

bool endsWithOneOf(const std::string& unit, std::initializer_list<const char*> ends) {
    return std::any_of(ends.begin(), ends.end(), [&](const char* end) { return unit.ends_with(end); });
}

bool isPeakToPeak(const std::string& unit) {
    return endsWithOneOf(unit, {" p-p", " pk-pk", " pp"});
}

bool isPeak(const std::string& unit) {
    return isPeakToPeak(unit) || endsWithOneOf(unit, {" pk", " peak", " 0-p", " 0-pk"});
}

std::vector<std::string> columnsOf(std::string_view line, char separator) {
    CsvFields fields;
    std::vector<std::string> columns;
    if (!fields.split(line, separator, kMostColumns + 1)) return columns;
    for (std::size_t i = 0; i < fields.count(); ++i)
        columns.push_back(lowerAscii(trimmed(fields[i])));
    return columns;
}

bool has(const std::vector<std::string>& columns, const char* name) {
    return std::count(columns.begin(), columns.end(), name) > 0;
}

bool hasTrendColumn(const std::vector<std::string>& columns) {
    for (std::size_t q = 0; q < kQuantities; ++q)
        if (has(columns, columnOf(Quantity(q)))) return true;
    return false;
}

bool isLongHead(const std::vector<std::string>& columns) {
    return has(columns, "quantity") && has(columns, "unit") && has(columns, "value");
}

bool isHead(const std::vector<std::string>& columns) {
    return has(columns, "time") && has(columns, "machine") && has(columns, "point") &&
           (isLongHead(columns) || hasTrendColumn(columns));
}

std::string directionOf(const std::string& text, std::string& rule) {
    static const std::vector<std::string> words = {"",      "horizontal", "vertical",
                                                   "axial", "radial",     "unknown"};
    const std::string word = lowerAscii(trimmed(text));
    for (const std::string& known : words)
        if (word == known || (word.size() == 1 && known.starts_with(word))) return known;
    rule = fmt::format("direction \"{}\", must be horizontal, vertical, axial, radial or unknown",
                       oneLine(word, 40));
    return "";
}

std::string unitsWord(const Factors& units) {
    std::vector<std::string> words;
    for (const UnitFactor& one : units)
        if (*one.unit) words.emplace_back(one.unit);
    return joined(words, ", ");
}

}  // namespace

bool isLevelTable(const std::string& bytes) {
    const std::string first = bytes.substr(0, kMostHeadBytes);
    if (first.empty() || first.find('\0') != first.npos) return false;
    const CsvLines lines(first);
    return !lines.atEnd() && isHead(columnsOf(lines.line(), csvSeparatorOf(lines.line())));
}

std::optional<std::string> levelTableOf(const FileSystem& files, const std::string& path) {
    const std::string extension = extensionOf(path);
    if (extension != "csv" && extension != "tsv" && extension != "txt") return std::nullopt;
    auto text = files.read(path, kMostRecordingBytes);
    if (!text || !isLevelTable(*text)) return std::nullopt;
    return std::move(*text);
}

Result<LevelTable> LevelTable::of(const std::string& text, const std::string& file) {
    if (auto good = checkCsvText(text, file); !good) return fail(good.error());
    LevelTable table(text);
    table.separator_ = csvSeparatorOf(table.lines_.line());
    table.columns_ = columnsOf(table.lines_.line(), table.separator_);
    if (!isHead(table.columns_))
        return fail(ErrorKind::Invalid, file, "line 1, column 1",
                    "no head of a table of levels: time, machine, point, and quantity, unit, value");
    for (std::size_t i = 0; i < table.columns_.size(); ++i)
        if (std::count(table.columns_.begin(), table.columns_.end(), table.columns_[i]) > 1 &&
            !table.columns_[i].empty())
            return fail(ErrorKind::Invalid, file, csvPlace(1, i + 1),
                        fmt::format("two columns are named \"{}\"", oneLine(table.columns_[i], 80)));
    table.isLong_ = isLongHead(table.columns_);
    table.lines_.next();
    return table;
}

std::optional<tl::expected<LevelRow, std::string>> LevelTable::next() {
    while (!lines_.atEnd() && trimmed(lines_.line()).empty())
        lines_.next();
    if (lines_.atEnd()) return std::nullopt;
    line_ = lines_.number();
    Row row = rowOf();
    lines_.next();
    return row;
}

std::string LevelTable::field(const char* name) const {
    const auto at = std::find(columns_.begin(), columns_.end(), name);
    const auto place = std::size_t(at - columns_.begin());
    if (at == columns_.end() || place >= fields_.count()) return "";
    return std::string(withoutCsvMark(trimmed(fields_[place])));
}

LevelTable::Row LevelTable::rowOf() {
    if (!isUtf8(lines_.line())) return tl::unexpected<std::string>("is not UTF-8 text");
    if (!fields_.split(lines_.line(), separator_, columns_.size() + 1))
        return tl::unexpected<std::string>("a quote that is not closed, or text behind a quote");
    if (fields_.count() != columns_.size())
        return tl::unexpected(
            fmt::format("{} fields, the head names {} columns", fields_.count(), columns_.size()));
    LevelRow row;
    row.line = line_;
    row.machine = field("machine");
    row.point = field("point");
    row.channel = field("channel");
    row.running = lowerAscii(field("running"));
    if (row.machine.empty()) return tl::unexpected<std::string>("no machine is named");
    const auto time = parseCaptureTime(field("time"));
    if (!time) return tl::unexpected("time " + time.error());
    row.time = *time;
    std::string rule;
    row.direction = directionOf(field("direction"), rule);
    if (rule.empty()) rule = isLong_ ? takeValue(row) : takeValues(row);
    if (!rule.empty()) return tl::unexpected(rule);
    return row;
}

std::string LevelTable::takeValue(LevelRow& row) {
    const std::string word = plainWord(field("quantity")), unit = plainUnit(field("unit"));
    const auto& words = quantityWords();
    const auto known =
        std::find_if(words.begin(), words.end(), [&](const QuantityWord& one) { return word == one.word; });
    if (known == words.end())
        return fmt::format("quantity \"{}\" is none that is followed", oneLine(word, 40));
    if (isPeak(unit) && known->quantity != Quantity::Peak)
        return fmt::format("{} in \"{}\": a peak value tells its r.m.s. only of a sine", known->word,
                           oneLine(unit, 40));
    if (isPeakToPeak(unit))
        return fmt::format("{} in \"{}\": half a peak to peak value is the peak only of an even swing",
                           known->word, oneLine(unit, 40));
    const Factors& units = known->units();
    const std::string bare = isPeak(unit) ? unit.substr(0, unit.rfind(' ')) : unit;
    const auto factor =
        std::find_if(units.begin(), units.end(), [&](const UnitFactor& one) { return bare == one.unit; });
    if (factor == units.end())
        return fmt::format("{} in \"{}\"; units for it: {}", known->word, oneLine(unit, 40),
                           unitsWord(units));
    const std::string text = field("value");
    const auto value = mark_.parse(text);
    if (!value || !(std::abs(*value) <= kLargestSample))
        return fmt::format("value \"{}\" is no number", oneLine(text, 40));
    const double level = (*value + factor->before) * factor->factor;
    row.values[std::size_t(known->quantity)] = level;
    return outOfBounds(known->quantity, level);
}

std::string LevelTable::takeValues(LevelRow& row) {
    row.channelQuantity = field("quantity");
    row.channelUnit = field("unit");
    bool any = false;
    for (std::size_t q = 0; q < kQuantities; ++q) {
        const std::string text = field(columnOf(Quantity(q)));
        if (text.empty()) continue;
        const auto value = mark_.parse(text);
        if (!value || !(std::abs(*value) <= kLargestSample))
            return fmt::format("{} \"{}\" is no number", columnOf(Quantity(q)), oneLine(text, 40));
        if (std::string rule = outOfBounds(Quantity(q), *value); !rule.empty()) return rule;
        row.values[q] = *value;
        any = true;
    }
    return any ? "" : "no level in the row";
}

}  // namespace fettle
