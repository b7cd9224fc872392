#include "ui/dialogs/round_dialogs.h"

#include <QComboBox>
#include <QDateEdit>
#include <QFormLayout>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "ui/model/engine_words.h"
#include "ui/model/round_words.h"
#include "ui/model/unit_words.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

QString headOf(const RoundMachine& machine) {
    return machine.service.empty() ? shown(machine.tag)
                                   : QStringLiteral("%1, %2").arg(shown(machine.tag), shown(machine.service));
}

QString whyListed(const RoundMachine& machine, const Units& units) {
    const QString why =
        shown(machine.findings.empty() ? machine.changed : machine.findings.front().finding.sentence);
    return withUnitsBeside(weighedAlone(why), units);
}

QString decisionTitle(const std::vector<RoundMachine>& machines, DecisionKind kind) {
    const bool dispute = kind == DecisionKind::Dispute;
    if (machines.size() > 1)
        return (dispute ? DecisionDialog::tr("Dispute: %1 machines")
                        : DecisionDialog::tr("Defer: %1 machines"))
            .arg(machines.size());
    const QString head = headOf(machines.front());
    return (dispute ? DecisionDialog::tr("Dispute: %1") : DecisionDialog::tr("Defer: %1")).arg(head);
}

QDateEdit* dateField(const QDate& date, QWidget* parent) {
    auto* field = new QDateEdit(date, parent);
    field->setDisplayFormat(dateFormat());
    field->setCalendarPopup(true);
    return field;
}

}  // namespace

DecisionDialog::DecisionDialog(const Theme& theme, const std::vector<RoundMachine>& machines,
                               DecisionKind kind, const QDate& earliest, const Units& units, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("decisionDialog"), decisionTitle(machines, kind),
                   kind == DecisionKind::Dispute ? tr("Dispute") : tr("Defer"), parent),
      kind_(kind),
      earliest_(earliest),
      reason_(new QPlainTextEdit(this)) {
    QStringList tags;
    for (const RoundMachine& machine : machines) {
        machines_.push_back(machine.tag);
        tags << shown(machine.tag);
    }
    explain(machines.size() == 1
                ? whyListed(machines.front(), units)
                : tr("The same answer is kept for each of: %1.").arg(tags.join(QStringLiteral(", "))));
    if (kind == DecisionKind::Defer) {
        date_ = dateField(earliest.addDays(6), this);
        addField(tr("Look again on"), date_, "deferTo");
        connect(date_, &QDateEdit::dateChanged, this, &DecisionDialog::check);
    }
    addField(kind == DecisionKind::Dispute ? tr("What speaks against it") : tr("Why it can wait"), reason_,
             "reason");
    reason_->setTabChangesFocus(true);
    reason_->setFixedHeight(fontMetrics().lineSpacing() * 5);
    reason_->setFocus();
    connect(reason_, &QPlainTextEdit::textChanged, this, &DecisionDialog::check);
    connect(this, &QDialog::accepted, this, [this] { emit decided(decisions()); });
    check();
}

std::vector<Decision> DecisionDialog::decisions() const {
    std::vector<Decision> all;
    for (const std::string& machine : machines_) {
        Decision decision;
        decision.machine = machine;
        decision.kind = kind_;
        decision.reason = kept(reason_->toPlainText());
        if (date_) decision.deferTo = kept(date_->date().toString(Qt::ISODate));
        all.push_back(std::move(decision));
    }
    return all;
}

void DecisionDialog::check() {
    if (date_ && date_->date() < earliest_)
        return lacks(tr("The day must be %1 or later.").arg(dateText(kept(earliest_.toString(Qt::ISODate)))));
    lacks(kept(reason_->toPlainText()).empty() ? tr("A reason is needed: it is kept with the round.")
                                               : QString());
}

UnseenDialog::UnseenDialog(const Theme& theme, const std::vector<RoundMachine>& machines, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("unseenDialog"),
                   machines.size() == 1 ? tr("Unseen: %1").arg(headOf(machines.front()))
                                        : tr("Unseen: %1 machines").arg(machines.size()),
                   tr("Give this reason"), parent),
      reason_(new QComboBox(this)),
      words_(new QLineEdit(this)) {
    for (const RoundMachine& machine : machines)
        machines_ << shown(machine.tag);
    const RoundMachine& first = machines.front();
    const QString why = shown(first.unseenWords.empty() ? first.unseenReason : first.unseenWords);
    explain(
        tr("%1 could not be judged: %2. A silent node is its owner's matter, an idle machine production's; "
           "either way the round says why.")
            .arg(machines_.mid(0, 6).join(QStringLiteral(", ")), why));
    for (const Word& word : unseenReasons())
        reason_->addItem(word.text, shown(word.key));
    reason_->setCurrentIndex(std::max(0, reason_->findData(shown(first.unseenReason))));
    addField(tr("Reason"), reason_, "reason");
    addField(tr("In words"), words_, "words");
    connect(this, &QDialog::accepted, this, [this] {
        const QString words = words_->text().trimmed();
        const QString key = reason_->currentData().toString();
        emit answered(machines_, words.isEmpty() ? key : QStringLiteral("%1: %2").arg(key, words));
    });
    lacks({});
}

StartRoundDialog::StartRoundDialog(const Theme& theme, const QString& suggestedDay, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("startRoundDialog"), tr("Open a round"), tr("Open the round"),
                   parent),
      day_(dateField(QDate::fromString(suggestedDay, Qt::ISODate), this)) {
    explain(
        tr("The round takes the seven days up to and with this day, in the site's calendar. The list is "
           "drawn up once and then kept as it is; recordings that come later open lines in the next one."));
    addField(tr("Up to and with"), day_, "until");
    connect(this, &QDialog::accepted, this, [this] { emit dayChosen(day_->date().toString(Qt::ISODate)); });
    lacks({});
}

CloseRoundDialog::CloseRoundDialog(const Theme& theme, const RoundProgress& progress, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("closeRoundDialog"), tr("Close the round"), tr("Close the round"),
                   parent) {
    explain(progress.missing.empty()
                ? tr("Every machine has its answer. A closed round is kept and never changes.")
                : tr("The round can be closed when nothing is missing. It is kept then and never changes."));
    QStringList missing;
    for (const std::string& one : progress.missing)
        missing << roundLackText(one);
    lacks(missing.join(u'\n'));
    connect(this, &QDialog::accepted, this, &CloseRoundDialog::closeConfirmed);
}

}  // namespace fettle
