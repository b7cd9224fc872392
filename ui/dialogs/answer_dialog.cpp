#include "ui/dialogs/answer_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/pages/page_parts.h"

namespace fettle {

AnswerDialog::AnswerDialog(const Theme& theme, const QString& name, const QString& title, const QString& yes,
                           QWidget* parent)
    : QDialog(parent), explanation_(new QLabel(this)), lack_(new QLabel(this)), form_(new QFormLayout) {
    setObjectName(name);
    setWindowTitle(title);
    setAttribute(Qt::WA_DeleteOnClose);
    explanation_->setWordWrap(true);
    explanation_->hide();
    lack_->setObjectName(QStringLiteral("lack"));
    lack_->setWordWrap(true);
    setInk(*lack_, theme.colour(Role::Trouble));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    yes_ = buttons->addButton(yes, QDialogButtonBox::AcceptRole);
    yes_->setObjectName(QStringLiteral("yes"));
    buttons->button(QDialogButtonBox::Cancel)->setObjectName(QStringLiteral("no"));
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(explanation_);
    all->addLayout(form_);
    all->addWidget(lack_);
    all->addWidget(buttons);
    setMinimumWidth(fontMetrics().averageCharWidth() * 62);
}

void AnswerDialog::explain(const QString& text) {
    explanation_->setText(text);
    explanation_->setVisible(!text.isEmpty());
}

void AnswerDialog::lacks(const QString& what) {
    lack_->setText(what);
    lack_->setVisible(!what.isEmpty());
    yes_->setEnabled(what.isEmpty());
}

void AnswerDialog::addField(const QString& label, QWidget* field, const char* name) {
    field->setObjectName(QString::fromLatin1(name));
    field->setAccessibleName(label);
    form_->addRow(label, field);
}

}  // namespace fettle
