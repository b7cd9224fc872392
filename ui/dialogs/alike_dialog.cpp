#include "ui/dialogs/alike_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/model/words.h"
#include "ui/pages/register_fields.h"

namespace fettle {

AlikeDialog::AlikeDialog(const std::vector<MachineEntry>& machines, QWidget* parent)
    : QDialog(parent),
      field_(new QComboBox(this)),
      value_(new QComboBox(this)),
      filter_(new QLineEdit(this)),
      note_(new QLineEdit(this)),
      list_(new QListWidget(this)),
      fromDay_(new QCheckBox(tr("the machines were changed on"), this)),
      day_(new QDateEdit(QDate::currentDate(), this)),
      word_(new QLabel(this)),
      set_(new QPushButton(tr("&Set"), this)) {
    setObjectName(QStringLiteral("alikeDialog"));
    setWindowTitle(tr("Set one value for several machines"));
    setAttribute(Qt::WA_DeleteOnClose);
    for (const auto& groups : {machineFields(), driverFields()})
        for (const FieldGroup& group : groups)
            for (const FieldSpec& spec : group.fields) {
                if (spec.pointer == "/tag" || spec.pointer == "/asset") continue;
                fields_.push_back(spec);
                field_->addItem(spec.unit.isEmpty() ? spec.label
                                                    : QStringLiteral("%1, %2").arg(spec.label, spec.unit));
            }
    for (const MachineEntry& machine : machines) {
        if (!machine.removedOn.empty()) continue;
        auto* item = new QListWidgetItem(
            QStringLiteral("%1  %2  %3").arg(shown(machine.tag), shown(machine.area), shown(machine.service)),
            list_);
        item->setData(Qt::UserRole, shown(machine.tag));
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsUserCheckable | Qt::ItemIsSelectable);
        item->setCheckState(Qt::Unchecked);
    }
    build();
    showWords();
    tell();
}

void AlikeDialog::build() {
    const auto name = [](QWidget* widget, const char* object, const QString& says) {
        widget->setObjectName(QString::fromLatin1(object));
        widget->setAccessibleName(says);
    };
    name(field_, "alikeField", tr("Field"));
    name(value_, "alikeValue", tr("Value"));
    name(filter_, "alikeFilter", tr("Find machines"));
    name(note_, "alikeNote", tr("Why it changed"));
    name(list_, "alikeMachines", tr("Machines"));
    name(fromDay_, "alikeFromDay", fromDay_->text());
    name(day_, "alikeDay", tr("Valid from"));
    name(set_, "alikeSet", tr("Set"));
    word_->setObjectName(QStringLiteral("alikeWord"));
    value_->setEditable(true);
    value_->setToolTip(tr("An empty value takes the field away."));
    filter_->setPlaceholderText(tr("find: tag, area, service"));
    filter_->setClearButtonEnabled(true);
    day_->setDisplayFormat(dateFormat());
    day_->setCalendarPopup(true);
    day_->setEnabled(false);
    auto* form = new QFormLayout;
    form->addRow(tr("&Field"), field_);
    form->addRow(tr("&Value"), value_);
    form->addRow(fromDay_, day_);
    form->addRow(tr("&Why"), note_);
    auto* ticks = new QHBoxLayout;
    auto* tick = new QPushButton(tr("&Tick all shown"), this);
    tick->setObjectName(QStringLiteral("alikeTick"));
    ticks->addWidget(filter_, 1);
    ticks->addWidget(tick);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    buttons->addButton(set_, QDialogButtonBox::AcceptRole);
    auto* all = new QVBoxLayout(this);
    all->addLayout(form);
    all->addLayout(ticks);
    all->addWidget(list_, 1);
    all->addWidget(word_);
    all->addWidget(buttons);
    connect(field_, &QComboBox::currentIndexChanged, this, &AlikeDialog::showWords);
    connect(fromDay_, &QCheckBox::toggled, day_, &QWidget::setEnabled);
    connect(filter_, &QLineEdit::textChanged, this, &AlikeDialog::filter);
    connect(list_, &QListWidget::itemChanged, this, &AlikeDialog::tell);
    connect(tick, &QPushButton::clicked, this, [this] {
        for (int i = 0; i < list_->count(); ++i)
            if (!list_->item(i)->isHidden()) list_->item(i)->setCheckState(Qt::Checked);
    });
    connect(set_, &QPushButton::clicked, this, &AlikeDialog::give);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    resize(fontMetrics().averageCharWidth() * 70, fontMetrics().height() * 32);
}

void AlikeDialog::filter(const QString& text) {
    for (int i = 0; i < list_->count(); ++i)
        list_->item(i)->setHidden(!list_->item(i)->text().contains(text, Qt::CaseInsensitive));
}

void AlikeDialog::showWords() {
    const FieldSpec& spec = fields_[std::size_t(field_->currentIndex())];
    value_->clear();
    value_->addItems(spec.words);
    value_->setEditText({});
}

QStringList AlikeDialog::ticked() const {
    QStringList tags;
    for (int i = 0; i < list_->count(); ++i)
        if (list_->item(i)->checkState() == Qt::Checked)
            tags << list_->item(i)->data(Qt::UserRole).toString();
    return tags;
}

void AlikeDialog::tell() {
    const auto count = ticked().size();
    word_->setText(
        tr("%1 ticked. What a machine's description does not allow is listed and left.").arg(count));
    set_->setEnabled(count > 0);
}

void AlikeDialog::give() {
    const FieldSpec& spec = fields_[std::size_t(field_->currentIndex())];
    const QString text = value_->currentText().trimmed();
    const std::string from = fromDay_->isChecked() ? kept(day_->date().toString(Qt::ISODate)) : std::string();
    emit wanted(ticked(), spec.pointer, text.isEmpty() ? Json() : valueOf(text, spec.kind), from,
                kept(note_->text()));
    accept();
}

}  // namespace fettle
