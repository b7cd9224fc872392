// Why: one table of all keys: the actions of menus and pages are made from it and Help shows it, so that what
// Help says is what the keys do. A new key is a new row. Where several keys do the same they are alternatives
// for other keyboards. Thread: the window's.
#pragma once

#include <QAction>
#include <QKeySequence>
#include <QList>
#include <QString>
#include <vector>

namespace fettle {

struct Shortcut {
    const char* id;     // object name of the action: "round.accept"
    const char* group;  // where it works
    const char* text;   // as in the menu, with its letter: "&Accept"
    QList<QKeySequence> keys;
};

const std::vector<Shortcut>& shortcuts();
QString groupText(const Shortcut& shortcut);
QString actionText(const Shortcut& shortcut);

// An action of the table: text, keys, object name. Keys of pages work while the page has the focus.
QAction* actionFor(const char* id, QObject* parent);

}  // namespace fettle
