// Why: everything in a fleet file comes out again in formats that others read: recordings with their
// sidecars, trends as CSV, the register and the events as the JSON that `register` and `event --file` take.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>
#include <set>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/export_trends.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/base/file_name.h"
#include "core/base/text.h"
#include "core/exchange/recording_export.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

struct ExportCommand {
    std::string fleet, what, out, machine, from, until;
};

// Machines asked for, and the days in the site's calendar.
struct Span {
    std::vector<MachineEntry> machines;
    Instant from{}, until = Instant::max();
};

Result<Span> spanOf(FleetFile& fleet, const ExportCommand& command) {
    Span span;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    if (!command.from.empty()) {
        const auto from = startOfDate(site->timeZone, command.from);
        if (!from) return fail(from.error());
        span.from = *from;
    }
    if (!command.until.empty()) {
        const auto after = datePlus(command.until, 1);
        if (!after) return fail(after.error());
        const auto end = startOfDate(site->timeZone, *after);
        if (!end) return fail(end.error());
        span.until = *end - std::chrono::milliseconds(1);
    }
    if (!command.machine.empty()) {
        auto one = fleet.machines().byTag(command.machine);
        if (!one) return fail(one.error());
        span.machines.push_back(std::move(*one));
        return span;
    }
    auto all = fleet.machines().all();
    if (!all) return fail(all.error());
    span.machines = std::move(*all);
    return span;
}

// "20260504T062000Z_M-DE", told apart by number where two would have one name.
std::string stemOf(const RecordingEntry& entry, std::set<std::string>& used) {
    std::string time = formatUtc(entry.time);
    std::erase_if(time, [](char c) { return c == '-' || c == ':'; });
    return fileNameFrom(time + (entry.point.empty() ? "" : "_" + entry.point), used);
}

Status exportOne(FleetFile& fleet, const RecordingEntry& entry, const std::string& stem) {
    const auto recording = fleet.recordings().recording(entry.id);
    if (!recording) return fail(recording.error());
    const auto sidecar = fleet.recordings().sidecar(entry.id);
    if (!sidecar) return fail(sidecar.error());
    const auto out = exportRecording(**recording, *sidecar, stem);
    if (!out) return fail(out.error());
    RealFileSystem files;
    if (auto written = files.writeSafely(stem + out->extension, out->bytes); !written) return written;
    return files.writeSafely(stem + ".json", out->sidecar);
}

struct Count {
    std::size_t written = 0, withoutWaveform = 0;
    int status = kDone;
};

// False: cannot go on.
bool exportMachine(FleetFile& fleet, const MachineEntry& machine, const Span& span, const std::string& folder,
                   Count& count) {
    const auto all = fleet.recordings().list(machine.id, span.from, span.until);
    if (!all) return couldNotRun(all.error()) == kDone;
    if (all->empty()) return true;
    if (auto made = RealFileSystem().makeFolders(folder); !made) return couldNotRun(made.error()) == kDone;
    std::set<std::string> used;
    for (const RecordingEntry& entry : *all) {
        const std::string stem = folder + "/" + stemOf(entry, used);
        if (!entry.hasWaveform) {
            ++count.withoutWaveform;
            continue;
        }
        const auto done = exportOne(fleet, entry, stem);
        if (!done && done.error().kind == ErrorKind::Unwritable) return couldNotRun(done.error()) == kDone;
        if (!done) {
            refuse(done.error());
            count.status = kRefusedSome;
        }
        count.written += done.has_value();
    }
    return true;
}

int exportRecordings(FleetFile& fleet, const ExportCommand& command) {
    const auto span = spanOf(fleet, command);
    if (!span) return couldNotRun(span.error());
    Count count;
    std::set<std::string> folders;
    const Progress progress = progressOnStderr();
    for (std::size_t i = 0; i < span->machines.size(); ++i) {
        const MachineEntry& machine = span->machines[i];
        progress(i, span->machines.size(), machine.tag);
        const std::string folder = command.out + "/" + fileNameFrom(machine.tag, folders);
        if (!exportMachine(fleet, machine, *span, folder, count)) return kCouldNotRun;
    }
    print(fmt::format("{} recordings written", count.written));
    if (count.withoutWaveform) print(fmt::format(", {} whose waveform is not kept", count.withoutWaveform));
    print("\n");
    return count.status;
}

