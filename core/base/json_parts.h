// Why: every writer of JSON here says "nothing" the same way: null for an absent number and for an empty
// text, and makes arrays of plain data by one rule. Thread: pure.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "core/base/json_object.h"

namespace fettle {

template <class T>
Json orNull(const std::optional<T>& value) {
    return value ? Json(*value) : Json();
}

inline Json orNull(const std::string& text) {
    return text.empty() ? Json() : Json(text);
}

// An object put together key by key, each key once: without the lists that an initializer makes on the way,
// and without looking for each key among those before it. For what an examination holds by the hundred.
class JsonRow {
  public:
    explicit JsonRow(std::size_t keys) { object().reserve(keys); }
    JsonRow& put(const char* key, Json value) {
        object().emplace_back(key, std::move(value));
        return *this;
    }
    Json take() { return std::move(json_); }

  private:
    Json::object_t& object() { return json_.get_ref<Json::object_t&>(); }

    Json json_ = Json::object();
};

}  // namespace fettle
