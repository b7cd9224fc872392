#include "ui/panels/fault_list.h"

#include <QHeaderView>
#include <algorithm>

#include "ui/theme/urgency_disc.h"

namespace fettle {

namespace {
enum Column { Fault, Weight };
constexpr int kEntry = Qt::UserRole;
constexpr int kMostRows = 9;
}  // namespace

FaultList::FaultList(const Theme& theme, Selection& selection, QWidget* parent)
    : QTreeWidget(parent), theme_(theme), selection_(selection) {
    setObjectName(QStringLiteral("faultList"));
    setAccessibleName(tr("Faults considered, by weight"));
    setColumnCount(2);
    setHeaderLabels({tr("fault"), tr("decibans")});
    headerItem()->setTextAlignment(Weight, Qt::AlignRight | Qt::AlignVCenter);
    setRootIsDecorated(false);
    setIndentation(0);
    setUniformRowHeights(true);
    setFrameStyle(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    header()->setStretchLastSection(false);
    header()->setSectionResizeMode(Fault, QHeaderView::Stretch);
    header()->setSectionResizeMode(Weight, QHeaderView::ResizeToContents);
    connect(this, &QTreeWidget::itemSelectionChanged, this, &FaultList::choose);
    connect(this, &QTreeWidget::itemClicked, this, &FaultList::toggle);
    connect(this, &QTreeWidget::itemActivated, this, &FaultList::toggle);
    connect(&selection_, &Selection::faultChanged, this, &FaultList::markChosen);
    connect(&theme_, &Theme::changed, this, &FaultList::fill);
}

void FaultList::setEntries(std::vector<FaultEntry> entries) {
    entries_ = std::move(entries);
    fill();
}

void FaultList::fill() {
    choosing_ = true;
    head_ = nullptr;
    clear();
    const auto others =
        std::find_if(entries_.begin(), entries_.end(), [](const FaultEntry& entry) { return !entry.found; });
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        if (i == std::size_t(others - entries_.begin()))
            addHead(i == 0 ? tr("no finding; considered were")
                           : tr("considered and not found: %1").arg(entries_.end() - others));
        addEntry(i);
    }
    choosing_ = false;
    fold();
    markChosen();
}

void FaultList::setLow(bool low) {
    if (low == low_) return;
    low_ = low;
    fold();
}

bool FaultList::folded() const {
    const bool found = !entries_.empty() && entries_.front().found;
    return head_ && found && wanted_.value_or(low_);
}

void FaultList::fold() {
    const bool away = folded();
    for (int i = head_ ? indexOfTopLevelItem(head_) + 1 : topLevelItemCount(); i < topLevelItemCount(); ++i)
        topLevelItem(i)->setHidden(away && !topLevelItem(i)->isSelected());
    if (head_ && !entries_.empty() && entries_.front().found)
        head_->setText(Fault, away ? tr("%1 (show)").arg(headText_) : tr("%1 (hide)").arg(headText_));
    updateGeometry();
}

void FaultList::toggle(const QTreeWidgetItem* item) {
    if (!head_ || item != head_) return;
    wanted_ = !folded();
    fold();
}

void FaultList::addHead(const QString& text) {
    auto* item = new QTreeWidgetItem(this, {text});
    head_ = item;
    headText_ = text;
    item->setFlags(Qt::ItemIsEnabled);
    item->setFirstColumnSpanned(true);
    item->setForeground(Fault, theme_.colour(Role::MutedInk));
    item->setSizeHint(Fault, QSize(0, rowHeight()));
    QFont small = font();
    small.setItalic(true);
    item->setFont(Fault, small);
}

void FaultList::addEntry(std::size_t i) {
    const FaultEntry& entry = entries_[i];
    QString name = tr("%1, %2").arg(QString::fromStdString(entry.name), QString::fromStdString(entry.at));
    auto* item = new QTreeWidgetItem(this);
    item->setSizeHint(Fault, QSize(0, rowHeight()));
    if (entry.found) {
        const Urgency urgency = urgencyOf(entry.urgency);
        item->setIcon(Fault, urgencyIcon(urgency, theme_.colour(Role::Accent), fontMetrics().height()));
        name = tr("%1: %2").arg(urgencyWord(urgency), name);
    }
    item->setText(Fault, name);
    item->setText(Weight, entry.weightDban ? QString::number(*entry.weightDban, 'f', 1) : tr("none"));
    item->setTextAlignment(Weight, Qt::AlignRight | Qt::AlignVCenter);
    item->setToolTip(Fault, entry.why.empty() ? name : QString::fromStdString(entry.why));
    item->setData(Fault, kEntry, int(i));
}

void FaultList::choose() {
    if (choosing_ || selectedItems().isEmpty()) return;
    const QVariant at = selectedItems().front()->data(Fault, kEntry);
    if (!at.isValid()) return;
    const FaultEntry& entry = entries_[std::size_t(at.toInt())];
    selection_.setFault(QString::fromStdString(entry.fault), QString::fromStdString(entry.at));
}

void FaultList::markChosen() {
    choosing_ = true;
    clearSelection();
    for (int i = 0; i < topLevelItemCount(); ++i) {
        const QVariant at = topLevelItem(i)->data(Fault, kEntry);
        if (!at.isValid()) continue;
        const FaultEntry& entry = entries_[std::size_t(at.toInt())];
        if (selection_.fault().toStdString() != entry.fault || selection_.at().toStdString() != entry.at)
            continue;
        setCurrentItem(topLevelItem(i));
        topLevelItem(i)->setSelected(true);
        scrollToItem(topLevelItem(i));
    }
    choosing_ = false;
    fold();
}

int FaultList::rowHeight() const {
    return int(fontMetrics().height() * 1.25);
}

QSize FaultList::sizeHint() const {
    int rows = 0;
    for (int i = 0; i < topLevelItemCount(); ++i)
        rows += topLevelItem(i)->isHidden() ? 0 : 1;
    rows = std::clamp(rows, 2, kMostRows);
    return {20 * fontMetrics().averageCharWidth(), header()->sizeHint().height() + rows * rowHeight() + 2};
}

}  // namespace fettle
