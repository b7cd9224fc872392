#include "ui/panels/fault_list.h"

#include <QHeaderView>
#include <algorithm>

#include "ui/model/numbers.h"
#include "ui/panels/fault_rows.h"
#include "ui/theme/urgency_disc.h"

namespace fettle {

namespace {
constexpr int Fault = FaultRows::Fault, Weight = FaultRows::Weight, Bar = FaultRows::Bar;
constexpr int kEntry = FaultRows::kEntry, kMostRows = 9, kWeightEms = 5;
}  // namespace

FaultList::FaultList(const Theme& theme, Selection& selection, QWidget* parent)
    : QTreeWidget(parent), theme_(theme), selection_(selection), rows_(new FaultRows(theme, this)) {
    setObjectName(QStringLiteral("faultList"));
    setAccessibleName(tr("Faults considered, by weight"));
    setColumnCount(FaultRows::kColumns);
    setHeaderLabels({tr("fault"), tr("decibans"), QString()});
    headerItem()->setToolTip(Weight,
                             tr("How unlike chance its lines are: 10 log10 of the e-value, decibans"));
    headerItem()->setToolTip(Bar,
                             tr("Against to the left, for to the right of the zero line; dashed: a finding"));
    setItemDelegate(rows_);
    headerItem()->setTextAlignment(Weight, Qt::AlignRight | Qt::AlignVCenter);
    setRootIsDecorated(false);
    setIndentation(0);
    setFrameStyle(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    header()->setStretchLastSection(false);
    header()->setSectionResizeMode(Fault, QHeaderView::Stretch);
    header()->setSectionResizeMode(Weight, QHeaderView::ResizeToContents);
    header()->setSectionResizeMode(Bar, QHeaderView::Fixed);
    header()->setMinimumSectionSize(2 * fontMetrics().averageCharWidth());
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
    double least = 0, most = 0;
    for (const FaultEntry& entry : entries_) {
        least = std::min(least, entry.weightDban.value_or(0));
        most = std::max(most, entry.weightDban.value_or(0));
    }
    rows_->setSpan(least, most);
    header()->resizeSection(Bar, kWeightEms * fontMetrics().height());
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
    QFont small = font();
    small.setItalic(true);
    item->setFont(Fault, small);
}

void FaultList::addEntry(std::size_t i) {
    const FaultEntry& entry = entries_[i];
    QString name = tr("%1, %2").arg(QString::fromStdString(entry.name), QString::fromStdString(entry.at));
    auto* item = new QTreeWidgetItem(this);
    if (entry.found) {
        const Urgency urgency = urgencyOf(entry.urgency);
        item->setIcon(Fault, urgencyIcon(urgency, theme_.colour(Role::Accent), fontMetrics().height()));
        name = tr("%1: %2").arg(urgencyWord(urgency), name);
    }
    item->setText(Fault, name);
    item->setText(Weight, entry.weightDban ? fixedText(*entry.weightDban, 1) : tr("none"));
    item->setTextAlignment(Weight, Qt::AlignRight | Qt::AlignVCenter);
    item->setData(Fault, Qt::AccessibleTextRole, spokenOf(entry, name));
    if (entry.weightDban) item->setData(Bar, FaultRows::kWeight, *entry.weightDban);
    if (entry.found) item->setData(Fault, FaultRows::kDetail, detailOf(entry));
    item->setToolTip(Fault, entry.why.empty() ? spokenOf(entry, name) : QString::fromStdString(entry.why));
    item->setData(Fault, kEntry, int(i));
}

QString FaultList::detailOf(const FaultEntry& entry) const {
    QStringList known;
    const QString value = QString::fromStdString(entry.severity);
    if (entry.severityKind == "stage") known << tr("stage %1").arg(value);
    if (entry.severityKind == "zone") known << tr("zone %1").arg(value);
    if (entry.severityKind == "db_below_carrier") known << value;
    if (!entry.since.empty()) known << tr("since %1").arg(QString::fromStdString(entry.since));
    if (entry.byChange) known << tr("by change");
    if (entry.persistence) known << tr("in %1 % of recordings").arg(fixedText(*entry.persistence * 100, 0));
    return known.join(QStringLiteral(" \u00b7 "));
}

QString FaultList::spokenOf(const FaultEntry& entry, const QString& name) const {
    const QString detail = entry.found ? detailOf(entry) : QString();
    const QString weight = entry.weightDban ? tr("%1 decibans").arg(fixedText(*entry.weightDban, 1))
                                            : tr("not weighed: %1").arg(QString::fromStdString(entry.why));
    return detail.isEmpty() ? tr("%1; %2").arg(name, weight) : tr("%1; %2; %3").arg(name, weight, detail);
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
    int high = 0, rows = 0;
    for (int i = 0; i < topLevelItemCount() && rows < kMostRows; ++i) {
        if (topLevelItem(i)->isHidden()) continue;
        ++rows;
        high += std::max(rowHeight(), sizeHintForIndex(model()->index(i, Fault)).height());
    }
    return {20 * fontMetrics().averageCharWidth(),
            header()->sizeHint().height() + std::max(high, 2 * rowHeight()) + 2};
}

}  // namespace fettle
