// Why: after the engine or a description changed, what is kept raw is weighed again; what changed is said.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/intake/import.h"

namespace fettle {

namespace {

struct ReExamineCommand {
    std::string fleet, machine;
    bool all = false;
    int threads = 0;
};

int run(const ReExamineCommand& command) {
    const auto fleet = openFleet(command.fleet, true);
    if (!fleet) return kCouldNotRun;
    ImportOptions options;
    options.threads = command.threads;
    options.evenCurrent = command.all;
    options.progress = progressOnStderr();
    options.cancel = cancelledBySignals();
    const auto report = reExamine(*fleet, command.machine, options);
    if (!report) {
        tell(report.error().sentence());
        return kCouldNotRun;
    }
    for (const std::string& change : report->changed)
        print(oneLine(change) + "\n");
    for (const std::string& refusal : report->refused)
        tell("refused: " + oneLine(refusal));
    print(fmt::format("{} weighed again, {} already by this engine, {} without their waveform\n",
                      report->weighed, report->alreadyCurrent, report->withoutWaveform));
    if (report->cancelled) {
        tell("stopped on request; start it again for the rest");
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
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