// A description as it came; with its day where it has one, or where there are several.
Json registerEntry(const DescriptionEntry& entry, bool alone) {
    auto machine = parseJson(entry.json, "");
    Json json = machine ? std::move(*machine) : Json();
    if (alone && entry.from.empty() && entry.note.empty()) return json;
    return {{"from", entry.from}, {"note", entry.note}, {"machine", std::move(json)}};
}

int exportRegister(FleetFile& fleet, const ExportCommand& command) {
    const auto span = spanOf(fleet, command);
    if (!span) return couldNotRun(span.error());
    Json all = Json::array();
    for (const MachineEntry& machine : span->machines) {
        const auto history = fleet.machines().history(machine.tag);
        if (!history) return couldNotRun(history.error());
        for (const DescriptionEntry& entry : *history)
            all.push_back(registerEntry(entry, history->size() == 1));
    }
    const std::string text = all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
    if (!writeFile(command.out, text)) return kCouldNotRun;
    print(fmt::format("{} descriptions of {} machines written\n", all.size(), span->machines.size()));
    return kDone;
}

int exportEvents(FleetFile& fleet, const ExportCommand& command) {
    const auto span = spanOf(fleet, command);
    if (!span) return couldNotRun(span.error());
    const auto events = fleet.log().events(command.machine);
    if (!events) return couldNotRun(events.error());
    Json all = Json::array();
    for (const Event& event : *events)
        if (event.time >= span->from && event.time <= span->until)
            all.push_back({{"machine", event.machine},
                           {"time", formatUtc(event.time)},
                           {"kind", event.kind},
                           {"at", event.at.empty() ? Json() : Json(event.at)},
                           {"text", event.text},
                           {"by", event.by}});
    const std::string text = all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
    if (!writeFile(command.out, text)) return kCouldNotRun;
    print(fmt::format("{} events written\n", all.size()));
    return kDone;
}

int exportTrends(FleetFile& fleet, const ExportCommand& command) {
    const auto span = spanOf(fleet, command);
    if (!span) return couldNotRun(span.error());
    std::string text = trendCsvHeader();
    std::size_t rows = 0;
    for (const MachineEntry& machine : span->machines) {
        const auto part = trendCsvOf(fleet, machine, span->from, span->until);
        if (!part) return couldNotRun(part.error());
        text += part->text;
        rows += part->rows;
    }
    if (!writeFile(command.out, text)) return kCouldNotRun;
    print(fmt::format("{} rows written\n", rows));
    return kDone;
}

int run(const ExportCommand& command) {
    if (overwritesFleet(command.out, command.fleet)) return kWrongUsage;
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
    if (command.what == "recordings") return exportRecordings(*fleet, command);
    if (command.what == "trends") return exportTrends(*fleet, command);
    if (command.what == "register") return exportRegister(*fleet, command);
    return exportEvents(*fleet, command);
}

}  // namespace

void addExportCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<ExportCommand>();
    CLI::App* sub =
        app.add_subcommand("export", "Write recordings, trends, register or events out of a fleet file");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option(
           "WHAT", command->what,
           "recordings: a folder a machine, WAV (CSV where numbers ask for it) with sidecar; trends: "
           "CSV; register, events: JSON")
        ->required()
        ->check(CLI::IsMember({"recordings", "trends", "register", "events"}));
    sub->add_option("-o,--output", command->out, "file to write; for recordings a folder")->required();
    sub->add_option("--machine", command->machine, "this machine only");
    sub->add_option("--from", command->from, "first day, 2026-05-04, in the site's calendar");
    sub->add_option("--until", command->until, "last day");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
