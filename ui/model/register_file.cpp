#include "ui/model/register_file.h"

#include <fmt/format.h>

#include "core/base/file_system.h"
#include "core/fleet/register_csv.h"
#include "ui/model/machine_document.h"

namespace fettle {

namespace {

struct Entry {
    std::string json, from, note;
};

std::string textOf(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

Entry entryOf(const Json& item) {
    if (!item.is_object() || !item.contains("machine")) return {item.dump(2), {}, {}};
    return {item["machine"].dump(2), textOf(item, "from"), textOf(item, "note")};
}

void takeOne(FleetFile& fleet, const Entry& entry, const std::string& file, RegisterTaken& taken) {
    const auto put = fleet.machines().put(entry.json, file, entry.from, entry.note);
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
            if (!description.from.empty()) entry["from"] = description.from;
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

// Whatever the order of keys.
bool same(const Json& a, const Json& b) {
    if (a.type() != b.type() && !(a.is_number() && b.is_number())) return false;
    if (!a.is_structured()) return a == b;
    if (a.size() != b.size()) return false;
    for (const auto& item : a.items()) {
        if (a.is_array()) {
            if (!same(item.value(), b[std::stoul(item.key())])) return false;
        } else {
            const auto other = b.find(item.key());
            if (other == b.end() || !same(item.value(), *other)) return false;
        }
    }
    return true;
}

// A table has columns of its own order: what it says again is not a change.
std::string asKnown(FleetFile& fleet, const std::string& json) {
    const auto machine = parseJson(json, "");
    if (!machine || !machine->is_object()) return json;
    const auto history = fleet.machines().history(textOf(*machine, "tag"));
    if (!history || history->empty()) return json;
    const auto known = parseJson(history->back().json, "");
    return known && same(*known, *machine) ? history->back().json : json;
}

Result<RegisterTaken> takeTable(FleetFile& fleet, const std::string& text, const std::string& file) {
    const auto machines = machinesOfCsv(text, file);
    if (!machines) return fail(machines.error());
    RegisterTaken taken;
    for (const CsvMachine& machine : *machines) {
        if (machine.json.empty())
            taken.refused.push_back(machine.refusal.sentence());
        else
            takeOne(fleet, {asKnown(fleet, machine.json), {}, {}},
                    fmt::format("{}: line {}", file, machine.line), taken);
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
