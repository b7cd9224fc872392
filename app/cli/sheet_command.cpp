// Why: the findings sheet of a machine: as PDF drawn by the desktop program, or as its JSON or CSV twin
// without it. `--all` writes one for every machine to act on or plan for.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/desktop_program.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/sheet_content.h"
#include "core/fleet/sheet_set.h"
#include "core/store/day.h"

namespace fettle {

namespace {

struct SheetCommand {
    std::string fleet, machine, out, paper = "a4", today;
    std::size_t finding = 0;
    bool json = false, csv = false, all = false, inches = false;

    bool twin() const { return json || csv; }
    const char* extension() const { return json ? ".json" : csv ? ".csv" : ".pdf"; }
};

std::string twinOf(const SheetCommand& command, const SheetContent& sheet) {
    if (command.json) return toJson(sheet).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
    return sheetCsvHeader() + sheetCsvRow(sheet);
}

// The desktop program reads the fleet file itself; what it is asked for was found here first. One start draws
// all of them.
bool draw(const SheetCommand& command, const std::vector<std::string>& what) {
    std::vector<std::string> words{command.fleet, "--sheet", command.out,  "--paper",
                                   command.paper, "--today", command.today};
    words.insert(words.end(), what.begin(), what.end());
    if (command.inches) words.push_back("--inches");
    const auto done = runDesktop(words);
    if (!done) tell(done.error().sentence());
    return done.has_value();
}

bool writeTwin(const SheetCommand& command, const SheetContent& sheet, const std::string& path) {
    return writeFile(path, twinOf(command, sheet));
}

// Says what was written; false where it is not there.
bool report(const SheetContent& sheet, const std::string& path) {
    if (!std::filesystem::exists(path)) {
        tell(Error{ErrorKind::Unwritable, path, "", "was not written"}.sentence());
        return false;
    }
    print(oneLine(path) + ": " + oneLine(sheet.firstLine) + "\n");
    return true;
}

int one(FleetFile& fleet, const SheetCommand& command) {
    const auto sheet = sheetContent(fleet, {command.machine, command.finding, {}, command.today});
    if (!sheet) return couldNotRun(sheet.error());
    if (command.out.empty()) {
        print(twinOf(command, *sheet));
        return kDone;
    }
    const bool written =
        command.twin() ? writeTwin(command, *sheet, command.out)
                       : draw(command, {"--machine", sheet->tag, "--finding", std::to_string(sheet->number)});
    return written && report(*sheet, command.out) ? kDone : kCouldNotRun;
}

// All of them in one PDF.
int book(FleetFile& fleet, const SheetCommand& command) {
    const auto from = sheetSet(fleet);
    if (!from) return couldNotRun(from.error());
    if (!draw(command, {"--all"})) return kCouldNotRun;
    tell(fmt::format("{} sheets written for the round to {}", from->machines().size(), from->list.until));
    return kDone;
}

int all(FleetFile& fleet, const SheetCommand& command) {
    const auto from = sheetSet(fleet);
    if (!from) return couldNotRun(from.error());
    RealFileSystem files;
    if (auto made = files.makeFolders(command.out); !made) return couldNotRun(made.error());
    if (!command.twin() && !draw(command, {"--all"})) return kCouldNotRun;
    std::size_t count = 0;
    std::set<std::string> used;
    for (const std::string& tag : from->machines()) {
        const auto sheet = sheetContent(fleet, from->list, from->round, {tag, 1, {}, command.today});
        if (!sheet) return couldNotRun(sheet.error());
        const std::string path = command.out + "/" + sheetFileName(tag, command.extension(), used);
        if (overwritesFleet(path, command.fleet)) return kWrongUsage;
        if (command.twin() && !writeTwin(command, *sheet, path)) return kCouldNotRun;
        if (!report(*sheet, path)) return kCouldNotRun;
        ++count;
    }
    tell(fmt::format("{} sheets written for the round to {}", count, from->list.until));
    return kDone;
}

// The clock's day in the site's zone where none was given.
bool setToday(FleetFile& fleet, SheetCommand& command) {
    if (!command.today.empty()) return true;
    const auto today = todayOf(fleet, nowUtc());
    if (!today) tell(today.error().sentence());
    command.today = today.value_or("");
    return today.has_value();
}

int run(SheetCommand command) {
    if (command.all == !command.machine.empty() || (command.all && command.finding)) {
        tell("sheet: give --machine, or --all without --finding");
        return kWrongUsage;
    }
    if (command.out.empty() && (command.all || !command.twin())) {
        tell("sheet: -o is needed, but for --json and --csv of one machine");
        return kWrongUsage;
    }
    if (!command.out.empty() && overwritesFleet(command.out, command.fleet)) return kWrongUsage;
    if (const auto day = checkDay(command.today, "sheet", "--today"); !day) {
        tell(day.error().sentence());
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet || !setToday(*fleet, command)) return kCouldNotRun;
    if (command.all && !command.twin() && lowerAscii(command.out).ends_with(".pdf"))
        return book(*fleet, command);
    return command.all ? all(*fleet, command) : one(*fleet, command);
}

}  // namespace

void addSheetCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<SheetCommand>();
    CLI::App* sub = app.add_subcommand("sheet", "Write the findings sheet of a machine");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->machine, "tag");
    sub->add_option("--finding", command->finding, "which of its findings (1, the most urgent)")
        ->check(CLI::Range(1, 1000));
    sub->add_option("-o,--output", command->out,
                    "file to write; with --all a folder, or one PDF with all where it ends in .pdf");
    sub->add_flag("--all", command->all, "one for every machine to act on or plan for");
    sub->add_option("--paper", command->paper, "of the page")->check(CLI::IsMember({"a4", "letter"}));
    sub->add_flag("--inches", command->inches, "on the page: in/s beside mm/s");
    sub->add_option("--today", command->today, "day the sheet is made on, like 2026-05-12; else the clock's");
    auto* json = sub->add_flag("--json", command->json, "the JSON twin instead of the page");
    sub->add_flag("--csv", command->csv, "header and row for a work-order system instead of the page")
        ->excludes(json);
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
