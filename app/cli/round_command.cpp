// Why: the weekly list: as it would be now, opened, as kept, or closed. The list is the result and goes to
// stdout; how far the round is stands under it.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/desktop_program.h"
#include "app/cli/first_listed_answer.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/exchange/round_json.h"
#include "core/exchange/round_text.h"
#include "core/fleet/due.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/round_report.h"
#include "core/fleet/sheet_set.h"
#include "core/store/day.h"

namespace fettle {

namespace {

struct RoundCommand {
    std::string fleet, until, by, firstListed, before, report, today, paper = "a4";
    bool inches = false, json = false, open = false, close = false, kept = false;
};

Json keptJson(const KeptRound& kept) {
    const RoundProgress& p = kept.progress;
    Json json{{"id", kept.entry.id},
              {"opened_at", formatUtc(kept.entry.openedAt)},
              {"closed_at", kept.entry.closedAt ? Json(formatUtc(*kept.entry.closedAt)) : Json()},
              {"listed", p.listed},
              {"decided", p.decided},
              {"unseen", p.unseen},
              {"unseen_answered", p.unseenDone},
              {"sample", p.sample},
              {"sample_opened", p.sampleOpened},
              {"leave_accepted", p.leaveAccepted},
              {"missing", p.missing},
              {"decisions", Json::array()}};
    for (const Decision& d : kept.state.decisions)
        json["decisions"].push_back({{"machine", d.machine},
                                     {"decision", toText(d.kind)},
                                     {"reason", d.reason},
                                     {"defer_to", d.deferTo.empty() ? Json() : Json(d.deferTo)},
                                     {"by", d.by},
                                     {"at", formatUtc(d.at)}});
    return json;
}

std::string progressText(const KeptRound& kept) {
    const RoundProgress& p = kept.progress;
    std::string text =
        kept.entry.closedAt
            ? fmt::format("\nRound {}, closed {} by {}.\n", kept.entry.id, formatUtc(*kept.entry.closedAt),
                          oneLine(kept.entry.closedBy))
            : fmt::format("\nRound {}, open since {}.\n", kept.entry.id, formatUtc(kept.entry.openedAt));
    text += fmt::format(
        "Decided {} of {} listed; {} of {} unseen answered; {} of {} of the sample opened; leave "
        "{}accepted.\n",
        p.decided, p.listed, p.unseenDone, p.unseen, p.sampleOpened, p.sample, p.leaveAccepted ? "" : "not ");
    for (const std::string& missing : p.missing)
        text += "  still missing: " + oneLine(missing) + "\n";
    return text;
}

Json dueJson(const std::vector<DueItem>& due) {
    Json json = Json::array();
    for (const DueItem& item : due)
        json.push_back({{"machine", item.machine},
                        {"kind", item.kind},
                        {"day", item.day.empty() ? Json() : Json(item.day)},
                        {"words", item.words}});
    return json;
}

std::string dueText(const std::vector<DueItem>& due) {
    std::string text = due.empty() ? "" : "Due before the list:\n";
    for (const DueItem& item : due)
        text += fmt::format("  {}  {}\n", oneLine(item.machine), item.words);
    return due.empty() ? "" : text + "\n";
}

int show(FleetFile& fleet, const RoundCommand& command, const RoundList& list, const KeptRound* kept) {
    const auto promise = listPromise(fleet, list);
    if (!promise) return couldNotRun(promise.error());
    const auto due = dueOf(fleet, list);
    if (!due) return couldNotRun(due.error());
    if (command.json) {
        Json json = toJson(list);
        json["promise"] = *promise;
        json["due"] = dueJson(*due);
        json["kept"] = kept ? keptJson(*kept) : Json();
        printJson(json);
        return kDone;
    }
    print(dueText(*due) + asText(list));
    if (promise->find("confirmed") != promise->npos) print("\n" + *promise + "\n");  // else said above
    if (kept) print(progressText(*kept));
    return kDone;
}

int showKept(FleetFile& fleet, const RoundCommand& command) {
    const auto current = currentRound(fleet);
    if (!current) return couldNotRun(current.error());
    if (!*current) {
        tell("no round was opened yet: fettle-cli round FLEET --open");
        return kCouldNotRun;
    }
    return show(fleet, command, (*current)->list, &**current);
}

int close(FleetFile& fleet, const RoundCommand& command) {
    const auto open = fleet.rounds().openOne();
    if (!open) return couldNotRun(open.error());
    if (!*open) {
        tell("no round is open");
        return kCouldNotRun;
    }
    if (auto done = closeRound(fleet, (*open)->id, command.by); !done) return couldNotRun(done.error());
    return showKept(fleet, command);
}

// The whole as JSON, the work as CSV, or pages drawn by the desktop program.
bool writeReport(FleetFile& fleet, const RoundCommand& command, const std::string& today) {
    const std::string name = lowerAscii(command.report);
    if (name.ends_with(".pdf")) {
        std::vector<std::string> words{command.fleet, "--report", command.report, "--paper",
                                       command.paper, "--today",  today};
        if (command.inches) words.push_back("--inches");
        const auto done = runDesktop(words);
        if (!done) tell(done.error().sentence());
        return done.has_value();
    }
    const auto report = roundReport(fleet, {{}, today}, progressOnStderr(), cancelledBySignals());
    if (!report) {
        tell(report.error().sentence());
        return false;
    }
    return writeFile(command.report,
                     name.ends_with(".csv")
                         ? reportCsv(*report)
                         : toJson(*report).dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
}

int report(FleetFile& fleet, const RoundCommand& command) {
    if (overwritesFleet(command.report, command.fleet)) return kWrongUsage;
    if (const auto day = checkDay(command.today, "round", "--today"); !day) {
        tell(day.error().sentence());
        return kWrongUsage;
    }
    const auto today = command.today.empty() ? todayOf(fleet, nowUtc()) : Result<std::string>(command.today);
    if (!today) return couldNotRun(today.error());
    if (!writeReport(fleet, command, *today)) return kCouldNotRun;
    print(oneLine(command.report) + "\n");
    return kDone;
}

int run(const RoundCommand& command) {
    const auto fleet = openFleet(command.fleet, command.open || command.close);
    if (!fleet) return kCouldNotRun;
    if (!command.firstListed.empty())
        return answerFirstListed(*fleet, command.firstListed, command.before, command.json);
    if (!command.report.empty()) return report(*fleet, command);
    if (command.close) return close(*fleet, command);
    if (command.kept) return showKept(*fleet, command);
    if (command.open) {
        const auto kept = openRound(*fleet, command.until, progressOnStderr());
        if (!kept) return couldNotRun(kept.error());
        return show(*fleet, command, kept->list, &*kept);
    }
    const auto list = listNow(*fleet, command.until, progressOnStderr(), cancelledBySignals());
    if (!list) return couldNotRun(list.error());
    return show(*fleet, command, *list, nullptr);
}

}  // namespace

void addRoundCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<RoundCommand>();
    CLI::App* sub = app.add_subcommand("round", "The weekly list of a fleet file");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    auto* until =
        sub->add_option("--until", command->until,
                        "last of the seven days, in the site's calendar (day of the newest recording)");
    auto* open = sub->add_flag("--open", command->open, "open a round and keep the list");
    auto* kept = sub->add_flag("--kept", command->kept, "the open round, else the last closed one, as kept");
    auto* close = sub->add_flag("--close", command->close, "close the open round");
    sub->add_option("--by", command->by, "who closes it (login name)");
    sub->add_flag("--json", command->json, "one JSON object instead of the text");
    auto* first =
        sub->add_option("--first-listed", command->firstListed,
                        "tag: the first day on which the rule would have listed this machine, before "
                        "each of its failures");
    sub->add_option("--before", command->before, "with --first-listed: before this day instead")
        ->needs(first);
    auto* report =
        sub->add_option("--report", command->report,
                        "write the report of the open or last kept round for those who plan the work: "
                        "FILE.pdf, FILE.json or FILE.csv by its ending");
    sub->add_option("--paper", command->paper, "of the report")->check(CLI::IsMember({"a4", "letter"}));
    sub->add_flag("--inches", command->inches, "on the report's pages: in/s beside mm/s");
    sub->add_option("--today", command->today, "day the report is made on, like 2026-05-12; else the clock's")
        ->needs(report);
    report->excludes(until)->excludes(open)->excludes(close)->excludes(first);
    first->excludes(until)->excludes(open)->excludes(kept)->excludes(close);
    open->excludes(kept)->excludes(close);
    kept->excludes(close)->excludes(until);
    close->excludes(until);
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
