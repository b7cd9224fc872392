#include "ui/window/workplace.h"

#include <QDate>

#include "core/fleet/alert_post.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/who.h"
#include "ui/dialogs/asks_dialog.h"
#include "ui/dialogs/re_examine_dialog.h"
#include "ui/dialogs/round_dialogs.h"
#include "ui/dialogs/sheet_dialog.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/machine_page.h"
#include "ui/pages/recording_bench.h"
#include "ui/pages/register_page.h"
#include "ui/pages/round_page.h"
#include "ui/window/log_actions.h"
#include "ui/work/fleet_pulse.h"

namespace fettle {

namespace {

// A round goes to the day of the newest recording, unless that round is already there.
QString suggestedDay(const RoundShown& round) {
    if (round.list.until.empty()) return QDate::currentDate().toString(Qt::ISODate);
    const QDate last = QDate::fromString(shown(round.list.until), Qt::ISODate);
    return (round.draft() ? last : last.addDays(7)).toString(Qt::ISODate);
}

}  // namespace

Workplace::Workplace(std::unique_ptr<FleetFile> fleet, const Theme& theme, QWidget* parent)
    : QStackedWidget(parent),
      theme_(theme),
      work_(std::make_unique<FleetWork>(std::move(fleet))),
      selection_(std::make_unique<Selection>()),
      long_(std::make_unique<LongWork>(work_->path())) {
    setObjectName(QStringLiteral("workplace"));
    build();
    connectRound();
    connectMachine();
    connectRegister();
    watchAlerts();
    connect(long_.get(), &LongWork::progressed, this,
            [this](qulonglong done, qulonglong total, const QString& what) {
                emit longWorkChanged(tr("%1 %2 of %3").arg(what).arg(done).arg(total));
            });
    connect(long_.get(), &LongWork::finished, this, [this] { emit longWorkChanged({}); });
    auto* pulse = new FleetPulse(work_->path(), this);
    connect(work_.get(), &FleetWork::changedFleet, pulse, &FleetPulse::noteOwn);
    connect(pulse, &FleetPulse::othersWrote, work_.get(), &FleetWork::noteChange);
}

// Pages and dialogs hold references to work and selection: they go first, hidden, so that no event of the
// mouse reaches one that is half gone.
Workplace::~Workplace() {
    hide();
    post_.reset();
    delete import_;
    delete round_;
    delete machine_;
    delete register_;
    long_.reset();
}

void Workplace::build() {
    round_ = new RoundPage(*work_, *selection_, theme_, this);
    machine_ = new MachinePage(*work_, *selection_, theme_, this);
    register_ = new RegisterPage(*work_, *selection_, theme_, this);
    for (QWidget* page :
         {static_cast<QWidget*>(round_), static_cast<QWidget*>(machine_), static_cast<QWidget*>(register_)})
        addWidget(page);
    import_ = new ImportDialog(*work_, theme_, this);
    connect(import_, &ImportDialog::runningChanged, this,
            [this](bool running) { emit longWorkChanged(running ? tr("recordings come in") : QString()); });
    connect(import_, &ImportDialog::taken, this,
            [this](qulonglong stored) { emit said(tr("%1 recordings taken in").arg(stored)); });
}

void Workplace::keepIn(QSettings* settings) {
    machine_->bench().setReferences(ReferenceBook(settings, shown(work_->path())));
}

void Workplace::connectRound() {
    connect(round_, &RoundPage::machineWanted, this, [this] { showPage(QStringLiteral("machine")); });
    connect(round_, &RoundPage::reasonWanted, this, &Workplace::askReason);
    connect(round_, &RoundPage::unseenReasonWanted, this, &Workplace::askUnseen);
    connect(round_, &RoundPage::startWanted, this, &Workplace::startRound);
    connect(round_, &RoundPage::closeWanted, this, &Workplace::closeRound);
    connect(round_, &RoundPage::importWanted, this, [this] { importPaths({}); });
    connect(round_, &RoundPage::registerWanted, this, [this] { showPage(QStringLiteral("register")); });
    connect(round_, &RoundPage::said, this, &Workplace::said);
    connect(round_, &RoundPage::troubled, this, &Workplace::troubled);
    connect(register_, &RegisterPage::said, this, &Workplace::said);
    connect(register_, &RegisterPage::troubled, this, &Workplace::troubled);
    connect(register_, &RegisterPage::machineWanted, this, [this](const QString& tag) {
        selection_->setMachine(tag);
        showPage(QStringLiteral("machine"));
    });
}

void Workplace::connectMachine() {
    log_ = new LogActions(
        *work_, *selection_, theme_, [this] { return siteZone(round_->round().timeZone); }, this);
    connect(log_, &LogActions::said, this, &Workplace::said);
    connect(log_, &LogActions::troubled, this, &Workplace::troubled);
    connect(log_, &LogActions::sheetWanted, this, &Workplace::showSheet);
    log_->serve(machine_->log());
    connect(machine_, &MachinePage::noteWanted, this, &Workplace::noteEvent);
    connect(machine_, &MachinePage::sheetWanted, this, &Workplace::showSheet);
    connect(machine_, &MachinePage::asksWanted, this, [this] { showDialog(QStringLiteral("asks")); });
    connect(machine_, &MachinePage::baselineWanted, log_, &LogActions::rebaseline);
    connect(machine_, &MachinePage::troubled, this, &Workplace::troubled);
    connect(selection_.get(), &Selection::machineChanged, this, &Workplace::placeChanged);
}

QString Workplace::pageName() const {
    if (currentWidget() == machine_) return QStringLiteral("machine");
    if (currentWidget() == register_) return QStringLiteral("register");
    return QStringLiteral("round");
}

void Workplace::showPage(const QString& name) {
    QWidget* page = round_;
    if (name == QStringLiteral("machine")) page = machine_;
    if (name == QStringLiteral("register")) page = register_;
    if (page == currentWidget()) return page->setFocus();
    setCurrentWidget(page);
    page->setFocus();
    emit placeChanged();
}

void Workplace::go(const PagePlace& place) {
    if (!place.machine.isEmpty()) {
        selection_->setMachine(place.machine);
        if (!place.fault.isEmpty() || !place.at.isEmpty()) selection_->setFault(place.fault, place.at);
        if (place.time) selection_->setRecording({}, place.time);
        checkMachine(place.machine);
    }
    const bool unnamed = place.page.isEmpty();
    showPage(!unnamed                  ? place.page
             : place.machine.isEmpty() ? QStringLiteral("round")
                                       : QStringLiteral("machine"));
}

// A tag from outside may be wrong: said, instead of an empty page.
void Workplace::checkMachine(const QString& tag) {
    work_->ask<MachineEntry>(
        this, QStringLiteral("check machine"),
        [tag = kept(tag)](FleetFile& fleet, const CancelToken&) { return fleet.machines().byTag(tag); },
        [this](Result<MachineEntry> entry) {
            if (!entry) emit troubled(sentence(entry.error()));
        });
}

PagePlace Workplace::place() const {
    return {pageName(), selection_->machine(), selection_->at(), selection_->fault(), selection_->time(), {}};
}

bool Workplace::settled() const {
    return work_->waiting() == 0 && !long_->running() && !import_->running();
}

std::vector<RoundMachine> Workplace::machinesOfRound(const QStringList& tags) const {
    std::vector<RoundMachine> machines;
    for (const RoundMachine& machine : round_->round().list.machines)
        if (tags.contains(shown(machine.tag))) machines.push_back(machine);
    return machines;
}

void Workplace::showDialog(const QString& name) {
    if (name == QStringLiteral("import")) importPaths({});
    if (name == QStringLiteral("refused")) showRefusals();
    if (name == QStringLiteral("asks")) (new AsksDialog(*work_, theme_, selection_->units(), this))->open();
    if (name == QStringLiteral("alerts")) showAlerts();
    if (name == QStringLiteral("event")) whenRead([this] { noteEvent(machineHere()); });
    if (name == QStringLiteral("jobs")) whenRead([this] { log_->showJobs(machineHere(), true); });
    if (name == QStringLiteral("history")) whenRead([this] { log_->showHistory(machineHere()); });
    if (name == QStringLiteral("rebaseline")) whenRead([this] { log_->rebaseline(machineHere()); });
    if (name == QStringLiteral("before")) log_->compare(machineHere());
    if (name == QStringLiteral("sheet")) showSheet(machineHere());
    if (name == QStringLiteral("twins")) machine_->showTwins();
    if (name == QStringLiteral("trial")) showTrials(machineHere());
    if (name == QStringLiteral("balance")) showBalance(machineHere());
    if (name == QStringLiteral("resonance")) showResonance(machineHere());
    if (name == QStringLiteral("report")) whenRead([this] { showReport(); });
    if (name == QStringLiteral("compare")) whenRead([this] { compareRounds(); });
    if (name == QStringLiteral("sheets")) whenRead([this] { showSheets(); });
    if (name == QStringLiteral("bearings")) findBearing();
    if (name == QStringLiteral("alike")) setAlike();
    if (name == QStringLiteral("reexamine"))
        (new ReExamineDialog(*work_, theme_, machineHere(), this))->open();
    if (name == QStringLiteral("rules")) showRules();
    if (name == QStringLiteral("retention")) showRetention();
    if (name == QStringLiteral("preview")) lookAtRefused();
    if (name == QStringLiteral("start")) whenRead([this] { startRound(); });
    if (name == QStringLiteral("close")) whenRead([this] { closeRound(); });
}

void Workplace::whenRead(std::function<void()> then) {
    if (!round_->loading()) return then();
    connect(
        round_, &RoundPage::roundShown, this, [then = std::move(then)] { then(); }, Qt::SingleShotConnection);
}

void Workplace::importPaths(const QStringList& paths) {
    if (!work_->writable()) return emit troubled(tr("This fleet file is open for reading only."));
    import_->show();
    import_->raise();
    if (!paths.isEmpty()) import_->take(paths);
}

void Workplace::askReason(const QStringList& tags, DecisionKind kind) {
    const std::vector<RoundMachine> machines = machinesOfRound(tags);
    if (machines.empty()) return;
    const QDate end = QDate::fromString(shown(round_->round().list.until), Qt::ISODate);
    auto* dialog = new DecisionDialog(theme_, machines, kind, end.addDays(1), selection_->units(), this);
    connect(dialog, &DecisionDialog::decided, round_, &RoundPage::decide);
    dialog->open();
}

void Workplace::askUnseen(const QStringList& tags) {
    const std::vector<RoundMachine> machines = machinesOfRound(tags);
    if (machines.empty()) return;
    auto* dialog = new UnseenDialog(theme_, machines, this);
    connect(dialog, &UnseenDialog::answered, round_, &RoundPage::answerUnseen);
    dialog->open();
}

void Workplace::startRound() {
    if (!work_->writable()) return emit troubled(tr("This fleet file is open for reading only."));
    if (round_->round().open())
        return emit troubled(tr("A round is open; it is closed before the next one."));
    auto* dialog = new StartRoundDialog(theme_, suggestedDay(round_->round()), this);
    connect(dialog, &StartRoundDialog::dayChosen, this, &Workplace::openRoundUpTo);
    dialog->open();
}

void Workplace::openRoundUpTo(const QString& day) {
    const bool started = long_->start<KeptRound>(
        [until = kept(day)](FleetFile& fleet, const Progress& progress, const CancelToken& cancel) {
            return openRound(fleet, until, progress, cancel);
        },
        [this](Result<KeptRound> opened) {
            if (!opened) return emit troubled(sentence(opened.error()));
            round_->showRound({});
            work_->noteChange();
        });
    if (started)
        emit longWorkChanged(tr("the round is drawn up"));
    else
        emit troubled(tr("Something else is running; try again when it is done."));
}

void Workplace::closeRound() {
    if (!round_->round().open()) return emit troubled(tr("No round is open."));
    auto* dialog = new CloseRoundDialog(theme_, round_->round().progress, this);
    connect(dialog, &CloseRoundDialog::closeConfirmed, this, &Workplace::writeClose);
    dialog->open();
}

void Workplace::writeClose() {
    work_->write<void>(
        this,
        [id = round_->round().entry->id, by = orLoginName({})](FleetFile& fleet) {
            return fettle::closeRound(fleet, id, by);
        },
        [this](Status status) {
            if (!status) return emit troubled(sentence(status.error()));
            emit said(tr("The round is closed and kept."));
        });
}

void Workplace::noteEvent(const QString& machine) {
    log_->noteEvent(machine);
}

QString Workplace::machineHere() const {
    const QString line = currentWidget() == round_ ? round_->currentTag() : QString();
    return line.isEmpty() ? selection_->machine() : line;
}

// As the line itself would be opened; a fault that is chosen already stays.
void Workplace::showMachineHere() {
    const QString machine = machineHere();
    if (currentWidget() == round_ && !machine.isEmpty() && machine != selection_->machine())
        return round_->look(machine);
    showPage(QStringLiteral("machine"));
}

void Workplace::showSheet(const QString& machine) {
    if (machine.isEmpty()) return emit troubled(tr("Choose a machine first: a sheet belongs to one."));
    auto* dialog = new SheetDialog(*work_, theme_, machine, this, selection_->units());
    connect(dialog, &SheetDialog::saved, this,
            [this](const QString& path) { emit said(tr("The sheet was saved as %1").arg(path)); });
    dialog->open();
}

void Workplace::backUp(const QString& path) {
    const bool started = long_->start<void>(
        [to = kept(path)](FleetFile& fleet, const Progress& progress, const CancelToken& cancel) {
            return fleet.backup(to, progress, cancel);
        },
        [this, path](Status status) {
            if (!status) return emit troubled(sentence(status.error()));
            emit said(tr("Backed up to %1").arg(path));
        });
    if (!started) emit troubled(tr("Something else is running; try again when it is done."));
}

}  // namespace fettle
