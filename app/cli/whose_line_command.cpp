// Why: a line that does not fit the machine may be a neighbour's: asked of the fleet by who stops when it
// goes.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/neighbours.h"

namespace fettle {

namespace {

struct WhoseLineCommand {
    std::string fleet;
    LineQuestion question;
    bool json = false;
};

Json toJson(const LeavesWith& one) {
    return {{"machine", one.machine}, {"itself", one.itself}, {"stops", one.stops},   {"left", one.left},
            {"runs", one.runs},       {"gone", one.gone},     {"chance", one.chance}, {"words", one.words}};
}

std::string lineOf(const LeavesWith& one) {
    return fmt::format("   {}; gone in {} of {} as it ran; by chance alone: {:.2g}\n", oneLine(one.words),
                       one.gone, counted(one.runs, "stretch", "stretches"), one.chance);
}

int run(const WhoseLineCommand& command) {
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
    const auto found = whoseLine(*fleet, command.question);
    if (!found) return couldNotRun(found.error());
    if (command.json) {
        Json machines = Json::array();
        for (const LeavesWith& one : found->machines)
            machines.push_back(toJson(one));
        Json all = headedJson();
        all["machine"] = command.question.machine;
        all["line_hz"] = command.question.hz;
        all["cell_hz"] = found->cellHz;
        all["where"] = found->where;
        all["recordings"] = found->recordings;
        all["there"] = found->there;
        all["own_line"] = found->own.empty() ? Json() : Json(found->own);
        all["machines"] = std::move(machines);
        printJson(all);
        return kDone;
    }
    print(fmt::format("{:g} Hz on {} {}: there in {} of {}, in cells of {:.2f} Hz\n", command.question.hz,
                      oneLine(command.question.machine), found->where, found->there,
                      counted(found->recordings, "recording"), found->cellHz));
    if (!found->own.empty())
        print(
            fmt::format("   its own {} stands there too: what comes from elsewhere cannot be parted from it "
                        "here; ask for another of the neighbour's lines\n",
                        found->own));
    std::vector<std::string> silent;
    for (const LeavesWith& one : found->machines)
        if (one.stops > 0)
            print(lineOf(one));
        else
            silent.push_back(one.itself ? "the machine itself" : oneLine(one.machine, 30));
    if (!silent.empty()) print("   no stop tells of " + joined(silent, ", ") + "\n");
    return kDone;
}

}  // namespace

void addWhoseLineCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<WhoseLineCommand>();
    CLI::App* sub = app.add_subcommand("whose-line", "Which machine's stops a line leaves with");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->question.machine, "tag on which the line stands")->required();
    sub->add_option("--hz", command->question.hz, "the line")->required()->check(CLI::PositiveNumber);
    sub->add_option("--until", command->question.until, "last day asked (of the newest recording)");
    sub->add_option("--days", command->question.days, "so many days to it")
        ->check(CLI::Range(1, 3660))
        ->capture_default_str();
    sub->add_flag("--every-area", command->question.everyArea,
                  "ask all machines, not those of its area alone");
    sub->add_flag("--json", command->json, "one JSON object instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
