#include "ui/pages/register_page.h"

#include <QAction>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QStackedWidget>
#include <QStandardItemModel>
#include <QTabWidget>

#include "core/fleet/machine_desk.h"
#include "ui/model/engine_words.h"
#include "ui/model/shortcuts.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/register_form.h"
#include "ui/pages/register_save_bar.h"
#include "ui/pages/register_table.h"
#include "ui/pages/register_tree.h"

namespace fettle {

namespace {

constexpr auto kBlindSpan = std::chrono::hours(24 * 7);

QString enteredText(const std::string& utc, const QTimeZone& zone) {
    const auto time = parseUtc(utc);
    return time ? momentText(*time, zone) : shown(utc);
}

// "/points/0/channels/1" -> the tab it is edited in
int tabOf(const std::string& place) {
    if (place.find("/bearings") != std::string::npos) return 1;
    for (const char* start : {"/shafts", "/gears", "/belts", "/intermediate"})
        if (place.rfind(start, 0) == 0) return 2;
    return place.rfind("/points", 0) == 0 ? 3 : 0;
}

}  // namespace

RegisterPage::RegisterPage(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent)
    : QWidget(parent), work_(work), selection_(selection), theme_(theme) {
    setObjectName(QStringLiteral("registerPage"));
    document_.startNew("", "", 50);
    build();
    connect(&work_, &FleetWork::changedFleet, this, &RegisterPage::readRegister);
    connect(&document_, &MachineDocument::edited, this, &RegisterPage::refresh);
    connect(&selection_, &Selection::machineChanged, this, [this] {
        if (!document_.changed() && selection_.machine() != tag_) openMachine(selection_.machine());
    });
    document_.setSaved();
    readRegister();
    if (!selection_.machine().isEmpty()) openMachine(selection_.machine());
}

void RegisterPage::readRegister() {
    work_.ask<Register>(
        this, QStringLiteral("register"),
        [](FleetFile& fleet, const CancelToken&) -> Result<Register> {
            auto machines = fleet.machines().all();
            if (!machines) return fail(machines.error());
            auto site = fleet.site();
            if (!site) return fail(site.error());
            return Register{std::move(*machines), std::move(*site)};
        },
        [this](Result<Register> read) {
            if (!read) return emit troubled(sentence(read.error()));
            register_ = std::move(*read);
            tree_->show(register_.machines, shown(register_.site.site));
            tree_->choose(tag_);
            refresh();
            emit machinesRead();
        });
}

// On a worker: what the newest week could not see; seconds where it was not weighed yet.
Result<RegisterPage::Blind> RegisterPage::readBlind(FleetFile& fleet, const std::string& tag) {
    Blind blind;
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    const auto newest = fleet.recordings().newest(entry->id);
    if (!newest) return fail(newest.error());
    if (!*newest) {
        blind.word =
            kept(tr("Nothing was recorded yet: what cannot be seen is known after the first recording."));
        return blind;
    }
    const auto week = examinationOfSpan(fleet, tag, **newest - kBlindSpan, **newest);
    if (!week)
        blind.word = week.error().sentence();
    else if (!*week)
        blind.word = kept(tr("No recording of the last week was of a running machine."));
    else
        blind.spots = (*week)->examination.blind;
    return blind;
}

void RegisterPage::openMachine(const QString& tag) {
    if (tag.isEmpty()) return;
    work_.ask<std::vector<DescriptionEntry>>(
        this, QStringLiteral("description"),
        [tag = kept(tag)](FleetFile& fleet, const CancelToken&) { return fleet.machines().history(tag); },
        [this, tag](Result<std::vector<DescriptionEntry>> descriptions) {
            take(tag, std::move(descriptions));
        });
}

void RegisterPage::take(const QString& tag, Result<std::vector<DescriptionEntry>> descriptions) {
    if (!descriptions) return emit troubled(sentence(descriptions.error()));
    descriptions_ = std::move(*descriptions);
    tag_ = tag;
    tree_->choose(tag);
    showDescriptions();
    showBlind(Blind());
    blindWord_->clear();
    blindWaits_ = true;
    if (isVisible()) askBlind();
    showHistory(int(descriptions_.size()) - 1);
    bar_->clear();
    selection_.setMachine(tag);
    emit machineShown();
}

// The week is read only for one who looks at it.
void RegisterPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (blindWaits_) askBlind();
}

