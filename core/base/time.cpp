#include "core/base/time.h"

#include <fmt/format.h>

#include "core/base/text.h"

namespace fettle {

namespace {
std::optional<int> digits(std::string_view text, std::size_t at, std::size_t count) {
    int value = 0;
    for (std::size_t i = at; i < at + count; ++i) {
        if (i >= text.size() || text[i] < '0' || text[i] > '9') return std::nullopt;
        value = value * 10 + (text[i] - '0');
    }
    return value;
}

std::optional<int> milliseconds(std::string_view fraction) {
    if (fraction.empty()) return 0;
    if (fraction.size() < 2 || fraction.front() != '.') return std::nullopt;
    std::string padded(fraction.substr(1));
    for (const char c : padded)
        if (c < '0' || c > '9') return std::nullopt;
    padded.resize(3, '0');
    return digits(padded, 0, 3);
}
}  // namespace

std::optional<Instant> parseUtc(std::string_view text) {
    constexpr std::string_view form = "0000-00-00T00:00:00";
    if (text.size() < form.size() + 1 || text.back() != 'Z') return std::nullopt;
    for (std::size_t i = 0; i < form.size(); ++i)
        if (form[i] != '0' && text[i] != form[i]) return std::nullopt;
    const auto year = digits(text, 0, 4), month = digits(text, 5, 2), day = digits(text, 8, 2);
    const auto hour = digits(text, 11, 2), minute = digits(text, 14, 2), second = digits(text, 17, 2);
    const auto fraction = milliseconds(text.substr(form.size(), text.size() - form.size() - 1));
    if (!year || !month || !day || !hour || !minute || !second || !fraction) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year), std::chrono::month(unsigned(*month)),
                                           std::chrono::day(unsigned(*day))};
    if (!date.ok() || *hour > 23 || *minute > 59 || *second > 59) return std::nullopt;
    return Instant(std::chrono::sys_days(date)) + std::chrono::hours(*hour) + std::chrono::minutes(*minute) +
           std::chrono::seconds(*second) + std::chrono::milliseconds(*fraction);
}

std::string formatDate(Instant time) {
    const std::chrono::year_month_day date(std::chrono::floor<std::chrono::days>(time));
    return fmt::format("{:04}-{:02}-{:02}", int(date.year()), unsigned(date.month()), unsigned(date.day()));
}

std::string formatUtc(Instant time) {
    const auto day = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::hh_mm_ss clock(time - day);
    const auto ms = clock.subseconds().count();
    return fmt::format("{}T{:02}:{:02}:{:02}{}Z", formatDate(time), clock.hours().count(),
                       clock.minutes().count(), clock.seconds().count(), ms ? fmt::format(".{:03}", ms) : "");
}

}  // namespace fettle
