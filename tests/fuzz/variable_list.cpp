// What the contained reader says is in a file, the sidecar's `samples` behind the parting line.
#include "core/signal/variable_choice.h"

#include "core/base/json_object.h"
#include "core/base/text.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool variableList(const std::string& bytes) {
    const auto [text, named] = halvesOf(bytes);
    const auto json = parseJson(text, "list");
    if (!json) return false;
    const auto list = variableListFrom(*json);
    if (!list) return false;
    ReadingHints hints;
    for (const std::string_view name : split(named, ','))
        if (!name.empty()) hints.samples.emplace_back(name);
    const auto choice = chooseVariables(*list, hints, "a.h5");
    if (!choice) return false;
    require(!choice->samples.empty(), "something was chosen");
    for (const std::size_t place : choice->samples) {
        require(place < list->variables.size(), "what was chosen is in the list");
        require(sizeOf(list->variables[place]).has_value(), "what was chosen has a size");
    }
    require(!choice->time || *choice->time < list->variables.size(), "time is in the list");
    return true;
}

const Listed kVariableList("variable_list", variableList);

}  // namespace
}  // namespace fettle::fuzz
