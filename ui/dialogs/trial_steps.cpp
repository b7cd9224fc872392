#include "ui/dialogs/trial_steps.h"

#include <QDateTimeEdit>
#include <QPlainTextEdit>

#include "ui/model/site_time.h"

namespace fettle {

namespace {

// The field knows no zones: it holds the clock's reading.
QDateTimeEdit* momentField(Instant time, const QTimeZone& zone, QWidget* parent) {
    auto* field = new QDateTimeEdit(parent);
    field->setTimeSpec(Qt::UTC);
    const QDateTime there = siteTime(time, zone);
    field->setDateTime(QDateTime(there.date(), there.time(), Qt::UTC));
    field->setDisplayFormat(momentFormat());
    field->setCalendarPopup(true);
    return field;
}

Instant momentOf(const QDateTimeEdit& field, const QTimeZone& zone) {
    return Instant(
        std::chrono::milliseconds(QDateTime(field.date(), field.time(), zone).toMSecsSinceEpoch()));
}

}  // namespace

TrialChangeDialog::TrialChangeDialog(const Theme& theme, Instant from, Instant until, const QTimeZone& zone,
                                     QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("trialChangeDialog"), tr("The change is made"), tr("Keep"), parent),
      zone_(zone),
      from_(momentField(from, zone, this)),
      until_(momentField(until, zone, this)) {
    explain(tr("Recordings before the machine was stopped stand for before, those from the moment it turned "
               "again for after; what lies between counts for neither. Times of %1.")
                .arg(QString::fromUtf8(zone.id())));
    addField(tr("Stopped and isolated at"), from_, "trialFrom");
    addField(tr("Turning again, guards fitted, at"), until_, "trialUntil");
    for (QDateTimeEdit* field : {from_, until_})
        connect(field, &QDateTimeEdit::dateTimeChanged, this, &TrialChangeDialog::check);
    connect(this, &QDialog::accepted, this,
            [this] { emit told(momentOf(*from_, zone_), momentOf(*until_, zone_)); });
    check();
}

void TrialChangeDialog::check() {
    lacks(until_->dateTime() < from_->dateTime() ? tr("The machine cannot turn again before it was stopped.")
                                                 : QString());
}

TrialCloseDialog::TrialCloseDialog(const Theme& theme, const QString& verdict, Instant until,
                                   const QTimeZone& zone, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("trialCloseDialog"), tr("Close the trial"), tr("Close the trial"),
                   parent),
      zone_(zone),
      until_(momentField(until, zone, this)),
      remarks_(new QPlainTextEdit(this)) {
    explain(tr("%1\n\nThe result is kept as it is now and never changes. Before the machine goes back to its "
               "work the change is taken out again, checked, and noted as an event.")
                .arg(verdict));
    addField(tr("Recordings count up to"), until_, "trialEnd");
    addField(tr("Remarks: how it was taken out, what was seen"), remarks_, "trialRemarks");
    remarks_->setTabChangesFocus(true);
    remarks_->setFixedHeight(fontMetrics().lineSpacing() * 5);
    connect(this, &QDialog::accepted, this,
            [this] { emit told(momentOf(*until_, zone_), remarks_->toPlainText().trimmed()); });
    lacks({});
}

}  // namespace fettle
