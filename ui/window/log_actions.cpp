#include "ui/window/log_actions.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QMessageBox>
#include <QVBoxLayout>

#include "core/base/file_system.h"
#include "core/fleet/event_table.h"
#include "core/fleet/reports.h"
#include "core/store/day.h"
#include "ui/dialogs/before_after_dialog.h"
#include "ui/dialogs/event_dialog.h"
#include "ui/dialogs/jobs_dialog.h"
#include "ui/dialogs/photo_viewer.h"
#include "ui/dialogs/rebaseline_dialog.h"
#include "ui/model/words.h"
#include "ui/panels/history_list.h"

namespace fettle {

namespace {

QStringList placesOf(const Machine& machine) {
    QStringList places{QStringLiteral("driver"), QStringLiteral("driven")};
    for (const BearingPlace& bearing : machine.bearings)
        places << shown(bearing.at);
    for (const Gear& gear : machine.gears)
        places << shown(gear.id);
    for (const Belt& belt : machine.belts)
        places << shown(belt.id);
    places.removeDuplicates();
    return places;
}

}  // namespace

LogActions::LogActions(FleetWork& work, Selection& selection, const Theme& theme,
                       std::function<QTimeZone()> zone, QWidget* window)
    : QObject(window),
      work_(work),
      selection_(selection),
      theme_(theme),
      zone_(std::move(zone)),
      window_(window) {}

bool LogActions::mayWrite(const QString& machine, const QString& lack) {
    if (machine.isEmpty()) {
        emit troubled(lack);
        return false;
    }
    if (work_.writable()) return true;
    emit troubled(tr("This fleet file is open for reading only."));
    return false;
}

EventDialog* LogActions::eventDialog(const QString& machine) {
    auto* dialog =
        new EventDialog(work_, theme_, machine, selection_.time().value_or(nowUtc()), zone_(), window_);
    connect(dialog, &EventDialog::given, this, &LogActions::writeEvent);
    fillPlaces(machine, dialog);
    return dialog;
}

void LogActions::noteEvent(const QString& machine) {
    if (mayWrite(machine, tr("Choose a machine first: an event belongs to one.")))
        eventDialog(machine)->open();
}

void LogActions::correct(const Event& of) {
    if (!mayWrite(shown(of.machine), {})) return;
    auto* dialog = new EventDialog(work_, theme_, shown(of.machine), nowUtc(), zone_(), window_);
    connect(dialog, &EventDialog::given, this, &LogActions::writeEvent);
    dialog->setCorrected(of);
    dialog->open();
}

void LogActions::fillPlaces(const QString& machine, EventDialog* dialog) {
    work_.ask<std::shared_ptr<const Machine>>(
        dialog, QStringLiteral("places"),
        [tag = kept(machine)](FleetFile& fleet, const CancelToken&) {
            return fleet.machines().describedAt(tag);
        },
        [dialog](Result<std::shared_ptr<const Machine>> described) {
            if (described) dialog->setPlaces(placesOf(**described));
        });
}

void LogActions::writeEvent(const Event& event, const std::vector<NewPhoto>& photos) {
    work_.write<std::int64_t>(
        this,
        [event, photos](FleetFile& fleet) { return keepEventWithPhotos(fleet, event, photos, nowUtc()); },
        [this, event, photos](Result<std::int64_t> id) {
            if (id) return emit said(tr("Kept."));
            EventDialog* again = eventDialog(shown(event.machine));
            again->setEvent(event, photos);
            again->open();
            emit troubled(sentence(id.error()));
        });
}

void LogActions::rebaseline(const QString& machine) {
    if (!mayWrite(machine, tr("Choose a machine first: a baseline belongs to one."))) return;
    auto* dialog =
        new RebaselineDialog(theme_, machine, selection_.time().value_or(nowUtc()), zone_(), window_);
    connect(dialog, &RebaselineDialog::given, this, &LogActions::writeBaseline);
    dialog->open();
}

void LogActions::writeBaseline(const Event& event) {
    work_.write<std::int64_t>(
        this, [event](FleetFile& fleet) { return keepEvent(fleet, event, nowUtc()); },
        [this, event](Result<std::int64_t> id) {
            if (!id) return emit troubled(sentence(id.error()));
            emit said(tr("A new baseline of %1 begins.").arg(shown(event.machine)));
            compare(shown(event.machine), *id);
        });
}

void LogActions::showHistory(const QString& machine) {
    if (machine.isEmpty()) return emit troubled(tr("Choose a machine first: a history belongs to one."));
    selection_.setMachine(machine);
    auto* dialog = new QDialog(window_);
    dialog->setObjectName(QStringLiteral("historyDialog"));
    dialog->setWindowTitle(tr("History: %1").arg(machine));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    auto* list = new HistoryList(work_, selection_, theme_, dialog);
    serve(*list);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, dialog);
    connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
    auto* all = new QVBoxLayout(dialog);
    all->addWidget(list, 1);
    all->addWidget(buttons);
    const int em = dialog->fontMetrics().height();
    dialog->resize(60 * em, 36 * em);
    dialog->open();
}

