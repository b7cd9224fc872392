#include "ui/dialogs/balance_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/fleet/who.h"
#include "ui/dialogs/balance_dialog_parts.h"
#include "ui/dialogs/balance_masses_step.h"
#include "ui/dialogs/balance_rotor_step.h"
#include "ui/dialogs/balance_runs_step.h"
#include "ui/dialogs/page_preview.h"
#include "ui/dialogs/save_file.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/plot/balance_pictures.h"
#include "ui/sheet/balance_record.h"
#include "ui/sheet/balance_words.h"
#include "ui/sheet/sheet_print.h"

namespace fettle {

namespace {

constexpr int kRecordStep = 4;

BalanceRecord recordOf(const BalanceModel& model) {
    return {model.job(), model.answer(), dateText(QDate::currentDate())};
}

}  // namespace

BalanceDialog::BalanceDialog(FleetWork& work, const Theme& theme, const QString& machine, const Units& units,
                             QWidget* parent)
    : QDialog(parent), work_(work), theme_(theme), machine_(machine), units_(units) {
    setObjectName(QStringLiteral("balanceDialog"));
    setWindowTitle(tr("Balance %1").arg(machine));
    setAttribute(Qt::WA_DeleteOnClose);
    build();
    connect(&model_, &BalanceModel::changed, this, &BalanceDialog::showAll);
    read();
}

void BalanceDialog::build() {
    steps_ = balanceSteps(this);
    pages_ = new QStackedWidget(this);
    rotor_ = new BalanceRotorStep(model_, theme_, this);
    runs_ = new BalanceRunsStep(model_, work_, theme_, this);
    preview_ = new PagePreview(theme_, usualPaper(units_.inches), this);
    connect(preview_, &PagePreview::paperChanged, this, &BalanceDialog::showRecord);
    for (QWidget* page : std::initializer_list<QWidget*>{
             buildCautions(), rotor_, runs_, new BalanceMassesStep(model_, theme_, this), preview_})
        pages_->addWidget(page);
    auto* middle = new QHBoxLayout;
    middle->addWidget(steps_);
    middle->addWidget(pages_, 1);
    middle->addWidget(buildDrawings());
    state_ = new QLabel(this);
    trouble_ = new QLabel(this);
    state_->setObjectName(QStringLiteral("balanceShort"));
    trouble_->setObjectName(QStringLiteral("trouble"));
    for (QLabel* label : {state_, trouble_})
        label->setWordWrap(true);
    setInk(*trouble_, theme_, Role::Trouble);
    trouble_->hide();
    auto* all = new QVBoxLayout(this);
    all->addWidget(buildHead());
    all->addWidget(new ThinRule(theme_, this));
    all->addLayout(middle, 1);
    all->addWidget(state_);
    all->addWidget(trouble_);
    all->addWidget(buildButtons());
    connect(steps_, &QListWidget::currentRowChanged, this, [this](int step) {
        pages_->setCurrentIndex(step);
        drawings_->setVisible(step != kRecordStep);
        if (step == kRecordStep) showRecord();
        showAll();
    });
    steps_->setCurrentRow(0);
    const int em = fontMetrics().height();
    resize(balanceDialogSize(em, parentWidget()));
}

QWidget* BalanceDialog::buildHead() {
    auto* head = new QWidget(this);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    name_ = new QLineEdit(head);
    name_->setObjectName(QStringLiteral("balanceName"));
    name_->setAccessibleName(tr("Name of this balancing"));
    name_->setToolTip(name_->accessibleName());
    jobs_ = new QComboBox(head);
    jobs_->setObjectName(QStringLiteral("balanceJobs"));
    jobs_->setAccessibleName(tr("Balancings kept"));
    jobs_->setToolTip(tr("Open one again; what is closed can be read and printed"));
    jobs_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    jobs_->setMinimumContentsLength(28);
    auto* label = new QLabel(tr("&Name"), head);
    label->setBuddy(name_);
    row->addWidget(label);
    row->addWidget(name_, 1);
    row->addWidget(jobs_);
    connect(name_, &QLineEdit::textEdited, this,
            [this](const QString& text) { model_.edit([&](BalanceJob& job) { job.name = kept(text); }); });
    connect(jobs_, &QComboBox::activated, this, &BalanceDialog::openKept);
    return head;
}

QWidget* BalanceDialog::buildCautions() {
    auto parts = balanceCautionPage(theme_, this);
    read_ = parts.read;
    connect(read_, &QCheckBox::toggled, this,
            [this](bool read) { model_.edit([&](BalanceJob& job) { job.cautionsRead = read; }); });
    return parts.page;
}

QWidget* BalanceDialog::buildDrawings() {
    drawings_ = new QWidget(this);
    auto* all = new QVBoxLayout(drawings_);
    all->setContentsMargins(0, 0, 0, 0);
    auto* rotors = new QHBoxLayout;
    auto* polars = new QHBoxLayout;
    for (int i = 0; i < 2; ++i) {
        rotors_.push_back(new RotorDrawing(theme_, drawings_));
        polars_.push_back(new PolarDrawing(theme_, drawings_));
        rotors_.back()->setObjectName(QStringLiteral("rotorDrawing%1").arg(i + 1));
        polars_.back()->setObjectName(QStringLiteral("polarDrawing%1").arg(i + 1));
        rotors->addWidget(rotors_.back(), 1);
        polars->addWidget(polars_.back(), 1);
    }
    all->addLayout(rotors, 1);
    all->addLayout(polars, 1);
    drawings_->setFixedWidth(fontMetrics().height() * 22);
    return drawings_;
}

QWidget* BalanceDialog::buildButtons() {
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    const auto add = [&](const QString& text, const char* name, const QString& help, auto done) {
        auto* button = new QPushButton(text, bar);
        button->setObjectName(QString::fromLatin1(name));
        button->setToolTip(help);
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, this, done);
        row->addWidget(button);
        return button;
    };
    back_ = add(tr("&Back"), "balanceBack", tr("The step before"),
                [this] { goToStep(steps_->currentRow() - 1); });
    next_ =
        add(tr("Ne&xt"), "balanceNext", tr("The step after"), [this] { goToStep(steps_->currentRow() + 1); });
    row->addStretch(1);
    save_ = add(tr("Save as &PDF…"), "balancePdf", tr("The record as a page"), [this] {
        askWhereToSave(this,
                       {tr("Save the balance record"), tr("PDF (*.pdf)"), QStringLiteral("pdf"),
                        kept(machine_) + " balance"},
                       [this](const QString& path) { savePdf(path); });
    });
    print_ = add(tr("P&rint…"), "balancePrint", tr("The record on paper"), [this] { print(); });
    keep_ = add(tr("&Keep"), "balanceKeep", tr("Into the fleet file, to be gone on with"),
                [this] { keep(false); });
    close_ = add(tr("&Close the job…"), "balanceClose",
                 tr("Keep it for good: it does not change any more, and its coefficients serve later jobs"),
                 [this] { askClose(); });
    auto* leave = add(tr("Leave"), "balanceLeave", tr("Close this window"), [this] { reject(); });
    leave->setShortcut(QKeySequence::Cancel);
    return bar;
}

