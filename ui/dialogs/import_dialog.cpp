#include "ui/dialogs/import_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMimeData>
#include <QProgressBar>
#include <QPushButton>
#include <QTableView>
#include <QUrl>
#include <QVBoxLayout>

#include "core/fleet/alerts.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

Result<ImportReport> runImport(FleetFile& fleet, const std::vector<std::string>& paths, bool recursive,
                               const Progress& progress, const CancelToken& cancel,
                               const std::function<void(const Refusal&)>& refused) {
    ImportOptions options;
    options.recursive = recursive;
    options.progress = progress;
    options.cancel = cancel;
    options.refused = refused;
    auto report = import(fleet, RealFileSystem(), paths, options);
    if (report && report->stored > 0)
        if (const auto raised = raiseAlerts(fleet); !raised)
            report->warnings.push_back({fleet.path(), raised.error().rule, 1});
    return report;
}

QFileDialog* picker(QWidget* parent, const char* name, const QString& title, QFileDialog::FileMode mode) {
    auto* dialog = new QFileDialog(parent, title);
    dialog->setObjectName(QString::fromLatin1(name));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(mode);
    return dialog;
}

}  // namespace

QStringList droppedPaths(const QMimeData& data) {
    QStringList paths;
    for (const QUrl& url : data.urls())
        if (url.isLocalFile()) paths << url.toLocalFile();
    return paths;
}

ImportDialog::ImportDialog(FleetWork& work, const Theme& theme, QWidget* parent)
    : QDialog(parent),
      work_(work),
      theme_(theme),
      word_(new QLabel(this)),
      counts_(new QLabel(this)),
      refusedHead_(new QLabel(this)),
      subfolders_(new QCheckBox(tr("with subfolders"), this)),
      look_(new QCheckBox(tr("show first what they are taken for"), this)),
      bar_(new QProgressBar(this)),
      files_(new QPushButton(tr("&Files…"), this)),
      folder_(new QPushButton(tr("F&older…"), this)),
      stop_(new QPushButton(tr("&Stop"), this)),
      again_(new QPushButton(tr("&Try again"), this)),
      why_(new QPushButton(tr("&What were they taken for…"), this)),
      table_(new QTableView(this)),
      long_(std::make_unique<LongWork>(work.path())) {
    setObjectName(QStringLiteral("importDialog"));
    setWindowTitle(tr("Import recordings"));
    setAcceptDrops(true);
    build(theme);
    connect(files_, &QPushButton::clicked, this, &ImportDialog::chooseFiles);
    connect(folder_, &QPushButton::clicked, this, &ImportDialog::chooseFolder);
    connect(stop_, &QPushButton::clicked, this, [this] {
        waiting_.clear();
        long_->cancel();
        word_->setText(tr("Stopping; what is taken stays."));
    });
    connect(again_, &QPushButton::clicked, this, [this] { take(refusedPaths()); });
    connect(why_, &QPushButton::clicked, this, [this] { emit lookWanted(refusedPaths(), false); });
    connect(long_.get(), &LongWork::progressed, this, &ImportDialog::showProgress);
}

void ImportDialog::build(const Theme& theme) {
    const auto name = [](QWidget* widget, const char* text) {
        widget->setObjectName(QString::fromLatin1(text));
    };
    name(word_, "importWord");
    name(counts_, "importCounts");
    name(refusedHead_, "importRefusedHead");
    name(subfolders_, "subfolders");
    name(files_, "importFiles");
    name(folder_, "importFolder");
    name(stop_, "importStop");
    name(table_, "importRefusals");
    name(look_, "importLook");
    name(again_, "importAgain");
    name(why_, "importWhy");
    look_->setChecked(true);
    look_->setToolTip(
        tr("Files chosen here are shown with where each fact came from; what is missing can be "
           "typed once and kept as a rule."));
    again_->setToolTip(tr("The refused files, once they or their sidecars are mended."));
    why_->setToolTip(tr("Shows the refused files; what is missing can be typed and kept as a rule."));
    subfolders_->setChecked(true);
    word_->setText(tr(
        "Choose files or a folder, or drop them here: WAV, FLAC, CSV, UFF, MAT or HDF5, each with its JSON "
        "file beside it, or tables of levels. What is already in the fleet file is passed over."));
    word_->setWordWrap(true);
    bar_->setVisible(false);
    stop_->setEnabled(false);
    refusedHead_->hide();
    table_->setModel(&refusals_);
    table_->setAccessibleName(tr("Refused files"));
    setRuled(*table_, theme);
    for (const int column : {RefusalModel::Since, RefusalModel::Times})
        table_->setColumnHidden(column, true);
    const int wide = fontMetrics().averageCharWidth();
    table_->setColumnWidth(RefusalModel::File, wide * 30);
    table_->setColumnWidth(RefusalModel::Place, wide * 16);
    table_->setColumnWidth(RefusalModel::Kind, wide * 12);
    keepHeadsWhole(*table_);
    table_->horizontalHeader()->setSectionResizeMode(RefusalModel::Rule, QHeaderView::Stretch);
    auto* first = new QHBoxLayout;
    for (QWidget* widget : {static_cast<QWidget*>(files_), static_cast<QWidget*>(folder_),
                            static_cast<QWidget*>(subfolders_), static_cast<QWidget*>(look_)})
        first->addWidget(widget);
    first->addStretch(1);
    first->addWidget(stop_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(again_, QDialogButtonBox::ActionRole);
    buttons->addButton(why_, QDialogButtonBox::ActionRole);
    again_->hide();
    why_->hide();
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::hide);
    auto* all = new QVBoxLayout(this);
    all->addWidget(word_);
    all->addLayout(first);
    all->addWidget(bar_);
    all->addWidget(counts_);
    all->addWidget(refusedHead_);
    all->addWidget(table_, 1);
    all->addWidget(buttons);
    resize(wide * 110, fontMetrics().height() * 28);
}

