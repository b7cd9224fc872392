// Why: dated events of machines, one from the command line or many from a file (the list that `export events`
// writes). An event that is there already is not doubled. --list tells what a machine has, and what its
// sensor heard of each greasing.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/event_list.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/event_table.h"
#include "core/fleet/reports.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

struct EventCommand {
    std::string fleet, file, time;
    Event event;
    bool list = false, json = false;
};

int addAll(FleetFile& fleet, const EventCommand& command) {
    const RealFileSystem files;
    const auto text = files.read(command.file);
    if (!text) return couldNotRun(text.error());
    const auto done = takeEvents(fleet, *text, command.file, command.event.by, nowUtc());
    if (!done) return couldNotRun(done.error());
    for (const std::string& warning : done->warnings)
        tell("note: " + warning);
    for (const Error& refusal : done->refusals)
        refuse(refusal);
    print(fmt::format("{} event{} taken\n", done->taken, done->taken == 1 ? "" : "s"));
    return done->refusals.empty() ? kDone : kRefusedSome;
}

int addOne(FleetFile& fleet, const EventCommand& command) {
    Event event = command.event;
    event.time = command.time.empty() ? nowUtc() : *parseUtc(command.time);
    event.by = orLoginName(event.by);
    if (const auto done = keepEvent(fleet, event, nowUtc()); !done) return couldNotRun(done.error());
    print(fmt::format("{} {} {}\n", oneLine(event.machine), formatUtc(event.time), event.kind));
    return kDone;
}

int list(const EventCommand& command) {
    if (command.event.machine.empty()) {
        tell("event: --list needs --machine");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, false);
    return fleet ? answerEventList(*fleet, command.event.machine, command.json) : kCouldNotRun;
}

int run(const EventCommand& command) {
    if (command.list) return list(command);
    const bool one = !command.event.machine.empty() && !command.event.kind.empty();
    if (one != command.file.empty()) {
        tell("event: give --machine and --kind, or --file");
        return kWrongUsage;
    }
    if (!command.time.empty() && !parseUtc(command.time)) {
        tell("--time " + oneLine(command.time) + ": is not a UTC time as 2026-05-04T06:20:00Z");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, true);
    if (!fleet) return kCouldNotRun;
    return one ? addOne(*fleet, command) : addAll(*fleet, command);
}

}  // namespace

void addEventCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<EventCommand>();
    CLI::App* sub =
        app.add_subcommand("event", "Note dated events of machines: repair, greasing, cleaning ...");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    auto* machine = sub->add_option("--machine", command->event.machine, "tag");
    auto* kind = sub->add_option("--kind", command->event.kind,
                                 "repair greasing part moved_node cleaning inspection note rebaseline "
                                 "low_battery other");
    auto* time = sub->add_option("--time", command->time, "UTC, 2026-05-04T06:20:00Z (now)");
    auto* at = sub->add_option("--at", command->event.at, "place on the machine, such as driver DE");
    auto* text = sub->add_option("--text", command->event.text, "what happened");
    auto* file = sub->add_option(
        "--file", command->file,
        "a JSON list of {machine, time, kind, at, text}, or a CSV with these columns; time: UTC "
        "or a day of the site");
    for (CLI::Option* alone : {machine, kind, time, at, text})
        file->excludes(alone);
    auto* listed = sub->add_flag("--list", command->list,
                                 "the machine's events, and what its sensor heard of each greasing");
    for (CLI::Option* alone : {kind, time, at, text, file})
        listed->excludes(alone);
    sub->add_flag("--json", command->json, "with --list: one JSON object instead of lines")->needs(listed);
    sub->add_option("--by", command->event.by, "who says so (login name)");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
