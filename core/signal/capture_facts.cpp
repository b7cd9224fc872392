#include "core/signal/capture_facts.h"

#include <fmt/format.h>

#include "core/base/text.h"

namespace fettle {

const std::vector<TextFact>& textFacts() {
    static const std::vector<TextFact> facts = {
        {"machine", &Recording::machine},
        {"point", &Recording::point},
        {"time_source", &Recording::timeSource},
        {"capture", &Recording::capture},
    };
    return facts;
}

const std::vector<TimeFact>& timeFacts() {
    static const std::vector<TimeFact> facts = {{"time", &Recording::time},
                                                {"received", &Recording::received}};
    return facts;
}

const std::vector<NumberFact>& numberFacts() {
    static const std::vector<NumberFact> facts = {
        {"speed_rpm", &Recording::speedRpm, 0, 200000, false},
        {"output_hz", &Recording::outputHz, 0, 5000, false},
        {"frame_temp_c", &Recording::frameTempC, -100, 500, false},
        {"ambient_temp_c", &Recording::ambientTempC, -100, 200, false},
        {"load_pct", &Recording::loadPct, 0, 500, true},
    };
    return facts;
}

tl::expected<Instant, std::string> parseCaptureTime(const std::string& text) {
    using namespace std::chrono;
    constexpr Instant earliest = sys_days(year(1980) / 1 / 1), latest = sys_days(year(2101) / 1 / 1);
    const auto time = parseUtc(text);
    const std::string shown = oneLine(text, 40);
    if (!time) return tl::unexpected(fmt::format("is \"{}\", must be UTC as in 2026-05-04T06:20:00Z", shown));
    if (*time < earliest)
        return tl::unexpected(fmt::format("is {}, before 1980: the clock was not set", shown));
    if (*time >= latest) return tl::unexpected(fmt::format("is {}, after 2100: the clock is wrong", shown));
    return *time;
}

namespace {
std::string shown(const std::string& value) {
    return oneLine(value, 80);
}
std::string shown(const std::optional<double>& value) {
    return fmt::format("{}", *value);
}
std::string shown(const std::optional<Instant>& value) {
    return formatUtc(*value);
}
bool isSaid(const std::string& value) {
    return !value.empty();
}
template <class Value>
bool isSaid(const std::optional<Value>& value) {
    return value.has_value();
}

template <class Fact>
void merge(const Fact& fact, Recording& recording, const Recording& said, const std::string& saidBy) {
    auto& held = recording.*fact.member;
    const auto& given = said.*fact.member;
    if (!isSaid(given)) return;
    if (isSaid(held) && held != given)
        recording.warnings.push_back(fmt::format("{}: {}: {} holds, {} says {}", oneLine(saidBy), fact.key,
                                                 shown(given), oneLine(recording.file), shown(held)));
    held = given;
}
}  // namespace

void mergeFacts(Recording& recording, const Recording& said, const std::string& saidBy) {
    for (const TextFact& fact : textFacts())
        merge(fact, recording, said, saidBy);
    for (const TimeFact& fact : timeFacts())
        merge(fact, recording, said, saidBy);
    for (const NumberFact& fact : numberFacts())
        merge(fact, recording, said, saidBy);
    if (said.simultaneous != Simultaneous::Unknown) recording.simultaneous = said.simultaneous;
}

void givePoints(Recording& recording) {
    for (Channel& channel : recording.channels)
        if (channel.point.empty()) channel.point = recording.point;
}

}  // namespace fettle