void ImportDialog::chooseFiles() {
    QFileDialog* dialog =
        picker(this, "importFilesPicker", tr("Recordings to import"), QFileDialog::ExistingFiles);
    dialog->setNameFilters(
        {tr("Recordings (*.wav *.flac *.csv *.uff *.unv *.mat *.h5 *.hdf5)"), tr("All files (*)")});
    connect(dialog, &QFileDialog::filesSelected, this, &ImportDialog::chosen);
    dialog->open();
}

void ImportDialog::chooseFolder() {
    QFileDialog* dialog = picker(this, "importFolderPicker", tr("Folder to import"), QFileDialog::Directory);
    connect(dialog, &QFileDialog::filesSelected, this, &ImportDialog::chosen);
    dialog->open();
}

void ImportDialog::chosen(const QStringList& paths) {
    if (look_->isChecked()) return emit lookWanted(paths, subfolders_->isChecked());
    take(paths);
}

QStringList ImportDialog::refusedPaths() const {
    QStringList paths;
    for (int row = 0; const Refusal* refusal = refusals_.at(row); ++row)
        paths << QString::fromStdString(refusal->path);
    return paths;
}

void ImportDialog::take(const QStringList& paths) {
    waiting_ << paths;
    if (!long_->running()) startNext();
}

void ImportDialog::startNext() {
    if (waiting_.isEmpty()) return;
    std::vector<std::string> paths;
    for (const QString& path : waiting_)
        paths.push_back(path.toStdString());
    waiting_.clear();
    refusals_.set({});
    refusedHead_->hide();
    again_->hide();
    why_->hide();
    counts_->clear();
    bar_->setRange(0, 0);
    bar_->setVisible(true);
    stop_->setEnabled(true);
    word_->setText(tr("The recordings are being found."));
    const auto refused = [this](const Refusal& refusal) {
        QMetaObject::invokeMethod(
            this, [this, refusal] { refusals_.add(refusal); }, Qt::QueuedConnection);
    };
    long_->start<ImportReport>(
        [paths, recursive = subfolders_->isChecked(), refused](FleetFile& fleet, const Progress& progress,
                                                               const CancelToken& cancel) {
            return runImport(fleet, paths, recursive, progress, cancel, refused);
        },
        [this](Result<ImportReport> report) { showReport(report); });
    emit runningChanged(true);
}

void ImportDialog::showProgress(qulonglong done, qulonglong total, const QString& what) {
    bar_->setRange(0, int(std::min<qulonglong>(total, 1000000000)));
    bar_->setValue(int(std::min<qulonglong>(done, 1000000000)));
    word_->setText(what.isEmpty() ? tr("%1 of %2").arg(done).arg(total)
                                  : tr("%1 of %2: %3").arg(done).arg(total).arg(what.section(u'/', -1)));
}

void ImportDialog::showReport(const Result<ImportReport>& report) {
    bar_->setVisible(false);
    stop_->setEnabled(false);
    if (!report) {
        word_->setText(sentence(report.error()));
    } else {
        word_->setText(report->cancelled
                           ? tr("Stopped; what was taken stays. The same import goes on from there.")
                           : tr("Done."));
        counts_->setText(
            tr("%1 found \u00b7 %2 taken \u00b7 %3 already there \u00b7 %4 for weeks already closed "
               "\u00b7 %5 refused or parked")
                .arg(report->found)
                .arg(report->stored)
                .arg(report->already)
                .arg(report->late)
                .arg(report->refusals.size()));
        refusals_.set(report->refusals);
        refusedHead_->setText(tr("Refused or parked; the list is kept under Round, Refused files"));
        for (QWidget* part : {static_cast<QWidget*>(refusedHead_), static_cast<QWidget*>(again_),
                              static_cast<QWidget*>(why_)})
            part->setVisible(!report->refusals.empty());
    }
    emit runningChanged(false);
    emit taken(report ? report->stored : 0);
    work_.noteChange();
    startNext();
}

void ImportDialog::dragEnterEvent(QDragEnterEvent* event) {
    if (!droppedPaths(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void ImportDialog::dropEvent(QDropEvent* event) {
    chosen(droppedPaths(*event->mimeData()));
    event->acceptProposedAction();
}

}  // namespace fettle
