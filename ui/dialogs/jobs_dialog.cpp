#include "ui/dialogs/jobs_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QTextBrowser>
#include <QVBoxLayout>
#include <algorithm>

#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "ui/dialogs/before_after_dialog.h"
#include "ui/dialogs/job_dialogs.h"
#include "ui/dialogs/job_text.h"
#include "ui/dialogs/return_dialog.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

bool isOpen(const JobRow& row) {
    const std::string& state = row.job.state;
    return !row.replacedBy && (state == "drafted" || state == "issued" || state == "scheduled");
}

bool isWanted(const JobRow& row, const QString& which) {
    if (which == QStringLiteral("open")) return isOpen(row) || (!row.replacedBy && row.job.state == "done");
    if (which == QStringLiteral("overdue")) return row.overdue;
    return which.isEmpty() || (!row.replacedBy && shown(row.job.state) == which);
}

}  // namespace

JobsDialog::JobsDialog(FleetWork& work, const Theme& theme, const QString& machine, bool fleet,
                       QWidget* parent)
    : QDialog(parent), work_(work), theme_(theme), machine_(machine) {
    setObjectName(QStringLiteral("jobsDialog"));
    setWindowTitle(tr("Jobs"));
    setAttribute(Qt::WA_DeleteOnClose);
    build();
    onlyHere_->setChecked(!fleet && !machine.isEmpty());
    connect(&work_, &FleetWork::changedFleet, this, &JobsDialog::read);
    connect(which_, &QComboBox::currentIndexChanged, this, &JobsDialog::fill);
    connect(onlyHere_, &QCheckBox::toggled, this, &JobsDialog::fill);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &JobsDialog::showDetail);
    read();
}

void JobsDialog::build() {
    trouble_ = new QLabel(this);
    trouble_->setObjectName(QStringLiteral("trouble"));
    trouble_->setWordWrap(true);
    setInk(*trouble_, theme_, Role::Trouble);
    trouble_->hide();
    table_ = new QTableView(this);
    table_->setObjectName(QStringLiteral("jobs"));
    table_->setAccessibleName(tr("Jobs, overdue first"));
    table_->setModel(&jobs_);
    layOutTable();
    detail_ = new QTextBrowser(this);
    detail_->setObjectName(QStringLiteral("jobDetail"));
    detail_->setAccessibleName(tr("The chosen job"));
    detail_->setFrameStyle(QFrame::NoFrame);
    detail_->setOpenLinks(false);
    auto* parts = new QSplitter(Qt::Vertical, this);
    parts->setObjectName(QStringLiteral("jobParts"));
    parts->setChildrenCollapsible(false);
    parts->addWidget(table_);
    parts->addWidget(detail_);
    auto* all = new QVBoxLayout(this);
    all->addWidget(buildHead());
    all->addWidget(trouble_);
    all->addWidget(parts, 1);
    all->addWidget(buildFoot());
    const int em = fontMetrics().height();
    resize(66 * em, 40 * em);
}

QWidget* JobsDialog::buildHead() {
    auto* head = new QWidget(this);
    which_ = new QComboBox(head);
    which_->setObjectName(QStringLiteral("which"));
    which_->setAccessibleName(tr("Which jobs are listed"));
    which_->setToolTip(which_->accessibleName());
    which_->addItem(tr("open or to be verified"), QStringLiteral("open"));
    which_->addItem(tr("overdue"), QStringLiteral("overdue"));
    for (const std::string& state : jobStates())
        which_->addItem(jobStateWord(state), shown(state));
    which_->addItem(tr("all"), QString());
    onlyHere_ =
        new QCheckBox(machine_.isEmpty() ? tr("one machine only") : tr("%1 only").arg(machine_), head);
    onlyHere_->setObjectName(QStringLiteral("onlyHere"));
    onlyHere_->setEnabled(!machine_.isEmpty());
    count_ = new QLabel(head);
    count_->setObjectName(QStringLiteral("jobCount"));
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(which_);
    row->addWidget(onlyHere_);
    row->addStretch(1);
    row->addWidget(count_);
    return head;
}

