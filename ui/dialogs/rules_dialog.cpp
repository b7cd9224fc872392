#include "ui/dialogs/rules_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>

#include "core/base/json_object.h"
#include "ui/model/words.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

QString keysText(const std::string& json) {
    const auto parsed = parseJson(json, "");
    return shown(parsed ? parsed->dump(-1, ' ', false, Json::error_handler_t::replace) : json);
}

}  // namespace

RulesDialog::RulesDialog(FleetWork& work, const Theme& theme, QWidget* parent)
    : QDialog(parent),
      work_(work),
      word_(new QLabel(this)),
      table_(new QTableView(this)),
      model_(new QStandardItemModel(0, 3, this)),
      remove_(new QPushButton(tr("&Remove"), this)) {
    setObjectName(QStringLiteral("rulesDialog"));
    setWindowTitle(tr("Rules for reading files"));
    setAttribute(Qt::WA_DeleteOnClose);
    word_->setObjectName(QStringLiteral("rulesWord"));
    word_->setWordWrap(true);
    table_->setObjectName(QStringLiteral("rules"));
    table_->setAccessibleName(tr("Rules for reading files"));
    remove_->setObjectName(QStringLiteral("ruleRemove"));
    model_->setHorizontalHeaderLabels({tr("Files"), tr("are taken for"), tr("By")});
    table_->setModel(model_);
    setRuled(*table_, theme);
    const int wide = fontMetrics().averageCharWidth();
    table_->setColumnWidth(0, wide * 44);
    table_->setColumnWidth(2, wide * 12);
    keepHeadsWhole(*table_);
    table_->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(remove_, QDialogButtonBox::ActionRole);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(remove_, &QPushButton::clicked, this, &RulesDialog::removeCurrent);
    connect(&work_, &FleetWork::changedFleet, this, &RulesDialog::read);
    auto* all = new QVBoxLayout(this);
    all->addWidget(word_);
    all->addWidget(table_, 1);
    all->addWidget(buttons);
    resize(wide * 120, fontMetrics().height() * 20);
    read();
}

void RulesDialog::read() {
    work_.ask<std::vector<ReadingRuleEntry>>(
        this, QStringLiteral("rules"),
        [](FleetFile& fleet, const CancelToken&) { return fleet.readingRules().all(); },
        [this](Result<std::vector<ReadingRuleEntry>> rules) {
            if (!rules) return word_->setText(sentence(rules.error()));
            show(std::move(*rules));
        });
}

void RulesDialog::show(std::vector<ReadingRuleEntry> rules) {
    rules_ = std::move(rules);
    model_->removeRows(0, model_->rowCount());
    for (const ReadingRuleEntry& rule : rules_) {
        QList<QStandardItem*> row;
        for (const QString& text : {shown(rule.pattern), keysText(rule.json), shown(rule.by)}) {
            row << new QStandardItem(text);
            row.back()->setEditable(false);
            row.back()->setToolTip(text);
        }
        model_->appendRow(row);
    }
    word_->setText(
        rules_.empty()
            ? tr("No rule is kept. Rules are made where a file's facts are typed, before it comes in.")
            : tr("They fill what neither a file nor its sidecar says; the one with more letters of "
                 "its own comes first."));
    if (!rules_.empty()) table_->setCurrentIndex(model_->index(0, 0));
    remove_->setEnabled(!rules_.empty() && work_.writable());
}

void RulesDialog::removeCurrent() {
    const int row = table_->currentIndex().row();
    if (row < 0 || row >= int(rules_.size())) return;
    work_.write<void>(
        this,
        [id = rules_[std::size_t(row)].id](FleetFile& fleet) { return fleet.readingRules().remove(id); },
        [this](Status status) {
            if (!status) return word_->setText(sentence(status.error()));
            emit changed();
        });
}

}  // namespace fettle
