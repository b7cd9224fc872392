#include "core/fleet/description_changes.h"

#include <algorithm>

namespace fettle {

namespace {

std::string nameOf(const Json& element, std::size_t index) {
    if (element.is_object())
        for (const char* key : {"id", "name"})
            if (const auto found = element.find(key); found != element.end() && found->is_string())
                return found->get<std::string>();
    return std::to_string(index);
}

std::string textOf(const Json& value) {
    if (value.is_string()) return value.get<std::string>();
    if (value.is_boolean()) return value.get<bool>() ? "yes" : "no";
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

using Flat = std::vector<std::pair<std::string, std::string>>;

void flatten(const Json& node, const std::string& path, Flat& out) {
    const auto under = [&](const std::string& key) { return path.empty() ? key : path + "/" + key; };
    if (node.is_object()) {
        for (const auto& item : node.items())
            flatten(item.value(), under(item.key()), out);
    } else if (node.is_array() && std::any_of(node.begin(), node.end(),
                                              [](const Json& element) { return element.is_structured(); })) {
        for (std::size_t i = 0; i < node.size(); ++i)
            flatten(node[i], under(nameOf(node[i], i)), out);
    } else {
        out.emplace_back(path, textOf(node));
    }
}

const std::string* find(const Flat& flat, const std::string& path) {
    const auto at =
        std::find_if(flat.begin(), flat.end(), [&](const auto& pair) { return pair.first == path; });
    return at == flat.end() ? nullptr : &at->second;
}

std::string textIn(const Json& object, const char* key) {
    const auto found = object.is_object() ? object.find(key) : object.end();
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

// What a description says of nodes: fitted and taken off on a day of its own.
void addNodes(const Json& machine, std::vector<DescriptionChange>& changes) {
    if (!machine.is_object() || !machine.contains("points") || !machine["points"].is_array()) return;
    for (const Json& point : machine["points"]) {
        if (!point.is_object() || !point.contains("node") || !point["node"].is_array()) continue;
        const std::string place = "points/" + textIn(point, "id") + "/node";
        for (const Json& node : point["node"]) {
            const std::string id = textIn(node, "id"), from = textIn(node, "from"), to = textIn(node, "to");
            if (!from.empty()) changes.push_back({from, place, "", id});
            if (!to.empty()) changes.push_back({to, place, id, ""});
        }
    }
}

}  // namespace

std::vector<DescriptionChange> changesBetween(const Json& before, const Json& after) {
    Flat old, now;
    flatten(before, "", old);
    flatten(after, "", now);
    std::vector<DescriptionChange> changes;
    for (const auto& [path, text] : now) {
        const std::string* was = find(old, path);
        if (!was || *was != text) changes.push_back({"", path, was ? *was : "", text});
    }
    for (const auto& [path, text] : old)
        if (!find(now, path)) changes.push_back({"", path, text, ""});
    return changes;
}

std::vector<DescriptionChange> changesThroughTime(const std::vector<DescriptionEntry>& history) {
    std::vector<DescriptionChange> all;
    Json last;
    for (const DescriptionEntry& entry : history) {
        const auto parsed = parseJson(entry.json, "");
        if (!parsed) continue;
        if (!last.is_null())
            for (DescriptionChange& change : changesBetween(last, *parsed)) {
                if (change.place.find("/node/") != std::string::npos) continue;  // told by its own days
                change.day = entry.from;
                all.push_back(std::move(change));
            }
        last = *parsed;
    }
    addNodes(last, all);
    std::stable_sort(all.begin(), all.end(),
                     [](const DescriptionChange& a, const DescriptionChange& b) { return a.day < b.day; });
    return all;
}

}  // namespace fettle
