#include "ui/window/main_window.h"

#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QSettings>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/fleet/who.h"
#include "ui/dialogs/guide_dialog.h"
#include "ui/dialogs/help_dialogs.h"
#include "ui/dialogs/new_fleet_dialog.h"
#include "ui/dialogs/page_preview.h"
#include "ui/dialogs/preferences_dialog.h"
#include "ui/model/shortcuts.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/round_page.h"
#include "ui/pages/start_page.h"
#include "ui/window/alert_count.h"
#include "ui/window/dialog_bounds.h"
#include "ui/window/log_actions.h"
#include "ui/window/page_bar.h"
#include "ui/window/workplace.h"

namespace fettle {

namespace {

std::optional<PaperSize> paperOf(const Preferences& preferences) {
    if (!preferences.letter) return std::nullopt;
    return *preferences.letter ? PaperSize::Letter : PaperSize::A4;
}

}  // namespace

MainWindow::MainWindow(Theme& theme, double scale, QSettings* settings, QWidget* parent)
    : QMainWindow(parent), theme_(theme), scale_(scale), settings_(settings) {
    setObjectName(QStringLiteral("mainWindow"));
    setAcceptDrops(true);
    buildActions();
    buildMenus();
    bar_ = new PageBar(theme_, {actions_["page.round"], actions_["page.machine"], actions_["page.register"]},
                       this);
    start_ = new StartPage(theme_, this);
    middle_ = new QStackedWidget(this);
    middle_->addWidget(start_);
    auto* all = new QWidget(this);
    auto* lines = new QVBoxLayout(all);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    lines->addWidget(bar_);
    lines->addWidget(middle_, 1);
    setCentralWidget(all);
    file_ = new QLabel(this);
    outcome_ = new QLabel(this);
    waiting_ = new QLabel(this);
    file_->setObjectName(QStringLiteral("statusFile"));
    outcome_->setObjectName(QStringLiteral("statusOutcome"));
    waiting_->setObjectName(QStringLiteral("statusWaiting"));
    alerts_ = new AlertCount(theme_, actions_["round.alerts"], this);
    statusBar()->addPermanentWidget(alerts_);
    for (QLabel* label : {file_, outcome_, waiting_})
        statusBar()->addPermanentWidget(label);
    connect(start_, &StartPage::openWanted, this, &MainWindow::askOpen);
    connect(start_, &StartPage::newWanted, this, &MainWindow::askNew);
    connect(start_, &StartPage::fileWanted, this, [this](const QString& path) { openFleet(path); });
    start_->setRecent(recentFiles());
    new DialogBounds(*this);
    restore();
    const Preferences kept = preferences();
    signWith(kept.name.toStdString());
    preferPaper(paperOf(kept));
    showTitle();
    enableActions();
}

MainWindow::~MainWindow() {
    delete workplace_;
}

QAction* MainWindow::action(const char* id, std::function<void()> done) {
    QAction* made = actionFor(id, this);
    connect(made, &QAction::triggered, this, [done = std::move(done)] { done(); });
    addAction(made);
    actions_[id] = made;
    return made;
}

void MainWindow::buildActions() {
    action("file.new", [this] { askNew(); });
    action("file.open", [this] { askOpen(); });
    action("file.import", [this] { workplace_->importPaths({}); });
    action("file.backup", [this] { askBackup(); });
    action("file.reexamine", [this] { workplace_->showDialog(QStringLiteral("reexamine")); });
    action("file.quit", [this] { close(); });
    action("file.events", [this] { workplace_->log().askEventTable(); });
    action("file.preferences", [this] { askPreferences(); });
    action("round.jobs", [this] { workplace_->log().showJobs(workplace_->machineHere(), true); });
    action("machine.jobs", [this] { workplace_->log().showJobs(workplace_->machineHere(), false); });
    action("machine.history", [this] { workplace_->log().showHistory(workplace_->machineHere()); });
    action("machine.compare", [this] { workplace_->log().compare(workplace_->machineHere()); });
    action("machine.rebaseline", [this] { workplace_->log().rebaseline(workplace_->machineHere()); });
    action("round.start", [this] { workplace_->startRound(); });
    action("round.close", [this] { workplace_->closeRound(); });
    action("round.report", [this] { workplace_->showReport(); });
    action("round.sheets", [this] { workplace_->showSheets(); });
    action("round.compare", [this] { workplace_->compareRounds(); });
    action("round.asks", [this] { workplace_->showDialog(QStringLiteral("asks")); });
    action("round.alerts", [this] { workplace_->showAlerts(); });
    action("round.refused", [this] { workplace_->showDialog(QStringLiteral("refused")); });
    action("machine.event", [this] { workplace_->noteEvent(workplace_->machineHere()); });
    action("machine.sheet", [this] { workplace_->showSheet(workplace_->machineHere()); });
    action("machine.balance", [this] { workplace_->showBalance(workplace_->machineHere()); });
    action("machine.trial", [this] { workplace_->showTrials(workplace_->machineHere()); });
    action("machine.bearings", [this] { workplace_->showDialog(QStringLiteral("bearings")); });
    action("file.rules", [this] { workplace_->showDialog(QStringLiteral("rules")); });
    action("file.retention", [this] { workplace_->showDialog(QStringLiteral("retention")); });
    action("machine.resonance", [this] { workplace_->showResonance(workplace_->machineHere()); });
    action("view.larger", [this] { setScale(scale_ + 0.1); });
    action("view.smaller", [this] { setScale(scale_ - 0.1); });
    action("view.normal", [this] { setScale(1); });
    action("help.page", [this] { showHelp(); });
    action("help.shortcuts", [this] { (new ShortcutsDialog(theme_, this))->open(); });
    action("help.about", [this] { (new AboutDialog(theme_, this))->open(); });
    auto* pages = new QActionGroup(this);
    for (const char* page : {"round", "machine", "register"}) {
        const QString name = QString::fromLatin1(page);
        QAction* made = action(("page." + std::string(page)).c_str(), [this, name] { goTo(name); });
        made->setCheckable(true);
        pages->addAction(made);
    }
}

void MainWindow::buildMenus() {
    const auto menu = [this](const QString& title, const std::vector<const char*>& ids) {
        QMenu* made = menuBar()->addMenu(title);
        for (const char* id : ids) {
            if (*id)
                made->addAction(actions_.at(id));
            else
                made->addSeparator();
        }
        return made;
    };
    menu(tr("&File"),
         {"file.new", "file.open", "", "file.import", "file.events", "file.rules", "file.reexamine",
          "file.retention", "file.backup", "", "file.preferences", "", "file.quit"});
    menu(tr("&Round"), {"page.round", "round.start", "round.close", "", "round.sheets", "round.report",
                        "round.compare", "", "round.alerts", "round.jobs", "round.asks", "round.refused"});
    menu(tr("&Machine"), {"page.machine", "machine.event", "machine.history", "machine.jobs", "machine.sheet",
                          "", "machine.compare", "machine.rebaseline", "", "machine.balance", "machine.trial",
                          "machine.resonance", "", "machine.bearings", "page.register"});
    buildViewMenu();
    menu(tr("&Help"), {"help.page", "help.shortcuts", "help.about"});
}

void MainWindow::buildViewMenu() {
    QMenu* view = menuBar()->addMenu(tr("&View"));
    themes_ = new QActionGroup(this);
    const std::pair<ThemeChoice, QString> choices[] = {{ThemeChoice::System, tr("&System's colours")},
                                                       {ThemeChoice::Light, tr("&Light")},
                                                       {ThemeChoice::Dark, tr("&Dark")}};
    for (const auto& [choice, text] : choices) {
        QAction* made = view->addAction(text, this, [this, one = choice] { setTheme(one); });
        made->setObjectName(QStringLiteral("theme.%1").arg(int(choice)));
        made->setCheckable(true);
        made->setChecked(choice == theme_.choice());
        themes_->addAction(made);
    }
    view->addSeparator();
    for (const char* id : {"view.larger", "view.smaller", "view.normal"})
        view->addAction(actions_.at(id));
}

void MainWindow::enableActions() {
    const bool open = !workplace_.isNull();
    const bool writable = open && workplace_->work().writable();
    for (const char* id :
         {"page.round",      "page.machine",      "page.register",    "round.alerts",  "round.asks",
          "round.refused",   "file.reexamine",    "file.backup",      "machine.sheet", "machine.balance",
          "machine.trial",   "machine.resonance", "machine.bearings", "file.rules",    "file.retention",
          "round.report",    "round.sheets",      "round.compare",    "round.jobs",    "machine.jobs",
          "machine.history", "machine.compare"})
        actions_[id]->setEnabled(open);
    for (const char* id :
         {"file.import", "round.start", "round.close", "machine.event", "machine.rebaseline", "file.events"})
        actions_[id]->setEnabled(writable);
    bar_->setVisible(open);
}

void MainWindow::openFleet(const QString& path, const PagePlace& place) {
    trouble_.clear();
    start_->say({});
    statusBar()->showMessage(tr("Opening %1").arg(path));
    door_.open(path.toStdString(),
               [this, path, place](FleetDoor::Opened fleet) { take(std::move(fleet), path, place); });
}

void MainWindow::newFleet(const QString& path, const SiteSettings& site) {
    trouble_.clear();
    door_.create(path.toStdString(), site,
                 [this, path](FleetDoor::Opened fleet) { take(std::move(fleet), path, {}); });
}

// The old fleet stays where the new one does not open.
void MainWindow::take(FleetDoor::Opened fleet, const QString& path, const PagePlace& place) {
    statusBar()->clearMessage();
    if (!fleet) {
        trouble_ = sentence(fleet.error());
        start_->say(trouble_);
        if (workplace_) message(trouble_);
        return;
    }
    delete workplace_;
    workplace_ = new Workplace(std::move(*fleet), theme_, this);
    workplace_->selection().setUnits(preferences().units);
    workplace_->keepIn(settings_);
    middle_->addWidget(workplace_);
    middle_->setCurrentWidget(workplace_);
    connectWorkplace();
    enableActions();
    remember(path);
    workplace_->go(whereLast(place, path));
    placeShown();
    showTitle();
    showWaiting();
    showDialog(place.dialog);
}

// Where nothing was asked for: the place in this fleet that was left last.
PagePlace MainWindow::whereLast(const PagePlace& asked, const QString& path) const {
    PagePlace place = asked;
    if (!settings_ || !asked.page.isEmpty() || !asked.machine.isEmpty()) return place;
    if (settings_->value(QStringLiteral("place/fleet")).toString() != QFileInfo(path).absoluteFilePath())
        return place;
    place.page = settings_->value(QStringLiteral("place/page")).toString();
    place.machine = settings_->value(QStringLiteral("place/machine")).toString();
    return place;
}

void MainWindow::showDialog(const QString& name) {
    if (name == QStringLiteral("help")) return showHelp();
    if (name == QStringLiteral("keys")) return actions_["help.shortcuts"]->trigger();
    if (name == QStringLiteral("about")) return actions_["help.about"]->trigger();
    if (name == QStringLiteral("new")) return askNew();
    if (name == QStringLiteral("preferences")) return askPreferences();
    if (workplace_) workplace_->showDialog(name);
}

// At the page one is on.
void MainWindow::showHelp() {
    if (!guide_) guide_ = new GuideDialog(this);
    guide_->openAt(workplace_ ? workplace_->pageName() : QStringLiteral("import"));
}

void MainWindow::connectWorkplace() {
    connect(workplace_, &Workplace::placeChanged, this, &MainWindow::placeShown);
    connect(workplace_, &Workplace::said, statusBar(),
            [this](const QString& text) { statusBar()->showMessage(text, 10000); });
    connect(workplace_, &Workplace::troubled, this, [this](const QString& text) {
        trouble_ = text;
        message(text);
    });
    connect(workplace_, &Workplace::longWorkChanged, this, [this](const QString& word) {
        longWork_ = word;
        showWaiting();
    });
    connect(workplace_, &Workplace::alertsCounted, alerts_, &AlertCount::setOpen);
    connect(&workplace_->work(), &FleetWork::waitingChanged, this, &MainWindow::showWaiting);
    connect(&workplace_->roundPage(), &RoundPage::roundShown, this, &MainWindow::showTitle);
}

void MainWindow::placeShown() {
    if (!workplace_) return;
    actions_["page." + workplace_->pageName().toStdString()]->setChecked(true);
    bar_->setMachine(workplace_->selection().machine());
    bar_->update();
}

void MainWindow::goTo(const QString& page) {
    if (!workplace_) return;
    PagePlace place;
    place.page = page;
    if (page == QStringLiteral("machine"))
        workplace_->showMachineHere();
    else
        workplace_->go(place);
    placeShown();
}

void MainWindow::showTitle() {
    if (!workplace_) return setWindowTitle(tr("Fettle"));
    const std::string& site = workplace_->roundPage().round().site;
    const QString path = shown(workplace_->work().path());
    const QString name = site.empty() ? QFileInfo(path).completeBaseName() : shown(site);
    setWindowTitle(tr("%1 - Fettle").arg(name));
    file_->setText(QFileInfo(path).fileName());
    file_->setToolTip(path);
    outcome_->setText(workplace_->work().word());
    outcome_->setVisible(!outcome_->text().isEmpty());
    setInk(*file_, theme_, Role::MutedInk);
}

void MainWindow::showWaiting() {
    const int waiting = workplace_ ? workplace_->work().waiting() : 0;
    QStringList parts;
    if (!longWork_.isEmpty()) parts << longWork_;
    if (waiting > 0) parts << tr("%1 at work").arg(waiting);
    waiting_->setText(parts.isEmpty() ? tr("ready") : parts.join(QStringLiteral(" \u00b7 ")));
    setInk(*waiting_, theme_, Role::MutedInk);
}

Workplace* MainWindow::workplace() const {
    return workplace_;
}

bool MainWindow::settled() const {
    return !door_.busy() && (!workplace_ || workplace_->settled());
}

// What is already said is not said again on top.
void MainWindow::message(const QString& text) {
    for (const QMessageBox* open : findChildren<QMessageBox*>(QStringLiteral("message")))
        if (open->isVisible() && open->text() == text) return;
    auto* box = new QMessageBox(QMessageBox::NoIcon, tr("Fettle"), text, QMessageBox::Ok, this);
    box->setObjectName(QStringLiteral("message"));
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->open();
}

void MainWindow::askOpen() {
    auto* dialog =
        new QFileDialog(this, tr("Open a fleet"), QString(), tr("Fleet files (*.fettle);;All files (*)"));
    dialog->setObjectName(QStringLiteral("openFleetDialog"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::ExistingFile);
    connect(dialog, &QFileDialog::fileSelected, this, [this](const QString& path) { openFleet(path); });
    dialog->open();
}

void MainWindow::askNew() {
    auto* dialog = new NewFleetDialog(theme_, QDir::homePath(), this);
    connect(dialog, &NewFleetDialog::wanted, this, &MainWindow::newFleet);
    dialog->open();
}

void MainWindow::askBackup() {
    auto* dialog = new QFileDialog(this, tr("Back up to"), QString(), tr("Fleet files (*.fettle)"));
    dialog->setObjectName(QStringLiteral("backupDialog"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setOption(QFileDialog::DontConfirmOverwrite);  // the backup refuses a file that is there
    dialog->setDefaultSuffix(QStringLiteral("fettle"));
    connect(dialog, &QFileDialog::fileSelected, workplace_, &Workplace::backUp);
    dialog->open();
}

Preferences MainWindow::preferences() const {
    Preferences now = Preferences::read(settings_);
    if (!settings_) now = unkept_;
    now.theme = theme_.choice();
    now.scale = scale_;
    return now;
}

void MainWindow::askPreferences() {
    auto* dialog = new PreferencesDialog(theme_, preferences(), this);
    connect(dialog, &PreferencesDialog::chosen, this, &MainWindow::use);
    dialog->open();
}

// The language holds from the next start, all else at once.
void MainWindow::use(const Preferences& preferences) {
    unkept_ = preferences;
    preferences.keep(settings_);
    signWith(preferences.name.toStdString());
    preferPaper(paperOf(preferences));
    if (preferences.theme != theme_.choice()) setTheme(preferences.theme);
    for (QAction* theme : themes_->actions())
        theme->setChecked(theme->objectName() == QStringLiteral("theme.%1").arg(int(theme_.choice())));
    if (preferences.scale != scale_) setScale(preferences.scale);
    if (workplace_) workplace_->selection().setUnits(preferences.units);
}

void MainWindow::setScale(double scale) {
    scale_ = std::clamp(std::round(scale * 10) / 10, 1.0, 2.0);
    theme_.applyTo(*qApp, scale_);
    if (settings_) settings_->setValue(QStringLiteral("view/scale"), scale_);
    statusBar()->showMessage(tr("%1 %").arg(int(std::lround(scale_ * 100))), 2000);
}

void MainWindow::setTheme(ThemeChoice choice) {
    theme_.choose(choice);
    theme_.applyTo(*qApp, scale_);
    if (settings_) settings_->setValue(QStringLiteral("view/theme"), int(choice));
}

QStringList MainWindow::recentFiles() const {
    QStringList there;
    if (!settings_) return there;
    for (const QString& path : settings_->value(QStringLiteral("recent")).toStringList())
        if (QFileInfo::exists(path)) there << path;
    return there;
}

void MainWindow::remember(const QString& path) {
    if (!settings_) return;
    QStringList recent = recentFiles();
    const QString whole = QFileInfo(path).absoluteFilePath();
    recent.removeAll(whole);
    recent.prepend(whole);
    settings_->setValue(QStringLiteral("recent"), recent.mid(0, 8));
    start_->setRecent(recent.mid(0, 8));
}

void MainWindow::rememberPlace() {
    if (!settings_) return;
    settings_->setValue(QStringLiteral("window/geometry"), saveGeometry());
    if (!workplace_) return;
    const PagePlace place = workplace_->place();
    settings_->setValue(QStringLiteral("place/fleet"),
                        QFileInfo(shown(workplace_->work().path())).absoluteFilePath());
    settings_->setValue(QStringLiteral("place/page"), place.page);
    settings_->setValue(QStringLiteral("place/machine"), place.machine);
}

void MainWindow::restore() {
    resize(1280, 800);
    if (settings_) restoreGeometry(settings_->value(QStringLiteral("window/geometry")).toByteArray());
}

void MainWindow::closeEvent(QCloseEvent* event) {
    rememberPlace();
    QMainWindow::closeEvent(event);
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!droppedPaths(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

// A fleet file is opened, all else is imported.
void MainWindow::dropEvent(QDropEvent* event) {
    const QStringList paths = droppedPaths(*event->mimeData());
    event->acceptProposedAction();
    if (paths.size() == 1 && paths.front().endsWith(QStringLiteral(".fettle")))
        return openFleet(paths.front());
    if (workplace_) return workplace_->importPaths(paths);
    message(tr("Open or make a fleet first; recordings go into its file."));
}

}  // namespace fettle
