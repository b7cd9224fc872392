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
#include "core/fleet/round_desk.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

namespace {

struct SheetCommand {
    std::string fleet, machine, out;
    std::size_t finding = 0;
    bool json = false, csv = false, all = false;

    const char* extension() const { return json ? ".json" : csv ? ".csv" : ".pdf"; }
};

std::string twinOf(const SheetCommand& command, const SheetContent& sheet) {
    if (command.json) return toJson(sheet).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
    return sheetCsvHeader() + sheetCsvRow(sheet);
}

// The desktop program reads the fleet file itself; what it is asked for was found here first.
bool draw(const SheetCommand& command, const SheetContent& sheet, const std::string& path) {
    std::error_code gone;
    std::filesystem::remove(path, gone);
    const auto done = runDesktop(
        {command.fleet, "--sheet", path, "--machine", sheet.tag, "--finding", std::to_string(sheet.number)});
    if (!done)
        tell(done.error().sentence());
    else if (!std::filesystem::exists(path))
        tell(Error{ErrorKind::Unwritable, path, "", "was not written"}.sentence());
    else
        return true;
    return false;
}

bool writeOne(const SheetCommand& command, const SheetContent& sheet, const std::string& path) {
    const bool written =
        command.json || command.csv ? writeFile(path, twinOf(command, sheet)) : draw(command, sheet, path);
    if (written) print(oneLine(path) + ": " + oneLine(sheet.firstLine) + "\n");
    return written;
}

int one(FleetFile& fleet, const SheetCommand& command) {
    const auto sheet = sheetContent(fleet, {command.machine, command.finding, {}});
    if (!sheet) return couldNotRun(sheet.error());
    if (command.out.empty()) {
        print(twinOf(command, *sheet));
        return kDone;
    }
    return writeOne(command, *sheet, command.out) ? kDone : kCouldNotRun;
}

// The list that sheets are made from: the open or last kept round, else the week as it is now.
struct Listed {
    RoundList list;
    std::optional<std::int64_t> round;
};

Result<Listed> listed(FleetFile& fleet) {
    auto kept = currentRound(fleet);
    if (!kept) return fail(kept.error());
    if (*kept) return Listed{std::move((*kept)->list), (*kept)->entry.id};
    auto now = listNow(fleet);
    if (!now) return fail(now.error());
    return Listed{std::move(*now), std::nullopt};
}

int all(FleetFile& fleet, const SheetCommand& command) {
    const auto from = listed(fleet);
    if (!from) return couldNotRun(from.error());
    RealFileSystem files;
    if (auto made = files.makeFolders(command.out); !made) return couldNotRun(made.error());
    std::size_t count = 0;
    for (const RoundMachine& machine : from->list.machines) {
        if (machine.urgency != "act" && machine.urgency != "plan") continue;
        const auto sheet = sheetContent(fleet, from->list, from->round, {machine.tag, 1, {}});
        if (!sheet) return couldNotRun(sheet.error());
        const std::string path = command.out + "/" + safeFileName(machine.tag) + command.extension();
        if (!writeOne(command, *sheet, path)) return kCouldNotRun;
        ++count;
    }
    tell(fmt::format("{} sheets written for the round to {}", count, from->list.until));
    return kDone;
}

int run(const SheetCommand& command) {
    const bool twin = command.json || command.csv;
    if (command.all == !command.machine.empty() || (command.all && command.finding)) {
        tell("sheet: give --machine, or --all without --finding");
        return kWrongUsage;
    }
    if (command.out.empty() && (command.all || !twin)) {
        tell("sheet: -o is needed, but for --json and --csv of one machine");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
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
    sub->add_option("-o,--output", command->out, "file to write; with --all a folder");
    sub->add_flag("--all", command->all, "one for every machine to act on or plan for");
    auto* json = sub->add_flag("--json", command->json, "the JSON twin instead of the page");
    sub->add_flag("--csv", command->csv, "header and row for a work-order system instead of the page")
        ->excludes(json);
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
