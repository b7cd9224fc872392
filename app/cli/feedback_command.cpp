// Why: the planner's report on a finding that was opened. These reports are the site's own record of how
// often a finding is confirmed, by fault, and of how well the kept rounds did; --summary tells it.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/reliability.h"
#include "core/fleet/reports.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

struct FeedbackCommand {
    std::string fleet, time;
    Feedback report;
    bool summary = false, json = false;
};

Json toJson(const Share& share) {
    const bool rate = share.hasRate();
    return {{"hits", share.hits},
            {"of", share.of},
            {"rate", rate ? Json(share.rate()) : Json()},
            {"low", rate ? Json(share.low) : Json()},
            {"high", rate ? Json(share.high) : Json()}};
}

Json toJson(const FaultRecord& record) {
    return {{"fault", record.fault.empty() ? Json() : Json(record.fault)},
            {"confirmed", record.confirmed},
            {"another_fault", record.anotherFault},
            {"not_found", record.notFound},
            {"not_opened", record.notOpened},
            {"confirmed_of_opened", toJson(record.confirmedOfOpened())}};
}

Json toJson(const ListRecord& list) {
    return {{"rounds", list.rounds},
            {"entries", list.entries},
            {"listings", list.listings},
            {"confirmed", list.confirmed},
            {"another_fault", list.anotherFault},
            {"not_found", list.notFound},
            {"confirmed_of_answered", toJson(list.confirmedOfAnswered())},
            {"promised_chance_share", list.alpha},
            {"rounds_answered", list.roundsAnswered},
            {"mean_not_found_share", list.roundsAnswered ? Json(list.meanNotFound) : Json()},
            {"sample_openings", list.sampleOpenings},
            {"sample_had_something", toJson(list.missed())}};
}

int showSummary(FleetFile& fleet, bool json) {
    const auto record = siteReliability(fleet);
    if (!record) return couldNotRun(record.error());
    if (!json) {
        for (const std::string& line : reliabilityWords(*record))
            print(line + "\n");
        return kDone;
    }
    Json faults = Json::array();
    for (const FaultRecord& fault : record->faults)
        faults.push_back(toJson(fault));
    const auto orNull = [](const std::string& text) { return text.empty() ? Json() : Json(text); };
    Json all = headedJson();
    all["faults"] = faults;
    all["site"] = toJson(record->site);
    all["list"] = toJson(record->list);
    all["first_round"] = orNull(record->firstRound);
    all["last_round"] = orNull(record->lastRound);
    all["words"] = reliabilityWords(*record);
    printJson(all);
    return kDone;
}

int run(const FeedbackCommand& command) {
    if (command.summary) {
        const auto fleet = openFleet(command.fleet, false);
        return fleet ? showSummary(*fleet, command.json) : kCouldNotRun;
    }
    Feedback report = command.report;
    if (report.machine.empty() || report.fault.empty() || report.outcome.empty()) {
        tell("feedback: a report needs --machine, --fault and --outcome; --summary tells what they say");
        return kWrongUsage;
    }
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
    auto* machine = sub->add_option("--machine", command->report.machine, "tag");
    auto* fault = sub->add_option("--fault", command->report.fault,
                                  "fault key of the finding, such as bearing_outer_race");
    sub->add_option("--at", command->report.at, "place, such as driver DE");
    auto* outcome =
        sub->add_option("--outcome", command->report.outcome, "confirmed not_found another_fault not_opened")
            ->check(CLI::IsMember({"confirmed", "not_found", "another_fault", "not_opened"}));
    sub->add_option("--code", command->report.code, "as found, in the words of ISO 14224 or ISO 15243");
    sub->add_option("--text", command->report.text, "in your own words");
    sub->add_option("--time", command->time, "UTC, 2026-05-04T06:20:00Z (now)");
    sub->add_option("--by", command->report.by, "who reports (login name)");
    auto* summary =
        sub->add_flag("--summary", command->summary,
                      "how often findings were confirmed, by fault, and how well the kept rounds did");
    summary->excludes(machine)->excludes(fault)->excludes(outcome);
    sub->add_flag("--json", command->json, "with --summary: one JSON object instead of lines")
        ->needs(summary);
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
