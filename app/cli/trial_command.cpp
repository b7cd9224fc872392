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
#include "core/workshop/trial_json.h"

namespace fettle {

namespace {

struct TrialCommand {
    std::string fleet, machine;
    bool json = false;
};

// The document as it is kept, with the result as it stands.
Json jsonOf(const TrialEntry& entry, const TrialResult& result) {
    Trial shown = entry.trial;
    shown.result = result;
    Json json = toJson(shown);
    json["id"] = entry.id;
    json["created_at"] = formatUtc(entry.createdAt);
    json["closed_at"] = entry.closedAt ? Json(formatUtc(*entry.closedAt)) : Json();
    return json;
}

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
    Json all = headedJson();
    all["trials"] = Json::array();
    std::string text = trials->empty() ? "no trials\n" : "";
    for (const TrialEntry& entry : *trials) {
        const auto result = trialResult(*fleet, entry);
        if (!result) return couldNotRun(result.error());
        text += textOf(entry, *result);
        all["trials"].push_back(jsonOf(entry, *result));
    }
    if (command.json)
        printJson(all);
    else
        print(text);
    return kDone;
}

}  // namespace

void addTrialCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<TrialCommand>();
    CLI::App* sub = app.add_subcommand("trial", "Seeded-fault trials: promise, result, kept or not");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->machine, "tag (all)");
    sub->add_flag("--json", command->json, "one JSON object instead of the text");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
