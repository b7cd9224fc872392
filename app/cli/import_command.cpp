// Why: recordings into the fleet file, as often as one likes: what is there is recognised, what was cut short
// is carried on. Says on stdout what became of the files, on stderr each refusal and how far it is.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/import_preview.h"
#include "app/cli/intake_words.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/base/json_object.h"
#include "core/base/text.h"
#include "core/diagnosis/settings.h"
#include "core/fleet/alerts.h"
#include "core/intake/import.h"

namespace fettle {

namespace {

constexpr std::size_t kTellWarnings = 20;

struct ImportCommand {
    std::string fleet;
    std::vector<std::string> paths;
    bool recursive = false, json = false, tellAcknowledged = false, preview = false;
    int threads = 0;
    std::size_t batch = ImportOptions().batch;
};

std::size_t countOf(const ImportReport& report, const std::string& kind) {
    return std::size_t(std::count_if(report.refusals.begin(), report.refusals.end(),
                                     [&](const Refusal& r) { return r.kind == kind; }));
}

void tellWarnings(const ImportReport& report) {
    const std::size_t told = std::min(kTellWarnings, report.warnings.size());
    for (std::size_t i = 0; i < told; ++i) {
        const ImportWarning& warning = report.warnings[i];
        const std::string more = warning.files > 1 ? fmt::format(" (and {} more)", warning.files - 1) : "";
        tell(fmt::format("note: {}: {}{}", oneLine(warning.path), oneLine(warning.text), more));
    }
    if (report.warnings.size() > told) tell("note: " + counted(report.warnings.size() - told, "more note"));
}

Json toJson(const ImportReport& report) {
    Json json = headedJson();
    json["found"] = report.found;
    json["stored"] = report.stored;
    json["already"] = report.already;
    json["late"] = report.late;
    json["answered"] = report.answered;
    json["refused"] = countOf(report, "refused");
    json["parked"] = countOf(report, "parked");
    json["passed_over"] = report.passedOver;
    json["tables"] = report.tables;
    json["levels"] = report.levels;
    json["levels_already"] = report.levelsAlready;
    json["level_rows_refused"] = report.levelRowsRefused;
    json["cancelled"] = report.cancelled;
    json["refusals"] = Json::array();
    for (const Refusal& r : report.refusals)
        json["refusals"].push_back(
            {{"path", r.path}, {"place", r.place}, {"rule", r.rule}, {"kind", r.kind}});
    json["warnings"] = Json::array();
    for (const ImportWarning& w : report.warnings)
        json["warnings"].push_back({{"path", w.path}, {"text", w.text}, {"files", w.files}});
    return json;
}

std::string summaryOf(const ImportReport& report) {
    const std::string recordings =
        fmt::format("{} stored, {} already there, {} late, {} refused, {} parked", report.stored,
                    report.already, report.late, countOf(report, "refused"), countOf(report, "parked"));
    if (report.tables == 0) return recordings;
    return recordings + fmt::format("; of {}: {} stored, {} already there, {} refused",
                                    counted(report.tables, "table of levels", "tables of levels"),
                                    counted(report.levels, "level"), report.levelsAlready,
                                    counted(report.levelRowsRefused, "row"));
}

void tellNothingFound(const ImportCommand& command, const ImportReport& report) {
    if (report.found > 0 || report.cancelled) return;
    std::string note = "note: no recordings found in " + oneLine(joined(command.paths, ", "));
    if (report.foldersLeftOut > 0) note += "; --recursive looks into its folders";
    tell(note);
}

void tellOutcome(const ImportCommand& command, const ImportReport& report) {
    tellWarnings(report);
    tellNothingFound(command, report);
    if (command.json)
        printJson(toJson(report));
    else if (command.tellAcknowledged)
        tell(summaryOf(report));
    else
        print(summaryOf(report) + "\n");
}

// What came in may say that a machine turned bad; sending is left to follow, alerts --run and the desktop.
void tellAlerts(FleetFile& fleet) {
    const auto raised = raiseAlerts(fleet);
    if (!raised) return tell("note: alerts: " + raised.error().sentence());
    if (raised->raised + raised->grown > 0)
        tell(counted(raised->raised + raised->grown, "alert") + " raised");
    tellWaitingAlerts(fleet);
}

int run(const ImportCommand& command) {
    const auto fleet = openFleet(command.fleet, !command.preview);
    if (!fleet) return kCouldNotRun;
    if (command.preview) return previewImport(*fleet, command.paths, command.recursive, command.json);
    const RealFileSystem files;
    ImportOptions options;
    options.recursive = command.recursive;
    options.threads = command.threads;
    options.batch = command.batch;
    options.progress = progressOnStderr();
    options.cancel = cancelledBySignals();
    options.refused = tellRefused;
    if (command.tellAcknowledged) options.acknowledged = tellTaken;
    const auto report = import(*fleet, files, command.paths, options);
    if (!report) {
        tell(report.error().sentence());
        return kCouldNotRun;
    }
    tellOutcome(command, *report);
    tellAlerts(*fleet);
    if (report->cancelled) {
        tell("stopped on request; what was stored stays, start it again for the rest");
        return kCouldNotRun;
    }
    return report->refusals.empty() ? kDone : kRefusedSome;
}

}  // namespace

void addImportCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<ImportCommand>();
    CLI::App* sub = app.add_subcommand("import", "Take recordings into a fleet file and examine them");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("PATH", command->paths, "recordings, or folders of them; each with its sidecar .json")
        ->required();
    sub->add_flag("--recursive", command->recursive, "folders within folders as well");
    sub->add_option("--threads", command->threads, "workers (all cores)")->check(CLI::Range(1, 256));
    sub->add_option("--batch", command->batch,
                    "recordings made safe at once (16): one flush of the disk each")
        ->check(CLI::Range(1, 1000));
    auto* json = sub->add_flag("--json", command->json, "one JSON object instead of the summary");
    sub->add_flag("--tell-acknowledged", command->tellAcknowledged,
                  "write each path on stdout, a line each, once its recording is safely in the file")
        ->excludes(json);
    sub->add_flag("--preview", command->preview, "tell what each file would be taken for; nothing is stored");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
