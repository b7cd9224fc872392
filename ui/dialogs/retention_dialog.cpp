#include "ui/dialogs/retention_dialog.h"

#include <QDialogButtonBox>
#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMessageBox>
#include <QProgressBar>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/dialogs/retention_words.h"
#include "ui/model/words.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

constexpr int kEver = -1, kMostDays = 36500;
constexpr int kSteps = 1000;  // of the bar

int shownDays(const std::optional<int>& days) {
    return days ? *days : kEver;
}

std::optional<int> typedDays(const QSpinBox& box) {
    return box.value() == kEver ? std::nullopt : std::optional(box.value());
}

void setDays(QSpinBox& box, int days) {
    const QSignalBlocker quiet(box);
    box.setValue(days);
    box.setSuffix(days == 1 ? RetentionDialog::tr(" day") : RetentionDialog::tr(" days"));
}

void name(QWidget* widget, const char* text) {
    widget->setObjectName(QString::fromLatin1(text));
}

}  // namespace

RetentionDialog::RetentionDialog(FleetWork& work, const Theme& theme, QWidget* parent)
    : QDialog(parent),
      work_(work),
      word_(new QLabel(this)),
      year_(new QLabel(this)),
      space_(new QLabel(this)),
      bar_(new QProgressBar(this)),
      look_(new QPushButton(tr("&List what goes"), this)),
      thin_(new QPushButton(tr("&Thin…"), this)),
      compact_(new QPushButton(tr("&Compact the file"), this)),
      stop_(new QPushButton(tr("&Stop"), this)),
      table_(new QTableView(this)),
      model_(new QStandardItemModel(0, 4, this)),
      long_(std::make_unique<LongWork>(work.path())) {
    setObjectName(QStringLiteral("retentionDialog"));
    setWindowTitle(tr("Retention"));
    build(theme);
    connect(look_, &QPushButton::clicked, this, [this] { look(!known_); });
    connect(thin_, &QPushButton::clicked, this, &RetentionDialog::askThin);
    connect(compact_, &QPushButton::clicked, this, &RetentionDialog::compact);
    connect(stop_, &QPushButton::clicked, this, [this] {
        long_->cancel();
        word_->setText(tr("Stopping; what is done stays done."));
    });
    connect(long_.get(), &LongWork::progressed, this,
            [this](qulonglong done, qulonglong total, const QString& what) {
                bar_->setRange(0, total > 0 ? kSteps : 0);  // bytes are more than an int holds
                bar_->setValue(total > 0 ? int(kSteps * double(done) / double(total)) : 0);
                bar_->setFormat(workWord(what));
            });
    connect(this, &QDialog::finished, this, [this] {
        if (!long_->running()) return deleteLater();
        long_->cancel();
        connect(long_.get(), &LongWork::finished, this, &QObject::deleteLater);
    });
    look(true);
}

void RetentionDialog::build(const Theme& theme) {
    name(word_, "retentionWord");
    name(year_, "retentionYear");
    name(space_, "retentionSpace");
    name(bar_, "retentionProgress");
    name(look_, "retentionLook");
    name(thin_, "retentionThin");
    name(compact_, "retentionCompact");
    name(stop_, "retentionStop");
    name(table_, "retentionTable");
    for (QLabel* label : {word_, year_, space_})
        label->setWordWrap(true);
    // What comes later finds its room already there.
    for (QLabel* label : {year_, space_})
        label->setMinimumHeight(2 * fontMetrics().lineSpacing());
    look_->setToolTip(tr("Lists what the days above would take away; nothing is changed."));
    thin_->setToolTip(tr("Keeps these days in the fleet file and takes away what is listed."));
    compact_->setToolTip(tr(
        "Writes the file anew without its free space. Needs twice its room on the disk for a while; others "
        "who have it open wait."));
    compact_->hide();
    bar_->setAccessibleName(tr("How far it is"));
    QSizePolicy room = bar_->sizePolicy();
    room.setRetainSizeWhenHidden(true);
    bar_->setSizePolicy(room);
    auto* grid = new QGridLayout;
    for (const KeptKind kind : kAllKept)
        addRule(*grid, int(kind), kind);
    grid->setColumnStretch(7, 1);
    model_->setHorizontalHeaderLabels(
        {tr("What"), tr("Goes or stays, and why"), tr("Recordings"), tr("Size")});
    table_->setModel(model_);
    table_->setAccessibleName(tr("What goes and what stays"));
    setRuled(*table_, theme);
    const int wide = fontMetrics().averageCharWidth();
    table_->setColumnWidth(0, wide * 18);
    table_->setColumnWidth(2, wide * 16);
    table_->setColumnWidth(3, wide * 14);
    keepHeadsWhole(*table_);
    table_->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    for (QPushButton* button : {look_, thin_, compact_, stop_}) {
        button->setAutoDefault(false);
        buttons->addButton(button, QDialogButtonBox::ActionRole);
    }
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(word_);
    all->addLayout(grid);
    all->addWidget(bar_);
    all->addWidget(table_, 1);
    all->addWidget(year_);
    all->addWidget(space_);
    all->addWidget(buttons);
    show(RetentionRules());
    resize(wide * 110, fontMetrics().height() * 32);
}

