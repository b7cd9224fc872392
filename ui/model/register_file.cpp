#include "ui/model/register_file.h"

#include "core/base/json_object.h"

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

Result<RegisterTaken> takeRegister(FleetFile& fleet, const std::string& text, const std::string& file) {
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
