// Why: machines into the register: descriptions one a file, or a whole register as one JSON list or CSV
// table, as `export` writes it. One line on stdout for what became of each machine.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <optional>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/register_csv.h"

namespace fettle {

namespace {

struct RegisterCommand {
    std::string fleet, from, note, remove, on, byHand, offHand;
    std::vector<std::string> files;
};

// One description to put in.
struct Entry {
    std::string json, file, from, note;
    bool history = false;  // no day: from the beginning
};

// An element of a list: a description, or one with the day from which it holds, as `export` writes it.
Entry entryOf(const Json& item, const std::string& file, const RegisterCommand& command) {
    Entry entry{item.dump(2), file, command.from, command.note};
    if (!item.is_object() || !item.contains("machine")) return entry;
    entry.json = item["machine"].dump(2);
    if (item.contains("from") && item["from"].is_string()) entry.from = item["from"];
    if (item.contains("note") && item["note"].is_string()) entry.note = item["note"];
    entry.history = true;
    return entry;
}

bool isTable(const std::string& file) {
    const std::string extension = extensionOf(file);
    return extension == "csv" || extension == "tsv";
}

// A row that is no machine keeps its place, so that it is refused with its line.
std::vector<Entry> entriesInTable(const std::string& text, const std::string& file,
                                  const RegisterCommand& command) {
    const auto machines = machinesOfCsv(text, file);
    if (!machines) {
        refuse(machines.error());
        return {};
    }
    std::vector<Entry> entries;
    for (const CsvMachine& machine : *machines) {
        const std::string place = fmt::format("{}: line {}", file, machine.line);
        if (machine.json.empty()) tell("refused: " + machine.refusal.sentence());
        entries.push_back({machine.json.empty() ? "{}" : machine.json, place, command.from, command.note});
    }
    return entries;
}

// Empty after telling why.
std::vector<Entry> entriesIn(const std::string& file, const RegisterCommand& command) {
    const RealFileSystem files;
    const auto text = files.read(file);
    if (!text) {
        refuse(text.error());
        return {};
    }
    if (isTable(file)) return entriesInTable(*text, file, command);
    const auto json = parseJson(*text, file);
    if (!json) {
        refuse(json.error());
        return {};
    }
    if (!json->is_array()) return {{*text, file, command.from, command.note}};
    std::vector<Entry> entries;
    for (std::size_t i = 0; i < json->size(); ++i)
        entries.push_back(entryOf((*json)[i], fmt::format("{}: /{}", file, i), command));
    if (entries.empty()) refuse({ErrorKind::Invalid, file, "", "is a list without a machine"});
    return entries;
}

const char* wordOf(PutMachine put) {
    return put == PutMachine::Added ? "added" : put == PutMachine::Changed ? "changed" : "unchanged";
}

bool put(FleetFile& fleet, const Entry& entry) {
    const auto parsed = parseMachine(entry.json, entry.file);
    if (!parsed) {
        for (const Error& fault : machineFaults(entry.json, entry.file))
            refuse(fault);
        return false;
    }
    RegisterStore& machines = fleet.machines();
    const auto done = entry.history ? machines.putHistory(entry.json, entry.file, entry.from, entry.note)
                                    : machines.put(entry.json, entry.file, entry.from, entry.note);
    if (!done) {
        refuse(done.error());
        return false;
    }
    for (const std::string& warning : parsed->warnings)
        tell("note: " + warning);
    print(fmt::format("{} {}{}\n", oneLine(parsed->machine.tag), wordOf(*done),
                      entry.from.empty() ? "" : " from " + entry.from));
    return true;
}

int putAll(FleetFile& fleet, const RegisterCommand& command) {
    int status = kDone;
    for (const std::string& file : command.files) {
        const std::vector<Entry> entries = entriesIn(file, command);
        if (entries.empty()) status = kRefusedSome;
        for (const Entry& entry : entries)
            if (!put(fleet, entry)) status = kRefusedSome;
    }
    return status;
}

int changeOne(const Status& done, const std::string& tag, const char* word) {
    if (!done) return couldNotRun(done.error());
    print(fmt::format("{} {}\n", oneLine(tag), word));
    return kDone;
}

int run(const RegisterCommand& command) {
    const bool one = !command.remove.empty() || !command.byHand.empty() || !command.offHand.empty();
    if (one != command.files.empty()) {
        tell("register: name files, or one of --remove, --by-hand and --off-hand");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, true);
    if (!fleet) return kCouldNotRun;
    RegisterStore& machines = fleet->machines();
    if (!command.remove.empty())
        return changeOne(machines.remove(command.remove, command.on, command.note), command.remove,
                         "removed");
    if (!command.byHand.empty())
        return changeOne(machines.setByHand(command.byHand, true, command.note), command.byHand,
                         "on the list by hand");
    if (!command.offHand.empty())
        return changeOne(machines.setByHand(command.offHand, false, ""), command.offHand,
                         "no longer on the list by hand");
    return putAll(*fleet, command);
}

}  // namespace

void addRegisterCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<RegisterCommand>();
    CLI::App* sub = app.add_subcommand("register", "Add or change machines of a fleet file");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("FILE", command->files,
                    "machine descriptions (JSON), a list of them or of {from, note, machine} as export "
                    "writes it (no day: from the beginning), or a table (CSV), one row a machine");
    sub->add_option("--from", command->from,
                    "the day from which it holds; without: from the beginning, or "
                    "a correction of what holds now");
    sub->add_option("--note", command->note, "why it changed, is on the list by hand or was removed");
    auto* remove = sub->add_option("--remove", command->remove, "TAG: take a machine out of service");
    auto* on = sub->add_option("--on", command->on, "the day of removal");
    remove->needs(on);
    on->needs(remove);
    auto* byHand = sub->add_option("--by-hand", command->byHand, "TAG: put it on the list by hand");
    auto* offHand = sub->add_option("--off-hand", command->offHand, "TAG: take it off again");
    byHand->excludes(remove)->excludes(offHand);
    offHand->excludes(remove);
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
