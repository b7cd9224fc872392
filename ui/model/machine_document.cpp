#include "ui/model/machine_document.h"

#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "ui/model/machine_edit.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

constexpr int kMostTroubles = 30;

std::vector<std::string> tokensOf(const std::string& pointer) {
    std::vector<std::string> tokens;
    for (const std::string_view part : split(pointer, '/')) {
        std::string token(part);
        for (const auto& [from, to] : {std::pair<std::string, char>{"~1", '/'}, {"~0", '~'}})
            for (auto at = token.find(from); at != std::string::npos; at = token.find(from, at + 1))
                token.replace(at, 2, 1, to);
        tokens.push_back(std::move(token));
    }
    tokens.erase(tokens.begin());  // before the first stroke
    return tokens;
}

Json* make(Json& root, const std::vector<std::string>& tokens) {
    Json* node = &root;
    for (const std::string& token : tokens) {
        if (isIndex(token) && (node->is_array() || node->is_null())) {
            if (node->is_null()) *node = Json::array();
            while (node->size() <= std::stoul(token))
                node->push_back(nullptr);
            node = &(*node)[std::stoul(token)];
        } else {
            if (!node->is_object()) *node = Json::object();
            node = &(*node)[token];
        }
    }
    return node;
}

bool allNull(const Json& node) {
    return std::all_of(node.begin(), node.end(), [](const Json& value) { return value.is_null(); });
}

void erase(Json& root, const std::vector<std::string>& tokens) {
    auto* parent = const_cast<Json*>(valueAt(root, tokens, tokens.size() - 1));
    if (!parent || !stepInto(*parent, tokens.back())) return;
    if (parent->is_array())
        parent->erase(std::stoul(tokens.back()));
    else
        parent->erase(tokens.back());
}

// A value that was cleared: of a pair the other half keeps its place; what is empty then goes too.
void clear(Json& root, std::vector<std::string> tokens) {
    auto* parent = const_cast<Json*>(valueAt(root, tokens, tokens.size() - 1));
    if (!parent || !stepInto(*parent, tokens.back())) return;
    if (!parent->is_array()) {
        parent->erase(tokens.back());
        tokens.pop_back();
        if (parent->empty() && !tokens.empty() && tokens.back() == "orders") erase(root, tokens);
        return;
    }
    (*parent)[std::stoul(tokens.back())] = nullptr;
    tokens.pop_back();
    if (allNull(*parent)) erase(root, tokens);
}

// So that the check can go on.
void mend(Json& root, const std::string& place) {
    static const std::map<std::string, Json> needed = {
        {"/tag", "X"},
        {"/mains_hz", 50},
        {"/driver", {{"poles", 4}}},
        {"/driver/poles", 4},
        {"/points",
         Json::array({{{"id", "P"}, {"at", "driver DE"}, {"channels", Json::array({{{"name", "x"}}})}}})}};
    const auto found = needed.find(place);
    if (found == needed.end())
        erase(root, tokensOf(place));
    else
        *make(root, tokensOf(place)) = found->second;
}

bool isAtOrBelow(const std::string& place, const std::string& pointer) {
    return place == pointer || place.rfind(pointer + "/", 0) == 0;
}

std::string tagOf(const Json& root) {
    const Json* tag = stepInto(root, "tag");
    return tag && tag->is_string() ? tag->get<std::string>() : std::string();
}

}  // namespace

std::string under(const std::string& pointer, const std::string& key) {
    std::string escaped;
    for (const char c : key) {
        if (c == '~')
            escaped += "~0";
        else if (c == '/')
            escaped += "~1";
        else
            escaped += c;
    }
    return pointer + "/" + escaped;
}

Json valueOf(const QString& typed, FieldKind kind) {
    const std::string text = kept(typed);
    if (kind == FieldKind::Yes) return text == "yes";
    if (kind != FieldKind::Number) return text;
    std::string plain = text;
    if (plain.find('.') == std::string::npos && std::count(plain.begin(), plain.end(), ',') == 1)
        std::replace(plain.begin(), plain.end(), ',', '.');
    if (const auto whole = parseInteger(plain)) return *whole;
    if (const auto number = parseNumber(plain); number && *number - *number == 0) return *number;
    return text;
}

MachineDocument::MachineDocument(QObject* parent) : QObject(parent) {
    steps_.setUndoLimit(1000);
}

Status MachineDocument::load(const std::string& json, const std::string& name) {
    auto parsed = parseJson(json, name);
    if (!parsed) return fail(parsed.error());
    if (!parsed->is_object()) return fail(ErrorKind::Invalid, name, "/", "one machine is an object { }");
    if (name_ == name && root_ == *parsed) {
        setSaved();
        return {};
    }
    name_ = name;
    become(std::move(*parsed), false);
    return {};
}