QWidget* JobsDialog::buildFoot() {
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    const auto add = [&](const QString& text, const QString& help, const char* name) {
        QPushButton* made = buttons->addButton(text, QDialogButtonBox::ActionRole);
        made->setObjectName(QString::fromLatin1(name));
        made->setToolTip(help);
        made->setAutoDefault(false);
        return made;
    };
    new_ = add(tr("&New job…"), tr("A job for findings of this week"), "newJob");
    move_ = add(tr("&Move on…"), tr("What happened to the chosen job next"), "moveJob");
    revise_ = add(tr("&Revise…"), tr("A new job that replaces the chosen one"), "reviseJob");
    report_ = add(tr("&Planner's report…"), tr("What was found when it was opened"), "reportJob");
    compare_ = add(tr("&Before and after…"), tr("The machine before and after the work"), "compareJob");
    sheet_ = add(tr("Findings &sheet…"), tr("The sheet of the chosen job's machine"), "sheetOfJob");
    connect(new_, &QPushButton::clicked, this, &JobsDialog::askDraft);
    connect(move_, &QPushButton::clicked, this, [this] { askMove(false); });
    connect(revise_, &QPushButton::clicked, this, [this] { askMove(true); });
    connect(report_, &QPushButton::clicked, this, &JobsDialog::askReturn);
    connect(compare_, &QPushButton::clicked, this, [this] { emit compareWanted(machineHere()); });
    connect(sheet_, &QPushButton::clicked, this, [this] { emit sheetWanted(machineHere()); });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    return buttons;
}

void JobsDialog::layOutTable() {
    setRuled(*table_, theme_);
    const int wide = fontMetrics().averageCharWidth();
    const std::pair<int, int> widths[] = {{JobModel::Number, 9},    {JobModel::Machine, 14},
                                          {JobModel::State, 16},    {JobModel::Due, 30},
                                          {JobModel::Priority, 14}, {JobModel::WorkOrder, 14}};
    for (const auto& [column, letters] : widths)
        table_->setColumnWidth(column, wide * letters);
    keepHeadsWhole(*table_);
    table_->horizontalHeader()->setSectionResizeMode(JobModel::Findings, QHeaderView::Stretch);
}

void JobsDialog::say(const QString& trouble) {
    trouble_->setText(trouble);
    trouble_->setVisible(!trouble.isEmpty());
}

const JobRow* JobsDialog::current() const {
    return jobs_.at(table_->currentIndex().row());
}

QString JobsDialog::machineHere() const {
    const JobRow* row = current();
    return row ? shown(row->job.machine) : machine_;
}

void JobsDialog::read() {
    work_.ask<std::vector<JobRow>>(
        this, QStringLiteral("jobs"),
        [](FleetFile& fleet, const CancelToken&) -> Result<std::vector<JobRow>> {
            const auto today = todayOf(fleet, nowUtc());
            if (!today) return fail(today.error());
            return jobRows(fleet, {}, *today);
        },
        [this](Result<std::vector<JobRow>> rows) {
            if (!rows) return say(sentence(rows.error()));
            rows_ = std::move(*rows);
            fill();
        });
}

void JobsDialog::fill() {
    const std::int64_t before = wanted_ ? wanted_ : current() ? current()->job.id : 0;
    std::vector<JobRow> wanted;
    for (const JobRow& row : rows_)
        if (isWanted(row, which_->currentData().toString()) &&
            (!onlyHere_->isChecked() || shown(row.job.machine) == machine_))
            wanted.push_back(row);
    const auto overdue =
        std::count_if(wanted.begin(), wanted.end(), [](const JobRow& r) { return r.overdue; });
    count_->setText(overdue ? tr("%1 jobs, %2 overdue").arg(wanted.size()).arg(overdue)
                            : tr("%1 jobs").arg(wanted.size()));
    jobs_.set(std::move(wanted));
    int row = jobs_.rowOf(before);
    for (int i = 0; row < 0 && i < jobs_.rowCount(); ++i)
        if (shown(jobs_.at(i)->job.machine) == machine_) row = i;
    row = std::max(0, row);
    if (jobs_.rowCount() > 0) table_->setCurrentIndex(jobs_.index(row, 0));
    wanted_ = 0;
    showDetail();
}

