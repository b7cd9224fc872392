// Why: input JSON is read key by key with the place of every complaint ("/driver/poles") and a note of the
// keys nobody asked for. This is the only way user JSON is read; nlohmann's own exceptions never leave it.
// Use: parse a document, ask for keys (required or optional), collect problems; after the last question
// `finish` lists the unknown keys as warnings and the first broken rule as an error.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

using Json = nlohmann::ordered_json;

// Depth above 64, trailing text and keys given twice are refused (json_scan.h). Place: "byte N" or
// "/key/key".
Result<Json> parseJson(const std::string& text, const std::string& file);

// Gathers the errors and all warnings of one document; shared by the JsonObjects of it.
struct JsonReport {
    std::string file;
    std::optional<Error> error;         // the first rule broken
    std::vector<std::string> warnings;  // one sentence each
    std::vector<Error> more = {};       // one a further place, up to kMost with the first
    static constexpr std::size_t kMost = 20;

    void broken(const std::string& place, const std::string& rule);
    void warn(const std::string& place, const std::string& what);
};

// One object of a document. Reads are total: a missing or wrong value is reported and a default comes back.
class JsonObject {
  public:
    // A value that is not an object is reported and behaves as an empty one.
    JsonObject(const Json& value, std::string place, JsonReport& report);
    ~JsonObject();  // warns of unknown keys
    JsonObject(const JsonObject&) = delete;
    JsonObject& operator=(const JsonObject&) = delete;

    bool has(const std::string& key) const;  // present and not null
    std::string place(const std::string& key) const { return place_ + "/" + key; }
    JsonReport& report() { return report_; }

    std::string text(const std::string& key, bool required = false);
    // A finite number within [least, most]; otherwise reported and nothing.
    std::optional<double> number(const std::string& key, double least, double most, bool required = false);
    std::optional<int> integer(const std::string& key, int least, int most, bool required = false);
    std::optional<bool> boolean(const std::string& key);
    std::vector<double> numbers(const std::string& key, std::size_t count, double least, double most);
    std::vector<std::string> texts(const std::string& key);
    // One of the allowed words; empty where absent, reported where another.
    std::string word(const std::string& key, const std::vector<std::string>& allowed, bool required = false);
    // The raw value under a key, marked as known; null where absent.
    const Json& raw(const std::string& key);
    // The elements of an array of objects; reported where it is something else.
    std::vector<const Json*> list(const std::string& key);

  private:
    const Json* find(const std::string& key, bool required);

    const Json& value_;
    std::string place_;
    JsonReport& report_;
    std::set<std::string> asked_;
};

}  // namespace fettle
