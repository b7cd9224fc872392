#include "ui/model/machine_edit.h"

#include <algorithm>

#include "ui/model/machine_document.h"

namespace fettle {

namespace {

bool isContainer(const Json* node) {
    return node && (node->is_object() || node->is_array());
}

}  // namespace

bool isIndex(const std::string& token) {
    return !token.empty() && token.size() < 6 &&
           std::all_of(token.begin(), token.end(), [](char c) { return c >= '0' && c <= '9'; });
}

const Json* stepInto(const Json& node, const std::string& token) {
    if (node.is_array()) {
        if (!isIndex(token) || std::stoul(token) >= node.size()) return nullptr;
        return &node[std::stoul(token)];
    }
    if (!node.is_object()) return nullptr;
    const auto found = node.find(token);
    return found == node.end() ? nullptr : &*found;
}

const Json* valueAt(const Json& root, const std::vector<std::string>& tokens, std::size_t count) {
    const Json* node = &root;
    for (std::size_t i = 0; node && i < count; ++i)
        node = stepInto(*node, tokens[i]);
    return node;
}

EditedPlace editedPlace(const Json& before, const Json& after, const std::vector<std::string>& tokens) {
    std::size_t count = tokens.empty() ? 0 : tokens.size() - 1;
    while (count > 0 &&
           !(isContainer(valueAt(before, tokens, count)) && isContainer(valueAt(after, tokens, count))))
        --count;
    return {{tokens.begin(), tokens.begin() + std::ptrdiff_t(count)},
            *valueAt(before, tokens, count),
            *valueAt(after, tokens, count)};
}

MachineEdit::MachineEdit(MachineDocument& document, EditedPlace place, std::string field, int typing)
    : document_(document), place_(std::move(place)), field_(std::move(field)), typing_(typing) {
    setText(QString::fromStdString(field_));
}

// Two steps into one field meet at the wider of their two places.
bool MachineEdit::mergeWith(const QUndoCommand* other) {
    const auto* later = static_cast<const MachineEdit*>(other);
    if (field_.empty() || later->field_ != field_ || later->typing_ != typing_) return false;
    const std::size_t mine = place_.tokens.size(), theirs = later->place_.tokens.size();
    if (theirs < mine) {
        Json before = later->place_.before;
        const std::vector<std::string> rest(place_.tokens.begin() + std::ptrdiff_t(theirs),
                                            place_.tokens.end());
        Json* node = const_cast<Json*>(valueAt(before, rest, rest.size()));
        if (!node) return false;
        *node = place_.before;
        place_ = {later->place_.tokens, std::move(before), later->place_.after};
        return true;
    }
    const Json* now = valueAt(document_.root(), place_.tokens, mine);
    if (!now) return false;
    place_.after = *now;
    return true;
}

void MachineEdit::undo() {
    document_.restore(place_.tokens, place_.before);
}

void MachineEdit::redo() {
    if (!std::exchange(made_, false)) document_.restore(place_.tokens, place_.after);
}

}  // namespace fettle
