// Why: the planner's report on a finding that was opened. These reports are the site's own record of how
// often a finding is confirmed.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/reports.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

struct FeedbackCommand {
    std::string fleet, time;
    Feedback report;
};

int run(const FeedbackCommand& command) {
    Feedback report = command.report;
    if (!command.time.empty() && !parseUtc(command.time)) {
        tell("--time " + oneLine(command.time) + ": is not a UTC time as 2026-05-04T06:20:00Z");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, true);
    if (!fleet) return kCouldNotRun;
    report.time = command.time.empty() ? nowUtc() : *parseUtc(command.time);
    report.by = orLoginName(report.by);
    const auto done = keepReport(*fleet, report, nowUtc());
    if (!done) return couldNotRun(done.error());
    if (done->already) tell("note: the same report of that day is there already; it stands once");
    const auto record = siteRecord(*fleet);
    if (!record) return couldNotRun(record.error());
    print(fmt::format("{} {}: {}; {} of {} confirmed here so far\n", oneLine(report.machine),
                      oneLine(report.fault), report.outcome, record->confirmed, record->opened));
    return kDone;
}

}  // namespace

void addFeedbackCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<FeedbackCommand>();
    CLI::App* sub = app.add_subcommand("feedback", "Report what was found when a finding was opened");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->report.machine, "tag")->required();
    sub->add_option("--fault", command->report.fault, "fault key of the finding, such as bearing_outer_race")
        ->required();
    sub->add_option("--at", command->report.at, "place, such as driver DE");
    sub->add_option("--outcome", command->report.outcome, "confirmed not_found another_fault not_opened")
        ->required()
        ->check(CLI::IsMember({"confirmed", "not_found", "another_fault", "not_opened"}));
    sub->add_option("--code", command->report.code, "as found, in the words of ISO 14224 or ISO 15243");
    sub->add_option("--text", command->report.text, "in your own words");
    sub->add_option("--time", command->time, "UTC, 2026-05-04T06:20:00Z (now)");
    sub->add_option("--by", command->report.by, "who reports (login name)");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
