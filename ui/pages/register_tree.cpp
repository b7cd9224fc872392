#include "ui/pages/register_tree.h"

#include <QLineEdit>
#include <QSignalBlocker>
#include <QTreeWidgetItemIterator>
#include <QVBoxLayout>

#include "ui/model/words.h"

namespace fettle {

namespace {
constexpr int kTag = Qt::UserRole;
constexpr int kArea = Qt::UserRole + 1;

QString lineOf(const MachineEntry& machine) {
    QString text = shown(machine.tag);
    if (!machine.service.empty()) text += QStringLiteral("  ") + shown(machine.service);
    return text;
}
}  // namespace

RegisterTree::RegisterTree(QWidget* parent)
    : QWidget(parent), filter_(new QLineEdit(this)), tree_(new QTreeWidget(this)) {
    filter_->setObjectName(QStringLiteral("registerFilter"));
    filter_->setAccessibleName(tr("Find a machine"));
    filter_->setPlaceholderText(tr("find: tag, service, area"));
    filter_->setClearButtonEnabled(true);
    tree_->setObjectName(QStringLiteral("registerTree"));
    tree_->setAccessibleName(tr("Sites, areas and machines"));
    tree_->setHeaderHidden(true);
    tree_->setFrameShape(QFrame::NoFrame);
    tree_->setUniformRowHeights(true);
    tree_->setStyleSheet(QStringLiteral("QTreeView::item { padding: 2px 0px; }"));
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(filter_);
    all->addWidget(tree_, 1);
    connect(filter_, &QLineEdit::textChanged, this, &RegisterTree::filter);
    connect(tree_, &QTreeWidget::currentItemChanged, this, [this](QTreeWidgetItem* item) {
        if (item && !item->data(0, kTag).toString().isEmpty())
            emit machineChosen(item->data(0, kTag).toString());
    });
}

QTreeWidgetItem* RegisterTree::child(QTreeWidgetItem* parent, const QString& text) {
    for (int i = 0; i < parent->childCount(); ++i)
        if (parent->child(i)->text(0) == text && parent->child(i)->data(0, kTag).toString().isEmpty())
            return parent->child(i);
    auto* item = new QTreeWidgetItem(parent, {text});
    item->setExpanded(true);
    return item;
}

void RegisterTree::show(const std::vector<MachineEntry>& machines, const QString& site) {
    const QSignalBlocker quiet(tree_);
    const QString current = currentMachine();
    tree_->clear();
    machines_ = 0;
    for (const MachineEntry& machine : machines) {
        const bool removed = !machine.removedOn.empty();
        const QString of = machine.site.empty() ? site : shown(machine.site);
        QTreeWidgetItem* place = child(tree_->invisibleRootItem(), removed ? tr("Out of service") : of);
        const QString area = machine.area.empty() ? tr("no area") : shown(machine.area);
        if (!removed) place = child(place, area);
        auto* item = new QTreeWidgetItem(place, {lineOf(machine)});
        item->setData(0, kTag, shown(machine.tag));
        item->setData(0, kArea, shown(machine.area));
        item->setToolTip(0,
                         removed ? tr("taken out on %1").arg(dateText(machine.removedOn)) : lineOf(machine));
        machines_ += removed ? 0 : 1;
    }
    tree_->invisibleRootItem()->sortChildren(0, Qt::AscendingOrder);
    for (QTreeWidgetItemIterator it(tree_); *it; ++it)
        (*it)->setExpanded(true);
    choose(current);
    filter(filter_->text());
}

void RegisterTree::choose(const QString& tag) {
    const QSignalBlocker quiet(tree_);
    for (QTreeWidgetItemIterator it(tree_); *it; ++it)
        if (!tag.isEmpty() && (*it)->data(0, kTag).toString() == tag) {
            tree_->setCurrentItem(*it);
            return;
        }
    tree_->setCurrentItem(nullptr);
}

QString RegisterTree::currentMachine() const {
    return tree_->currentItem() ? tree_->currentItem()->data(0, kTag).toString() : QString();
}

QString RegisterTree::currentArea() const {
    const QTreeWidgetItem* item = tree_->currentItem();
    if (!item) return {};
    if (!item->data(0, kTag).toString().isEmpty()) return item->data(0, kArea).toString();
    return item->parent() ? item->text(0) : QString();
}

void RegisterTree::focusFilter() {
    filter_->setFocus(Qt::ShortcutFocusReason);
    filter_->selectAll();
}

void RegisterTree::filter(const QString& text) {
    for (QTreeWidgetItemIterator it(tree_); *it; ++it) {
        QTreeWidgetItem* item = *it;
        if (item->data(0, kTag).toString().isEmpty()) {
            item->setHidden(!text.isEmpty());
            continue;
        }
        const bool hit = item->text(0).contains(text, Qt::CaseInsensitive) ||
                         item->data(0, kArea).toString().contains(text, Qt::CaseInsensitive);
        item->setHidden(!hit);
        for (QTreeWidgetItem* above = item->parent(); hit && above; above = above->parent())
            above->setHidden(false);
    }
}

}  // namespace fettle
