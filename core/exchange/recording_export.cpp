#include "core/exchange/recording_export.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/json_object.h"
#include "core/base/text.h"
#include "core/diagnosis/settings.h"
#include "core/exchange/csv_cell.h"
#include "core/exchange/uff_writer.h"
#include "core/signal/capture_facts.h"
#include "core/signal/csv_reader.h"
#include "core/signal/reader.h"
#include "core/signal/sound_file.h"
#include "core/signal/uff_reader.h"

namespace fettle {

namespace {

using Samples = std::vector<std::vector<double>>;

// As the file held them: before scale.
Samples storedNumbers(const Recording& recording) {
    Samples all;
    for (const Channel& channel : recording.channels) {
        all.push_back(channel.samples);
        if (channel.scale == 1) continue;
        for (double& sample : all.back())
            sample /= channel.scale;
    }
    return all;
}

bool areFloat32(const Samples& all) {
    for (const auto& channel : all)
        for (const double sample : channel)
            if (std::abs(sample - double(float(sample))) > std::abs(sample) * 1e-15) return false;
    return true;
}

std::optional<SoundFormat> soundFormatOf(const Recording& recording, const Samples& stored) {
    int bits = 0;
    for (const Channel& channel : recording.channels) {
        const double rate = channel.sampleRateHz;
        if (rate != std::round(rate) || rate != recording.channels[0].sampleRateHz) return std::nullopt;
        if ((channel.bits == 0) != (recording.channels[0].bits == 0)) return std::nullopt;
        bits = std::max(bits, channel.bits);
    }
    if (bits > 24) return std::nullopt;
    if (bits > 16) return SoundFormat::WavPcm24;
    if (bits > 0) return SoundFormat::WavPcm16;
    return areFloat32(stored) ? std::optional(SoundFormat::WavFloat32) : std::nullopt;
}

// Letters of a header that no reader takes for anything else.
bool isPlainName(const std::string& name) {
    const std::string lower = lowerAscii(name);
    if (name.empty() || lower == "t" || lower == "time" || parseNumber(name)) return false;
    return std::all_of(name.begin(), name.end(), [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '_' ||
               c == '-' || c == '.';
    });
}

bool isPlainUnit(const std::string& unit) {
    return unit.find_first_of("[]\"#,;\t\r\n") == std::string::npos;
}

std::string csvHeader(const Recording& recording) {
    std::string line;
    for (std::size_t c = 0; c < recording.channels.size(); ++c) {
        const Channel& channel = recording.channels[c];
        if (c) line += ',';
        line += isPlainName(channel.name) ? channel.name : fmt::format("channel_{}", c + 1);
        if (!channel.unit.empty() && isPlainUnit(channel.unit)) line += " [" + channel.unit + "]";
    }
    return line + kCsvEnd;
}

std::string csvOf(const Recording& recording, const Samples& stored) {
    std::string text = fmt::format("# sample_rate_hz: {}{}", recording.channels[0].sampleRateHz, kCsvEnd);
    text += csvHeader(recording);
    for (std::size_t i = 0; i < stored[0].size(); ++i)
        for (std::size_t c = 0; c < stored.size(); ++c)
            fmt::format_to(std::back_inserter(text), "{}{}", stored[c][i],
                           c + 1 < stored.size() ? "," : kCsvEnd);
    return text;
}

Json factsJson(const Recording& recording) {
    Json json{{"schema", 1}, {"engine", WeighingSettings().engine()}};
    for (const TextFact& fact : textFacts())
        if (!(recording.*fact.member).empty()) json[fact.key] = recording.*fact.member;
    for (const TimeFact& fact : timeFacts())
        if (recording.*fact.member) json[fact.key] = formatUtc(*(recording.*fact.member));
    for (const NumberFact& fact : numberFacts())
        if (recording.*fact.member)
            (fact.operating ? json["operating"][fact.key] : json[fact.key]) = *(recording.*fact.member);
    if (recording.simultaneous != Simultaneous::Unknown)
        json["simultaneous"] = recording.simultaneous == Simultaneous::Yes;
    return json;
}

Samples values(const Recording& recording) {
    Samples all;
    for (const Channel& channel : recording.channels)
        all.push_back(channel.samples);
    return all;
}

Json sidecarOf(const Recording& recording, bool scaled) {
    Json json = factsJson(recording);
    for (const Channel& channel : recording.channels) {
        Json one{{"name", channel.name}};
        if (!channel.unit.empty()) one["unit"] = channel.unit;
        if (scaled && channel.scale != 1) one["scale"] = channel.scale;
        if (!channel.point.empty()) one["point"] = channel.point;
        json["channels"].push_back(std::move(one));
    }
    return json;
}

std::string asText(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

// Whether the sidecar as it came says enough by itself.
bool saysEnough(const std::string& sidecar) {
    const auto json = sidecar.empty() ? Result<Json>(Json()) : parseJson(sidecar, "");
    return json && json->is_object() && json->contains("machine") && json->contains("time") &&
           json->contains("channels");
}

Result<Recording> readBack(const ExportedRecording& out, const std::string& name) {
    auto again = out.extension == ".wav"   ? readWav(out.bytes, name)
                 : out.extension == ".uff" ? readUff(out.bytes, name)
                                           : readCsv(out.bytes, name);
    if (!again) return again;
    if (auto applied = applySidecar(*again, out.sidecar, name); !applied) return fail(applied.error());
    return again;
}

// Equal, or within `digits` of each sample.
bool sameSamples(const std::vector<double>& a, const std::vector<double>& b, double digits) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&](double x, double y) { return x == y || std::abs(x - y) <= digits * std::abs(x); });
}