void RegisterPage::askBlind() {
    blindWaits_ = false;
    work_.ask<Blind>(
        this, QStringLiteral("blind"),
        [tag = kept(tag_)](FleetFile& fleet, const CancelToken&) { return readBlind(fleet, tag); },
        [this, tag = tag_](Result<Blind> blind) {
            if (tag != tag_) return;
            if (!blind) return emit troubled(sentence(blind.error()));
            showBlind(*blind);
        });
}

void RegisterPage::showHistory(int row) {
    if (row < 0 || row >= int(descriptions_.size())) return;
    const DescriptionEntry& entry = descriptions_[std::size_t(row)];
    if (auto loaded = document_.load(entry.json, kept(tag_)); !loaded)
        return emit troubled(sentence(loaded.error()));
    const bool newest = row + 1 == int(descriptions_.size());
    older_->setText(newest ? QString()
                           : tr("This is how the machine was described from %1; it is shown, not edited.")
                                 .arg(entry.from.empty() ? tr("the beginning") : dateText(entry.from)));
    older_->setVisible(!newest);
    setReadOnly(!newest || !work_.writable());
    refresh();
}

void RegisterPage::showBlind(const Blind& blind) {
    blind_->removeRows(0, blind_->rowCount());
    for (const BlindSpot& spot : blind.spots)
        blind_->appendRow({readOnlyItem(faultNameText(spot.fault)), readOnlyItem(shown(spot.at)),
                           readOnlyItem(engineText(spot.why)), readOnlyItem(engineText(spot.cure))});
    blindWord_->setText(blind.spots.empty() && blind.word.empty()
                            ? tr("Nothing that is looked for is blind here.")
                            : shown(blind.word));
    blindWord_->setVisible(blind.spots.empty());
}

void RegisterPage::showDescriptions() {
    history_->removeRows(0, history_->rowCount());
    const QTimeZone zone = siteZone(register_.site.timeZone);
    for (const DescriptionEntry& entry : descriptions_)
        history_->appendRow({readOnlyItem(entry.from.empty() ? tr("the beginning") : dateText(entry.from)),
                             readOnlyItem(enteredText(entry.recordedAt, zone)),
                             readOnlyItem(shown(entry.note))});
    showChanges();
}

void RegisterPage::setReadOnly(bool readOnly) {
    readOnly_ = readOnly;
    for (RegisterForm* form : {machine_, driver_})
        form->setReadOnly(readOnly);
    for (RegisterTable* table : tables_)
        table->setReadOnly(readOnly);
    machine_->setFixed("/tag", !tag_.isEmpty());
}

void RegisterPage::refresh() {
    const bool some = !tag_.isEmpty() || document_.changed();
    right_->setCurrentIndex(some ? 1 : 0);
    counts_->setText(
        tree_->machines() == 0
            ? tr("No machine is in the register yet.")
            : tr("%1 in service").arg(counted(tree_->machines(), tr("machine"), tr("machines"))));
    const QString service = document_.text("/service");
    const QString name = tag_.isEmpty() ? tr("New machine") : tag_;
    title_->setText(service.isEmpty() ? name : QStringLiteral("%1, %2").arg(name, service));
    title_->setToolTip(title_->text());
    bar_->show(!tag_.isEmpty(), work_.writable() && !readOnly_);
    const QStringList names{tr("Nameplate"), tr("Bearings"),    tr("Train"),
                            tr("Points"),    tr("Blind spots"), tr("History")};
    for (int i = 0; i < tabs_->count(); ++i) {
        bool trouble = i == 0 && (machine_->hasTrouble() || driver_->hasTrouble());
        for (const RegisterTable* table : tablesOfTab_[i])
            trouble = trouble || table->hasTrouble();
        tabs_->setTabText(i, trouble ? tr("%1 (to mend)").arg(names[i]) : names[i]);
    }
    showTrain();
    const bool writable = work_.writable();
    actions_["register.undo"]->setEnabled(!readOnly_ && document_.steps().canUndo());
    actions_["register.redo"]->setEnabled(!readOnly_ && document_.steps().canRedo());
    actions_["register.alike"]->setEnabled(writable && !register_.machines.empty());
    for (const char* id : {"register.add", "register.import"})
        actions_[id]->setEnabled(writable);
    for (const char* id : {"register.copy", "register.remove"})
        actions_[id]->setEnabled(writable && !tag_.isEmpty());
    actions_["register.export"]->setEnabled(!register_.machines.empty());
    actions_["register.save"]->setEnabled(writable && document_.changed() && document_.sound());
}