void MachineDocument::startNew(const std::string& site, const std::string& area, double mainsHz) {
    Json root = Json::object();
    root["tag"] = "";
    if (!site.empty()) root["site"] = site;
    if (!area.empty()) root["area"] = area;
    root["criticality"] = "B";
    root["mains_hz"] = mainsHz == 60 ? 60 : 50;
    root["driver"] = {{"kind", "induction"}, {"supply", "mains"}};
    root["points"] = Json::array({{{"id", "M-DE"},
                                   {"at", "driver DE"},
                                   {"mount", "unknown"},
                                   {"channels", Json::array({{{"name", "x"},
                                                              {"quantity", "acceleration"},
                                                              {"unit", "g"},
                                                              {"direction", "horizontal"}}})}}});
    name_ = "new machine";
    become(std::move(root), true);
}

void MachineDocument::startCopy() {
    Json root = root_;
    root["tag"] = "";
    root.erase("asset");
    name_ = "new machine";
    become(std::move(root), true);
}

void MachineDocument::become(Json root, bool changed) {
    root_ = std::move(root);
    machine_.reset();
    steps_.clear();
    if (changed) steps_.resetClean();
    check();
    emit loaded();
    emit edited();
}

std::string MachineDocument::json() const {
    return root_.dump(2, ' ', false, Json::error_handler_t::replace);
}

const Json* MachineDocument::find(const std::string& pointer) const {
    const auto tokens = tokensOf(pointer);
    return valueAt(root_, tokens, tokens.size());
}

QString MachineDocument::text(const std::string& pointer) const {
    const Json* value = find(pointer);
    if (!value || value->is_null()) return {};
    if (value->is_string()) return shown(value->get<std::string>());
    if (value->is_boolean()) return value->get<bool>() ? QStringLiteral("yes") : QStringLiteral("no");
    return shown(value->dump());
}

void MachineDocument::change(const std::string& pointer, const std::function<void()>& alter, bool typing) {
    const auto tokens = tokensOf(pointer);
    const Json before = root_;
    alter();
    if (before == root_) return;
    check();
    steps_.push(new MachineEdit(*this, editedPlace(before, root_, tokens), typing ? pointer : std::string(),
                                typing_));
    emit edited();
}

void MachineDocument::setText(const std::string& pointer, const QString& typed, FieldKind kind) {
    if (typed.trimmed() == text(pointer)) return;
    change(
        pointer,
        [&] {
            if (typed.trimmed().isEmpty())
                clear(root_, tokensOf(pointer));
            else
                *make(root_, tokensOf(pointer)) = valueOf(typed, kind);
        },
        true);
}

void MachineDocument::put(const std::string& pointer, Json value) {
    change(
        pointer, [&] { *make(root_, tokensOf(pointer)) = std::move(value); }, false);
}

void MachineDocument::remove(const std::string& pointer) {
    change(
        pointer, [&] { erase(root_, tokensOf(pointer)); }, false);
}

void MachineDocument::setSaved() {
    steps_.setClean();
    endTyping();
    emit edited();
}

void MachineDocument::inOneStep(const QString& name, const std::function<void()>& changes) {
    steps_.beginMacro(name);
    changes();
    steps_.endMacro();
    emit edited();
}

void MachineDocument::restore(const std::vector<std::string>& tokens, const Json& value) {
    *make(root_, tokens) = value;
}

void MachineDocument::undo() {
    if (!steps_.canUndo()) return;
    steps_.undo();
    endTyping();
    check();
    emit stepped();
    emit edited();
}

void MachineDocument::redo() {
    if (!steps_.canRedo()) return;
    steps_.redo();
    endTyping();
    check();
    emit stepped();
    emit edited();
}

// parseMachine stops at the first rule broken: each place found is taken out, or given a sound value where
// one is needed, and the rest checked again, until nothing new is found.
void MachineDocument::check() {
    troubles_.clear();
    warnings_.clear();
    Json rest = root_;
    for (int i = 0; i < kMostTroubles; ++i) {
        auto parsed = parseMachine(rest.dump(-1, ' ', false, Json::error_handler_t::replace), tagOf(root_));
        if (parsed) {
            if (troubles_.empty()) {
                machine_ = std::move(parsed->machine);
                warnings_ = std::move(parsed->warnings);
            }
            return;
        }
        const Error& error = parsed.error();
        for (const Trouble& known : troubles_)
            if (known.place == error.place) return;
        troubles_.push_back({error.place, error.rule});
        if (error.place.empty() || error.place.front() != '/') return;
        mend(rest, error.place);
    }
}

QString MachineDocument::troubleAt(const std::string& pointer) const {
    for (const Trouble& trouble : troubles_)
        if (isAtOrBelow(trouble.place, pointer)) return shown(trouble.rule);
    return {};
}

}  // namespace fettle
