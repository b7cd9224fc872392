// Why: after the engine or a description changed, what is kept raw is weighed again; old verdicts stand
// beside new ones.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "app/cli/re_examine_answer.h"
#include "core/base/text.h"

namespace fettle {

namespace {

struct ReExamineCommand {
    std::string fleet, machine, csv;
    bool all = false, json = false, reportOnly = false, tellAcknowledged = false;
    double leastDban = kToldMoveDban;
    int threads = 0;
    std::size_t batch = ImportOptions().batch;
};

// Where nothing was ever weighed again there is a summary and no report.
int tellReport(FleetFile& fleet, const ReExamineCommand& command,
               const std::optional<ReExamineReport>& done) {
    if (done && !done->run && !command.json && command.csv.empty()) return kDone;
    auto difference =
        differenceOf(fleet, done ? done->run : std::optional<std::int64_t>(), command.leastDban);
    if (!difference && done && difference.error().kind == ErrorKind::NotFound)
        difference = ReExaminationDifference{};  // nothing to do, as ever
    if (!difference) return couldNotRun(difference.error());
    if (!command.csv.empty()) {
        const auto csv = differenceCsv(fleet, *difference);
        if (!csv) return couldNotRun(csv.error());
        if (!writeFile(command.csv, *csv)) return kCouldNotRun;
    }
    if (command.json)
        printJson(differenceJson(*difference, done));
    else if (!command.tellAcknowledged)
        print(differenceText(*difference));
    return kDone;
}

void tellAgain(const std::vector<std::string>& recordings) {
    for (const std::string& recording : recordings)
        print(oneLine(recording) + "\n");
    std::fflush(stdout);
}

void tellSummary(const ReExamineCommand& command, const ReExamineReport& report) {
    for (const std::string& refusal : report.refused)
        tell("refused: " + oneLine(refusal));
    const std::string summary = fmt::format(
        "{} weighed again, {} already by this engine, {} without their waveform keep their verdict",
        report.weighed, report.alreadyCurrent, report.withoutWaveform);
    if (command.json || command.tellAcknowledged)
        tell(summary);
    else
        print(summary + "\n");
}

int run(const ReExamineCommand& command) {
    if (!command.csv.empty() && overwritesFleet(command.csv, command.fleet)) return kCouldNotRun;
    const auto fleet = openFleet(command.fleet, !command.reportOnly);
    if (!fleet) return kCouldNotRun;
    if (command.reportOnly) return tellReport(*fleet, command, {});
    ImportOptions options;
    options.threads = command.threads;
    options.batch = command.batch;
    options.evenCurrent = command.all;
    options.progress = progressOnStderr();
    options.cancel = cancelledBySignals();
    if (command.tellAcknowledged) options.acknowledged = tellAgain;
    const auto report = reExamine(*fleet, command.machine, options);
    if (!report) return couldNotRun(report.error());
    tellSummary(command, *report);
    if (const int told = tellReport(*fleet, command, *report); told != kDone) return told;
    if (report->cancelled) {
        tell("stopped on request; what was weighed stays, start it again for the rest");
        return kCouldNotRun;
    }
    return report->refused.empty() ? kDone : kRefusedSome;
}

}  // namespace

void addReExamineCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<ReExamineCommand>();
    CLI::App* sub = app.add_subcommand(
        "re-examine",
        "Weigh again what is kept raw, with today's engine and the descriptions that held then");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->machine, "one machine's tag only");
    sub->add_flag("--all", command->all, "also what this engine weighed, after a description was corrected");
    sub->add_option("--threads", command->threads, "workers (all cores)")->check(CLI::Range(1, 256));
    sub->add_option("--batch", command->batch, "verdicts made safe at once (16)")->check(CLI::Range(1, 1000));
    sub->add_option("--least", command->leastDban,
                    "decibans by which a weight must have moved to be told of (3)")
        ->check(CLI::Range(0.0, 1000.0));
    sub->add_flag("--report", command->reportOnly, "weigh nothing; tell what the last run changed");
    auto* json = sub->add_flag("--json", command->json, "the report as one JSON object");
    sub->add_option("--csv", command->csv, "the changes as a table into this file, a row a recording");
    sub->add_flag("--tell-acknowledged", command->tellAcknowledged,
                  "write each recording on stdout, a line each, once its new verdict is safely in the file")
        ->excludes(json);
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
