#include "core/intake/rules.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/intake/discover.h"
#include "core/signal/capture_facts.h"
#include "core/signal/sidecar.h"

namespace fettle {

namespace {

constexpr const char* kOwnOfARecording[] = {"time", "received", "capture", "schema", "engine"};

bool hasKey(const Json& object, const std::string& key) {
    return object.is_object() && object.contains(key) && !object[key].is_null();
}

const Json* channelOf(const Json& object, std::size_t index) {
    if (!hasKey(object, "channels") || !object["channels"].is_array()) return nullptr;
    return index < object["channels"].size() ? &object["channels"][index] : nullptr;
}

// What a rule's keys are tried on.
Recording silent(std::size_t channels, double sampleRateHz) {
    Recording recording;
    recording.fileTime = Instant{};
    for (std::size_t c = 0; c < channels; ++c)
        recording.channels.push_back({std::to_string(c + 1), {}, {}, sampleRateHz, {0.0, 0.0}});
    return recording;
}

// The rule's keys with what the path says.
Json keysOf(const RuleBook::Match& match) {
    Json keys = match.rule->keys;
    if (!match.said.machine.empty()) keys["machine"] = match.said.machine;
    if (!match.said.point.empty()) keys["point"] = match.said.point;
    if (!match.said.time.empty()) keys["time"] = match.said.time;
    return keys;
}

bool isSaid(const std::string& key, const Recording& recording) {
    for (const TextFact& fact : textFacts())
        if (key == fact.key) return !(recording.*fact.member).empty();
    for (const TimeFact& fact : timeFacts())
        if (key == fact.key) return (recording.*fact.member).has_value();
    for (const NumberFact& fact : numberFacts())
        if (key == fact.key) return (recording.*fact.member).has_value();
    if (key == "file_time") return recording.time.has_value() || !recording.fileTime;
    return key == "simultaneous" && recording.simultaneous != Simultaneous::Unknown;
}

// Keys that were handed to the reader: kept with a recording of variables where they are what it went by.
bool wasHint(const std::string& key) {
    return key == "samples" || key == "sample_rate_hz";
}
bool hintHolds(const std::string& key, const Json& value, const ReadFile& read) {
    if (!read.ofVariables) return false;
    return key == "samples" || value == Json(read.recording->channels[0].sampleRateHz);
}

// A scale belongs to a file of bare numbers: whole ones, or without a unit.
bool wantsScale(const Channel& channel, const Json* said) {
    const bool given = said && hasKey(*said, "scale");
    return !given && channel.scale == 1 && (channel.unit.empty() || channel.bits > 0);
}

Json channelMissing(const Json& rule, const Channel& channel, const Json* said, std::size_t index,
                    bool pointSaid, bool ofVariables) {
    Json entry = Json::object();
    // Of a variable the name is where the numbers stood, not what the register calls the channel.
    const bool byFile = !ofVariables && channel.name != std::to_string(index + 1);
    const bool named = (said && hasKey(*said, "name")) || byFile;
    if (hasKey(rule, "name") && !named) entry["name"] = rule["name"];
    if (hasKey(rule, "unit") && channel.unit.empty()) entry["unit"] = rule["unit"];
    if (hasKey(rule, "point") && !pointSaid && channel.point.empty()) entry["point"] = rule["point"];
    if (hasKey(rule, "scale") && wantsScale(channel, said)) entry["scale"] = rule["scale"];
    return entry;
}

// Of the rule's channels what neither file nor sidecar says; empty: nothing.
Json channelsMissing(const Json& rule, const Recording& recording, const Json& sidecar, bool ofVariables) {
    Json list = Json::array();
    bool any = false;
    for (std::size_t c = 0; c < rule["channels"].size(); ++c) {
        const bool there = c < recording.channels.size();
        Json entry = there && rule["channels"][c].is_object()
                         ? channelMissing(rule["channels"][c], recording.channels[c], channelOf(sidecar, c),
                                          c, !recording.point.empty(), ofVariables)
                         : Json::object();
        any = any || !entry.empty() || !there;
        list.push_back(std::move(entry));
    }
    return any ? list : Json();
}

Json missing(const Json& rule, const Recording& recording, const Json& sidecar, const ReadFile& read) {
    Json added = Json::object();
    for (const auto& item : rule.items()) {
        if (wasHint(item.key()) && !hintHolds(item.key(), item.value(), read)) continue;
        if (item.key() == "channels") {
            if (Json channels = channelsMissing(rule, recording, sidecar, read.ofVariables);
                !channels.is_null())
                added["channels"] = std::move(channels);
        } else if (item.key() == "operating") {
            const bool said = recording.loadPct || hasKey(sidecar, "operating");
            if (!said) added["operating"] = item.value();
        } else if (!hasKey(sidecar, item.key()) && !isSaid(item.key(), recording)) {
            added[item.key()] = item.value();
        }
    }
    return added;
}

// `more` only fills: keys of objects and places of lists that are there stay.
void fill(Json& into, const Json& more) {
    for (const auto& item : more.items()) {
        if (item.key() != "channels" || !hasKey(into, "channels")) {
            into[item.key()] = item.value();
            continue;
        }
        for (std::size_t c = 0; c < std::min(into["channels"].size(), item.value().size()); ++c)
            for (const auto& key : item.value()[c].items())
                into["channels"][c][key.key()] = key.value();
    }
}

bool isNoSidecar(const std::string& warning) {
    return warning.find(": no such sidecar: ") != std::string::npos;
}

Status applyOne(const RuleBook::Match& match, const ReadFile& read, Recording& recording, Json& sidecar,
                RulesApplied& applied) {
    const Json added = missing(keysOf(match), recording, sidecar, read);
    if (added.empty()) return {};
    const std::string name = fmt::format("rule {}", match.rule->pattern);
    if (auto good = applySidecar(recording, added.dump(-1, ' ', false, Json::error_handler_t::replace), name);
        !good)
        return good;
    fill(sidecar, added);
    fill(applied.added, added);
    applied.patterns.push_back(match.rule->pattern);
    return {};
}

Status checkKeys(const Json& keys, const std::string& name) {
    if (!keys.is_object()) return fail(ErrorKind::Invalid, name, "/", "the keys are an object { }");
    for (const char* key : kOwnOfARecording)
        if (keys.contains(key))
            return fail(ErrorKind::Invalid, name, std::string("/") + key,
                        "cannot be the same for every file of a rule; a time may stand in the pattern as "
                        "{time_utc}");
    const std::size_t channels =
        hasKey(keys, "channels") && keys["channels"].is_array() ? keys["channels"].size() : std::size_t(1);
    Recording dummy =
        silent(std::min<std::size_t>(channels, 1000), hintsIn(keys).sampleRateHz.value_or(1000));
    if (auto good = applySidecar(dummy, keys.dump(-1, ' ', false, Json::error_handler_t::replace), name);
        !good)
        return good;
    if (dummy.warnings.empty()) return {};
    return fail(ErrorKind::Invalid, name, "", dummy.warnings.front());
}

}  // namespace

Result<ReadingRule> readRule(const std::string& pattern, const std::string& keysJson) {
    auto compiled = PathPattern::parse(pattern);
    if (!compiled) return fail(compiled.error());
    const std::string name = fmt::format("rule {}", pattern);
    auto keys = parseJson(keysJson, name);
    if (!keys) return fail(keys.error());
    if (auto good = checkKeys(*keys, name); !good) return fail(good.error());
    return ReadingRule{pattern, std::move(*compiled), std::move(*keys)};
}

Result<RuleBook> RuleBook::of(FleetFile& fleet) {
    const auto kept = fleet.readingRules().all();
    if (!kept) return fail(kept.error());
    RuleBook book;
    for (const ReadingRuleEntry& entry : *kept) {
        auto rule = readRule(entry.pattern, entry.json);
        if (rule)
            book.add(std::move(*rule));
        else
            book.problems_.push_back(rule.error());
    }
    return book;
}

void RuleBook::add(ReadingRule rule) {
    const auto nearer = [](const ReadingRule& a, const ReadingRule& b) {
        return a.compiled.literals() > b.compiled.literals();
    };
    rules_.insert(std::upper_bound(rules_.begin(), rules_.end(), rule, nearer), std::move(rule));
}

std::vector<RuleBook::Match> RuleBook::matching(const std::string& path) const {
    std::vector<Match> matches;
    if (rules_.empty()) return matches;
    const std::string whole = wholePath(path);
    for (const ReadingRule& rule : rules_) {
        auto said = rule.compiled.match(path);
        if (!said) said = rule.compiled.match(whole);
        if (said) matches.push_back({&rule, *said});
    }
    return matches;
}

ReadingHints hintsOf(const RuleBook& rules, const std::string& path) {
    ReadingHints hints;
    for (const RuleBook::Match& match : rules.matching(path)) {
        const ReadingHints said = hintsIn(match.rule->keys);
        if (hints.samples.empty()) hints.samples = said.samples;
        if (!hints.sampleRateHz) hints.sampleRateHz = said.sampleRateHz;
    }
    return hints;
}

Result<RulesApplied> applyRules(const RuleBook& rules, ReadFile& read) {
    RulesApplied applied;
    const auto matches = rules.matching(read.recording->file);
    if (matches.empty()) return applied;
    Recording recording = *read.recording;
    const auto parsed = parseJson(read.sidecar.empty() ? "{}" : read.sidecar, sidecarPath(recording.file));
    Json sidecar = parsed && parsed->is_object() ? *parsed : Json::object();
    for (const RuleBook::Match& match : matches)
        if (auto good = applyOne(match, read, recording, sidecar, applied); !good) return fail(good.error());
    if (applied.patterns.empty()) return applied;
    std::erase_if(recording.warnings, isNoSidecar);
    read.sidecar = sidecar.dump(2, ' ', false, Json::error_handler_t::replace);
    read.recording = std::make_shared<const Recording>(std::move(recording));
    return applied;
}

}  // namespace fettle
