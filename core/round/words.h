// Why: small words that several sentences of a round share. Thread: pure.
#pragma once

#include <string>

namespace fettle {

inline std::string capitalised(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = char(text[0] - 'a' + 'A');
    return text;
}

// Of a place: "driver" of "driver DE".
inline std::string componentOf(const std::string& at) {
    return at.substr(0, at.find(' '));
}

}  // namespace fettle
