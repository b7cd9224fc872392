#include "core/fleet/event_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/base/json_object.h"
#include "core/base/text.h"
#include "core/exchange/csv_cell.h"
#include "core/fleet/job_done.h"
#include "core/fleet/reports.h"
#include "core/fleet/who.h"
#include "core/signal/csv_text.h"

namespace fettle {

namespace {

constexpr std::size_t kMostEventColumns = 64;
using Row = std::map<std::string, std::string>;

class Taker {
  public:
    Taker(FleetFile& fleet, std::string file, std::string by, Instant now)
        : fleet_(fleet), file_(std::move(file)), by_(std::move(by)), now_(now) {}

    // `places` says where in the file a key stands.
    template <class Place>
    void take(const Row& row, const Place& place) {
        const auto said = [&](const char* key) {
            const auto found = row.find(key);
            return found == row.end() ? std::string() : found->second;
        };
        for (const char* needed : {"machine", "time", "kind"})
            if (said(needed).empty()) return refuse(place(needed), "is missing");
        const auto time = momentOf(fleet_, said("time"));
        if (!time)
            return refuse(place("time"),
                          "is neither a UTC time as 2026-05-04T06:20:00Z nor a day of the site "
                          "as 2026-05-04");
        const Event event{0,
                          said("machine"),
                          *time,
                          said("kind"),
                          said("at"),
                          said("text"),
                          orLoginName(said("by").empty() ? by_ : said("by"))};
        const auto done = keepEvent(fleet_, event, now_);
        if (done) return void(++taken_.taken);
        Error error = done.error();
        refuse(place("") + (error.place.empty() ? "" : ": " + error.place), error.rule, error.kind);
    }
    void refuse(std::string place, std::string rule, ErrorKind kind = ErrorKind::Invalid) {
        taken_.refusals.push_back({kind, file_, std::move(place), std::move(rule)});
    }
    void warn(std::string warning) { taken_.warnings.push_back(std::move(warning)); }
    EventsTaken done() { return std::move(taken_); }

  private:
    FleetFile& fleet_;
    std::string file_, by_;
    Instant now_;
    EventsTaken taken_;
};

bool isKnown(const std::string& key) {
    for (const char* known : {"machine", "time", "kind", "at", "text", "by"})
        if (key == known) return true;
    return false;
}

void takeItem(const Json& item, std::size_t number, Taker& taker) {
    const std::string start = fmt::format("/{}", number);
    if (!item.is_object()) return taker.refuse(start, "is no event");
    Row row;
    for (const auto& [key, value] : item.items()) {
        if (value.is_string())
            row[key] = value.get<std::string>();
        else if (!value.is_null())
            return taker.refuse(start + "/" + key, "must be a text");
        if (!isKnown(key)) taker.warn(start + ": unknown key \"" + oneLine(key, 60) + "\"");
    }
    taker.take(row, [&](const std::string& key) { return key.empty() ? start : start + "/" + key; });
}

Status takeJson(const std::string& text, const std::string& file, Taker& taker) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    if (!json->is_array()) return fail(ErrorKind::Invalid, file, "", "is not a list of events");
    for (std::size_t i = 0; i < json->size(); ++i)
        takeItem((*json)[i], i, taker);
    return {};
}

// What a spreadsheet was kept from reading as a formula (csv_cell.h) is read as it was.
std::string cellOf(std::string_view field) {
    return std::string(withoutCsvMark(trimmed(field)));
}

Result<std::vector<std::string>> headOf(std::string_view line, char separator, std::size_t number,
                                        const std::string& file, Taker& taker) {
    CsvFields fields;
    if (!fields.split(line, separator, kMostEventColumns))
        return fail(ErrorKind::Invalid, file, csvPlace(number, fields.count()), "quotes do not match");
    if (const std::size_t column = fields.notUtf8())
        return fail(ErrorKind::Invalid, file, csvPlace(number, column), kCsvNotUtf8);
    std::vector<std::string> keys;
    for (std::size_t i = 0; i < fields.count(); ++i) {
        keys.push_back(lowerAscii(trimmed(fields[i])));
        if (!isKnown(keys.back())) taker.warn("unknown column \"" + oneLine(keys.back(), 60) + "\"");
    }
    for (const char* needed : {"machine", "time", "kind"})
        if (std::find(keys.begin(), keys.end(), needed) == keys.end())
            return fail(ErrorKind::Invalid, file, csvPlace(number, 1),
                        fmt::format("has no column \"{}\"; machine, time and kind are needed", needed));
    return keys;
}

void takeLine(const CsvLines& lines, char separator, const std::vector<std::string>& keys, Taker& taker) {
    CsvFields fields;
    if (!fields.split(lines.line(), separator, kMostEventColumns))
        return taker.refuse(csvPlace(lines.number(), fields.count()), "quotes do not match");
    if (const std::size_t column = fields.notUtf8())
        return taker.refuse(csvPlace(lines.number(), column), kCsvNotUtf8);
    Row row;
    for (std::size_t i = 0; i < std::min(fields.count(), keys.size()); ++i)
        row[keys[i]] = cellOf(fields[i]);
    taker.take(row, [&](const std::string& key) {
        const auto at = std::find(keys.begin(), keys.end(), key);
        return at == keys.end() ? fmt::format("line {}", lines.number())
                                : csvPlace(lines.number(), std::size_t(at - keys.begin()) + 1);
    });
}

Status takeCsv(const std::string& text, const std::string& file, Taker& taker) {
    const std::string ended = text.ends_with('\n') ? text : text + "\n";
    if (auto good = checkCsvText(ended, file); !good) return good;
    CsvLines lines(ended);
    while (!lines.atEnd() && trimmed(lines.line()).empty())
        lines.next();
    if (lines.atEnd()) return fail(ErrorKind::Invalid, file, "", "is empty");
    const char separator = csvSeparatorOf(lines.line());
    const auto keys = headOf(lines.line(), separator, lines.number(), file, taker);
    if (!keys) return fail(keys.error());
    for (lines.next(); !lines.atEnd(); lines.next())
        if (!trimmed(lines.line()).empty()) takeLine(lines, separator, *keys, taker);
    return {};
}

}  // namespace

Result<EventsTaken> takeEvents(FleetFile& fleet, const std::string& text, const std::string& file,
                               const std::string& by, Instant now) {
    Taker taker(fleet, file, by, now);
    const std::string_view start = trimmed(text);
    const bool json = start.starts_with('[') || start.starts_with('{');
    const auto done = json ? takeJson(text, file, taker) : takeCsv(text, file, taker);
    if (!done) return fail(done.error());
    return taker.done();
}

}  // namespace fettle
