#include "core/base/json_scan.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <vector>

#include "core/base/text.h"

namespace fettle {

namespace {
using Json = nlohmann::ordered_json;

class Scan final : public nlohmann::json_sax<Json> {
  public:
    explicit Scan(const std::string& file) : file_(file) {}
    const std::optional<Error>& error() const { return error_; }

    bool null() override { return value(); }
    bool boolean(bool) override { return value(); }
    bool number_integer(number_integer_t) override { return value(); }
    bool number_unsigned(number_unsigned_t) override { return value(); }
    bool number_float(number_float_t, const string_t&) override { return value(); }
    bool string(string_t&) override { return value(); }
    bool binary(binary_t&) override { return value(); }
    bool start_object(std::size_t) override { return enter(false); }
    bool start_array(std::size_t) override { return enter(true); }
    bool end_object() override { return leave(); }
    bool end_array() override { return leave(); }
    bool key(string_t& name) override;
    bool parse_error(std::size_t byte, const std::string&, const Json::exception& problem) override;

  private:
    struct Level {
        bool array = false;
        std::size_t values = 0;
        std::string key;
        std::set<std::string> seen;
    };
    bool value();
    bool enter(bool array);
    bool leave();
    std::string place() const;

    std::string file_;
    std::vector<Level> levels_;
    std::optional<Error> error_;
};

bool Scan::value() {
    if (!levels_.empty()) ++levels_.back().values;
    return true;
}

bool Scan::enter(bool array) {
    value();
    levels_.emplace_back().array = array;
    if (levels_.size() <= kDeepestJson) return true;
    error_ = Error{ErrorKind::Invalid, file_, place(),
                   fmt::format("is nested deeper than {} levels", kDeepestJson)};
    return false;
}

bool Scan::leave() {
    levels_.pop_back();
    return true;
}

bool Scan::key(string_t& name) {
    Level& level = levels_.back();
    level.key = name;
    if (level.seen.insert(name).second) return true;
    error_ = Error{ErrorKind::Invalid, file_, place(), "is given twice"};
    return false;
}

bool Scan::parse_error(std::size_t byte, const std::string&, const Json::exception& problem) {
    constexpr int kNumberOverflow = 406;
    const char* rule =
        problem.id == kNumberOverflow ? "a number too large to hold" : "not valid JSON from here on";
    error_ = Error{ErrorKind::Damaged, file_, fmt::format("byte {}", byte), rule};
    return false;
}

// Of an array the element being read, counted from 0.
std::string Scan::place() const {
    std::string path;
    for (const Level& level : levels_) {
        if (level.array && level.values) path += fmt::format("/{}", level.values - 1);
        if (!level.array && !level.key.empty()) path.append("/").append(oneLine(level.key, 80));
    }
    return path.empty() ? "/" : path;
}
}  // namespace

Status scanJson(const std::string& text, const std::string& file) {
    Scan scan(file);
    if (Json::sax_parse(text, &scan)) return {};
    return fail(scan.error().value_or(Error{ErrorKind::Damaged, file, "byte 0", "not valid JSON"}));
}

}  // namespace fettle
