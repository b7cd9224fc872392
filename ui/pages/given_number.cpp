#include "ui/pages/given_number.h"

#include <QLineEdit>

namespace fettle {

GivenNumber::GivenNumber(QWidget* parent) : QDoubleSpinBox(parent) {
    connect(this, &QDoubleSpinBox::valueChanged, this, &GivenNumber::showUnit);
}

std::optional<double> GivenNumber::given() const {
    return value() > minimum() ? std::optional(value()) : std::nullopt;
}

void GivenNumber::setGiven(std::optional<double> value) {
    setValue(value.value_or(minimum()));
}

void GivenNumber::setWords(const QString& unit, const QString& otherwise) {
    unit_ = unit;
    lineEdit()->setPlaceholderText(otherwise);
    showUnit();
}

void GivenNumber::showUnit() {
    setSuffix(given() ? unit_ : QString());
}

bool GivenNumber::isEmpty(QString text) const {
    if (!suffix().isEmpty() && text.endsWith(suffix())) text.chop(suffix().size());
    return text.trimmed().isEmpty();
}

QString GivenNumber::textFromValue(double value) const {
    return value > minimum() ? QDoubleSpinBox::textFromValue(value) : QString();
}

double GivenNumber::valueFromText(const QString& text) const {
    return isEmpty(text) ? minimum() : QDoubleSpinBox::valueFromText(text);
}

QValidator::State GivenNumber::validate(QString& text, int& at) const {
    return isEmpty(text) ? QValidator::Acceptable : QDoubleSpinBox::validate(text, at);
}

}  // namespace fettle
