#include "core/fleet/ask_spec.h"

#include <fmt/format.h>

#include <cmath>
#include <vector>

#include "core/base/text.h"

namespace fettle {

namespace {
constexpr double kMostSeconds = 3600, kMostHz = 100000;
constexpr double kRounded = 1 - 1e-9;  // lines over band, times band
constexpr int kFewestLines = 400, kMostLines = 409600;
const std::vector<std::string> kOutcomes = {"answered", "dropped"};
}  // namespace

int linesOf(const AskSpec& spec) {
    if (spec.seconds <= 0 || spec.topHz <= 0) return 0;
    int lines = kFewestLines;
    while (lines < kMostLines && lines < kRounded * spec.seconds * spec.topHz)
        lines *= 2;
    return lines;
}

std::string toText(const AskSpec& spec) {
    Json json = Json::object();
    if (spec.seconds > 0) json["seconds"] = spec.seconds;
    if (spec.topHz > 0) json["top_hz"] = spec.topHz;
    if (spec.tachometer) json["tachometer"] = true;
    if (!spec.outcome.empty()) json["outcome"] = spec.outcome;
    if (!spec.note.empty()) json["note"] = spec.note;
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Result<AskSpec> askSpecFrom(const std::string& text, const std::string& file) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    JsonReport report{file, {}, {}};
    AskSpec spec;
    {
        JsonObject root(*json, "", report);
        spec.seconds = root.number("seconds", 0, kMostSeconds).value_or(0);
        spec.topHz = root.number("top_hz", 0, kMostHz).value_or(0);
        spec.tachometer = root.boolean("tachometer").value_or(false);
        spec.outcome = root.word("outcome", kOutcomes);
        spec.note = root.text("note");
    }
    if (report.error) return fail(*report.error);
    return spec;
}

Status checkAskSpec(const AskSpec& spec) {
    const auto within = [](double value, double most) {
        return std::isfinite(value) && value >= 0 && value <= most;
    };
    if (!within(spec.seconds, kMostSeconds))
        return fail(ErrorKind::Invalid, "", "length",
                    fmt::format("is {} s, must be from 0 to {:g} s", spec.seconds, kMostSeconds));
    if (!within(spec.topHz, kMostHz))
        return fail(ErrorKind::Invalid, "", "band",
                    fmt::format("goes to {} Hz, must end at 0 to {:g} Hz", spec.topHz, kMostHz));
    return {};
}

std::string wordsOf(const AskSpec& spec) {
    std::vector<std::string> parts;
    if (spec.seconds > 0) parts.push_back(fmt::format("{:g} s or more", spec.seconds));
    if (spec.topHz > 0) parts.push_back(fmt::format("to {:g} Hz", spec.topHz));
    if (linesOf(spec) > 0) parts.push_back(fmt::format("{} lines", linesOf(spec)));
    if (spec.tachometer) parts.push_back("with a tachometer");
    return parts.empty() ? "a running recording" : joined(parts, ", ");
}

}  // namespace fettle
