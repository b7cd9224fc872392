#include "core/signal/variable_list.h"

#include "core/base/text.h"

namespace fettle {

namespace {

constexpr std::uint64_t kMostShape = std::uint64_t(1) << 40;
constexpr const char* kNoList = "the reader of such files answered nonsense";

std::string textIn(const Json& json, const char* key) {
    return json.is_object() && json.contains(key) && json[key].is_string() ? json[key].get<std::string>()
                                                                           : "";
}

std::vector<NamedValue> valuesIn(const Json& json, const char* key) {
    std::vector<NamedValue> values;
    if (!json.is_object() || !json.contains(key) || !json[key].is_object()) return values;
    for (const auto& item : json[key].items()) {
        NamedValue value;
        value.name = item.key();
        if (item.value().is_string()) value.text = item.value().get<std::string>();
        if (item.value().is_number()) value.number = item.value().get<double>();
        values.push_back(std::move(value));
    }
    return values;
}

std::optional<Variable> variableIn(const Json& json) {
    Variable variable;
    variable.name = textIn(json, "name");
    if (variable.name.empty() || !json.contains("shape") || !json["shape"].is_array()) return std::nullopt;
    for (const Json& size : json["shape"]) {
        if (!size.is_number_unsigned() || size.get<std::uint64_t>() > kMostShape) return std::nullopt;
        variable.shape.push_back(size.get<std::uint64_t>());
    }
    variable.isReal = json.contains("real") && json["real"] == true;
    variable.attributes = valuesIn(json, "attributes");
    return variable;
}

}  // namespace

tl::expected<VariableList, std::string> variableListFrom(const Json& json) {
    VariableList list;
    list.firstFastest = json.contains("first_fastest") && json["first_fastest"] == true;
    list.values = valuesIn(json, "values");
    if (!json.contains("variables") || !json["variables"].is_array())
        return tl::unexpected(std::string(kNoList));
    for (const Json& one : json["variables"]) {
        auto variable = variableIn(one);
        if (!variable) return tl::unexpected(std::string(kNoList));
        list.variables.push_back(std::move(*variable));
    }
    if (json.contains("notes") && json["notes"].is_array())
        for (const Json& note : json["notes"])
            if (note.is_string()) list.notes.push_back(oneLine(note.get<std::string>(), 200));
    return list;
}

}  // namespace fettle
