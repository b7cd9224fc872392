#include <fmt/format.h>

#include "core/base/text.h"
#include "core/store/retention_store.h"

namespace fettle {

namespace {

constexpr int kMostDays = 36500;
constexpr int kFewestExamined = 8;  // a round is made of the examinations of its week

std::string daysInWords(int days) {
    return days == 1 ? "1 day" : fmt::format("{} days", days);
}

tl::unexpected<Error> wrong(const std::string& place, const std::string& rule) {
    return fail(ErrorKind::Invalid, "retention", place, rule);
}

Status checkDays(const std::string& place, int days, int fewest) {
    if (days >= fewest && days <= kMostDays) return {};
    return wrong(place, fmt::format("is {} days, must be {} to {}", days, fewest, kMostDays));
}

Result<std::optional<int>> daysFrom(const std::string& key, const std::string& text) {
    if (text == "ever") return std::optional<int>();
    const auto number = parseInteger(text);
    if (!number || *number < 0 || *number > kMostDays)
        return wrong(key, fmt::format("is \"{}\", must be a number of days up to {}, or ever",
                                      oneLine(text, 40), kMostDays));
    return std::optional<int>(int(*number));
}

Status setDays(KeepRule& rule, const std::string& key, const std::string& which, const std::string& text) {
    const auto days = daysFrom(key, text);
    if (!days) return fail(days.error());
    if (which == "daily") {
        rule.dailyDays = *days;
    } else if (which == "weekly") {
        rule.weeklyDays = *days;
    } else if (which != "all") {
        return wrong(key, "is no setting; after the dot all, daily or weekly");
    } else {
        // All for ever: longer than anything lives.
        rule.allDays = days->value_or(kMostDays);
    }
    return {};
}
}  // namespace

const char* keyOf(KeptKind kind) {
    switch (kind) {
        case KeptKind::Waveform:
            return "waveforms";
        case KeptKind::Spectra:
            return "spectra";
        case KeptKind::Examination:
            break;
    }
    return "examinations";
}

std::string inWords(KeptKind kind, const KeepRule& rule) {
    std::string words = std::string(keyOf(kind)) + ": ";
    if (rule.allDays >= kMostDays) return words + "all for ever";
    words += "all for " + daysInWords(rule.allDays);
    const auto then = [&](const std::optional<int>& days, const char* which) {
        if (!days) words += fmt::format(", then one a {}", which);
        if (days && *days > 0) words += fmt::format(", then one a {} for {}", which, daysInWords(*days));
    };
    then(rule.dailyDays, "day");
    if (!rule.dailyDays) return words;
    then(rule.weeklyDays, "week");
    return rule.weeklyDays ? words + ", then none" : words;
}

Status setRule(RetentionRules& rules, const std::string& keyAndValue) {
    const std::size_t equals = keyAndValue.find('='), dot = keyAndValue.find('.');
    const std::string key = keyAndValue.substr(0, equals);
    if (equals == std::string::npos || dot == std::string::npos || dot > equals)
        return wrong(oneLine(keyAndValue, 60), "must be as in waveforms.daily=90");
    for (const KeptKind kind : kAllKept)
        if (key.substr(0, dot) == keyOf(kind))
            return setDays(rules.rule(kind), key, key.substr(dot + 1), keyAndValue.substr(equals + 1));
    return wrong(oneLine(key, 60), "is no setting; before the dot waveforms, spectra or examinations");
}

Status checkRules(const RetentionRules& rules) {
    for (const KeptKind kind : kAllKept) {
        const KeepRule& rule = rules.rule(kind);
        const std::string key = keyOf(kind);
        const int fewest = kind == KeptKind::Examination ? kFewestExamined : 1;
        if (auto good = checkDays(key + ".all", rule.allDays, fewest); !good) return good;
        if (auto good = checkDays(key + ".daily", rule.dailyDays.value_or(0), 0); !good) return good;
        if (auto good = checkDays(key + ".weekly", rule.weeklyDays.value_or(0), 0); !good) return good;
    }
    return {};
}

}  // namespace fettle
