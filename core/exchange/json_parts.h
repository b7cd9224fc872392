// Why: every writer of JSON here says "nothing" the same way: null for an absent number and for an empty
// text, and makes arrays of plain data by one rule. Thread: pure.
#pragma once

#include <optional>
#include <string>

#include "core/base/json_object.h"

namespace fettle {

template <class T>
Json orNull(const std::optional<T>& value) {
    return value ? Json(*value) : Json();
}

inline Json orNull(const std::string& text) {
    return text.empty() ? Json() : Json(text);
}

}  // namespace fettle