void BalanceDialog::read() {
    work_.ask<BalanceDesk>(
        this, QStringLiteral("balance desk"),
        [tag = kept(machine_)](FleetFile& fleet, const CancelToken&) { return balanceDesk(fleet, tag); },
        [this](Result<BalanceDesk> desk) {
            if (!desk) return say(sentence(desk.error()));
            take(std::move(*desk));
        });
}

// The newest job in work is gone on with; without one a new one begins.
void BalanceDialog::take(BalanceDesk desk) {
    desk_ = std::move(desk);
    rotor_->setDesk(desk_);
    runs_->setDesk(desk_);
    fillKept();
    if (id_ != 0 || model_.changedSinceKept()) return;
    for (std::size_t i = 0; i < desk_.entries.size(); ++i)
        if (!desk_.entries[i].closedAt && desk_.entries[i].trouble.empty()) return openKept(int(i) + 1);
    startNew();
}

void BalanceDialog::fillKept() {
    const QSignalBlocker quiet(jobs_);
    jobs_->clear();
    jobs_->addItem(tr("a new balancing"));
    for (const BalanceEntry& entry : desk_.entries) {
        jobs_->addItem(entry.closedAt
                           ? tr("%1, closed %2").arg(shown(entry.name), dateText(*entry.closedAt))
                           : tr("%1, in work, %2").arg(shown(entry.name), dateText(entry.changedAt)));
        if (entry.id == id_) jobs_->setCurrentIndex(jobs_->count() - 1);
    }
}

void BalanceDialog::openKept(int index) {
    if (index <= 0) return startNew();
    const BalanceEntry& entry = desk_.entries[std::size_t(index) - 1];
    if (!entry.trouble.empty()) return say(shown(entry.trouble));
    id_ = entry.id;
    say({});
    model_.setJob(entry.job, entry.closedAt.has_value());
    fillKept();
    showAll();
    if (entry.job.cautionsRead) goToStep(stepToGoOnWith(model_));
}

void BalanceDialog::startNew() {
    id_ = 0;
    BalanceJob job = desk_.hasDriven ? desk_.proposedDriven : desk_.proposedDriver;
    job.machine = kept(machine_);
    job.name = kept(tr("%1 balanced %2").arg(machine_, dateText(QDate::currentDate())));
    job.by = orLoginName({});
    if (units_.inches) job.unit = "in/s r.m.s.";
    for (const std::string& channel : desk_.channels)
        if (job.sensors[0].channel.empty()) job.sensors[0].channel = channel;
    nameInLanguage(job);
    say({});
    model_.setJob(std::move(job), false);
    fillKept();
}

