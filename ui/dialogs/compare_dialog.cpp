#include "ui/dialogs/compare_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/dialogs/move_model.h"
#include "ui/dialogs/save_file.h"
#include "ui/model/round_words.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"
#include "ui/sheet/report_layout.h"
#include "ui/sheet/sheet_print.h"

namespace fettle {

namespace {

QString countsText(const RoundComparison& comparison) {
    QStringList parts;
    for (const RoundMove move : kRoundMoves)
        if (const std::size_t count = comparison.count(move))
            parts << CompareDialog::tr("%1 %2").arg(count).arg(moveWord(move));
    parts << CompareDialog::tr("%1 on leave in both").arg(comparison.quiet);
    if (!comparison.note.empty()) parts << shown(comparison.note);
    return parts.join(QStringLiteral(" \u00b7 "));
}

qlonglong idOf(const QComboBox& choice) {
    return choice.currentData().toLongLong();
}

}  // namespace

CompareDialog::CompareDialog(FleetWork& work, const Theme& theme, const RoundShown& round, QWidget* parent)
    : QDialog(parent),
      work_(work),
      theme_(theme),
      site_(shown(round.site)),
      model_(new MoveModel(this)),
      before_(new QComboBox(this)),
      after_(new QComboBox(this)),
      counts_(new QLabel(this)),
      trouble_(new QLabel(this)),
      table_(new QTableView(this)) {
    setObjectName(QStringLiteral("compareDialog"));
    setWindowTitle(tr("Compare two rounds"));
    setAttribute(Qt::WA_DeleteOnClose);
    fillRounds(round);
    build(theme);
    if (round.rounds.size() < 2)
        say(tr("Two kept rounds are needed; there is %1. Close this one and open the next.")
                .arg(counted(qsizetype(round.rounds.size()), tr("round"), tr("rounds"))));
    else
        read();
}

void CompareDialog::fillRounds(const RoundShown& round) {
    std::vector<RoundEntry> rounds = round.rounds;  // the newest week first, whenever it was opened
    std::stable_sort(rounds.begin(), rounds.end(),
                     [](const RoundEntry& a, const RoundEntry& b) { return a.until > b.until; });
    for (const RoundEntry& entry : rounds)
        for (QComboBox* choice : {before_, after_})
            choice->addItem(tr("to %1").arg(dateText(entry.until)), QVariant::fromValue<qlonglong>(entry.id));
    const int now = round.entry ? after_->findData(QVariant::fromValue<qlonglong>(round.entry->id)) : 0;
    after_->setCurrentIndex(std::clamp(now, 0, std::max(0, after_->count() - 2)));
    before_->setCurrentIndex(std::min(after_->currentIndex() + 1, before_->count() - 1));
}

void CompareDialog::build(const Theme& theme) {
    const auto name = [](QComboBox& choice, const char* object, const QString& label) {
        choice.setObjectName(QString::fromLatin1(object));
        choice.setAccessibleName(label);
        choice.setToolTip(label);
        choice.setSizeAdjustPolicy(QComboBox::AdjustToContents);
    };
    name(*after_, "afterRound", tr("The later round"));
    name(*before_, "beforeRound", tr("The round it is compared with"));
    counts_->setObjectName(QStringLiteral("counts"));
    counts_->setWordWrap(true);
    trouble_->setObjectName(QStringLiteral("trouble"));
    trouble_->setWordWrap(true);
    setInk(*trouble_, theme, Role::Trouble);
    setRuled(*table_, theme);
    table_->setObjectName(QStringLiteral("moves"));
    table_->setAccessibleName(tr("Machines that moved"));
    table_->setModel(model_);
    table_->setWordWrap(true);
    table_->setTabKeyNavigation(false);
    table_->horizontalHeader()->setSectionResizeMode(MoveModel::Machine, QHeaderView::Interactive);
    table_->horizontalHeader()->setSectionResizeMode(MoveModel::Why, QHeaderView::Stretch);
    auto* head = new QHBoxLayout;
    head->addWidget(new QLabel(tr("Round"), this));
    head->addWidget(after_);
    head->addWidget(new QLabel(tr("against round"), this));
    head->addWidget(before_);
    head->addStretch(1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    const auto add = [&](const QString& text, const char* object, std::function<void()> act) {
        QPushButton* made = buttons->addButton(text, QDialogButtonBox::ActionRole);
        made->setObjectName(QString::fromLatin1(object));
        made->setAutoDefault(false);
        connect(made, &QPushButton::clicked, this, std::move(act));
        outlets_.push_back(made);
    };
    const auto save = [this](const QString& filter, const QString& suffix,
                             void (CompareDialog::*to)(const QString&)) {
        askWhereToSave(this,
                       {tr("Save the comparison"), filter, suffix,
                        "rounds-" + comparison_->beforeUntil + "-" + comparison_->afterUntil},
                       [this, to](const QString& path) { (this->*to)(path); });
    };
    add(tr("&Save as PDF…"), "save",
        [save] { save(tr("PDF (*.pdf)"), QStringLiteral("pdf"), &CompareDialog::savePdf); });
    add(tr("&Print…"), "print", [this] { print(); });
    add(tr("&CSV…"), "csv",
        [save] { save(tr("CSV (*.csv)"), QStringLiteral("csv"), &CompareDialog::saveCsv); });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    for (QComboBox* choice : {before_, after_})
        connect(choice, &QComboBox::activated, this, &CompareDialog::read);
    connect(table_, &QTableView::activated, this, &CompareDialog::openCurrent);
    auto* all = new QVBoxLayout(this);
    all->addLayout(head);
    all->addWidget(counts_);
    all->addWidget(trouble_);
    all->addWidget(table_, 1);
    all->addWidget(buttons);
    const int em = fontMetrics().height();
    resize(62 * em, 36 * em);
    table_->setColumnWidth(MoveModel::Machine, 14 * em);
    table_->setColumnWidth(MoveModel::Move, 13 * em);
    table_->setColumnWidth(MoveModel::Decided, 13 * em);
    keepHeadsWhole(*table_);
    table_->setFocus();
    say({});
}

void CompareDialog::read() {
    if (idOf(*before_) == idOf(*after_)) return say(tr("Choose two different rounds."));
    work_.ask<RoundComparison>(
        this, QStringLiteral("compare"),
        [before = idOf(*before_), after = idOf(*after_)](FleetFile& fleet, const CancelToken&) {
            return compareKept(fleet, before, after);
        },
        [this](Result<RoundComparison> comparison) { take(std::move(comparison)); });
}

void CompareDialog::take(Result<RoundComparison> comparison) {
    if (!comparison) return say(sentence(comparison.error()));
    comparison_ = std::make_shared<const RoundComparison>(std::move(*comparison));
    model_->set(comparison_);
    counts_->setText(countsText(*comparison_));
    table_->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    if (model_->rowCount() > 0) table_->setCurrentIndex(model_->index(0, 0));
    say({});
}

void CompareDialog::say(const QString& word) {
    trouble_->setText(word);
    trouble_->setVisible(!word.isEmpty());
    for (QPushButton* outlet : outlets_)
        outlet->setEnabled(comparison_ != nullptr);
}

void CompareDialog::openCurrent() {
    const QString tag = model_->tagAt(table_->currentIndex().row());
    if (tag.isEmpty()) return;
    emit machineWanted(tag);
    accept();
}

void CompareDialog::save(const QString& path, std::string bytes) {
    saveFile(work_, this, path, std::move(bytes), [this, path](const QString& trouble) {
        say(trouble);
        if (trouble.isEmpty()) emit saved(path);
    });
}

void CompareDialog::saveCsv(const QString& path) {
    if (comparison_) save(path, comparisonCsv(*comparison_));
}

void CompareDialog::savePdf(const QString& path) {
    if (!comparison_) return;
    PrintedPages pages(layOutComparison(*comparison_, site_, PaperSize::A4), PaperSize::A4);
    auto pdf = pdfOf(pages, titleOf(*comparison_, site_));
    if (!pdf) return say(sentence(pdf.error()));
    save(path, pdf->toStdString());
}

void CompareDialog::print() {
    const auto pages = [comparison = comparison_, site = site_](PaperSize size) {
        return std::make_unique<PrintedPages>(layOutComparison(*comparison, site, size), size);
    };
    askAndPrint(this, titleOf(*comparison_, site_).title, pages, PaperSize::A4,
                [this](Status printed) { say(printed ? QString() : sentence(printed.error())); });
}

}  // namespace fettle