QSpinBox* RetentionDialog::daysBox(const QString& boxName, const QString& accessible, int least) {
    auto* box = new QSpinBox(this);
    box->setObjectName(boxName);
    box->setAccessibleName(accessible);
    box->setToolTip(tr("Days; counted back from the newest recording of each point."));
    box->setRange(least, kMostDays);
    if (least == kEver) box->setSpecialValueText(tr("for ever"));
    setDays(*box, least);
    connect(box, &QSpinBox::valueChanged, this, [this, box](int days) {
        setDays(*box, days);
        changed();
    });
    return box;
}

void RetentionDialog::addRule(QGridLayout& grid, int row, KeptKind kind) {
    const QString key = QString::fromLatin1(keyOf(kind));
    const QString word = kindWord(kind);
    RuleBoxes& boxes = boxes_[std::size_t(kind)];
    const int least = kind == KeptKind::Examination ? 8 : 1;  // a round is made of its week's
    boxes.all = daysBox(key + QStringLiteral("All"), tr("%1: every one for").arg(word), least);
    boxes.daily = daysBox(key + QStringLiteral("Daily"), tr("%1: then one a day for").arg(word), kEver);
    boxes.weekly = daysBox(key + QStringLiteral("Weekly"), tr("%1: then one a week for").arg(word), kEver);
    grid.addWidget(new QLabel(word, this), row, 0);
    grid.addWidget(new QLabel(tr("all for"), this), row, 1);
    grid.addWidget(boxes.all, row, 2);
    grid.addWidget(new QLabel(tr("then one a day"), this), row, 3);
    grid.addWidget(boxes.daily, row, 4);
    grid.addWidget(new QLabel(tr("then one a week"), this), row, 5);
    grid.addWidget(boxes.weekly, row, 6);
}

RetentionRules RetentionDialog::typed() const {
    RetentionRules rules;
    for (const KeptKind kind : kAllKept) {
        const RuleBoxes& boxes = boxes_[std::size_t(kind)];
        rules.rule(kind) = {boxes.all->value(), typedDays(*boxes.daily), typedDays(*boxes.weekly)};
    }
    return rules;
}

void RetentionDialog::show(const RetentionRules& rules) {
    for (const KeptKind kind : kAllKept) {
        const RuleBoxes& boxes = boxes_[std::size_t(kind)];
        const KeepRule& rule = rules.rule(kind);
        setDays(*boxes.all, rule.allDays);
        setDays(*boxes.daily, shownDays(rule.dailyDays));
        setDays(*boxes.weekly, shownDays(rule.weeklyDays));
    }
}

void RetentionDialog::letRulesBeTyped(bool known) {
    for (const RuleBoxes& boxes : boxes_) {
        boxes.all->setEnabled(known);
        boxes.daily->setEnabled(known);
        boxes.weekly->setEnabled(known && boxes.daily->value() != kEver);
    }
}

// What was listed no longer says what would go.
void RetentionDialog::changed() {
    letRulesBeTyped(true);
    listed_ = false;
    thin_->setEnabled(false);
    if (!long_->running()) word_->setText(tr("The days were changed: list what goes before it is thinned."));
}

void RetentionDialog::begin(const QString& word) {
    word_->setText(word);
    bar_->show();
    bar_->setRange(0, 0);
    bar_->setTextVisible(true);
    bar_->setFormat(QString());
    look_->setEnabled(false);
    thin_->setEnabled(false);
    compact_->setEnabled(false);
    stop_->setEnabled(true);
}

void RetentionDialog::end() {
    bar_->hide();
    look_->setEnabled(true);
    stop_->setEnabled(false);
    compact_->setEnabled(work_.writable());
    thin_->setEnabled(listed_ && goes_ > 0 && work_.writable());
}

void RetentionDialog::look(bool asKept) {
    const std::optional<RetentionRules> rules = asKept ? std::nullopt : std::optional(typed());
    begin(tr("What goes is being listed."));
    if (asKept) letRulesBeTyped(false);  // those of the file are being read
    listed_ = true;
    long_->start<RetentionPlan>(
        [rules](FleetFile& fleet, const Progress& progress, const CancelToken& cancel) {
            return planRetention(fleet, rules, progress, cancel);
        },
        [this](Result<RetentionPlan> plan) { showPlan(plan); });
}

