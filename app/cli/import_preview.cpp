#include "app/cli/import_preview.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "core/base/text.h"
#include "core/intake/preview.h"

namespace fettle {

namespace {

Json toJson(const Fact& fact) {
    if (fact.value.empty()) return nullptr;
    return {{"value", fact.value}, {"from", wordOf(fact.from)}};
}

Json toJson(const PreviewChannel& channel) {
    return {{"name", toJson(channel.name)},           {"quantity", toJson(channel.quantity)},
            {"unit", toJson(channel.unit)},           {"scale", toJson(channel.scale)},
            {"direction", toJson(channel.direction)}, {"point", toJson(channel.point)}};
}

Json toJson(const FilePreview& file) {
    Json json = {{"path", file.path},
                 {"state", wordOf(file.state)},
                 {"format", file.format},
                 {"sample_rate_hz", file.rateHz},
                 {"seconds", file.seconds},
                 {"machine", toJson(file.machine)},
                 {"point", toJson(file.point)},
                 {"time", toJson(file.time)},
                 {"speed_rpm", toJson(file.speedRpm)},
                 {"rules", file.rules},
                 {"notes", file.notes}};
    if (!file.dialect.empty()) json["dialect"] = file.dialect;
    if (!file.objection.rule.empty())
        json["objection"] = {{"place", file.objection.place}, {"rule", file.objection.rule}};
    json["channels"] = Json::array();
    for (const PreviewChannel& channel : file.channels)
        json["channels"].push_back(toJson(channel));
    return json;
}

std::string told(const Fact& fact) {
    if (fact.value.empty()) return "not said";
    return fmt::format("{} ({})", oneLine(fact.value, 80), wordOf(fact.from));
}

std::string channelLine(const PreviewChannel& channel) {
    return fmt::format("  {}: {}, unit {}, scale {}, direction {}, at {}\n", told(channel.name),
                       told(channel.quantity), told(channel.unit), told(channel.scale),
                       told(channel.direction), told(channel.point));
}

void printGroup(const Preview& all, const PreviewGroup& group) {
    const FilePreview& first = all.files[group.files[0]];
    std::string text = fmt::format("{}, {}: {}", counted(group.files.size(), "file"), wordOf(first.state),
                                   oneLine(first.path));
    if (group.files.size() > 1) text += " and others like it";
    text += "\n";
    if (!first.format.empty())
        text +=
            fmt::format("  {}, {} Hz, {:.3g} s; machine {}, point {}, time {}\n", first.format, first.rateHz,
                        first.seconds, told(first.machine), told(first.point), told(first.time));
    if (!first.dialect.empty()) text += "  " + oneLine(first.dialect) + "\n";
    for (const PreviewChannel& channel : first.channels)
        text += channelLine(channel);
    if (!first.rules.empty()) text += "  by rule " + oneLine(joined(first.rules, ", ")) + "\n";
    if (!first.objection.rule.empty())
        text += fmt::format("  {}: {}\n  a rule could take {}\n", oneLine(first.objection.place),
                            oneLine(first.objection.rule), oneLine(group.pattern));
    print(text);
}

}  // namespace

int previewImport(FleetFile& fleet, const std::vector<std::string>& paths, bool recursive, bool json) {
    PreviewOptions options;
    options.recursive = recursive;
    options.progress = progressOnStderr();
    options.cancel = cancelledBySignals();
    const auto all = preview(fleet, RealFileSystem(), paths, options);
    if (!all) return couldNotRun(all.error());
    if (json) {
        Json out = headedJson();
        out["files"] = Json::array();
        for (const FilePreview& file : all->files)
            out["files"].push_back(toJson(file));
        printJson(out);
    } else {
        for (const PreviewGroup& group : all->groups)
            printGroup(*all, group);
        print(counted(all->files.size(), "file") + " looked at; nothing was stored\n");
    }
    const bool objected = std::any_of(all->files.begin(), all->files.end(),
                                      [](const FilePreview& file) { return !file.objection.rule.empty(); });
    return all->cancelled ? kCouldNotRun : objected ? kRefusedSome : kDone;
}

}  // namespace fettle
