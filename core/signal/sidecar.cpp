#include "core/signal/sidecar.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/file_system.h"
#include "core/base/json_object.h"
#include "core/base/text.h"
#include "core/signal/capture_facts.h"
#include "core/signal/reader.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {
constexpr double kLargestScale = 1e12;
constexpr double kSameRate = 0.01;  // relative: a rate that is merely printed shorter, or a node's own clock
constexpr double kPrintedRate = 1e-4;  // not worth a word

struct ChannelSaid {
    std::string name, point, unit;
    double scale = 1;
};

struct SidecarSaid {
    Recording facts;
    std::optional<double> sampleRateHz;
    bool fileTimeIsUtc = false;
    std::vector<ChannelSaid> channels;  // as many as the file has, or none
};

void readTime(JsonObject& object, const TimeFact& fact, Recording& facts) {
    const std::string text = object.text(fact.key);
    if (!object.has(fact.key) || !object.raw(fact.key).is_string()) return;
    if (const auto time = parseCaptureTime(text))
        facts.*fact.member = *time;
    else
        object.report().broken(object.place(fact.key), time.error());
}

// true, false or "unknown".
Simultaneous readSimultaneous(JsonObject& object) {
    if (const Json& value = object.raw("simultaneous"); value == "unknown") return Simultaneous::Unknown;
    const auto said = object.boolean("simultaneous");
    if (!said) return Simultaneous::Unknown;
    return *said ? Simultaneous::Yes : Simultaneous::No;
}

void readNumbers(JsonObject& object, bool operating, Recording& facts) {
    for (const NumberFact& fact : numberFacts())
        if (fact.operating == operating) facts.*fact.member = object.number(fact.key, fact.least, fact.most);
}

Recording readFacts(JsonObject& object) {
    for (const char* written : {"schema", "engine"})
        object.raw(written);
    Recording facts;
    for (const TextFact& fact : textFacts())
        facts.*fact.member = object.text(fact.key);
    for (const TimeFact& fact : timeFacts())
        readTime(object, fact, facts);
    readNumbers(object, false, facts);
    facts.simultaneous = readSimultaneous(object);
    const Json& operating = object.raw("operating");
    if (operating.is_null()) return facts;
    JsonObject inner(operating, object.place("operating"), object.report());
    readNumbers(inner, true, facts);
    return facts;
}

// Which variables are samples was needed before (reader.h); here it only has to be well formed.
void checkVariableNames(JsonObject& object) {
    const Json& names = object.raw("samples");
    const auto isName = [](const Json& name) { return name.is_string() && !name.get<std::string>().empty(); };
    const bool good = names.is_null() || isName(names) ||
                      (names.is_array() && !names.empty() && std::all_of(names.begin(), names.end(), isName));
    if (!good)
        object.report().broken(object.place("samples"), "must be the name of a variable, or a list of names");
}

void readRateAndDate(JsonObject& object, SidecarSaid& said) {
    said.sampleRateHz = object.number("sample_rate_hz", kLeastRateHz, kMostRateHz);
    said.fileTimeIsUtc = object.word("file_time", {"utc"}) == "utc";
    checkVariableNames(object);
}

ChannelSaid readChannel(const Json& value, const std::string& place, JsonReport& report) {
    JsonObject object(value, place, report);
    ChannelSaid said{object.text("name"), object.text("point"), object.text("unit"), 1};
    said.scale = object.number("scale", -kLargestScale, kLargestScale).value_or(1);
    if (said.scale == 0) report.broken(object.place("scale"), "is 0, which would wipe out every sample");
    return said;
}

std::vector<ChannelSaid> readChannels(JsonObject& object, std::size_t inFile) {
    std::vector<ChannelSaid> channels;
    std::set<std::string> names;
    for (const Json* item : object.list("channels")) {
        const std::string place = fmt::format("{}/{}", object.place("channels"), channels.size());
        channels.push_back(readChannel(*item, place, object.report()));
        const std::string& name = channels.back().name;
        if (!name.empty() && !names.insert(name).second)
            object.report().broken(place + "/name",
                                   fmt::format("two channels are named \"{}\"", oneLine(name, 80)));
    }
    if (object.raw("channels").is_array() && channels.size() != inFile)
        object.report().broken(
            object.place("channels"),
            fmt::format("names {} channels, the recording has {}", channels.size(), inFile));
    return channels;
}

Result<SidecarSaid> readSidecar(const std::string& text, const std::string& file, std::size_t channelsInFile,
                                std::vector<std::string>& warnings) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    JsonReport report;
    report.file = file;
    SidecarSaid said;
    {
        JsonObject object(*json, "", report);
        said.facts = readFacts(object);
        readRateAndDate(object, said);
        said.channels = readChannels(object, channelsInFile);
    }
    if (report.error) return fail(*report.error);
    warnings = report.warnings;
    return said;
}

void applyChannel(Channel& channel, const ChannelSaid& said) {
    if (!said.name.empty()) channel.name = said.name;
    if (!said.point.empty()) channel.point = said.point;
    if (!said.unit.empty()) channel.unit = said.unit;
    if (said.scale == 1) return;
    for (double& sample : channel.samples)
        sample *= said.scale;
    channel.fullScale *= std::abs(said.scale);
    channel.scale *= said.scale;
}
// The rate somebody states is the truer one, where it is the file's own but for its last digits.
Status applyRate(Recording& recording, double hertz, const std::string& sidecarFile) {
    const double own = recording.channels.empty() ? hertz : recording.channels[0].sampleRateHz;
    const double off = std::abs(own / hertz - 1);
    if (!(off <= kSameRate))
        return fail(ErrorKind::Invalid, sidecarFile, "/sample_rate_hz",
                    fmt::format("is {}, the recording itself says {}", hertz, own));
    if (off > kPrintedRate)
        recording.warnings.push_back(fmt::format("{}: sample_rate_hz: {} holds, {} says {}",
                                                 oneLine(sidecarFile), hertz, oneLine(recording.file), own));
    for (Channel& channel : recording.channels)
        channel.sampleRateHz = hertz;
    return {};
}

void applyFileTime(Recording& recording, const std::string& sidecarFile) {
    if (recording.time) return;
    recording.time = recording.fileTime;
    if (!recording.time)
        recording.warnings.push_back(fmt::format("{}: file_time says utc, but {} carries no date",
                                                 oneLine(sidecarFile), oneLine(recording.file)));
}
}  // namespace

std::string sidecarPath(const std::string& recordingPath) {
    return withExtension(recordingPath, ".json");
}

Status applySidecar(Recording& recording, const std::string& sidecarText, const std::string& sidecarFile) {
    std::vector<std::string> warnings;
    const auto said = readSidecar(sidecarText, sidecarFile, recording.channels.size(), warnings);
    if (!said) return fail(said.error());
    if (said->sampleRateHz)
        if (auto good = applyRate(recording, *said->sampleRateHz, sidecarFile); !good) return good;
    recording.warnings.insert(recording.warnings.end(), warnings.begin(), warnings.end());
    mergeFacts(recording, said->facts, sidecarFile);
    if (said->fileTimeIsUtc) applyFileTime(recording, sidecarFile);
    for (std::size_t c = 0; c < said->channels.size(); ++c)
        applyChannel(recording.channels[c], said->channels[c]);
    givePoints(recording);
    return {};
}

}  // namespace fettle
