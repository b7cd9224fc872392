#include "ui/pages/round_before.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <map>

#include "ui/model/round_words.h"
#include "ui/model/unit_words.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

constexpr int kMostRows = 5, kTagRole = Qt::UserRole, kReasonRole = Qt::UserRole + 1;
constexpr const char* kKinds[] = {"verify", "overdue", "deferred", "late"};

std::map<std::string, QStringList> unseenByReason(const RoundList& list) {
    std::map<std::string, QStringList> tags;
    for (const RoundMachine& machine : list.machines)
        if (!machine.unseenReason.empty()) tags[machine.unseenReason] << shown(machine.tag);
    return tags;
}

qsizetype countOf(const RoundShown& round, const char* kind) {
    return std::count_if(round.due.begin(), round.due.end(),
                         [&](const DueItem& item) { return item.kind == kind; });
}

}  // namespace

QString beforeText(const RoundShown& round) {
    QStringList parts;
    for (const char* kind : kKinds)
        if (const auto count = countOf(round, kind))
            parts << RoundBefore::tr("%1 %2").arg(count).arg(dueKindWord(kind));
    QStringList unseen;
    for (const auto& [reason, tags] : unseenByReason(round.list))
        unseen << RoundBefore::tr("%1 %2").arg(tags.size()).arg(unseenReasonWord(reason));
    if (!unseen.isEmpty()) parts << RoundBefore::tr("unseen: %1").arg(unseen.join(QStringLiteral(", ")));
    return parts.join(QStringLiteral(" \u00b7 "));
}

RoundBefore::RoundBefore(const Theme& theme, QWidget* parent)
    : QWidget(parent),
      theme_(theme),
      fold_(new QToolButton(this)),
      counts_(new QLabel(this)),
      list_(new QListWidget(this)) {
    setObjectName(QStringLiteral("roundBefore"));
    fold_->setObjectName(QStringLiteral("beforeFold"));
    fold_->setCheckable(true);
    fold_->setAutoRaise(true);
    fold_->setFocusPolicy(Qt::TabFocus);
    fold_->setAccessibleName(tr("What comes before the list"));
    fold_->setToolTip(tr("What comes before the list: jobs to verify, overdue, due again, late, unseen (B)"));
    counts_->setObjectName(QStringLiteral("roundNotices"));
    counts_->setWordWrap(true);
    list_->setObjectName(QStringLiteral("beforeList"));
    list_->setAccessibleName(tr("What comes before the list, line by line"));
    list_->setToolTip(tr("Return or a click goes there; Escape goes back to the list"));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setTextElideMode(Qt::ElideRight);
    list_->installEventFilter(this);
    auto* head = new QHBoxLayout;
    head->setSpacing(4);
    head->addWidget(fold_, 0, Qt::AlignTop);
    head->addWidget(counts_, 1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(2);
    all->addLayout(head);
    all->addWidget(list_);
    connect(fold_, &QToolButton::toggled, this, &RoundBefore::setUnfolded);
    connect(list_, &QListWidget::itemClicked, this, &RoundBefore::go);
    connect(&theme, &Theme::changed, this, &RoundBefore::dress);
    setUnfolded(false);
    dress();
}

void RoundBefore::dress() {
    setInk(*counts_, theme_, Role::MutedInk);
}

void RoundBefore::add(const QString& text, const QString& tag, const QString& reason) {
    auto* item = new QListWidgetItem(text, list_);
    item->setToolTip(text);
    item->setData(kTagRole, tag);
    item->setData(kReasonRole, reason);
}

void RoundBefore::fill(const RoundShown& round, const Units& units) {
    list_->clear();
    for (const char* kind : kKinds)
        for (const DueItem& item : round.due)
            if (item.kind == kind)
                add(tr("%1, %2: %3")
                        .arg(shown(item.machine), dueKindWord(kind),
                             withUnitsBeside(spelledDates(shown(item.words)), units)),
                    shown(item.machine), {});
    for (const auto& [reason, tags] : unseenByReason(round.list))
        add(tr("unseen, %1 (%2): %3")
                .arg(unseenReasonWord(reason), unseenOwner(reason), tags.join(QStringLiteral(", "))),
            {}, shown(reason));
}

// Unfolded by itself where something was promised; after that as the user left it.
void RoundBefore::show(const RoundShown& round, const Units& units) {
    const QString text = beforeText(round);
    setVisible(!text.isEmpty());
    counts_->setText(text);
    const int row = list_->currentRow();
    fill(round, units);
    list_->setCurrentRow(std::clamp(row, 0, std::max(0, list_->count() - 1)));
    fitHeight();
    const qlonglong id = round.entry ? round.entry->id : 0;
    if (id == shownRound_) return;
    shownRound_ = id;
    setUnfolded(countOf(round, "verify") + countOf(round, "overdue") + countOf(round, "deferred") > 0);
}

void RoundBefore::fitHeight() {
    const int rows = std::clamp(list_->count(), 1, kMostRows);
    const int row = list_->count() > 0 ? list_->sizeHintForRow(0) : list_->fontMetrics().height();
    list_->setFixedHeight(rows * row + 4);
}

bool RoundBefore::unfolded() const {
    return fold_->isChecked();
}

void RoundBefore::setUnfolded(bool unfolded) {
    const QSignalBlocker quiet(fold_);
    fold_->setChecked(unfolded);
    fold_->setArrowType(unfolded ? Qt::DownArrow : Qt::RightArrow);
    list_->setVisible(unfolded);
}

void RoundBefore::visit() {
    if (list_->hasFocus() || isHidden()) {
        setUnfolded(false);
        return emit left();
    }
    setUnfolded(true);
    list_->setFocus(Qt::ShortcutFocusReason);
}

void RoundBefore::go(QListWidgetItem* item) {
    if (!item) return;
    const QString tag = item->data(kTagRole).toString(), reason = item->data(kReasonRole).toString();
    if (!tag.isEmpty()) emit machineWanted(tag);
    if (!reason.isEmpty()) emit unseenWanted(reason);
}

bool RoundBefore::eventFilter(QObject* watched, QEvent* event) {
    if (watched != list_ || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter)
        go(list_->currentItem());
    else if (key == Qt::Key_Escape)
        emit left();
    else
        return false;
    return true;
}

}  // namespace fettle
