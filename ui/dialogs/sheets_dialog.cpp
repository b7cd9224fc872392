#include "ui/dialogs/sheets_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QProgressBar>
#include <QPushButton>
#include <QStandardPaths>
#include <QVBoxLayout>

#include "core/round/comparison.h"
#include "ui/dialogs/page_preview.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

QString lineOf(const RoundMachine& machine, const QString& decided) {
    QString text = SheetsDialog::tr("%1, %2: %3")
                       .arg(urgencyWord(machine.urgency), shown(machine.tag),
                            machine.findings.empty() ? SheetsDialog::tr("asked for by a person")
                                                     : shown(findingName(machine.findings.front().finding)));
    return decided.isEmpty() ? text : SheetsDialog::tr("%1 (%2)").arg(text, decided);
}

bool hasSheet(const RoundMachine& machine) {
    return !machine.findings.empty() || machine.listedBy == ListedBy::Hand;
}

}  // namespace

SheetsDialog::SheetsDialog(FleetWork& work, const Theme& theme, const RoundShown& round, const Units& units,
                           QWidget* parent)
    : QDialog(parent),
      run_(new SheetsRun(work, this)),
      list_(std::make_shared<const RoundList>(round.list)),
      units_(units),
      machines_(new QListWidget(this)),
      how_(new QComboBox(this)),
      paper_(new QComboBox(this)),
      path_(new QLineEdit(this)),
      csv_(new QCheckBox(tr("also a CSV, a row for each sheet, for a work-order system"), this)),
      progress_(new QProgressBar(this)),
      word_(new QLabel(this)) {
    setObjectName(QStringLiteral("sheetsDialog"));
    setWindowTitle(tr("Findings sheets of the round"));
    setAttribute(Qt::WA_DeleteOnClose);
    if (round.entry) round_ = round.entry->id;
    setInk(*word_, theme, Role::Ink);
    fill(round);
    build();
    connect(run_, &SheetsRun::progressed, this, [this](int done, int of) {
        progress_->setMaximum(of);
        progress_->setValue(done);
    });
    connect(run_, &SheetsRun::finished, this, &SheetsDialog::ended);
    suggestPath();
    check();
}

void SheetsDialog::fill(const RoundShown& round) {
    const auto held = decisionsThatHold(round.state);
    for (const RoundMachine& machine : round.list.machines) {
        if (!hasSheet(machine) || machine.urgency == "leave") continue;
        const auto decision = held.find(machine.tag);
        const bool accepted = decision == held.end() || decision->second->kind == DecisionKind::Accept;
        const bool work = machine.urgency == "act" || machine.urgency == "plan";
        auto* item = new QListWidgetItem(
            lineOf(machine, decision == held.end() ? QString() : decisionText(*decision->second)), machines_);
        item->setData(Qt::UserRole, shown(machine.tag));
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        item->setCheckState(work && accepted ? Qt::Checked : Qt::Unchecked);
    }
    if (machines_->count() > 0) machines_->setCurrentRow(0);
}

QWidget* SheetsDialog::buildWhere() {
    auto* where = new QWidget(this);
    auto* browse = new QPushButton(tr("&Browse…"), where);
    browse->setObjectName(QStringLiteral("browse"));
    browse->setAutoDefault(false);
    auto* row = new QHBoxLayout(where);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(path_, 1);
    row->addWidget(browse);
    connect(browse, &QPushButton::clicked, this, &SheetsDialog::askPath);
    return where;
}

