#include "core/base/json_object.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/json_scan.h"
#include "core/base/text.h"

namespace fettle {

namespace {
const Json kNull;
const Json kEmptyObject = Json::object();
}  // namespace

Result<Json> parseJson(const std::string& text, const std::string& file) {
    if (trimmed(text).empty())
        return fail(ErrorKind::Damaged, file, "byte 0", "the file is empty, JSON expected");
    if (auto scanned = scanJson(text, file); !scanned) return fail(scanned.error());
    try {
        return Json::parse(text);
    } catch (const Json::exception&) {
        return fail(ErrorKind::Damaged, file, "byte 0", "not valid JSON");
    }
}

void JsonReport::broken(const std::string& place, const std::string& rule) {
    if (!error) {
        error = Error{ErrorKind::Invalid, file, place, rule};
        return;
    }
    const bool known = error->place == place || std::any_of(more.begin(), more.end(), [&](const Error& one) {
                           return one.place == place;
                       });
    if (!known && more.size() + 1 < kMost) more.push_back({ErrorKind::Invalid, file, place, rule});
}

void JsonReport::warn(const std::string& place, const std::string& what) {
    warnings.push_back(Error{ErrorKind::Invalid, file, place, what}.sentence());
}

JsonObject::JsonObject(const Json& value, std::string place, JsonReport& report)
    : value_(value.is_object() ? value : kEmptyObject), place_(std::move(place)), report_(report) {
    if (!value.is_object()) report_.broken(place_.empty() ? "/" : place_, "an object { } is expected");
}

JsonObject::~JsonObject() {
    for (const auto& item : value_.items())
        if (!asked_.count(item.key())) report_.warn(place(oneLine(item.key(), 80)), "unknown key, not used");
}

bool JsonObject::has(const std::string& key) const {
    return value_.contains(key) && !value_.at(key).is_null();
}

const Json* JsonObject::find(const std::string& key, bool required) {
    asked_.insert(key);
    if (has(key)) return &value_.at(key);
    if (required) report_.broken(place(key), "is required");
    return nullptr;
}

std::string JsonObject::text(const std::string& key, bool required) {
    const Json* found = find(key, required);
    if (!found) return "";
    if (!found->is_string()) {
        report_.broken(place(key), "must be a text");
        return "";
    }
    const auto value = found->get<std::string>();
    if (required && trimmed(value).empty()) report_.broken(place(key), "must not be empty");
    return value;
}

std::optional<double> JsonObject::number(const std::string& key, double least, double most, bool required) {
    const Json* found = find(key, required);
    if (!found) return std::nullopt;
    if (!found->is_number()) {
        report_.broken(place(key), "must be a number");
        return std::nullopt;
    }
    const double value = found->get<double>();
    if (!std::isfinite(value) || value < least || value > most) {
        report_.broken(place(key), fmt::format("is {}, must be from {} to {}", value, least, most));
        return std::nullopt;
    }
    return value;
}

std::optional<int> JsonObject::integer(const std::string& key, int least, int most, bool required) {
    const auto value = number(key, least, most, required);
    if (!value) return std::nullopt;
    if (*value != std::floor(*value)) {
        report_.broken(place(key), fmt::format("is {}, must be a whole number", *value));
        return std::nullopt;
    }
    return static_cast<int>(*value);
}

std::optional<bool> JsonObject::boolean(const std::string& key) {
    const Json* found = find(key, false);
    if (!found) return std::nullopt;
    if (!found->is_boolean()) {
        report_.broken(place(key), "must be true or false");
        return std::nullopt;
    }
    return found->get<bool>();
}

std::vector<double> JsonObject::numbers(const std::string& key, std::size_t count, double least,
                                        double most) {
    const Json* found = find(key, false);
    if (!found) return {};
    std::vector<double> values;
    if (found->is_array())
        for (const Json& item : *found)
            if (item.is_number() && item.get<double>() >= least && item.get<double>() <= most)
                values.push_back(item.get<double>());
    if (!found->is_array() || values.size() != found->size() || values.size() != count) {
        report_.broken(place(key),
                       fmt::format("must be a list of {} numbers from {} to {}", count, least, most));
        return {};
    }
    return values;
}

std::vector<std::string> JsonObject::texts(const std::string& key) {
    const Json* found = find(key, false);
    if (!found) return {};
    std::vector<std::string> values;
    if (found->is_array())
        for (const Json& item : *found)
            if (item.is_string()) values.push_back(item.get<std::string>());
    if (!found->is_array() || values.size() != found->size())
        report_.broken(place(key), "must be a list of texts");
    return values;
}

std::string JsonObject::word(const std::string& key, const std::vector<std::string>& allowed, bool required) {
    const std::string value = text(key, required);
    if (value.empty() || std::find(allowed.begin(), allowed.end(), value) != allowed.end()) return value;
    report_.broken(place(key),
                   fmt::format("is \"{}\", must be one of: {}", oneLine(value, 60), joined(allowed, ", ")));
    return "";
}

const Json& JsonObject::raw(const std::string& key) {
    const Json* found = find(key, false);
    return found ? *found : kNull;
}

std::vector<const Json*> JsonObject::list(const std::string& key) {
    const Json* found = find(key, false);
    if (!found) return {};
    if (!found->is_array()) {
        report_.broken(place(key), "must be a list [ ]");
        return {};
    }
    std::vector<const Json*> items;
    for (const Json& item : *found)
        items.push_back(&item);
    return items;
}

}  // namespace fettle
