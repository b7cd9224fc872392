// Why: what a MAT or HDF5 file holds, as the contained program (contained_program.h) tells it. Its answer is
// JSON, and is believed as little as any file: {"first_fastest": bool, "variables": [{"name", "shape",
// "real", "attributes"}], "values": {name: text or number}, "notes": [text]}. Thread: pure. Errors: a rule's
// clause where it is no such list; the caller adds the file.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/base/result.h"

namespace fettle {

// A number or a text under a name.
struct NamedValue {
    std::string name, text;
    std::optional<double> number;
};

struct Variable {
    std::string name;  // with its folders: "run/x"
    std::vector<std::uint64_t> shape;
    bool isReal = false;                 // real numbers
    std::vector<NamedValue> attributes;  // of its own
};

struct VariableList {
    bool firstFastest = false;  // the first index of a matrix runs fastest (MAT); else the last (HDF5)
    std::vector<Variable> variables;
    std::vector<NamedValue> values;  // of the file as a whole: scalars, texts, attributes
    std::vector<std::string> notes;  // what was not looked into
};

tl::expected<VariableList, std::string> variableListFrom(const Json& json);

}  // namespace fettle
