#include "ui/dialogs/balance_readings.h"

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

// Empty: no text. A text that is no number gives NaN.
std::optional<double> typed(const QLineEdit* edit) {
    const QString text = edit ? edit->text().trimmed() : QString();
    if (text.isEmpty()) return std::nullopt;
    bool good = false;
    const double byLocale = QLocale().toDouble(text, &good);
    return good ? byLocale : parseNumber(kept(text)).value_or(NAN);
}

QString plainNumber(double value) {
    return QLocale().toString(value, 'g', 5);
}

bool same(const std::vector<VibrationReading>& a, const std::vector<VibrationReading>& b) {
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i)
        if (a[i].amount != b[i].amount || a[i].degrees != b[i].degrees) return false;
    return true;
}

}  // namespace

BalanceReadings::BalanceReadings(const Theme& theme, const QString& name, const QString& title, bool phases,
                                 QWidget* parent)
    : QWidget(parent), theme_(theme), phases_(phases), unit_(new QLabel(this)), note_(new QLabel(this)) {
    setObjectName(name);
    auto* label = new QLabel(title, this);
    label->setMinimumWidth(fontMetrics().averageCharWidth() * 12);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(3);
    row->addWidget(label);
    for (int i = 1; i <= kRepeats; ++i) {
        Pair pair;
        pair.amount = addEdit(name + QStringLiteral("amount%1").arg(i),
                              tr("%1, amount, reading %2").arg(title, QString::number(i)), 6);
        row->addWidget(pair.amount);
        if (phases) {
            pair.phase = addEdit(name + QStringLiteral("phase%1").arg(i),
                                 tr("%1, phase in degrees, reading %2").arg(title, QString::number(i)), 5);
            pair.sign = new QLabel(QStringLiteral("@"), this);
            row->addWidget(pair.sign);
            row->addWidget(pair.phase);
        }
        row->addSpacing(6);
        showPair(pair, i <= kUsual);
        pairs_.push_back(pair);
    }
    row->addWidget(unit_);
    row->addStretch(1);
    note_->setObjectName(name + QStringLiteral("Note"));
    note_->setWordWrap(true);
    note_->hide();
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(1);
    all->addLayout(row);
    all->addWidget(note_);
    connect(&theme_, &Theme::changed, this, &BalanceReadings::showNote);
}

QLineEdit* BalanceReadings::addEdit(const QString& name, const QString& title, int letters) {
    auto* edit = new QLineEdit(this);
    edit->setObjectName(name);
    edit->setAccessibleName(title);
    edit->setToolTip(title);
    edit->setFixedWidth(fontMetrics().averageCharWidth() * (letters + 3));
    connect(edit, &QLineEdit::textEdited, this, &BalanceReadings::read);
    return edit;
}

void BalanceReadings::showPair(const Pair& pair, bool visible) {
    for (QWidget* part : std::initializer_list<QWidget*>{pair.amount, pair.sign, pair.phase})
        if (part) part->setVisible(visible);
}

void BalanceReadings::setUnit(const QString& unit) {
    unit_->setText(unit);
}

void BalanceReadings::setReadOnly(bool readOnly) {
    for (const Pair& pair : pairs_) {
        pair.amount->setReadOnly(readOnly);
        if (pair.phase) pair.phase->setReadOnly(readOnly);
    }
}

void BalanceReadings::setReadings(const std::vector<VibrationReading>& readings) {
    if (same(readings, readings_)) return;
    readings_ = readings;
    refusal_.clear();
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
        const bool there = i < readings.size();
        showPair(pairs_[i], there || int(i) < kUsual);
        pairs_[i].amount->setText(there ? plainNumber(readings[i].amount) : QString());
        if (pairs_[i].phase)
            pairs_[i].phase->setText(there && readings[i].degrees ? plainNumber(*readings[i].degrees)
                                                                  : QString());
    }
    showNote();
}

void BalanceReadings::read() {
    std::vector<VibrationReading> readings;
    refusal_.clear();
    for (const Pair& pair : pairs_) {
        const auto amount = typed(pair.amount), phase = typed(pair.phase);
        if ((amount && !(*amount >= 0 && *amount < 1e6)) || (phase && !(std::abs(*phase) <= 3600)))
            refusal_ = tr("Amounts must be numbers from 0 on, phases degrees.");
        else if (amount && (phase || !phases_))
            readings.push_back({*amount, phase});
    }
    showNote();
    if (!refusal_.isEmpty() || same(readings, readings_)) return;
    readings_ = readings;
    emit edited(readings_);
}

void BalanceReadings::setNote(const QString& words, bool trouble) {
    words_ = words;
    trouble_ = trouble;
    showNote();
}

void BalanceReadings::showNote() {
    const bool refused = !refusal_.isEmpty();
    note_->setText(refused ? refusal_ : words_);
    note_->setVisible(!note_->text().isEmpty());
    setInk(*note_, theme_, refused || trouble_ ? Role::Trouble : Role::MutedInk);
}

}  // namespace fettle