void RetentionDialog::addRow(const QString& what, const QString& why, const Amount& amount) {
    QList<QStandardItem*> row;
    for (const QString& text :
         {what, why, QLocale().toString(qulonglong(amount.recordings)), sizeText(double(amount.bytes))}) {
        row << new QStandardItem(text);
        row.back()->setEditable(false);
        row.back()->setToolTip(text);
    }
    for (const int column : {2, 3})
        row[column]->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    model_->appendRow(row);
}

void RetentionDialog::showPlan(const Result<RetentionPlan>& plan) {
    if (!plan) {
        listed_ = false;
        known_ |= plan.error().kind != ErrorKind::Cancelled;  // what cannot be read may be set anew
        letRulesBeTyped(known_);
        word_->setText(plan.error().kind == ErrorKind::Cancelled ? tr("Stopped; nothing is listed.")
                                                                 : sentence(plan.error()));
        return end();
    }
    known_ = true;
    if (listed_) show(plan->rules);
    letRulesBeTyped(true);
    model_->removeRows(0, model_->rowCount());
    for (const KeptKind kind : kAllKept) {
        const KindPlan total = plan->total(kind);
        addRow(kindWord(kind), tr("goes"), total.goes);
        for (std::size_t i = 0; i < kReasons; ++i)
            if (total.stays[i].recordings > 0)
                addRow(QString(), tr("stays: %1").arg(reasonWord(KeptFor(i))), total.stays[i]);
    }
    const Amount goes = plan->goes();
    goes_ = goes.recordings;
    if (listed_)
        word_->setText(goes_ == 0
                           ? tr("Nothing goes: all that is old is thinned already, or stands under "
                                "something that needs it.")
                           : tr("%1 of waveforms, spectra and examinations would go. Recordings, trends "
                                "and weights stay for ever.")
                                 .arg(sizeText(double(goes.bytes))));
    year_->setText(yearWords(plan->meanYear()));
    space_->setText(spaceWords(plan->space));
    compact_->setVisible(!plan->space.givesBack);
    end();
}

void RetentionDialog::askThin() {
    auto* box =
        new QMessageBox(QMessageBox::Warning, tr("Thin the fleet file"),
                        tr("What is listed is taken away and cannot be brought back. Keep a backup where "
                           "it may be wanted again."),
                        QMessageBox::Cancel, this);
    box->setObjectName(QStringLiteral("retentionSure"));
    box->setAttribute(Qt::WA_DeleteOnClose);
    auto* sure = box->addButton(tr("Thin"), QMessageBox::AcceptRole);
    sure->setObjectName(QStringLiteral("retentionSureThin"));
    box->setDefaultButton(QMessageBox::Cancel);
    connect(sure, &QAbstractButton::clicked, this, &RetentionDialog::thin);
    box->open();
}

void RetentionDialog::thin() {
    if (long_->running() || !listed_) return;
    begin(tr("The fleet file is being thinned."));
    long_->start<RetentionDone>(
        [rules = typed()](FleetFile& fleet, const Progress& progress,
                          const CancelToken& cancel) -> Result<RetentionDone> {
            if (auto good = fleet.retention().setRules(rules); !good) return fail(good.error());
            RetentionOptions options;
            options.progress = progress;
            options.cancel = cancel;
            return applyRetention(fleet, options);
        },
        [this](Result<RetentionDone> done) { showDone(done); });
}

void RetentionDialog::showDone(const Result<RetentionDone>& done) {
    listed_ = false;
    work_.noteChange();
    if (!done) {
        word_->setText(sentence(done.error()));
        return end();
    }
    const QString taken = sizeText(double(done->all().bytes));
    word_->setText(done->cancelled
                       ? tr("Stopped: %1 were taken away, the rest stays for the next time.").arg(taken)
                       : tr("%1 were taken away.").arg(taken));
    space_->setText(spaceWords(done->after));
    model_->removeRows(0, model_->rowCount());
    end();
}

void RetentionDialog::compact() {
    begin(tr("The file is being written anew."));
    long_->start<FileSpace>(
        [](FleetFile& fleet, const Progress&, const CancelToken& cancel) -> Result<FileSpace> {
            if (auto good = fleet.retention().compact(cancel); !good) return fail(good.error());
            return fleet.retention().space();
        },
        [this](Result<FileSpace> space) {
            word_->setText(space ? tr("The file is compacted.") : sentence(space.error()));
            if (space) {
                space_->setText(spaceWords(*space));
                compact_->hide();
            }
            end();
        });
}

}  // namespace fettle
