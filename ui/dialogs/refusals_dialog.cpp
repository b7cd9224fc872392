#include "ui/dialogs/refusals_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/model/words.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

RefusalsDialog::RefusalsDialog(FleetWork& work, const Theme& theme, QWidget* parent)
    : QDialog(parent),
      work_(work),
      word_(new QLabel(this)),
      detail_(new QLabel(this)),
      answeredToo_(new QCheckBox(tr("answered ones too"), this)),
      table_(new QTableView(this)),
      answer_(new QPushButton(tr("&Answered"), this)),
      look_(new QPushButton(tr("&What were they taken for…"), this)) {
    setObjectName(QStringLiteral("refusalsDialog"));
    setWindowTitle(tr("Refused files"));
    setAttribute(Qt::WA_DeleteOnClose);
    word_->setObjectName(QStringLiteral("refusalsWord"));
    table_->setObjectName(QStringLiteral("refusals"));
    answer_->setObjectName(QStringLiteral("answerRefusal"));
    look_->setObjectName(QStringLiteral("lookAtRefusals"));
    look_->setToolTip(
        tr("Shows the files once more; what is missing can be typed and kept as a rule, and what is "
           "mended comes in."));
    connect(look_, &QPushButton::clicked, this, &RefusalsDialog::look);
    table_->setAccessibleName(tr("Refused files"));
    table_->setModel(&refusals_);
    setRuled(*table_, theme);
    const int wide = fontMetrics().averageCharWidth();
    table_->setColumnWidth(RefusalModel::File, wide * 42);
    table_->setColumnWidth(RefusalModel::Place, wide * 16);
    for (const int column : {RefusalModel::Kind, RefusalModel::Since, RefusalModel::Times})
        table_->setColumnWidth(column, wide * (column == RefusalModel::Since ? 24 : 11));
    keepHeadsWhole(*table_);
    table_->horizontalHeader()->setSectionResizeMode(RefusalModel::Rule, QHeaderView::Stretch);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* foot = new QHBoxLayout;
    foot->addWidget(answer_);
    foot->addWidget(look_);
    foot->addWidget(answeredToo_);
    foot->addStretch(1);
    foot->addWidget(buttons);
    auto* all = new QVBoxLayout(this);
    all->addWidget(word_);
    all->addWidget(table_, 1);
    all->addWidget(detail_);
    all->addLayout(foot);
    resize(wide * 150, fontMetrics().height() * 26);
    detail_->setObjectName(QStringLiteral("refusalDetail"));
    detail_->setWordWrap(true);
    detail_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    detail_->setMinimumHeight(2 * fontMetrics().lineSpacing());
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) { tellWhole(current.row()); });
    connect(&refusals_, &QAbstractItemModel::modelReset, this, [this] {
        if (refusals_.rowCount() > 0) table_->setCurrentIndex(refusals_.index(0, 0));
        tellWhole(table_->currentIndex().row());
    });
    connect(answer_, &QPushButton::clicked, this, &RefusalsDialog::answerCurrent);
    connect(answeredToo_, &QCheckBox::toggled, this, &RefusalsDialog::read);
    connect(&work_, &FleetWork::changedFleet, this, &RefusalsDialog::read);
    read();
}

void RefusalsDialog::read() {
    work_.ask<std::vector<Refusal>>(
        this, QStringLiteral("refusals"),
        [all = answeredToo_->isChecked()](FleetFile& fleet, const CancelToken&) {
            return fleet.log().refusals(all);
        },
        [this](Result<std::vector<Refusal>> refusals) {
            if (!refusals) return word_->setText(sentence(refusals.error()));
            word_->setText(refusals->empty()
                               ? tr("Nothing refused waits for an answer.")
                               : tr("%1 files; import them again once mended, or mark them answered.")
                                     .arg(refusals->size()));
            answer_->setEnabled(work_.writable() && !refusals->empty());
            look_->setEnabled(work_.writable() && !refusals->empty());
            refusals_.set(std::move(*refusals));
        });
}

void RefusalsDialog::look() {
    QStringList paths;
    for (int row = 0; const Refusal* refusal = refusals_.at(row); ++row)
        paths << QString::fromStdString(refusal->path);
    emit lookWanted(paths);
}

void RefusalsDialog::tellWhole(int row) {
    const Refusal* refusal = refusals_.at(row);
    if (!refusal) return detail_->clear();
    detail_->setText(
        shown(Error{ErrorKind::Invalid, refusal->path, refusal->place, refusal->rule}.sentence()));
}

void RefusalsDialog::answerCurrent() {
    const Refusal* refusal = refusals_.at(table_->currentIndex().row());
    if (!refusal) return;
    work_.write<void>(
        this, [id = refusal->id](FleetFile& fleet) { return fleet.log().answerRefusal(id); },
        [this](Status status) {
            if (!status) word_->setText(sentence(status.error()));
        });
}

}  // namespace fettle
