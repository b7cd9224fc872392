#include "ui/pages/round_heading.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <map>

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

QString tr(const char* text) {
    return RoundHeading::tr(text);
}

QString capital(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

QString roundName(const RoundEntry& round) {
    const QString day = dateText(round.until);
    return round.closedAt ? tr("to %1, closed").arg(day) : tr("to %1, open").arg(day);
}

QString unseenByReason(const RoundList& list) {
    std::map<std::string, int> counts;
    for (const RoundMachine& machine : list.machines)
        if (!machine.unseenReason.empty()) ++counts[machine.unseenReason];
    QStringList parts;
    for (const auto& [reason, count] : counts)
        parts << QStringLiteral("%1 %2").arg(count).arg(unseenReasonWord(reason));
    return parts.join(QStringLiteral(", "));
}

constexpr int kMostDue = 4;

QString allDue(const std::vector<DueItem>& due) {
    QStringList lines;
    for (const DueItem& item : due)
        lines << QStringLiteral("%1 %2").arg(shown(item.machine), shown(item.words));
    return lines.join(u'\n');
}

// What was promised comes before the list; late recordings are counted, the rest stands by name.
QStringList dueLines(const std::vector<DueItem>& due) {
    QStringList lines;
    qsizetype late = 0;
    for (const DueItem& item : due) {
        if (item.kind == "late")
            ++late;
        else
            lines << QStringLiteral("%1 %2").arg(shown(item.machine), shown(item.words));
    }
    if (lines.size() > kMostDue) {
        const auto more = lines.size() - kMostDue;
        lines = lines.mid(0, kMostDue) << tr("and %1 more due").arg(more);
    }
    if (late > 0) lines << tr("late recordings of %1").arg(counted(late, tr("machine"), tr("machines")));
    return lines;
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

QString noticesText(const RoundShown& round) {
    QStringList parts;
    if (const QString unseen = unseenByReason(round.list); !unseen.isEmpty())
        parts << tr("unseen: %1").arg(unseen);
    parts << dueLines(round.due);
    return parts.join(QStringLiteral(" \u00b7 "));
}

RoundHeading::RoundHeading(const Theme& theme, QWidget* parent)
    : QWidget(parent),
      theme_(theme),
      title_(new QLabel(tr("Round"), this)),
      period_(new QLabel(this)),
      promise_(new QLabel(this)),
      progress_(new QLabel(this)),
      notices_(new QLabel(this)),
      rounds_(new QComboBox(this)),
      area_(new QComboBox(this)),
      text_(new QLineEdit(this)),
      undecided_(new QCheckBox(tr("undecided only"), this)) {
    nameParts();
    arrange();
    connect(text_, &QLineEdit::textChanged, this, [this] { emit filterChanged(filter()); });
    connect(area_, &QComboBox::currentIndexChanged, this, [this] { emit filterChanged(filter()); });
    connect(undecided_, &QCheckBox::toggled, this, [this] { emit filterChanged(filter()); });
    connect(rounds_, &QComboBox::activated, this, [this](int row) {
        const QVariant id = rounds_->itemData(row);
        emit roundWanted(id.isValid() ? std::optional<std::int64_t>(id.toLongLong()) : std::nullopt);
    });
    connect(&theme, &Theme::changed, this, &RoundHeading::dress);
    dress();
}

void RoundHeading::nameParts() {
    title_->setObjectName(QStringLiteral("roundTitle"));
    period_->setObjectName(QStringLiteral("roundPeriod"));
    promise_->setObjectName(QStringLiteral("roundPromise"));
    progress_->setObjectName(QStringLiteral("roundProgress"));
    notices_->setObjectName(QStringLiteral("roundNotices"));
    rounds_->setObjectName(QStringLiteral("roundChoice"));
    area_->setObjectName(QStringLiteral("areaFilter"));
    text_->setObjectName(QStringLiteral("textFilter"));
    undecided_->setObjectName(QStringLiteral("undecidedFilter"));
    rounds_->setAccessibleName(tr("Round shown"));
    area_->setAccessibleName(tr("Filter by area"));
    text_->setAccessibleName(tr("Filter by text"));
}

void RoundHeading::arrange() {
    rounds_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    area_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    text_->setPlaceholderText(tr("filter: tag, service, finding"));
    text_->setClearButtonEnabled(true);
    text_->setMinimumWidth(text_->fontMetrics().averageCharWidth() * 20);
    for (QLabel* label : {period_, promise_, progress_, notices_})
        label->setWordWrap(true);
    auto* first = new QHBoxLayout;
    first->addWidget(title_);
    first->addSpacing(12);
    first->addWidget(period_, 1);
    first->addWidget(rounds_);
    auto* last = new QHBoxLayout;
    last->addWidget(progress_, 2);
    last->addWidget(undecided_);
    last->addWidget(area_);
    last->addWidget(text_, 1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(16, 12, 16, 8);
    all->setSpacing(4);
    all->addLayout(first);
    all->addWidget(promise_);
    all->addWidget(notices_);
    all->addLayout(last);
}

void RoundHeading::dress() {
    setTitleFont(*title_);
    for (QLabel* label : {period_, notices_})
        setInk(*label, theme_.colour(Role::MutedInk));
    setInk(*promise_, theme_.colour(trouble_ ? Role::Trouble : Role::Ink));
}

LedgerFilter RoundHeading::filter() const {
    return {area_->currentIndex() <= 0 ? QString() : area_->currentText(), text_->text().trimmed(),
            undecided_->isChecked()};
}

void RoundHeading::fillRounds(const RoundShown& round) {
    const QSignalBlocker quiet(rounds_);
    rounds_->clear();
    for (auto entry = round.rounds.rbegin(); entry != round.rounds.rend(); ++entry)
        rounds_->addItem(roundName(*entry), QVariant::fromValue<qlonglong>(entry->id));
    if (round.entry)
        rounds_->setCurrentIndex(rounds_->findData(QVariant::fromValue<qlonglong>(round.entry->id)));
    rounds_->setVisible(round.rounds.size() > 1);
}

void RoundHeading::fillAreas(const QStringList& areas) {
    const QSignalBlocker quiet(area_);
    const QString wanted = area_->currentIndex() > 0 ? area_->currentText() : QString();
    area_->clear();
    area_->addItem(tr("all areas"));
    area_->addItems(areas);
    area_->setCurrentIndex(std::max(0, area_->findText(wanted)));
    area_->setVisible(areas.size() > 1);
}

void RoundHeading::show(const LedgerModel& model) {
    const RoundShown& round = model.round();
    trouble_ = false;
    title_->setText(round.site.empty() ? tr("Round") : shown(round.site));
    period_->setText(periodText(round));
    promise_->setText(capital(shown(round.promise)));
    progress_->setText(progressText(round));
    const QString notices = noticesText(round);
    notices_->setText(notices);
    notices_->setToolTip(allDue(round.due));
    notices_->setVisible(!notices.isEmpty());
    undecided_->setVisible(!round.draft());
    fillRounds(round);
    fillAreas(model.areas());
    dress();
}

void RoundHeading::say(const QString& word, bool trouble) {
    trouble_ = trouble;
    promise_->setText(word);
    dress();
}

void RoundHeading::clearFilter() {
    text_->clear();
    area_->setCurrentIndex(0);
    undecided_->setChecked(false);
}

void RoundHeading::focusFilter() {
    text_->setFocus(Qt::ShortcutFocusReason);
    text_->selectAll();
}

}  // namespace fettle
