// Why: undo in the register is a row of small commands, each the value at one place before and after, never a
// copy of the whole description. What is typed into one field is one step until another field is typed into
// or the field is left. Ownership: commands belong to the document's QUndoStack and hold a pointer to the
// document they change. Thread: the window's.
#pragma once

#include <QUndoCommand>
#include <string>
#include <vector>

#include "core/base/json_object.h"

namespace fettle {

class MachineDocument;

// Tokens of a JSON pointer to a value below the root, and the values there.
struct EditedPlace {
    std::vector<std::string> tokens;  // empty: the whole
    Json before, after;
};
// The smallest object or list on the way to `tokens` that is there before and after a change.
EditedPlace editedPlace(const Json& before, const Json& after, const std::vector<std::string>& tokens);
// The member or element of that name; null: there is none.
bool isIndex(const std::string& token);
const Json* stepInto(const Json& node, const std::string& token);
const Json* valueAt(const Json& root, const std::vector<std::string>& tokens, std::size_t count);

class MachineEdit : public QUndoCommand {
  public:
    // The change is made already; `field` is what was typed into, empty for a change that is a step of its
    // own; `typing` counts fields left.
    MachineEdit(MachineDocument& document, EditedPlace place, std::string field, int typing);

    int id() const override { return 1; }
    bool mergeWith(const QUndoCommand* other) override;
    void undo() override;
    void redo() override;

  private:
    MachineDocument& document_;
    EditedPlace place_;
    std::string field_;
    int typing_;
    bool made_ = true;
};

}  // namespace fettle
