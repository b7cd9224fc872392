#include "ui/dialogs/event_dialog.h"

#include <QComboBox>
#include <QDateTimeEdit>
#include <QPlainTextEdit>
#include <QTimeZone>

#include "core/fleet/who.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

bool needsWords(const QString& kind) {
    return kind == QStringLiteral("note") || kind == QStringLiteral("other");
}

}  // namespace

EventDialog::EventDialog(const Theme& theme, const QString& machine, Instant time, const QTimeZone& zone,
                         QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("eventDialog"), tr("Note or event: %1").arg(machine), tr("Keep"),
                   parent),
      machine_(machine),
      zone_(zone),
      kind_(new QComboBox(this)),
      at_(new QComboBox(this)),
      time_(new QDateTimeEdit(this)),
      text_(new QPlainTextEdit(this)) {
    for (const Word& word : eventKinds())
        kind_->addItem(word.text, shown(word.key));
    at_->setEditable(true);
    time_->setTimeSpec(Qt::UTC);  // the field knows no zones: it holds the clock's reading
    setTime(time);
    time_->setDisplayFormat(QStringLiteral("d MMMM yyyy HH:mm"));
    time_->setCalendarPopup(true);
    text_->setTabChangesFocus(true);
    text_->setFixedHeight(fontMetrics().lineSpacing() * 5);
    addField(tr("What"), kind_, "kind");
    addField(tr("Where (may be empty)"), at_, "at");
    addField(tr("When, %1").arg(QString::fromUtf8(zone_.id())), time_, "time");
    addField(tr("In words"), text_, "text");
    text_->setFocus();
    connect(kind_, &QComboBox::currentIndexChanged, this, &EventDialog::check);
    connect(text_, &QPlainTextEdit::textChanged, this, &EventDialog::check);
    connect(this, &QDialog::accepted, this, [this] { emit given(event()); });
    check();
}

void EventDialog::setPlaces(const QStringList& places) {
    const QString typed = at_->currentText();
    at_->clear();
    at_->addItem(QString());
    at_->addItems(places);
    at_->setEditText(typed);
}

void EventDialog::setEvent(const Event& event) {
    kind_->setCurrentIndex(kind_->findData(shown(event.kind)));
    at_->setEditText(shown(event.at));
    setTime(event.time);
    text_->setPlainText(shown(event.text));
}

void EventDialog::setTime(Instant time) {
    const QDateTime there = siteTime(time, zone_);
    time_->setDateTime(QDateTime(there.date(), there.time(), Qt::UTC));
}

void EventDialog::check() {
    const bool lacking = needsWords(kind_->currentData().toString()) && kept(text_->toPlainText()).empty();
    lacks(lacking ? tr("A note needs words.") : QString());
}

Event EventDialog::event() const {
    Event event;
    event.machine = kept(machine_);
    event.time = Instant(
        std::chrono::milliseconds(QDateTime(time_->date(), time_->time(), zone_).toMSecsSinceEpoch()));
    event.kind = kept(kind_->currentData().toString());
    event.at = kept(at_->currentText());
    event.text = kept(text_->toPlainText());
    event.by = orLoginName({});
    return event;
}

}  // namespace fettle
