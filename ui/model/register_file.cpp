#include "ui/model/register_file.h"

#include <fmt/format.h>

#include "core/base/file_system.h"
#include "core/fleet/register_csv.h"
#include "ui/model/machine_document.h"

namespace fettle {

namespace {

struct Entry {
    std::string json, from, note;
    bool history = false;  // no day: from the beginning
};

std::string textOf(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

Entry entryOf(const Json& item) {
    if (!item.is_object() || !item.contains("machine")) return {item.dump(2), {}, {}};
    return {item["machine"].dump(2), textOf(item, "from"), textOf(item, "note"), true};
}

void takeOne(FleetFile& fleet, const Entry& entry, const std::string& file, RegisterTaken& taken) {
    RegisterStore& machines = fleet.machines();
    const auto put = entry.history ? machines.putHistory(entry.json, file, entry.from, entry.note)
                                   : machines.put(entry.json, file, entry.from, entry.note);
    if (!put) {
        taken.refused.push_back(put.error().sentence());
        return;
    }
    if (*put == PutMachine::Added) ++taken.added;
    if (*put == PutMachine::Changed) ++taken.changed;
    if (*put == PutMachine::Unchanged) ++taken.unchanged;
}

}  // namespace

Result<std::string> registerAsJson(FleetFile& fleet) {
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    Json list = Json::array();
    for (const MachineEntry& machine : *machines) {
        const auto history = fleet.machines().history(machine.tag);
        if (!history) return fail(history.error());
        for (const DescriptionEntry& description : *history) {
            auto parsed = parseJson(description.json, machine.tag);
            if (!parsed) return fail(parsed.error());
            Json entry = Json::object();
            entry["machine"] = std::move(*parsed);
            entry["from"] = description.from;
            if (!description.note.empty()) entry["note"] = description.note;
            list.push_back(std::move(entry));
        }
    }
    return list.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

namespace {

bool isTable(const std::string& file) {
    const std::string extension = extensionOf(file);
    return extension == "csv" || extension == "tsv" || extension == "txt";
}

Result<RegisterTaken> takeTable(FleetFile& fleet, const std::string& text, const std::string& file) {
    const auto machines = machinesOfCsv(text, file);
    if (!machines) return fail(machines.error());
    RegisterTaken taken;
    for (const CsvMachine& machine : *machines) {
        if (machine.json.empty())
            taken.refused.push_back(machine.refusal.sentence());
        else
            takeOne(fleet, {machine.json, {}, {}}, fmt::format("{}: line {}", file, machine.line), taken);
    }
    return taken;
}

Status setOne(FleetFile& fleet, const std::string& tag, const std::string& pointer, const Json& value,
              Entry& entry) {
    const auto history = fleet.machines().history(tag);
    if (!history) return fail(history.error());
    if (history->empty()) return fail(ErrorKind::NotFound, tag, "", "has no description");
    MachineDocument document;
    if (auto loaded = document.load(history->back().json, tag); !loaded) return loaded;
    if (value.is_null())
        document.setText(pointer, {}, FieldKind::Text);
    else
        document.put(pointer, value);
    entry.json = document.json();
    return {};
}

}  // namespace

Result<RegisterTaken> setAlike(FleetFile& fleet, const std::vector<std::string>& tags,
                               const std::string& pointer, const Json& value, const std::string& from,
                               const std::string& note) {
    RegisterTaken taken;
    for (const std::string& tag : tags) {
        Entry entry{{}, from, note};
        if (auto set = setOne(fleet, tag, pointer, value, entry); set)
            takeOne(fleet, entry, tag, taken);
        else
            taken.refused.push_back(set.error().sentence());
    }
    return taken;
}

Result<RegisterTaken> takeRegister(FleetFile& fleet, const std::string& text, const std::string& file) {
    if (isTable(file)) return takeTable(fleet, text, file);
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    RegisterTaken taken;
    if (!json->is_array()) {
        takeOne(fleet, entryOf(*json), file, taken);
        return taken;
    }
    for (std::size_t i = 0; i < json->size(); ++i)
        takeOne(fleet, entryOf((*json)[i]), file + ": /" + std::to_string(i), taken);
    return taken;
}

}  // namespace fettle
