// Why: before a document is taken, one pass over its text finds what the parser alone would not tell or would
// hide: where exactly it stops being JSON, a number too large to hold, nesting without end, and a key written
// twice in one object, of which the first would be lost without a word. Errors: Damaged "byte N" where the
// text is not JSON; Invalid "/driver/poles" for nesting and for keys given twice. Source: RFC 8259, sections
// 4 (names should be unique) and 9 (limits on depth).
#pragma once

#include <string>

#include "core/base/result.h"

namespace fettle {

inline constexpr std::size_t kDeepestJson = 64;

Status scanJson(const std::string& text, const std::string& file);

}  // namespace fettle