void JobsDialog::enable() {
    const JobRow* row = current();
    const bool may = work_.writable();
    new_->setEnabled(may && !machineHere().isEmpty());
    move_->setEnabled(may && row && !row->replacedBy);
    revise_->setEnabled(may && row && !row->replacedBy);
    report_->setEnabled(may && row);
    compare_->setEnabled(row);
    sheet_->setEnabled(row);
}

void JobsDialog::showDetail() {
    enable();
    const JobRow* row = current();
    if (!row)
        return detail_->setPlainText(
            rows_.empty() ? tr("No job yet. Choose a machine with a finding and make a new job from it.")
                          : tr("No job of this kind. Choose another kind, or all."));
    work_.ask<JobDetail>(
        this, QStringLiteral("job"),
        [id = row->job.id](FleetFile& fleet, const CancelToken&) { return jobDetail(fleet, id); },
        [this](Result<JobDetail> detail) {
            if (!detail) return say(sentence(detail.error()));
            detail_->setHtml(jobText(*detail));
        });
}

void JobsDialog::askDraft() {
    work_.ask<JobDraft>(
        this, QStringLiteral("draft"),
        [tag = kept(machineHere())](FleetFile& fleet, const CancelToken&) -> Result<JobDraft> {
            const auto today = todayOf(fleet, nowUtc());
            if (!today) return fail(today.error());
            return jobDraft(fleet, tag, *today);
        },
        [this](Result<JobDraft> draft) {
            if (!draft) return say(sentence(draft.error()));
            openDraft(*draft);
        });
}

JobDraftDialog* JobsDialog::openDraft(const JobDraft& draft) {
    auto* dialog = new JobDraftDialog(theme_, draft, this);
    connect(dialog, &JobDraftDialog::drafted, this,
            [this, draft, dialog](const Job& job, const JobMove& move) {
                keep([job, move](FleetFile& fleet) { return keepDraft(fleet, job, move); },
                     [this, draft, move, numbers = dialog->numbers()] {
                         openDraft(draft)->setAnswer(numbers, move);
                     });
            });
    dialog->open();
    return dialog;
}

void JobsDialog::askMove(bool revision) {
    const JobRow* row = current();
    if (!row) return;
    auto* dialog = new JobMoveDialog(
        theme_, row->job, revision ? JobMoveDialog::What::Revision : JobMoveDialog::What::Step, this);
    connect(dialog, &JobMoveDialog::moved, this, [this, revision, id = row->job.id](const JobMove& move) {
        keep([id, move, revision](FleetFile& fleet) {
            return revision ? reviseJob(fleet, id, move) : moveJob(fleet, id, move);
        });
    });
    dialog->open();
}

void JobsDialog::keep(std::function<Result<Job>(FleetFile&)> change, std::function<void()> refused) {
    say({});
    work_.write<Job>(this, std::move(change), [this, refused = std::move(refused)](Result<Job> job) {
        if (!job) {
            if (refused) refused();
            return say(sentence(job.error()));
        }
        wanted_ = job->id;
        emit said(tr("Job %1 of %2 is %3.").arg(job->id).arg(shown(job->machine), jobStateWord(job->state)));
    });
}

void JobsDialog::askReturn() {
    openReturn(nullptr, {});
}

void JobsDialog::openReturn(const PlannerReturn* refused, std::vector<NewPhoto> photos) {
    const JobRow* row = current();
    if (!row) return;
    std::vector<JobFinding> findings;
    for (const std::string& text : row->job.findings)
        findings.push_back(jobFinding(text));
    auto* dialog = new ReturnDialog(work_, theme_, shown(row->job.machine), row->job.id, findings, this);
    if (refused) dialog->setReturn(*refused, std::move(photos));
    connect(dialog, &ReturnDialog::given, this, &JobsDialog::keepReport);
    dialog->open();
}

void JobsDialog::keepReport(const PlannerReturn& half, const std::vector<NewPhoto>& photos) {
    say({});
    work_.write<KeptReturn>(
        this, [half, photos](FleetFile& fleet) { return keepReturn(fleet, half, photos); },
        [this, half, photos](Result<KeptReturn> done) {
            if (!done) {
                openReturn(&half, photos);
                return say(sentence(done.error()));
            }
            emit said(done->already ? tr("The same report of that day is there already; it stands once.")
                                    : tr("The report is kept and counts in this site's record."));
        });
}

}  // namespace fettle
