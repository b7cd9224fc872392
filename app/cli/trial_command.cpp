// Why: the seeded-fault trials of a machine: what was promised, what came, whether it was kept.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/trial_desk.h"

namespace fettle {

namespace {

struct TrialCommand {
    std::string fleet, machine;
};

std::string textOf(const TrialEntry& entry, const TrialResult& result) {
    const Trial& trial = entry.trial;
    std::string text = fmt::format("{}, {}: {}{}\n", oneLine(trial.machine), oneLine(trial.name),
                                   result.outcome, entry.closedAt ? ", closed" : "");
    if (trial.startedAt)
        text +=
            fmt::format("  promise frozen {} by {}\n", formatUtc(*trial.startedAt), oneLine(trial.startedBy));
    for (const std::string& one : trial.promise.sentences)
        text += "    " + oneLine(one) + "\n";
    if (trial.changeUntil) text += fmt::format("  changed {}\n", formatUtc(*trial.changeUntil));
    text += "  " + oneLine(result.verdict) + "\n";
    for (const TrialCheck& check : result.checks)
        text += fmt::format("    {}: promised {}; found {}: {}\n", check.what, check.promised,
                            oneLine(check.found), toText(check.mark));
    for (const std::string& one : result.notes)
        text += "    note: " + one + "\n";
    return text;
}

int run(const TrialCommand& command) {
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
    const auto trials = trialsOf(*fleet, command.machine);
    if (!trials) return couldNotRun(trials.error());
    if (trials->empty()) print("no trials\n");
    for (const TrialEntry& entry : *trials) {
        const auto result = trialResult(*fleet, entry);
        if (!result) return couldNotRun(result.error());
        print(textOf(entry, *result));
    }
    return kDone;
}

}  // namespace

void addTrialCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<TrialCommand>();
    CLI::App* sub = app.add_subcommand("trial", "Seeded-fault trials: promise, result, kept or not");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->machine, "tag (all)");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
