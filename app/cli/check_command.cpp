// Why: is the fleet file whole? Problems are the result, one a line; none is status 0, some status 1.
#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "core/base/text.h"
#include "core/store/fleet_file.h"

namespace fettle {

namespace {

struct CheckCommand {
    std::string fleet;
    bool deep = false, json = false;
};

Json toJson(bool deep, const std::vector<std::string>& problems) {
    Json all = headedJson();
    all["deep"] = deep;
    all["problems"] = problems;
    return all;
}

int run(const CheckCommand& command) {
    FleetTuning tuning;
    tuning.quickCheckBytes = 0;  // a damaged file is what this is for
    const auto fleet = FleetFile::open(command.fleet, OpenMode::ReadOnly, tuning);
    if (!fleet) return couldNotRun(fleet.error());
    const auto problems = (*fleet)->check(command.deep, progressOnStderr(), cancelledBySignals());
    if (!problems) return couldNotRun(problems.error());
    if (command.json)
        printJson(toJson(command.deep, *problems));
    else if (problems->empty())
        print("clean\n");
    else
        for (const std::string& problem : *problems)
            print(oneLine(problem) + "\n");
    return problems->empty() ? kDone : kRefusedSome;
}

}  // namespace

void addCheckCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<CheckCommand>();
    CLI::App* sub = app.add_subcommand("check", "Check that a fleet file is whole");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_flag("--deep", command->deep, "every waveform and examination as well");
    sub->add_flag("--json", command->json, "one JSON object instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
