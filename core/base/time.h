// Why: recordings carry the time of their first sample in UTC; local times and guesses are refused at the
// door.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace fettle {

using Instant = std::chrono::sys_time<std::chrono::milliseconds>;

// "2026-05-04T06:20:00Z", also with a fraction of a second. No other zone than Z; nothing for a day that is
// not one.
std::optional<Instant> parseUtc(std::string_view text);
// The same form back, with ".mmm" only where there are milliseconds.
std::string formatUtc(Instant time);
// "2026-05-04"
std::string formatDate(Instant time);

}  // namespace fettle