void SheetsDialog::build() {
    machines_->setObjectName(QStringLiteral("machines"));
    machines_->setAccessibleName(tr("Machines to make a sheet for"));
    machines_->setToolTip(tr("Space chooses or leaves out a machine"));
    how_->setObjectName(QStringLiteral("how"));
    how_->addItems({tr("one PDF with all of them"), tr("a folder, a PDF for each")});
    how_->setAccessibleName(tr("What is made"));
    paper_->setObjectName(QStringLiteral("paper"));
    paper_->setAccessibleName(tr("Paper"));
    paper_->addItems({tr("A4"), tr("Letter")});
    paper_->setCurrentIndex(usualPaper(units_.inches) == PaperSize::Letter ? 1 : 0);
    path_->setObjectName(QStringLiteral("path"));
    path_->setAccessibleName(tr("Where to"));
    csv_->setObjectName(QStringLiteral("csv"));
    progress_->setObjectName(QStringLiteral("progress"));
    progress_->setAccessibleName(tr("How far it is"));
    progress_->hide();
    word_->setObjectName(QStringLiteral("word"));
    word_->setWordWrap(true);
    auto* form = new QFormLayout;
    form->addRow(tr("Make"), how_);
    form->addRow(tr("Paper"), paper_);
    form->addRow(tr("Where to"), buildWhere());
    form->addRow(QString(), csv_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    const auto add = [&](const QString& text, const char* name, QDialogButtonBox::ButtonRole role) {
        QPushButton* made = buttons->addButton(text, role);
        made->setObjectName(QString::fromLatin1(name));
        return made;
    };
    make_ = add(tr("&Make the sheets"), "make", QDialogButtonBox::ActionRole);
    stop_ = add(tr("S&top"), "stop", QDialogButtonBox::ActionRole);
    make_->setDefault(true);
    stop_->setEnabled(false);
    QPushButton* all = add(tr("Choose &all"), "all", QDialogButtonBox::ResetRole);
    QPushButton* none = add(tr("Choose &none"), "none", QDialogButtonBox::ResetRole);
    connect(make_, &QPushButton::clicked, this, &SheetsDialog::make);
    connect(stop_, &QPushButton::clicked, run_, &SheetsRun::stop);
    connect(all, &QPushButton::clicked, this, [this] { choose(true); });
    connect(none, &QPushButton::clicked, this, [this] { choose(false); });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(machines_, &QListWidget::itemChanged, this, &SheetsDialog::check);
    connect(path_, &QLineEdit::textChanged, this, &SheetsDialog::check);
    connect(how_, &QComboBox::currentIndexChanged, this, &SheetsDialog::suggestPath);
    auto* lines = new QVBoxLayout(this);
    lines->addWidget(machines_, 1);
    lines->addLayout(form);
    lines->addWidget(word_);
    lines->addWidget(progress_);
    lines->addWidget(buttons);
    const int em = fontMetrics().height();
    resize(44 * em, 34 * em);
}

QStringList SheetsDialog::chosen() const {
    QStringList tags;
    for (int i = 0; i < machines_->count(); ++i)
        if (machines_->item(i)->checkState() == Qt::Checked)
            tags << machines_->item(i)->data(Qt::UserRole).toString();
    return tags;
}

void SheetsDialog::choose(bool all) {
    for (int i = 0; i < machines_->count(); ++i)
        machines_->item(i)->setCheckState(all ? Qt::Checked : Qt::Unchecked);
}

void SheetsDialog::check() {
    const auto count = chosen().size();
    const bool ready = count > 0 && !path_->text().trimmed().isEmpty() && !run_->running();
    make_->setEnabled(ready);
    word_->setText(machines_->count() == 0 ? tr("No machine of this round has a finding to put on a sheet.")
                                           : tr("%1 of %2 chosen.").arg(count).arg(machines_->count()));
}

void SheetsDialog::suggestPath() {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QString name = QStringLiteral("sheets-%1").arg(shown(list_->until));
    path_->setText(folder + u'/' + name + (how_->currentIndex() == 0 ? QStringLiteral(".pdf") : QString()));
}

void SheetsDialog::askPath() {
    auto* ask = new QFileDialog(this, tr("Where to"));
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setAcceptMode(QFileDialog::AcceptSave);
    if (how_->currentIndex() == 1) {
        ask->setAcceptMode(QFileDialog::AcceptOpen);
        ask->setFileMode(QFileDialog::Directory);
        ask->setOption(QFileDialog::ShowDirsOnly);
    } else {
        ask->setNameFilter(tr("PDF (*.pdf)"));
        ask->setDefaultSuffix(QStringLiteral("pdf"));
        ask->selectFile(path_->text());
    }
    connect(ask, &QFileDialog::fileSelected, path_, &QLineEdit::setText);
    ask->open();
}

void SheetsDialog::make() {
    SheetsOrder order;
    order.list = list_;
    order.round = round_;
    order.machines = chosen();
    order.path = path_->text().trimmed();
    order.folder = how_->currentIndex() == 1;
    order.csv = csv_->isChecked();
    order.paper = paper_->currentIndex() == 1 ? PaperSize::Letter : PaperSize::A4;
    order.units = units_;
    progress_->show();
    make_->setEnabled(false);
    stop_->setEnabled(true);
    run_->start(std::move(order));
}

void SheetsDialog::ended(int count, const QString& trouble) {
    check();
    stop_->setEnabled(false);
    const QString told = tr("%1 made.").arg(counted(count, tr("sheet"), tr("sheets")));
    word_->setText(trouble.isEmpty() ? told : tr("%1\n%2").arg(told, trouble));
    if (count > 0) emit made(count, path_->text().trimmed());
}

}  // namespace fettle
