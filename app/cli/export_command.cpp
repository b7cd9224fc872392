// Why: everything in a fleet file comes out again in formats that others read: recordings with their
// sidecars, trends as CSV, the register and the events as the JSON that `register` and `event --file` take,
// the rest as JSON or CSV. One part, or all of them into one folder.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <functional>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/export_kept.h"
#include "app/cli/export_recordings.h"
#include "app/cli/export_tables.h"
#include "app/cli/export_trends.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "app/cli/out_file.h"
#include "core/base/file_system.h"
#include "core/base/text.h"
#include "core/fleet/register_csv.h"

namespace fettle {

namespace {

struct ExportCommand {
    std::string fleet, what, out, machine, from, until, format;
};

// A description as it came, with its day: empty, from the beginning.
Json registerEntry(const DescriptionEntry& entry) {
    auto machine = parseJson(entry.json, "");
    return {{"from", entry.from}, {"note", entry.note}, {"machine", machine ? std::move(*machine) : Json()}};
}

// A row would put a removed machine back in service.
bool standsInTable(const MachineEntry& machine, const ExportSpan& span) {
    return machine.removedOn.empty() || !span.machine.empty();
}

Result<std::size_t> exportRegisterTable(FleetFile& fleet, const ExportSpan& span, const std::string& path) {
    std::vector<Json> machines;
    for (const MachineEntry& machine : span.machines) {
        const auto history = fleet.machines().history(machine.tag);
        if (!history) return fail(history.error());
        if (history->empty() || !standsInTable(machine, span)) continue;
        auto description = parseJson(history->back().json, machine.tag);
        if (!description) return fail(description.error());
        machines.push_back(std::move(*description));
    }
    OutFile out(path);
    out.add(machinesAsCsv(machines));
    if (auto done = out.finish(); !done) return fail(done.error());
    return machines.size();
}

Result<std::size_t> exportRegister(FleetFile& fleet, const ExportSpan& span, const std::string& path) {
    if (extensionOf(path) == "csv") return exportRegisterTable(fleet, span, path);
    Json all = Json::array();
    for (const MachineEntry& machine : span.machines) {
        const auto history = fleet.machines().history(machine.tag);
        if (!history) return fail(history.error());
        for (const DescriptionEntry& entry : *history)
            all.push_back(registerEntry(entry));
    }
    OutFile out(path);
    out.add(all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
    if (auto done = out.finish(); !done) return fail(done.error());
    return all.size();
}

Result<std::size_t> exportTrends(FleetFile& fleet, const ExportSpan& span, const std::string& path) {
    OutFile out(path);
    out.add(trendCsvHeader());
    std::size_t rows = 0;
    for (const MachineEntry& machine : span.machines) {
        const auto part = writeTrends(fleet, machine, span, out);
        if (!part) return part;
        rows += *part;
    }
    if (auto done = out.finish(); !done) return fail(done.error());
    return rows;
}

Result<std::size_t> exportSite(FleetFile& fleet, const ExportSpan&, const std::string& path) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    OutFile out(path);
    out.add(Json{{"site", site->site}, {"time_zone", site->timeZone}, {"alpha", site->alpha}}.dump(
                2, ' ', false, Json::error_handler_t::replace) +
            "\n");
    if (auto done = out.finish(); !done) return fail(done.error());
    return 1;
}

// A part that is one file.
struct Part {
    std::string name, file;  // of the file within the folder of `all`
    const char *one, *several;
    std::function<Result<std::size_t>(FleetFile&, const ExportSpan&, const std::string&)> write;
};

const std::vector<Part>& parts() {
    static const std::vector<Part> all = [] {
        std::vector<Part> list = {
            {"site", "site.json", "site", "sites", exportSite},
            {"register", "register.json", "description", "descriptions", exportRegister},
            {"trends", "trends.csv", "row", "rows", exportTrends},
            {"rounds", "rounds.json", "round", "rounds", exportRounds},
            {"examinations", "examinations.json", "examination", "examinations", exportExaminations}};
        for (const std::string& name : exportTableNames()) {
            const bool events = name == "events";
            list.push_back({name, name + ".json", events ? "event" : "row", events ? "events" : "rows",
                            [name](FleetFile& fleet, const ExportSpan& span, const std::string& path) {
                                return exportTable(fleet, name, span, path);
                            }});
        }
        return list;
    }();
    return all;
}

std::vector<std::string> partNames() {
    std::vector<std::string> names{"all", "recordings"};
    for (const Part& part : parts())
        names.push_back(part.name);
    return names;
}

int exportPart(FleetFile& fleet, const Part& part, const ExportSpan& span, const std::string& path) {
    const auto count = part.write(fleet, span, path);
    if (!count) return couldNotRun(count.error());
    print(counted(*count, part.one, part.several) + " written\n");
    return kDone;
}

ExportForm formOf(const std::string& format) {
    if (format == "uff") return ExportForm::Uff;
    if (format == "uff58b") return ExportForm::Uff58b;
    return format == "wav" ? ExportForm::Wav : ExportForm::AsItCame;
}

// The folder may hold an older export; nothing of it goes but what is written anew.
int exportAll(FleetFile& fleet, const ExportCommand& command, const ExportSpan& span) {
    if (auto made = RealFileSystem().makeFolders(command.out); !made) return couldNotRun(made.error());
    for (const Part& part : parts()) {
        if (part.name == "refusals" && !command.machine.empty()) continue;  // of files, not of machines
        const std::string path = command.out + "/" + part.file;
        if (overwritesFleet(path, command.fleet)) return kWrongUsage;
        print(part.file + ": ");
        if (const int status = exportPart(fleet, part, span, path); status != kDone) return status;
    }
    print("recordings: ");
    return exportRecordings(fleet, span, command.out + "/recordings", formOf(command.format));
}

int run(const ExportCommand& command) {
    if (overwritesFleet(command.out, command.fleet)) return kWrongUsage;
    if (command.what == "refusals" && !command.machine.empty()) {
        tell("export: refusals are of files and belong to no machine: leave --machine out");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
    const auto span = exportSpanOf(*fleet, command.machine, command.from, command.until);
    if (!span) return couldNotRun(span.error());
    if (command.what == "all") return exportAll(*fleet, command, *span);
    if (command.what == "recordings")
        return exportRecordings(*fleet, *span, command.out, formOf(command.format));
    const auto part =
        std::find_if(parts().begin(), parts().end(), [&](const Part& p) { return p.name == command.what; });
    return exportPart(*fleet, *part, *span, command.out);
}

}  // namespace

void addExportCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<ExportCommand>();
    CLI::App* sub = app.add_subcommand("export", "Write all or a part of a fleet file out in open formats");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option(
           "WHAT", command->what,
           "recordings: a folder a machine, WAV (CSV where numbers ask for it) with sidecar; trends: CSV; "
           "site, register, rounds, examinations: JSON; machines, decisions, jobs, feedback, events, "
           "refusals, weights, measures, alert_rules, alerts, deliveries, requests, job_steps, photos, "
           "workshop, reading_rules, changed_verdicts: JSON, or CSV where the name of the file ends in .csv; "
           "all: every one of these in one folder")
        ->required()
        ->check(CLI::IsMember(partNames()));
    sub->add_option("-o,--output", command->out, "file to write; for recordings and all a folder")
        ->required();
    sub->add_option(
           "--format", command->format,
           "of recordings: wav (refused where it would lose), uff (universal file, data set 58, 13 digits) "
           "or uff58b (58b, bit for bit); left out: WAV, and CSV where numbers ask for it")
        ->check(CLI::IsMember({"wav", "uff", "uff58b"}));
    sub->add_option("--machine", command->machine, "this machine only");
    sub->add_option(
        "--from", command->from,
        "first day, 2026-05-04, in the site's calendar; of rounds that of their last day, of jobs "
        "that of their draft");
    sub->add_option("--until", command->until, "last day");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
