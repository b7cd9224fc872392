// Why: what the program writes must fit the schema it ships; this checks a document against the part of JSON
// Schema (draft 2020-12) that the project's schemas use: type, enum, const, required, properties, items,
// minItems, minimum, anyOf and $ref within the document. Returns one line per fault with its place; empty: it
// fits. Thread: pure functions.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"

namespace fettle::made {

class SchemaCheck {
  public:
    explicit SchemaCheck(const Json& schema) : root_(schema) {}

    std::vector<std::string> faultsOf(const Json& document) const {
        std::vector<std::string> faults;
        visit(root_, document, "", faults);
        return faults;
    }

    // Places of keys that the document has and the schema does not tell of: "/nodes/0/at". Objects behind a
    // choice of forms are passed over.
    std::vector<std::string> untoldKeysOf(const Json& document) const {
        std::vector<std::string> untold;
        visitUntold(root_, document, "", untold);
        return untold;
    }

  private:
    void visitUntold(const Json& node, const Json& value, const std::string& place,
                     std::vector<std::string>& untold) const {
        if (node.contains("$ref"))
            return visitUntold(root_[Json::json_pointer(node["$ref"].get<std::string>().substr(1))], value,
                               place, untold);
        if (value.is_array() && node.contains("items"))
            for (std::size_t i = 0; i < value.size(); ++i)
                visitUntold(node["items"], value[i], place + "/" + std::to_string(i), untold);
        if (!value.is_object() || !node.contains("properties")) return;
        for (const auto& one : value.items()) {
            const std::string at = place + "/" + one.key();
            if (node["properties"].contains(one.key()))
                visitUntold(node["properties"][one.key()], one.value(), at, untold);
            else
                untold.push_back(at);
        }
    }

    static bool isOf(const std::string& type, const Json& value) {
        if (type == "number") return value.is_number();
        if (type == "integer") return value.is_number_integer();
        if (type == "string") return value.is_string();
        if (type == "boolean") return value.is_boolean();
        if (type == "object") return value.is_object();
        if (type == "array") return value.is_array();
        return type == "null" && value.is_null();
    }

    static bool isOfAny(const Json& types, const Json& value) {
        if (types.is_string()) return isOf(types.get<std::string>(), value);
        for (const Json& type : types)
            if (isOf(type.get<std::string>(), value)) return true;
        return false;
    }

    static bool isOneOf(const Json& words, const Json& value) {
        for (const Json& word : words)
            if (word == value) return true;
        return false;
    }

    bool fitsOne(const Json& choices, const Json& value) const {
        for (const Json& choice : choices) {
            std::vector<std::string> faults;
            visit(choice, value, "", faults);
            if (faults.empty()) return true;
        }
        return false;
    }

    void visit(const Json& node, const Json& value, const std::string& place,
               std::vector<std::string>& faults) const {
        const auto fault = [&](const std::string& what) { faults.push_back(place + ": " + what); };
        if (node.contains("$ref"))
            visit(root_[Json::json_pointer(node["$ref"].get<std::string>().substr(1))], value, place, faults);
        if (node.contains("type") && !isOfAny(node["type"], value))
            return fault("is no " + node["type"].dump());
        if (node.contains("enum") && !isOneOf(node["enum"], value))
            fault(value.dump() + " is not one of its words");
        if (node.contains("const") && node["const"] != value) fault("is not " + node["const"].dump());
        if (node.contains("anyOf") && !fitsOne(node["anyOf"], value)) fault("fits none of its forms");
        if (node.contains("minimum") && value.is_number() && value < node["minimum"]) fault("is too small");
        if (value.is_array()) visitItems(node, value, place, faults);
        if (value.is_object()) visitKeys(node, value, place, faults);
    }

    void visitItems(const Json& node, const Json& value, const std::string& place,
                    std::vector<std::string>& faults) const {
        if (node.contains("minItems") && value.size() < node["minItems"])
            faults.push_back(place + ": too few items");
        if (!node.contains("items")) return;
        for (std::size_t i = 0; i < value.size(); ++i)
            visit(node["items"], value[i], place + "/" + std::to_string(i), faults);
    }

    void visitKeys(const Json& node, const Json& value, const std::string& place,
                   std::vector<std::string>& faults) const {
        if (node.contains("required"))
            for (const Json& key : node["required"])
                if (!value.contains(key.get<std::string>()))
                    faults.push_back(place + ": has no " + key.dump());
        if (!node.contains("properties")) return;
        for (const auto& property : node["properties"].items())
            if (value.contains(property.key()))
                visit(property.value(), value[property.key()], place + "/" + property.key(), faults);
    }

    const Json& root_;
};

}  // namespace fettle::made
