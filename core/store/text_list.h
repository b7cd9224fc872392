// Why: a short list of texts in one column is a JSON array, readable in any SQLite shell. What is no such
// array reads as an empty list; bytes that are no UTF-8 are written as U+FFFD.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"

namespace fettle {

inline std::string toJsonText(const std::vector<std::string>& texts) {
    return Json(texts).dump(-1, ' ', false, Json::error_handler_t::replace);
}

inline std::vector<std::string> fromJsonText(const std::string& text) {
    std::vector<std::string> texts;
    if (const auto json = parseJson(text, ""); json && json->is_array())
        for (const Json& one : *json)
            if (one.is_string()) texts.push_back(one.get<std::string>());
    return texts;
}

}  // namespace fettle
