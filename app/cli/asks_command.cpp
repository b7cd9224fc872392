// Why: what no recording shows is asked for: listed for the walk with the hand instrument or for who sets the
// nodes, put in, answered or dropped by hand, and suggested by what a machine's week leaves open.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/ask_suggestions.h"
#include "core/fleet/asks.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/machine_week.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

struct AsksCommand {
    std::string fleet, csv, note;
    Ask ask;
    std::int64_t answered = 0, dropped = 0;
    bool add = false, suggest = false, all = false, json = false;

    bool writes() const { return add || answered || dropped; }
};

std::string lineOf(const Ask& ask) {
    const Request& r = ask.request;
    std::string line = fmt::format("{}  {}  {}  {}", r.id, oneLine(r.machine), r.byHand ? "by hand" : "node",
                                   oneLine(r.point));
    if (!r.direction.empty()) line += " " + r.direction;
    line += "  " + wordsOf(ask.spec) + "  " + oneLine(r.why);
    if (ask.state() != "open") line += "  " + ask.state();
    if (r.recording) line += fmt::format(" by recording {}", *r.recording);
    return line + "\n";
}

int show(const AsksCommand& command, const std::vector<Ask>& asks) {
    if (!command.csv.empty()) {
        if (overwritesFleet(command.csv, command.fleet)) return kCouldNotRun;
        return writeFile(command.csv, csvOf(asks)) ? kDone : kCouldNotRun;
    }
    if (command.json) {
        Json all = headedJson();
        all["asks"] = toJson(asks);
        printJson(all);
        return kDone;
    }
    if (asks.empty()) print("nothing is asked for\n");
    for (const Ask& ask : asks)
        print(lineOf(ask));
    return kDone;
}

// Of the findings of the newest week.
Result<std::vector<Ask>> suggested(FleetFile& fleet, const std::string& tag) {
    const auto machine = fleet.machines().byTag(tag);
    if (!machine) return fail(machine.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto newest = fleet.recordings().newest(machine->id);
    if (!newest) return fail(newest.error());
    std::vector<Ask> asks;
    if (!*newest) return asks;
    const auto period = dateIn(site->timeZone, **newest).and_then([&](const std::string& day) {
        return periodTo(*site, day);
    });
    if (!period) return fail(period.error());
    const auto week = examinationOfSpan(fleet, tag, period->from, period->last());
    if (!week) return fail(week.error());
    if (!*week) return asks;
    for (const Hypothesis& h : (*week)->examination.findings)
        for (AskSuggestion& s : askSuggestions(*(*week)->machine, (*week)->examination, h)) {
            Ask ask{{}, s.spec, machine->asset, machine->service, machine->area};
            ask.request.machine = tag;
            ask.request.byHand = s.byHand;
            ask.request.point = s.point;
            ask.request.direction = s.direction;
            ask.request.why = s.why;
            asks.push_back(std::move(ask));
        }
    return asks;
}

Status write(FleetFile& fleet, const AsksCommand& command) {
    if (command.add) return putAsk(fleet, command.ask).map([](std::int64_t) {});
    if (command.answered) return closeAsk(fleet, command.answered, "answered", command.note);
    return closeAsk(fleet, command.dropped, "dropped", command.note);
}

int run(const AsksCommand& command) {
    const std::string& tag = command.ask.request.machine;
    if ((command.add || command.suggest) && tag.empty()) {
        tell("asks: --add and --suggest need --machine");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, command.writes());
    if (!fleet) return kCouldNotRun;
    if (command.writes())
        if (auto done = write(*fleet, command); !done) return couldNotRun(done.error());
    const auto asks = command.suggest ? suggested(*fleet, tag) : asksOf(*fleet, tag, command.all);
    return asks ? show(command, *asks) : couldNotRun(asks.error());
}

void addWhatOptions(CLI::App& sub, AsksCommand& command) {
    Ask& ask = command.ask;
    auto* add = sub.add_flag("--add", command.add, "ask for a recording of --machine at --point, say --why");
    const auto withAdd = [add](CLI::Option* option) { option->needs(add); };
    auto* point = sub.add_option("--point", ask.request.point, "id of a point, or a place: \"driven DE\"");
    auto* why = sub.add_option("--why", ask.request.why, "what it is to decide");
    withAdd(point);
    withAdd(why);
    add->needs(point)->needs(why);
    withAdd(sub.add_flag("--by-hand", ask.request.byHand, "on the walk with the hand instrument"));
    withAdd(sub.add_option("--direction", ask.request.direction, "horizontal vertical axial radial")
                ->check(CLI::IsMember({"horizontal", "vertical", "axial", "radial"})));
    withAdd(
        sub.add_option("--seconds", ask.spec.seconds, "at least so long")->check(CLI::Range(0.0, 3600.0)));
    withAdd(sub.add_option("--top-hz", ask.spec.topHz, "readable to this")->check(CLI::Range(0.0, 100000.0)));
    withAdd(sub.add_flag("--tachometer", ask.spec.tachometer, "with one mark a turn"));
}

}  // namespace

void addAsksCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<AsksCommand>();
    CLI::App* sub = app.add_subcommand("asks", "Recordings asked for: of the nodes and on the walk");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->ask.request.machine, "tag; without it the fleet");
    addWhatOptions(*sub, *command);
    auto* add = sub->get_option("--add");
    auto* answered = sub->add_option("--answered", command->answered, "this one is answered")
                         ->check(CLI::PositiveNumber)
                         ->excludes(add);
    auto* dropped = sub->add_option("--dropped", command->dropped, "this one is no longer wanted")
                        ->check(CLI::PositiveNumber)
                        ->excludes(add)
                        ->excludes(answered);
    sub->add_option("--note", command->note, "said when it is answered or dropped");
    sub->add_flag("--suggest", command->suggest, "what would settle the findings of the machine's last week")
        ->excludes(add)
        ->excludes(answered)
        ->excludes(dropped);
    sub->add_flag("--all", command->all, "answered and dropped ones too");
    sub->add_option("--csv", command->csv, "write the list as CSV to this file");
    sub->add_flag("--json", command->json, "one JSON object instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
