#include "ui/model/shortcuts.h"

#include <QCoreApplication>
#include <algorithm>
#include <cstring>

namespace fettle {

namespace {

constexpr const char* kWindow = QT_TRANSLATE_NOOP("Shortcuts", "Everywhere");
constexpr const char* kRound = QT_TRANSLATE_NOOP("Shortcuts", "Round page, in the ledger");
constexpr const char* kRegister = QT_TRANSLATE_NOOP("Shortcuts", "Register page");
constexpr const char* kMachine = QT_TRANSLATE_NOOP("Shortcuts", "Machine page");
constexpr const char* kPlot = QT_TRANSLATE_NOOP("Shortcuts", "In a plot");

QKeySequence key(const char* text) {
    return QKeySequence(QString::fromLatin1(text));
}

QList<QKeySequence> larger() {
    QList<QKeySequence> keys{key("Ctrl++"), key("Ctrl+=")};
    for (const QKeySequence& usual : QKeySequence::keyBindings(QKeySequence::ZoomIn))
        if (!keys.contains(usual)) keys << usual;
    return keys;
}

QString translated(const char* text) {
    return QCoreApplication::translate("Shortcuts", text);
}

}  // namespace

const std::vector<Shortcut>& shortcuts() {
    static const std::vector<Shortcut> table = {
        {"file.new", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&New fleet…"), {key("Ctrl+N")}},
        {"file.open", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Open fleet…"), {key("Ctrl+O")}},
        {"file.import", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Import recordings…"), {key("Ctrl+I")}},
        {"file.rules", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "R&ules for reading files…"), {}},
        {"file.reexamine", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Weigh again…"), {}},
        {"file.retention", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Re&tention…"), {}},
        {"file.backup", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Back up…"), {}},
        {"file.events", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Import e&vents…"), {}},
        {"file.preferences", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Preferences…"), {key("Ctrl+,")}},
        {"file.quit", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Quit"), {key("Ctrl+Q")}},
        {"page.round", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Round"), {key("Ctrl+1"), key("Alt+1")}},
        {"page.machine", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Machine"), {key("Ctrl+2"), key("Alt+2")}},
        {"page.register",
         kWindow,
         QT_TRANSLATE_NOOP("Shortcuts", "Re&gister"),
         {key("Ctrl+3"), key("Alt+3")}},
        {"round.start", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Open a round…"), {}},
        {"round.close", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Close the round…"), {}},
        {"round.report", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Round re&port…"), {key("Ctrl+Shift+P")}},
        {"round.sheets",
         kWindow,
         QT_TRANSLATE_NOOP("Shortcuts", "&Findings sheets of the round…"),
         {key("Ctrl+Shift+F")}},
        {"round.compare",
         kWindow,
         QT_TRANSLATE_NOOP("Shortcuts", "Co&mpare two rounds…"),
         {key("Ctrl+Shift+R")}},
        {"round.asks", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "What is &asked for…"), {}},
        {"round.alerts", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "A&lerts…"), {key("Ctrl+Shift+A")}},
        {"round.refused", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Refuse&d files…"), {}},
        {"round.jobs", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Jobs…"), {key("Ctrl+J")}},
        {"machine.jobs",
         kWindow,
         QT_TRANSLATE_NOOP("Shortcuts", "&Jobs of the machine…"),
         {key("Ctrl+Shift+J")}},
        {"machine.history", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&History…"), {key("Ctrl+H")}},
        {"machine.compare",
         kWindow,
         QT_TRANSLATE_NOOP("Shortcuts", "&Before and after…"),
         {key("Ctrl+Shift+B")}},
        {"machine.rebaseline", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Ne&w baseline…"), {}},
        {"machine.event", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Note or event…"), {key("Ctrl+E")}},
        {"machine.sheet", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Findings &sheet…"), {key("Ctrl+P")}},
        {"machine.balance", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Ba&lance…"), {key("Ctrl+Shift+M")}},
        {"machine.trial", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Seeded-fault &trials…"), {key("Ctrl+T")}},
        {"machine.resonance", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Resonance map…"), {}},
        {"machine.bearings", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Find a bearing…"), {key("Ctrl+B")}},
        {"view.larger", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "Lar&ger"), larger()},
        {"view.smaller", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "S&maller"), {key("Ctrl+-")}},
        {"view.normal", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&100 %"), {key("Ctrl+0")}},
        {"help.page", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&Help"), {key("F1")}},
        {"help.shortcuts",
         kWindow,
         QT_TRANSLATE_NOOP("Shortcuts", "&Keys"),
         {key("Shift+F1"), key("Ctrl+?")}},
        {"help.about", kWindow, QT_TRANSLATE_NOOP("Shortcuts", "&About Fettle"), {}},

        {"round.look",
         kRound,
         QT_TRANSLATE_NOOP("Shortcuts", "&Open the machine"),
         {key("Return"), key("Enter")}},
        {"round.accept", kRound, QT_TRANSLATE_NOOP("Shortcuts", "&Accept"), {key("A")}},
        {"round.dispute", kRound, QT_TRANSLATE_NOOP("Shortcuts", "&Dispute…"), {key("D")}},
        {"round.defer", kRound, QT_TRANSLATE_NOOP("Shortcuts", "De&fer…"), {key("F")}},
        {"round.unseen", kRound, QT_TRANSLATE_NOOP("Shortcuts", "&Why unseen…"), {key("U")}},
        {"round.next", kRound, QT_TRANSLATE_NOOP("Shortcuts", "&Next undecided"), {key("N"), key("Space")}},
        {"round.leave", kRound, QT_TRANSLATE_NOOP("Shortcuts", "Accept all to &leave"), {key("L")}},
        {"round.undo", kRound, QT_TRANSLATE_NOOP("Shortcuts", "&Take back"), {QKeySequence::Undo}},
        {"round.before",
         kRound,
         QT_TRANSLATE_NOOP("Shortcuts", "What comes &before the list, and back"),
         {key("B")}},
        {"round.sort", kRound, QT_TRANSLATE_NOOP("Shortcuts", "&Sort by the next column"), {key("S")}},
        {"round.turn", kRound, QT_TRANSLATE_NOOP("Shortcuts", "Sort the other way &round"), {key("Shift+S")}},
        {"round.group", kRound, QT_TRANSLATE_NOOP("Shortcuts", "Group by something else"), {key("V")}},
        {"round.older", kRound, QT_TRANSLATE_NOOP("Shortcuts", "The round before"), {key("Ctrl+PgUp")}},
        {"round.newer", kRound, QT_TRANSLATE_NOOP("Shortcuts", "The round after"), {key("Ctrl+PgDown")}},
        {"round.fold", kRound, QT_TRANSLATE_NOOP("Shortcuts", "Fold or unfold the group"), {key("G")}},
        {"round.find", kRound, QT_TRANSLATE_NOOP("Shortcuts", "Filter by text"), {key("Ctrl+F"), key("/")}},

        {"machine.twins", kMachine, QT_TRANSLATE_NOOP("Shortcuts", "&Twins and train"), {key("T")}},
        {"machine.twinsBack",
         kMachine,
         QT_TRANSLATE_NOOP("Shortcuts", "Twins and train, the one before"),
         {key("Shift+T")}},
        {"machine.twinsBelow",
         kMachine,
         QT_TRANSLATE_NOOP("Shortcuts", "Twins and train below each other"),
         {key("Y")}},
        {"machine.reference", kMachine, QT_TRANSLATE_NOOP("Shortcuts", "Keep as &reference"), {key("K")}},
        {"span.day", kMachine, QT_TRANSLATE_NOOP("Shortcuts", "Show one &day"), {key("1")}},
        {"span.week", kMachine, QT_TRANSLATE_NOOP("Shortcuts", "Show one &week"), {key("2")}},
        {"span.month", kMachine, QT_TRANSLATE_NOOP("Shortcuts", "Show one &month"), {key("3")}},
        {"span.halfYear", kMachine, QT_TRANSLATE_NOOP("Shortcuts", "Show &six months"), {key("4")}},
        {"span.all", kMachine, QT_TRANSLATE_NOOP("Shortcuts", "Show &all of time"), {key("5")}},
        {"history.form",
         kMachine,
         QT_TRANSLATE_NOOP("Shortcuts", "Waterfall in &colours or as traces"),
         {key("W")}},
        {"plot.copy", kPlot, QT_TRANSLATE_NOOP("Shortcuts", "&Copy as picture"), {key("Ctrl+C")}},
        {"plot.table",
         kPlot,
         QT_TRANSLATE_NOOP("Shortcuts", "Copy as &table, as shown"),
         {key("Ctrl+Shift+C")}},
        {"plot.save", kPlot, QT_TRANSLATE_NOOP("Shortcuts", "&Save the plot as…"), {key("Ctrl+Shift+E")}},

        {"register.save", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "&Save"), {key("Ctrl+S")}},
        {"register.add", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "&New machine"), {key("Ctrl+Shift+N")}},
        {"register.copy", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "&Duplicate"), {key("Ctrl+Shift+D")}},
        {"register.remove", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "&Remove…"), {}},
        {"register.import", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "&Import…"), {}},
        {"register.export", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "&Export…"), {}},
        {"register.undo", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "&Undo"), {key("Ctrl+Z")}},
        {"register.redo",
         kRegister,
         QT_TRANSLATE_NOOP("Shortcuts", "&Redo"),
         {key("Ctrl+Shift+Z"), key("Ctrl+Y")}},
        {"register.bearing", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "Find a &bearing…"), {}},
        {"register.alike", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "Set for &several…"), {}},
        {"register.find", kRegister, QT_TRANSLATE_NOOP("Shortcuts", "Find a machine"), {key("Ctrl+F")}},
    };
    return table;
}

QString groupText(const Shortcut& shortcut) {
    return translated(shortcut.group);
}

QString actionText(const Shortcut& shortcut) {
    return translated(shortcut.text);
}

QAction* actionFor(const char* id, QObject* parent) {
    auto* action = new QAction(parent);
    action->setObjectName(QString::fromLatin1(id));
    const auto& table = shortcuts();
    const auto row = std::find_if(table.begin(), table.end(),
                                  [&](const Shortcut& s) { return std::strcmp(s.id, id) == 0; });
    if (row == table.end()) return action;
    action->setText(actionText(*row));
    action->setShortcuts(row->keys);
    if (row->group != kWindow) action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    return action;
}

}  // namespace fettle
