// What the register page does besides showing and saving one description: the train to pick from, files out
// and in, bearings found, several machines set alike, and what changed through time.
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QStandardItemModel>
#include <QTabWidget>
#include <QTableView>
#include <QToolButton>

#include "core/base/file_system.h"
#include "core/fleet/description_changes.h"
#include "core/fleet/register_csv.h"
#include "ui/model/register_file.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/register_page.h"
#include "ui/pages/register_table.h"
#include "ui/panels/train_line.h"

namespace fettle {

namespace {

constexpr int kBearingsTab = 1, kTrainTab = 2, kPointsTab = 3;

Json jsonOf(const std::string& text) {
    auto parsed = parseJson(text, "");
    return parsed ? std::move(*parsed) : Json::object();
}

}  // namespace

// Title, undo and redo, the finder; below it the train.
void RegisterPage::buildHead(QBoxLayout& lines) {
    auto* head = new QHBoxLayout;
    head->addWidget(title_, 1);
    for (const char* id : {"register.undo", "register.redo", "register.bearing"}) {
        auto* button = new QToolButton(this);
        button->setObjectName(actions_[id]->objectName() + QStringLiteral(".button"));
        button->setDefaultAction(actions_[id]);
        button->setFocusPolicy(Qt::TabFocus);
        head->addWidget(button);
    }
    auto* look = new QPushButton(tr("Show on the machine page"), this);
    look->setObjectName(QStringLiteral("registerLook"));
    connect(look, &QPushButton::clicked, this, [this] {
        if (!tag_.isEmpty()) emit machineWanted(tag_);
    });
    head->addWidget(look);
    lines.addLayout(head);
    train_ = new TrainLine(theme_, this);
    lines.addWidget(train_);
    connect(train_, &TrainLine::bearingPicked, this,
            [this](const QString& at) { chooseIn(kBearingsTab, "bearings", kept(at)); });
    connect(train_, &TrainLine::pointPicked, this,
            [this](const QString& id) { chooseIn(kPointsTab, "points", kept(id)); });
    connect(train_, &TrainLine::componentPicked, this, [this](const QString& name) {
        const bool plate = name == QStringLiteral("driver") || name == QStringLiteral("driven") ||
                           name == QStringLiteral("coupling");
        if (plate)
            tabs_->setCurrentIndex(0);
        else
            for (const char* table : {"gears", "belts", "boxes"})
                chooseIn(kTrainTab, table, kept(name));
    });
}

// The last sound description: while something is wrong the drawing stays.
void RegisterPage::showTrain() {
    train_->setMachine(document_.machine() ? &*document_.machine() : nullptr);
    train_->setVisible(document_.machine().has_value());
}

// The row of a table that stands for a place or has an id.
void RegisterPage::chooseIn(int tab, const char* table, const std::string& place) {
    tabs_->setCurrentIndex(tab);
    for (RegisterTable* one : tablesOfTab_[tab]) {
        if (one->objectName() != QString::fromLatin1(table)) continue;
        for (int i = 0; const TableRow* row = one->model().row(i); ++i)
            if (place ==
                (row->key.empty() ? kept(document_.text(row->pointer + "/id")) : row->owner + " " + row->key))
                one->chooseRow(i);
    }
}

bool RegisterPage::takesBearings() const {
    return (!tag_.isEmpty() || document_.changed()) && !readOnly_ && work_.writable();
}

void RegisterPage::putBearing(const KnownBearing& bearing, bool withBuild) {
    if (readOnly_ || !work_.writable()) return emit troubled(tr("This description is shown, not edited."));
    RegisterTable* table = tablesOfTab_[kBearingsTab].front();
    document_.inOneStep(tr("bearing"), [&] {
        const TableRow* row = table->model().row(table->currentRow());
        const int at = row ? table->currentRow() : table->model().add(-1);
        row = table->model().row(at);
        if (!row) return;
        const std::string place = row->pointer;
        document_.put(place + "/designation", bearing.designation);
        if (!bearing.type.empty()) document_.put(place + "/type", bearing.type);
        for (const char* key : {"/orders", "/rolling_elements", "/element_mm", "/pitch_mm", "/contact_deg"})
            document_.remove(place + key);
        if (!withBuild || !bearing.build) return;
        document_.put(place + "/rolling_elements", bearing.build->rollingElements);
        document_.put(place + "/element_mm", bearing.build->elementMm);
        document_.put(place + "/pitch_mm", bearing.build->pitchMm);
        document_.put(place + "/contact_deg", bearing.build->contactDeg);
    });
    tabs_->setCurrentIndex(kBearingsTab);
    emit said(tr("%1 is in the form; save keeps it").arg(shown(bearing.designation)));
}

void RegisterPage::setAlike(const QStringList& tags, const std::string& pointer, const Json& value,
                            const std::string& from, const std::string& note) {
    std::vector<std::string> all;
    for (const QString& tag : tags)
        all.push_back(kept(tag));
    work_.write<RegisterTaken>(
        this,
        [all, pointer, value, from, note](FleetFile& fleet) {
            return fettle::setAlike(fleet, all, pointer, value, from, note);
        },
        [this](Result<RegisterTaken> taken) {
            tellTaken(taken);
            if (!document_.changed() && !tag_.isEmpty()) openMachine(tag_);
        });
}

void RegisterPage::tellTaken(const Result<RegisterTaken>& taken) {
    if (!taken) return emit troubled(sentence(taken.error()));
    emit said(tr("%1 added, %2 changed, %3 unchanged, %4 refused")
                  .arg(taken->added)
                  .arg(taken->changed)
                  .arg(taken->unchanged)
                  .arg(taken->refused.size()));
    QStringList refused;
    for (const std::string& one : taken->refused)
        refused << shown(one);
    if (!refused.isEmpty()) emit troubled(refused.mid(0, 20).join(u'\n'));
}

QWidget* RegisterPage::historySide() {
    historyView_ = listTable(history_, {tr("Holds from"), tr("Entered"), tr("Why")}, "descriptionHistory");
    historyView_->setSelectionBehavior(QAbstractItemView::SelectRows);
    historyView_->setSelectionMode(QAbstractItemView::ExtendedSelection);
    historyView_->setToolTip(tr("Return shows a description as it was; two chosen ones are compared below."));
    historyView_->setAccessibleName(tr("Descriptions through time"));
    connect(historyView_, &QTableView::activated, this,
            [this](const QModelIndex& index) { showHistory(index.row()); });
    connect(historyView_, &QTableView::doubleClicked, this,
            [this](const QModelIndex& index) { showHistory(index.row()); });
    connect(historyView_->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &RegisterPage::showChanges);
    QTableView* changes =
        listTable(changes_, {tr("Day"), tr("What"), tr("Before"), tr("After")}, "descriptionChanges");
    changes->setAccessibleName(tr("What changed"));
    auto* split = new QSplitter(Qt::Vertical, tabs_);
    split->addWidget(historyView_);
    split->addWidget(changes);
    split->setStretchFactor(1, 1);
    return split;
}

// Between the two chosen; else all that changed, by day.
void RegisterPage::showChanges() {
    const QModelIndexList chosen = historyView_->selectionModel()->selectedRows();
    std::vector<DescriptionChange> changes;
    if (chosen.size() == 2) {
        const auto [first, last] = std::minmax(chosen[0].row(), chosen[1].row());
        if (last < int(descriptions_.size()))
            changes = changesBetween(jsonOf(descriptions_[std::size_t(first)].json),
                                     jsonOf(descriptions_[std::size_t(last)].json));
    } else {
        changes = changesThroughTime(descriptions_);
    }
    changes_->removeRows(0, changes_->rowCount());
    for (const DescriptionChange& change : changes)
        changes_->appendRow(
            {readOnlyItem(change.day.empty() ? QString() : dateText(change.day)),
             readOnlyItem(shown(change.place).replace(u'/', QStringLiteral(" \u203a "))),
             readOnlyItem(change.before.empty() ? QStringLiteral("\u2013") : shown(change.before)),
             readOnlyItem(change.after.empty() ? QStringLiteral("\u2013") : shown(change.after))});
}

void RegisterPage::importFile(const QString& path) {
    work_.write<RegisterTaken>(
        this,
        [path = path.toStdString()](FleetFile& fleet) -> Result<RegisterTaken> {
            const auto text = RealFileSystem().read(path);
            if (!text) return fail(text.error());
            return takeRegister(fleet, *text, path);
        },
        [this](Result<RegisterTaken> taken) { tellTaken(taken); });
}

void RegisterPage::exportTo(const QString& path) {
    work_.ask<void>(
        this, QStringLiteral("export register"),
        [path = path.toStdString()](FleetFile& fleet, const CancelToken&) -> Status {
            const auto text = extensionOf(path) == "csv" ? registerAsCsv(fleet) : registerAsJson(fleet);
            if (!text) return fail(text.error());
            return RealFileSystem().writeSafely(path, *text);
        },
        [this, path](Status status) {
            if (!status) return emit troubled(sentence(status.error()));
            emit said(tr("Register written to %1").arg(path));
        });
}

void RegisterPage::askImport() {
    auto* dialog = new QFileDialog(this, tr("Register to import"), QString(),
                                   tr("Registers (*.json *.csv *.tsv);;All files (*)"));
    dialog->setObjectName(QStringLiteral("registerImportDialog"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::ExistingFiles);
    connect(dialog, &QFileDialog::filesSelected, this, [this](const QStringList& paths) {
        for (const QString& path : paths)
            importFile(path);
    });
    dialog->open();
}

void RegisterPage::askExport() {
    auto* dialog = new QFileDialog(this, tr("Write the register to"), QString(),
                                   tr("JSON, with the history (*.json);;CSV, one row a machine (*.csv)"));
    dialog->setObjectName(QStringLiteral("registerExportDialog"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(QStringLiteral("json"));
    connect(dialog, &QFileDialog::filterSelected, dialog, [dialog](const QString& filter) {
        dialog->setDefaultSuffix(filter.contains(QStringLiteral("*.csv")) ? QStringLiteral("csv")
                                                                          : QStringLiteral("json"));
    });
    connect(dialog, &QFileDialog::fileSelected, this, &RegisterPage::exportTo);
    dialog->open();
}

}  // namespace fettle
