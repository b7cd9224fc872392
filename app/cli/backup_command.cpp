// Why: a copy of the fleet file as it was at one moment, while others may write. Never over a file that is
// there.
#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"

namespace fettle {

namespace {

struct BackupCommand {
    std::string fleet, to;
};

int run(const BackupCommand& command) {
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
    const auto done = fleet->backup(command.to, progressOnStderr(), cancelledBySignals());
    if (!done) return couldNotRun(done.error());
    print(oneLine(command.to) + " written\n");
    return kDone;
}

}  // namespace

void addBackupCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<BackupCommand>();
    CLI::App* sub = app.add_subcommand("backup", "Copy a fleet file while others may write to it");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("FILE", command->to, "the copy; must not be there")->required();
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