void BalanceDialog::showAll() {
    const BalanceJob& job = model_.job();
    if (!name_->hasFocus()) name_->setText(shown(job.name));
    name_->setReadOnly(model_.closed());
    const QSignalBlocker quiet(read_);
    read_->setChecked(job.cautionsRead);
    read_->setEnabled(!model_.closed());
    markBalanceSteps(*steps_, model_);
    const QString state = balanceState(model_.answer());
    QString words = state;
    if (state.isEmpty() && !model_.answer().planes.empty())
        words = tr("Fit %1.").arg(massWords(model_.answer().planes[0].toFit));
    if (state.isEmpty() && model_.answer().planes.size() == 2)
        words =
            tr("Fit %1 and %2.")
                .arg(massWords(model_.answer().planes[0].toFit), massWords(model_.answer().planes[1].toFit));
    state_->setText(words);
    setInk(*state_, theme_, model_.answer().refused() ? Role::Trouble : Role::MutedInk);
    const bool writes = work_.writable() && !model_.closed();
    keep_->setEnabled(writes);
    close_->setEnabled(writes && model_.answer().solved && job.cautionsRead);
    back_->setEnabled(steps_->currentRow() > 0);
    next_->setEnabled(steps_->currentRow() < kRecordStep && (steps_->currentRow() > 0 || job.cautionsRead));
    showDrawings();
    if (steps_->currentRow() == kRecordStep) showRecord();
}

void BalanceDialog::showDrawings() {
    const bool results = steps_->currentRow() == 3;
    const auto rotors = rotorPictures(model_.job(), model_.answer(), results);
    const auto polars = polarPictures(model_.job(), model_.answer());
    for (std::size_t i = 0; i < 2; ++i) {
        rotors_[i]->setVisible(i < rotors.size());
        polars_[i]->setVisible(i < polars.size());
        if (i < rotors.size()) rotors_[i]->setPicture(rotors[i]);
        if (i < polars.size()) polars_[i]->setPicture(polars[i]);
    }
}

void BalanceDialog::showRecord() {
    preview_->show(std::make_shared<BalanceRecordPages>(recordOf(model_), preview_->paper()));
}

void BalanceDialog::goToStep(int step) {
    steps_->setCurrentRow(std::clamp(step, 0, kRecordStep));
}

void BalanceDialog::say(const QString& trouble) {
    trouble_->setText(trouble);
    trouble_->setVisible(!trouble.isEmpty());
}

void BalanceDialog::keep(bool close, bool leave) {
    if (writing_) return;
    writing_ = true;
    const BalanceJob job = model_.job();
    work_.write<std::int64_t>(
        this, [id = id_, job, close](FleetFile& fleet) { return keepBalance(fleet, id, job, close); },
        [this, job, close, leave](Result<std::int64_t> id) {
            writing_ = false;
            if (!id) return say(sentence(id.error()));
            id_ = *id;
            if (close)
                model_.setJob(job, true);
            else
                model_.kept();
            say({});
            emit said(close ? tr("%1 is closed and kept.").arg(shown(job.name))
                            : tr("%1 is kept.").arg(shown(job.name)));
            if (leave) return QDialog::reject();
            read();
        });
}

void BalanceDialog::askClose() {
    auto* box =
        new QMessageBox(QMessageBox::NoIcon, tr("Close the job"),
                        tr("A closed balancing does not change any more. Its coefficients serve later jobs "
                           "of this machine, and 1x is told in grams from then on. Close it?"),
                        QMessageBox::Yes | QMessageBox::Cancel, this);
    box->setObjectName(QStringLiteral("balanceCloseQuestion"));
    box->setAttribute(Qt::WA_DeleteOnClose);
    connect(box, &QMessageBox::finished, this, [this](int answer) {
        if (answer == QMessageBox::Yes) keep(true);
    });
    box->open();
}

// What was not kept is asked about, once.
void BalanceDialog::reject() {
    if (!model_.changedSinceKept() || !work_.writable()) return QDialog::reject();
    if (findChild<QMessageBox*>(QStringLiteral("balanceLeaveQuestion"))) return;
    auto* box =
        new QMessageBox(QMessageBox::NoIcon, tr("Leave the balancing"), tr("What was typed is not kept yet."),
                        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, this);
    box->setObjectName(QStringLiteral("balanceLeaveQuestion"));
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->button(QMessageBox::Save)->setText(tr("&Keep"));
    connect(box, &QMessageBox::finished, this, [this](int answer) {
        if (answer == QMessageBox::Save) return keep(false, true);
        if (answer != QMessageBox::Cancel && answer != 0) QDialog::reject();
    });
    box->open();
}

void BalanceDialog::savePdf(const QString& path) {
    const BalanceRecord record = recordOf(model_);
    BalanceRecordPages pages(record, preview_->paper());
    const auto pdf = pdfOf(pages, titleOf(record));
    if (!pdf) return say(sentence(pdf.error()));
    saveFile(work_, this, path, pdf->toStdString(), [this, path](const QString& trouble) {
        say(trouble);
        if (trouble.isEmpty()) emit said(tr("Saved as %1.").arg(path));
    });
}

void BalanceDialog::print() {
    const auto record = std::make_shared<const BalanceRecord>(recordOf(model_));
    askAndPrint(
        this, titleOf(*record).title,
        [record](PaperSize size) { return std::make_unique<BalanceRecordPages>(*record, size); },
        preview_->paper(), [this](Status printed) { say(printed ? QString() : sentence(printed.error())); });
}

}  // namespace fettle
