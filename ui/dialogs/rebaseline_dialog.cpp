#include "ui/dialogs/rebaseline_dialog.h"

#include <QDateTimeEdit>
#include <QPlainTextEdit>

#include "core/fleet/who.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"

namespace fettle {

RebaselineDialog::RebaselineDialog(const Theme& theme, const QString& machine, Instant time,
                                   const QTimeZone& zone, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("rebaselineDialog"), tr("New baseline: %1").arg(machine),
                   tr("Begin a new baseline"), parent),
      machine_(machine),
      zone_(zone),
      time_(new QDateTimeEdit(this)),
      reason_(new QPlainTextEdit(this)) {
    explain(tr(
        "From this moment on, changes of this machine are weighed against what it does afterwards: its "
        "trends "
        "begin a new segment, and the first six weeks of running become the new baseline. Until there are "
        "at least 14 days of it no change is weighed. Zones, limits and the lines of bearings are judged as "
        "before. The old baseline stays in the fleet file and is still used to verify earlier work. A repair "
        "or a new part begins a baseline by itself."));
    const QDateTime there = siteTime(time, zone_);
    time_->setTimeSpec(Qt::UTC);  // the field knows no zones: it holds the clock's reading
    time_->setDateTime(QDateTime(there.date(), there.time(), Qt::UTC));
    time_->setDisplayFormat(momentFormat());
    time_->setCalendarPopup(true);
    reason_->setTabChangesFocus(true);
    reason_->setFixedHeight(fontMetrics().lineSpacing() * 4);
    addField(tr("From, %1").arg(QString::fromUtf8(zone_.id())), time_, "time");
    addField(tr("Why"), reason_, "reason");
    reason_->setFocus();
    connect(reason_, &QPlainTextEdit::textChanged, this, &RebaselineDialog::check);
    connect(this, &QDialog::accepted, this, [this] {
        const auto ms = QDateTime(time_->date(), time_->time(), zone_).toMSecsSinceEpoch();
        emit given({0, kept(machine_), Instant(std::chrono::milliseconds(ms)), "rebaseline", "",
                    kept(reason_->toPlainText()), orLoginName({})});
    });
    check();
}

void RebaselineDialog::check() {
    lacks(kept(reason_->toPlainText()).empty() ? tr("A reason is needed: it stands in the machine's history.")
                                               : QString());
}

}  // namespace fettle