void RegisterPage::startMachine() {
    leaveFor([this] {
        const double mains = register_.machines.empty()    ? 50
                             : document_.find("/mains_hz") ? document_.text("/mains_hz").toDouble()
                                                           : 50;
        const QString area = tree_->currentArea();
        makeRoom();
        document_.startNew(register_.site.site, kept(area), mains);
        machine_->focusOn("/tag");
    });
}

// For a machine that is not in the register yet.
void RegisterPage::makeRoom() {
    tag_.clear();
    descriptions_.clear();
    blindWaits_ = false;
    tree_->choose({});
    setReadOnly(false);
    older_->hide();
    showDescriptions();
    showBlind({{}, kept(tr("Known after the first recording."))});
    bar_->clear();
    tabs_->setCurrentIndex(0);
}

void RegisterPage::copyMachine() {
    leaveFor([this] {
        makeRoom();
        document_.startCopy();
        machine_->focusOn("/tag");
    });
}

void RegisterPage::save() {
    if (!document_.sound() || readOnly_) return;
    const QString tag = document_.text("/tag");
    for (const MachineEntry& machine : register_.machines)
        if (tag_.isEmpty() && shown(machine.tag) == tag)
            return emit troubled(
                tr("%1 is in the register already; a new machine needs another tag.").arg(tag));
    work_.write<PutMachine>(
        this,
        [json = document_.json(), tag = kept(tag), from = bar_->from(),
         note = bar_->note()](FleetFile& fleet) { return fleet.machines().put(json, tag, from, note); },
        [this, tag](Result<PutMachine> put) {
            if (!put) return emit troubled(sentence(put.error()));
            document_.setSaved();
            openMachine(tag);
            emit saved(tag);
            emit said(*put == PutMachine::Added     ? tr("%1 taken into the register").arg(tag)
                      : *put == PutMachine::Changed ? tr("%1 saved").arg(tag)
                                                    : tr("%1 is unchanged").arg(tag));
        });
}

void RegisterPage::removeMachine(const QString& why) {
    const QString tag = tag_;
    if (tag.isEmpty()) return;
    work_.write<void>(
        this,
        [tag = kept(tag), on = kept(QDate::currentDate().toString(Qt::ISODate)),
         why = kept(why)](FleetFile& fleet) { return fleet.machines().remove(tag, on, why); },
        [this, tag](Status status) {
            if (!status) return emit troubled(sentence(status.error()));
            emit said(tr("%1 is out of service; its past is kept").arg(tag));
        });
}

void RegisterPage::leaveFor(std::function<void()> next) {
    if (!document_.changed()) return next();
    auto* box =
        new QMessageBox(QMessageBox::NoIcon, tr("Register"), tr("The description was changed and not saved."),
                        QMessageBox::NoButton, this);
    box->setObjectName(QStringLiteral("unsavedBox"));
    box->setAttribute(Qt::WA_DeleteOnClose);
    QPushButton* drop = box->addButton(tr("Drop the changes"), QMessageBox::DestructiveRole);
    drop->setObjectName(QStringLiteral("dropChanges"));
    box->addButton(tr("Stay here"), QMessageBox::RejectRole)->setObjectName(QStringLiteral("stayHere"));
    connect(drop, &QPushButton::clicked, this, next);
    connect(box, &QDialog::rejected, this, [this] { tree_->choose(tag_); });
    box->open();
}

void RegisterPage::askRemove() {
    auto* box = new QMessageBox(QMessageBox::NoIcon, tr("Register"),
                                tr("%1 is taken out of service from today. Its recordings, rounds and "
                                   "descriptions stay in the fleet file.")
                                    .arg(tag_),
                                QMessageBox::NoButton, this);
    box->setObjectName(QStringLiteral("removeBox"));
    box->setAttribute(Qt::WA_DeleteOnClose);
    QPushButton* remove = box->addButton(tr("Take out of service"), QMessageBox::DestructiveRole);
    remove->setObjectName(QStringLiteral("removeYes"));
    box->addButton(QMessageBox::Cancel);
    connect(remove, &QPushButton::clicked, this, [this] { removeMachine(tr("taken out in the register")); });
    box->open();
}

void RegisterPage::goToTrouble(const QString& place) {
    tabs_->setCurrentIndex(tabOf(kept(place)));
    if (!machine_->focusOn(kept(place))) driver_->focusOn(kept(place));
}

}  // namespace fettle