bool same(const Recording& a, const Recording& b, double digits = 0) {
    if (a.channels.size() != b.channels.size() || a.machine != b.machine || a.time != b.time) return false;
    for (std::size_t c = 0; c < a.channels.size(); ++c)
        if (!sameSamples(a.channels[c].samples, b.channels[c].samples, digits) ||
            a.channels[c].sampleRateHz != b.channels[c].sampleRateHz ||
            a.channels[c].name != b.channels[c].name)
            return false;
    return true;
}

Result<ExportedRecording> attempt(const Recording& recording, const std::string& sidecar,
                                  const std::optional<SoundFormat>& format, const Samples& stored,
                                  const std::string& name) {
    ExportedRecording out{format ? ".wav" : ".csv", "", sidecar};
    if (format) {
        auto bytes = writeSoundFile(stored, recording.channels[0].sampleRateHz, *format, name);
        if (!bytes) return fail(bytes.error());
        out.bytes = std::move(*bytes);
    } else {
        out.bytes = csvOf(recording, stored);
    }
    const auto again = readBack(out, name);
    if (!again) return fail(again.error());
    if (!same(recording, *again))
        return fail(ErrorKind::Damaged, name, "", "would not read back as it is in the fleet file");
    return out;
}

constexpr double kPrintedDigits = 1e-12;  // half the thirteenth, with room

Result<ExportedRecording> asUff(const Recording& recording, UffText form, const std::string& name) {
    Json sidecar = sidecarOf(recording, false);
    sidecar["sample_rate_hz"] = recording.channels[0].sampleRateHz;
    ExportedRecording out{".uff", "", asText(sidecar)};
    const auto written = writeUff(recording, form, [&](std::string_view piece) -> Status {
        out.bytes += piece;
        return {};
    });
    if (!written) return fail(written.error());
    const auto again = readBack(out, name);
    if (!again) return fail(again.error());
    if (!same(recording, *again, form == UffText::Columns ? kPrintedDigits : 0))
        return fail(ErrorKind::Damaged, name, "", "would not read back as it is in the fleet file");
    return out;
}

}  // namespace

Result<ExportedRecording> exportRecording(const Recording& recording, const std::string& sidecar,
                                          const std::string& name, ExportForm form) {
    if (form == ExportForm::Uff) return asUff(recording, UffText::Columns, name);
    if (form == ExportForm::Uff58b) return asUff(recording, UffText::Binary, name);
    const Samples stored = storedNumbers(recording);
    const auto format = soundFormatOf(recording, stored);
    if (form == ExportForm::Wav && !format)
        return fail(ErrorKind::Unsupported, name, "",
                    "WAV would not hold its numbers or rate without loss; leave --format out");
    if (saysEnough(sidecar))
        if (auto out = attempt(recording, sidecar, format, stored, name)) return out;
    if (format)
        if (auto out = attempt(recording, asText(sidecarOf(recording, true)), format, stored, name))
            return out;
    if (form == ExportForm::Wav)
        return fail(ErrorKind::Damaged, name, "", "would not read back as it is in the fleet file");
    return attempt(recording, asText(sidecarOf(recording, false)), std::nullopt, values(recording), name);
}

}  // namespace fettle