void LogActions::serve(HistoryList& list) {
    connect(&list, &HistoryList::noteWanted, this, &LogActions::noteEvent);
    connect(&list, &HistoryList::correctionWanted, this, &LogActions::correct);
    connect(&list, &HistoryList::compareWanted, this,
            [this](const Event& around) { compare(shown(around.machine), around.id); });
    connect(&list, &HistoryList::photoWanted, this, &LogActions::showPhoto);
    connect(&list, &HistoryList::importWanted, this, &LogActions::askEventTable);
}

void LogActions::showJobs(const QString& machine, bool fleet) {
    auto* dialog = new JobsDialog(work_, theme_, machine, fleet, window_);
    connect(dialog, &JobsDialog::said, this, &LogActions::said);
    connect(dialog, &JobsDialog::sheetWanted, this, &LogActions::sheetWanted);
    connect(dialog, &JobsDialog::compareWanted, this, [this](const QString& tag) { compare(tag); });
    dialog->open();
}

void LogActions::compare(const QString& machine, std::optional<std::int64_t> around) {
    if (machine.isEmpty()) return emit troubled(tr("Choose a machine first: before and after are of one."));
    (new BeforeAfterDialog(work_, theme_, machine, selection_.units(), around, window_))->open();
}

void LogActions::showPhoto(const QString& machine, qlonglong photo) {
    (new PhotoViewer(work_, machine, photo, window_))->open();
}

void LogActions::askEventTable() {
    if (!work_.writable()) return emit troubled(tr("This fleet file is open for reading only."));
    auto* ask = new QFileDialog(window_, tr("Events from a table: machine, time, kind, at, text, by"),
                                QString(), tr("Tables (*.csv *.json);;All files (*)"));
    ask->setObjectName(QStringLiteral("eventTableDialog"));
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setFileMode(QFileDialog::ExistingFile);
    connect(ask, &QFileDialog::fileSelected, this, &LogActions::takeEventTable);
    ask->open();
}

void LogActions::takeEventTable(const QString& path) {
    work_.write<EventsTaken>(
        this,
        [file = path.toStdString()](FleetFile& fleet) -> Result<EventsTaken> {
            const auto text = RealFileSystem().read(file);
            if (!text) return fail(text.error());
            return takeEvents(fleet, *text, file, {}, nowUtc());
        },
        [this](Result<EventsTaken> done) {
            if (!done) return emit troubled(sentence(done.error()));
            const QString taken = tr("%1 events are in the history.").arg(done->taken);
            if (done->refusals.empty() && done->warnings.empty()) return emit said(taken);
            QStringList lines;
            for (const Error& refusal : done->refusals)
                lines << sentence(refusal);
            for (const std::string& warning : done->warnings)
                lines << shown(warning);
            auto* box = new QMessageBox(QMessageBox::NoIcon, tr("Events from a table"),
                                        tr("%1 Refused: %2.").arg(taken).arg(done->refusals.size()),
                                        QMessageBox::Ok, window_);
            box->setObjectName(QStringLiteral("eventTableResult"));
            box->setAttribute(Qt::WA_DeleteOnClose);
            box->setInformativeText(lines.mid(0, 6).join(u'\n'));
            box->setDetailedText(lines.join(u'\n'));
            box->open();
        });
}

}  // namespace fettle
