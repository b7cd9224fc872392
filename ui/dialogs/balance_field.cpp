#include "ui/dialogs/balance_field.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QVBoxLayout>
#include <cmath>

#include "core/base/text.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

std::optional<double> typed(const QString& text) {
    bool good = false;
    const double byLocale = QLocale().toDouble(text, &good);
    if (good) return byLocale;
    return parseNumber(kept(text));
}

}  // namespace

BalanceField::BalanceField(const Theme& theme, const QString& name, const QString& title, const QString& unit,
                           NumberRange range, QWidget* parent)
    : QWidget(parent),
      theme_(theme),
      range_(range),
      edit_(new QLineEdit(this)),
      unit_(new QLabel(unit, this)),
      note_(new QLabel(this)) {
    setObjectName(name + QStringLiteral("Field"));
    edit_->setObjectName(name);
    edit_->setAccessibleName(title);
    setUnit(unit);
    note_->setObjectName(name + QStringLiteral("Note"));
    note_->setWordWrap(true);
    note_->hide();
    setLetters(9);
    setFocusProxy(edit_);
    auto* line = new QHBoxLayout;
    line->setContentsMargins(0, 0, 0, 0);
    line->addWidget(edit_);
    line->addWidget(unit_);
    line->addStretch(1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(1);
    all->addLayout(line);
    all->addWidget(note_);
    connect(edit_, &QLineEdit::textEdited, this, &BalanceField::read);
    connect(&theme_, &Theme::changed, this, &BalanceField::showNote);
}

void BalanceField::setLetters(int letters) {
    edit_->setFixedWidth(fontMetrics().averageCharWidth() * (letters + 3));
}

void BalanceField::setUnit(const QString& unit) {
    unit_->setText(unit);
    unit_->setVisible(!unit.isEmpty());
    edit_->setToolTip(unit.isEmpty() ? edit_->accessibleName()
                                     : tr("%1, in %2").arg(edit_->accessibleName(), unit));
}

void BalanceField::setReadOnly(bool readOnly) {
    edit_->setReadOnly(readOnly);
}

QString BalanceField::text(double value) const {
    return QLocale().toString(value, 'g', 6);
}

void BalanceField::setValue(std::optional<double> value) {
    if (value == value_ && (value_ || edit_->text().isEmpty() || edit_->hasFocus())) return;
    value_ = value;
    refusal_.clear();
    edit_->setText(value ? text(*value) : QString());
    showNote();
}

std::optional<double> BalanceField::value() const {
    return value_;
}

void BalanceField::read() {
    const QString text = edit_->text().trimmed();
    const auto number = typed(text);
    refusal_.clear();
    if (text.isEmpty()) {
        value_.reset();
    } else if (!number || !std::isfinite(*number)) {
        refusal_ = tr("This is not a number.");
    } else if (*number < range_.least || *number > range_.most) {
        refusal_ = tr("Must be from %1 to %2.").arg(range_.least).arg(range_.most);
    } else {
        value_ = *number;
    }
    showNote();
    if (refusal_.isEmpty()) emit edited(value_);
}

void BalanceField::setNote(const QString& words, bool trouble) {
    if (words_ == words && trouble_ == trouble) return;
    words_ = words;
    trouble_ = trouble;
    showNote();
}

void BalanceField::showNote() {
    const bool refused = !refusal_.isEmpty();
    note_->setText(refused ? refusal_ : words_);
    note_->setVisible(!note_->text().isEmpty());
    setInk(*note_, theme_, refused || trouble_ ? Role::Trouble : Role::MutedInk);
}

}  // namespace fettle
