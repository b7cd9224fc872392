#include "ui/dialogs/optional_date.h"

#include <QCheckBox>
#include <QDateEdit>
#include <QHBoxLayout>

#include "ui/model/words.h"

namespace fettle {

OptionalDate::OptionalDate(const std::string& day, QWidget* parent)
    : QWidget(parent), there_(new QCheckBox(this)), date_(new QDateEdit(QDate::currentDate(), this)) {
    there_->setObjectName(QStringLiteral("there"));
    there_->setAccessibleName(tr("There is such a day"));
    there_->setToolTip(there_->accessibleName());
    date_->setObjectName(QStringLiteral("date"));
    date_->setAccessibleName(tr("Day"));
    date_->setDisplayFormat(dateFormat());
    date_->setCalendarPopup(true);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(there_);
    row->addWidget(date_, 1);
    setFocusProxy(there_);
    connect(there_, &QCheckBox::toggled, date_, &QWidget::setEnabled);
    connect(there_, &QCheckBox::toggled, this, &OptionalDate::changed);
    connect(date_, &QDateEdit::dateChanged, this, &OptionalDate::changed);
    setDay(day);
}

std::string OptionalDate::day() const {
    return there_->isChecked() ? kept(date_->date().toString(Qt::ISODate)) : std::string();
}

void OptionalDate::setDay(const std::string& day) {
    const QDate date = QDate::fromString(shown(day), Qt::ISODate);
    there_->setChecked(date.isValid());
    date_->setEnabled(date.isValid());
    if (date.isValid()) date_->setDate(date);
}

}  // namespace fettle
