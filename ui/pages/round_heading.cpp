#include "ui/pages/round_heading.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>

#include "core/store/day.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/round_before.h"
#include "ui/pages/round_filters.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

QString capital(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

QString roundName(const RoundEntry& round) {
    const QString day = dateText(round.until);
    return round.closedAt ? tr("to %1, closed").arg(day) : tr("to %1, open").arg(day);
}

}  // namespace

QString periodText(const RoundShown& round) {
    if (round.list.until.empty()) return {};
    const QString days = tr("%1 to %2").arg(dateText(round.list.from), dateText(round.list.until));
    if (round.draft()) return tr("%1, a draft: no round is open").arg(days);
    if (round.open()) return tr("%1, open").arg(days);
    return tr("%1, closed on %2 by %3")
        .arg(days, dateText(siteTime(*round.entry->closedAt, siteZone(round.timeZone)).date()),
             shown(round.entry->closedBy));
}

QString periodAge(const RoundShown& round, const QDate& today) {
    constexpr qint64 kFresh = 14;
    const qint64 days = QDate::fromString(shown(round.list.until), Qt::ISODate).daysTo(today);
    return days > kFresh ? tr("ended %1 days ago: newer recordings may tell otherwise").arg(days) : QString();
}

QString progressText(const RoundShown& round) {
    if (round.list.until.empty()) return {};
    const RoundProgress& p = round.progress;
    if (round.draft())
        return tr("%1 machines, %2 of them listed, %3 unseen")
            .arg(round.list.machines.size())
            .arg(p.listed)
            .arg(p.unseen);
    QStringList parts{tr("%1 of %2 listed decided").arg(p.decided).arg(p.listed)};
    if (p.unseen > 0) parts << tr("%1 of %2 unseen answered").arg(p.unseenDone).arg(p.unseen);
    if (p.sample > 0) parts << tr("%1 of %2 of the sample opened").arg(p.sampleOpened).arg(p.sample);
    parts << (p.leaveAccepted ? tr("the rest left as a block") : tr("the rest not yet left as a block"));
    return parts.join(QStringLiteral(" \u00b7 "));
}

RoundHeading::RoundHeading(const Theme& theme, QWidget* parent)
    : QWidget(parent),
      theme_(theme),
      title_(new QLabel(tr("Round"), this)),
      period_(new QLabel(this)),
      promise_(new QLabel(this)),
      progress_(new QLabel(this)),
      older_(new QToolButton(this)),
      newer_(new QToolButton(this)),
      rounds_(new QComboBox(this)),
      before_(new RoundBefore(theme, this)),
      filters_(new RoundFilters(this)) {
    nameParts();
    arrange();
    connect(rounds_, &QComboBox::activated, this, &RoundHeading::chosen);
    connect(older_, &QToolButton::clicked, this, [this] { step(-1); });
    connect(newer_, &QToolButton::clicked, this, [this] { step(1); });
    connect(&theme, &Theme::changed, this, &RoundHeading::dress);
    dress();
}

void RoundHeading::nameParts() {
    title_->setObjectName(QStringLiteral("roundTitle"));
    period_->setObjectName(QStringLiteral("roundPeriod"));
    promise_->setObjectName(QStringLiteral("roundPromise"));
    progress_->setObjectName(QStringLiteral("roundProgress"));
    rounds_->setObjectName(QStringLiteral("roundChoice"));
    rounds_->setAccessibleName(tr("Round shown"));
    rounds_->setToolTip(tr("All rounds that were kept, newest first"));
    const auto arrow = [](QToolButton& button, const char* name, const QString& help, Qt::ArrowType type) {
        button.setObjectName(QString::fromLatin1(name));
        button.setAccessibleName(help);
        button.setToolTip(help);
        button.setArrowType(type);
        button.setAutoRaise(true);
        button.setFocusPolicy(Qt::TabFocus);
    };
    arrow(*older_, "olderRound", tr("The round before (Ctrl+Page Up)"), Qt::LeftArrow);
    arrow(*newer_, "newerRound", tr("The round after (Ctrl+Page Down)"), Qt::RightArrow);
}

void RoundHeading::arrange() {
    rounds_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    for (QLabel* label : {period_, promise_, progress_})
        label->setWordWrap(true);
    auto* first = new QHBoxLayout;
    first->addWidget(title_);
    first->addSpacing(12);
    first->addWidget(period_, 1);
    for (QWidget* part : std::initializer_list<QWidget*>{older_, rounds_, newer_})
        first->addWidget(part);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(16, 12, 16, 8);
    all->setSpacing(4);
    all->addLayout(first);
    all->addWidget(promise_);
    all->addWidget(before_);
    all->addWidget(progress_);
    all->addWidget(filters_);
}

void RoundHeading::dress() {
    setTitleFont(*title_);
    setInk(*period_, theme_, Role::MutedInk);
    setInk(*promise_, theme_, trouble_ ? Role::Trouble : Role::Ink);
}

void RoundHeading::fillRounds(const RoundShown& round) {
    const QSignalBlocker quiet(rounds_);
    rounds_->clear();
    for (auto entry = round.rounds.rbegin(); entry != round.rounds.rend(); ++entry)
        rounds_->addItem(roundName(*entry), QVariant::fromValue<qlonglong>(entry->id));
    if (round.entry)
        rounds_->setCurrentIndex(rounds_->findData(QVariant::fromValue<qlonglong>(round.entry->id)));
    for (QWidget* part : std::initializer_list<QWidget*>{rounds_, older_, newer_})
        part->setVisible(round.rounds.size() > 1);
    older_->setEnabled(rounds_->currentIndex() + 1 < rounds_->count());
    newer_->setEnabled(rounds_->currentIndex() > 0);
}

void RoundHeading::chosen(int row) {
    const QVariant id = rounds_->itemData(row);
    emit roundWanted(id.isValid() ? std::optional<std::int64_t>(id.toLongLong()) : std::nullopt);
}

void RoundHeading::step(int rounds) {
    const int row = rounds_->currentIndex() - rounds;
    if (row < 0 || row >= rounds_->count()) return;
    rounds_->setCurrentIndex(row);
    chosen(row);
}

void RoundHeading::show(const LedgerModel& model) {
    const RoundShown& round = model.round();
    trouble_ = false;
    title_->setText(round.site.empty() ? tr("Round") : shown(round.site));
    QStringList period{periodText(round),
                       periodAge(round, siteTime(nowUtc(), siteZone(round.timeZone)).date())};
    period.removeAll(QString());
    period_->setText(period.join(QStringLiteral(" \u00b7 ")));
    promise_->setText(capital(shown(round.promise)));
    progress_->setText(progressText(round));
    before_->show(round, model.units());
    filters_->setDraft(round.draft());
    filters_->setAreas(model.areas());
    fillRounds(round);
    dress();
}

void RoundHeading::say(const QString& word, bool trouble) {
    trouble_ = trouble;
    promise_->setText(word);
    dress();
}

}  // namespace fettle
