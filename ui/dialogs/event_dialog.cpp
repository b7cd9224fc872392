#include "ui/dialogs/event_dialog.h"

#include <QComboBox>
#include <QDateTimeEdit>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTimeZone>

#include "core/base/text.h"
#include "core/fleet/history.h"
#include "core/fleet/who.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/panels/photo_strip.h"

namespace fettle {

namespace {

bool needsWords(const QString& kind) {
    return kind == QStringLiteral("note") || kind == QStringLiteral("other");
}

}  // namespace

EventDialog::EventDialog(FleetWork& work, const Theme& theme, const QString& machine, Instant time,
                         const QTimeZone& zone, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("eventDialog"), tr("Note or event: %1").arg(machine), tr("Keep"),
                   parent),
      machine_(machine),
      zone_(zone),
      kind_(new QComboBox(this)),
      at_(new QComboBox(this)),
      time_(new QDateTimeEdit(this)),
      grams_(new QDoubleSpinBox(this)),
      grease_(new QLineEdit(this)),
      text_(new QPlainTextEdit(this)),
      photos_(new PhotoStrip(work, theme, true, this)) {
    for (const Word& word : eventKinds())
        kind_->addItem(word.text, shown(word.key));
    at_->setEditable(true);
    time_->setTimeSpec(Qt::UTC);  // the field knows no zones: it holds the clock's reading
    setTime(time);
    time_->setDisplayFormat(momentFormat());
    time_->setCalendarPopup(true);
    grams_->setRange(0, 100000);
    grams_->setDecimals(1);
    grams_->setSuffix(tr(" g"));
    grams_->setSpecialValueText(tr("not said"));
    grease_->setPlaceholderText(tr("lithium complex, NLGI 2"));
    text_->setTabChangesFocus(true);
    text_->setFixedHeight(fontMetrics().lineSpacing() * 5);
    setMinimumWidth(fontMetrics().averageCharWidth() * 76);
    addFields();
    connect(kind_, &QComboBox::currentIndexChanged, this, &EventDialog::check);
    connect(text_, &QPlainTextEdit::textChanged, this, &EventDialog::check);
    connect(this, &QDialog::accepted, this, [this] { emit given(event(), photos_->photos()); });
    check();
}

void EventDialog::addFields() {
    addField(tr("What"), kind_, "kind");
    addField(tr("Where (may be empty)"), at_, "at");
    addField(tr("When, %1").arg(QString::fromUtf8(zone_.id())), time_, "time");
    addField(tr("Grease, grams"), grams_, "grams");
    addField(tr("Grease, type"), grease_, "grease");
    addField(tr("In words"), text_, "text");
    form()->addRow(tr("Photographs"), photos_);
    text_->setFocus();
}

void EventDialog::setPlaces(const QStringList& places) {
    const QString typed = at_->currentText();
    at_->clear();
    at_->addItem(QString());
    at_->addItems(places);
    at_->setEditText(typed);
}

void EventDialog::setEvent(const Event& event, std::vector<NewPhoto> photos) {
    kind_->setCurrentIndex(kind_->findData(shown(event.kind)));
    at_->setEditText(shown(event.at));
    setTime(event.time);
    text_->setPlainText(shown(event.text));
    photos_->setNew(std::move(photos));
}

void EventDialog::setCorrected(const Event& of) {
    corrected_ = of;
    setWindowTitle(tr("Correction: %1").arg(machine_));
    explain(tr("A new note about \"%1\" of %2. What was said then stays and is shown with it.")
                .arg(of.text.empty() ? kind_->itemText(kind_->findData(shown(of.kind))) : shown(of.text),
                     momentText(of.time, zone_)));
    kind_->setCurrentIndex(kind_->findData(QStringLiteral("note")));
    at_->setEditText(shown(of.at));
    kind_->setEnabled(false);
    at_->setEnabled(false);
}

void EventDialog::setTime(Instant time) {
    const QDateTime there = siteTime(time, zone_);
    time_->setDateTime(QDateTime(there.date(), there.time(), Qt::UTC));
}

QString EventDialog::kind() const {
    return kind_->currentData().toString();
}

// What a kind usually has to say is asked for.
void EventDialog::check() {
    const bool greasing = kind() == QStringLiteral("greasing");
    for (QWidget* field : std::initializer_list<QWidget*>{grams_, grease_}) {
        field->setVisible(greasing);
        form()->labelForField(field)->setVisible(greasing);
    }
    QString hint;
    if (kind() == QStringLiteral("part")) hint = tr("which part, its designation, clearance and seal");
    if (kind() == QStringLiteral("repair") || kind() == QStringLiteral("inspection"))
        hint = tr("what was done; alignment before and after: offset, angle, with their units");
    text_->setPlaceholderText(hint);
    const bool lacking = needsWords(kind()) && kept(text_->toPlainText()).empty();
    lacks(lacking ? tr("A note needs words.") : QString());
}

std::string EventDialog::words() const {
    const std::string text = kept(text_->toPlainText());
    if (corrected_) return correctionText(*corrected_, text);
    if (kind() != QStringLiteral("greasing")) return text;
    std::vector<std::string> parts;
    if (grams_->value() > 0) parts.push_back(QString::number(grams_->value(), 'g', 6).toStdString() + " g");
    for (const std::string& part : {kept(grease_->text()), text})
        if (!part.empty()) parts.push_back(part);
    return joined(parts, ", ");
}

Event EventDialog::event() const {
    Event event;
    event.machine = kept(machine_);
    event.time = Instant(
        std::chrono::milliseconds(QDateTime(time_->date(), time_->time(), zone_).toMSecsSinceEpoch()));
    event.kind = kept(kind());
    event.at = kept(at_->currentText());
    event.text = words();
    event.by = orLoginName({});
    return event;
}

}  // namespace fettle
