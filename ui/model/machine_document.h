// Why: the register's form edits the JSON description itself, never a struct made from it, so that keys this
// program does not know stay as they were. Values are read and written by JSON pointer; after each change the
// whole is checked by parseMachine and every trouble found is kept with its place, which is the pointer of a
// field. A number that cannot be read stays in the document as text, so that the check names it. Every change
// can be undone (machine_edit.h); what was loaded or saved last is the state without changes, and steps are
// kept over a save. Thread: the window's.
#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/machine/machine.h"

namespace fettle {

enum class FieldKind { Text, Number, Choice, Yes };

// One value of a description as a form or a table shows it.
struct FieldSpec {
    std::string pointer;  // "/driver/power_kw"; in a table from its row: "/designation"; "@...": not a value
    QString label, unit;
    FieldKind kind = FieldKind::Text;
    QStringList words = {};  // of a choice; of a text: suggestions
    QString hint = {};
    int width = 12;             // characters
    std::string onlyWhen = {};  // "/driver/supply=inverter": shown only where that value stands
};

struct Trouble {
    std::string place, rule;
};

class MachineDocument : public QObject {
    Q_OBJECT
  public:
    explicit MachineDocument(QObject* parent = nullptr);

    // A description as stored; what is not JSON is refused and changes nothing. The one that is there already
    // is now saved and keeps its steps.
    Status load(const std::string& json, const std::string& name);
    void startNew(const std::string& site, const std::string& area, double mainsHz);
    void startCopy();  // the same under another tag, to be given

    const Json& root() const { return root_; }
    std::string json() const;  // as it will be stored
    QString text(const std::string& pointer) const;
    void setText(const std::string& pointer, const QString& text, FieldKind kind);
    const Json* find(const std::string& pointer) const;  // null: absent
    void put(const std::string& pointer, Json value);    // makes what is missing on the way
    void remove(const std::string& pointer);             // of an array: the others move up

    const std::vector<Trouble>& troubles() const { return troubles_; }
    QString troubleAt(const std::string& pointer) const;  // there or below; empty: none
    const std::vector<std::string>& warnings() const { return warnings_; }
    const std::optional<Machine>& machine() const { return machine_; }  // the last sound one
    bool sound() const { return troubles_.empty(); }
    bool changed() const { return !steps_.isClean(); }
    void setSaved();

    QUndoStack& steps() { return steps_; }
    void undo();
    void redo();
    void endTyping() { ++typing_; }  // what is typed next is a step of its own
    // Several changes that are undone together.
    void inOneStep(const QString& name, const std::function<void()>& changes);
    // For steps alone: the value at a place, as it was or will be.
    void restore(const std::vector<std::string>& tokens, const Json& value);

  signals:
    void edited();   // a value changed, or another document was loaded
    void loaded();   // another document
    void stepped();  // undone or redone

  private:
    void check();
    void become(Json root, bool changed);
    void change(const std::string& pointer, const std::function<void()>& alter, bool typing);

    Json root_ = Json::object();
    std::string name_;
    std::vector<Trouble> troubles_;
    std::vector<std::string> warnings_;
    std::optional<Machine> machine_;
    QUndoStack steps_;
    int typing_ = 0;
};

// "/points/0" and "channels" -> "/points/0/channels"
std::string under(const std::string& pointer, const std::string& key);
Json valueOf(const QString& text, FieldKind kind);

}  // namespace fettle
