// Why: makes the fleet file of a site; never over one that is there.
#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/fleet/site_calendar.h"
#include "core/store/fleet_file.h"

namespace fettle {

namespace {

struct NewCommand {
    std::string fleet;
    SiteSettings site;
};

int run(const NewCommand& command) {
    if (auto zone = checkTimeZone(command.site.timeZone); !zone) {
        tell(zone.error().sentence());
        return kWrongUsage;
    }
    const auto made = FleetFile::create(command.fleet, command.site);
    if (!made) return couldNotRun(made.error());
    print(oneLine(command.fleet) + " made\n");
    return kDone;
}

}  // namespace

void addNewCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<NewCommand>();
    CLI::App* sub = app.add_subcommand("new", "Make a fleet file");
    sub->add_option("FLEET", command->fleet, "file to make, by convention *.fettle")->required();
    sub->add_option("--site", command->site.site, "name of the site");
    sub->add_option("--time-zone", command->site.timeZone,
                    "IANA name, such as Europe/London: weeks end by its calendar (UTC)");
    sub->add_option("--alpha", command->site.alpha,
                    "share of the list, on average over rounds, that may be chance (0.1)")
        ->check(CLI::Range(0.001, 0.5));
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
