#include "ui/panels/quantity_picker.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <QWidgetAction>
#include <algorithm>

namespace fettle {

namespace {

constexpr int kWideEms = 16;

constexpr int kListEms = 22, kListRows = 12;
constexpr int kKey = Qt::UserRole;

// Every word of what was typed stands somewhere in the name or its group.
bool matches(const PickedQuantity& one, const QString& find) {
    const QString text = one.text + QChar(' ') + one.group;
    const QStringList words = find.split(QChar(' '), Qt::SkipEmptyParts);
    return std::all_of(words.begin(), words.end(),
                       [&](const QString& word) { return text.contains(word, Qt::CaseInsensitive); });
}

// Down leads from the field into the list.
class FindField : public QLineEdit {
  public:
    FindField(QListWidget& list, QWidget* parent) : QLineEdit(parent), list_(list) {}

  protected:
    void keyPressEvent(QKeyEvent* event) override {
        if (event->key() != Qt::Key_Down) return QLineEdit::keyPressEvent(event);
        list_.setFocus();
        for (int row = 0; row < list_.count(); ++row)
            if (list_.item(row)->flags() & Qt::ItemIsEnabled) return list_.setCurrentRow(row);
    }

  private:
    QListWidget& list_;
};

}  // namespace

QuantityPicker::QuantityPicker(QWidget* parent) : QPushButton(parent) {
    setObjectName(QStringLiteral("trendQuantity"));
    connect(this, &QPushButton::clicked, this, &QuantityPicker::ask);
    say();
}

const PickedQuantity* QuantityPicker::known(const QString& key) const {
    const auto at = std::find_if(quantities_.begin(), quantities_.end(),
                                 [&](const PickedQuantity& one) { return one.key == key; });
    return at == quantities_.end() ? nullptr : &*at;
}

void QuantityPicker::setQuantities(std::vector<PickedQuantity> quantities) {
    quantities_ = std::move(quantities);
    if (wanted_.isEmpty()) wanted_ = chosen_;
    chosen_.clear();
    for (const QString& key : wanted_)
        if (known(key)) chosen_ << key;
    if (chosen_.isEmpty() && !quantities_.empty()) chosen_ << quantities_.front().key;
    say();
}

void QuantityPicker::choose(const QStringList& keys) {
    QStringList found;
    for (const QString& key : keys)
        if (known(key) && !found.contains(key) && found.size() < kMost) found << key;
    if (found.isEmpty() || found == chosen_) return;
    chosen_ = wanted_ = found;
    say();
    emit chosenChanged();
}

void QuantityPicker::toggle(const QString& key, bool on) {
    QStringList keys = chosen_;
    keys.removeAll(key);
    if (on) keys << key;
    choose(keys);
}

void QuantityPicker::say() {
    const PickedQuantity* first = chosen_.isEmpty() ? nullptr : known(chosen_.front());
    const QString name = first ? first->text : tr("quantity");
    const QString text =
        chosen_.size() > 1 ? tr("%1, %2 more").arg(name, QString::number(chosen_.size() - 1)) : name;
    setText(fontMetrics().elidedText(text, Qt::ElideRight, (kWideEms - 2) * fontMetrics().height()));
    QStringList names;
    for (const QString& key : chosen_)
        if (const PickedQuantity* one = known(key)) names << one->text;
    setAccessibleName(tr("Quantities of the trend: %1").arg(names.join(QStringLiteral("; "))));
    setToolTip(accessibleName());
    updateGeometry();
}

QSize QuantityPicker::sizeHint() const {
    QSize hint = QPushButton::sizeHint();
    hint.setWidth(std::min(hint.width(), kWideEms * fontMetrics().height()));
    return hint;
}

void QuantityPicker::fill(QListWidget& list, const QString& find) const {
    const QSignalBlocker quiet(list);
    list.clear();
    QString group;
    for (const PickedQuantity& one : quantities_) {
        if (!matches(one, find)) continue;
        if (one.group != group) {
            auto* head = new QListWidgetItem(one.group, &list);
            head->setFlags(Qt::NoItemFlags);
            group = one.group;
        }
        auto* item = new QListWidgetItem(one.text, &list);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        item->setCheckState(chosen_.contains(one.key) ? Qt::Checked : Qt::Unchecked);
        item->setData(kKey, one.key);
    }
}

void QuantityPicker::tick(QListWidget& list) const {
    const QSignalBlocker quiet(list);
    for (int row = 0; row < list.count(); ++row)
        if (const QString key = list.item(row)->data(kKey).toString(); !key.isEmpty())
            list.item(row)->setCheckState(chosen_.contains(key) ? Qt::Checked : Qt::Unchecked);
}

void QuantityPicker::ask() {
    auto* menu = new QMenu(this);
    menu->setObjectName(QStringLiteral("quantityMenu"));
    menu->setAttribute(Qt::WA_DeleteOnClose);
    auto* page = new QWidget(menu);
    auto* column = new QVBoxLayout(page);
    auto* list = new QListWidget(page);
    list->setObjectName(QStringLiteral("quantityList"));
    list->setAccessibleName(tr("Quantities, ticked: shown; at most four, of two units"));
    auto* find = new FindField(*list, page);
    find->setObjectName(QStringLiteral("quantityFind"));
    find->setAccessibleName(tr("Find a quantity"));
    find->setPlaceholderText(tr("Find: gear, 2x, temperature …"));
    const int em = fontMetrics().height();
    list->setMinimumSize(kListEms * em, int(kListRows * 1.4 * em));
    column->addWidget(find);
    column->addWidget(list);
    column->addWidget(new QLabel(tr("At most four at once, of two units."), page));
    fill(*list, {});
    connect(find, &QLineEdit::textChanged, list, [this, list](const QString& text) { fill(*list, text); });
    connect(find, &QLineEdit::returnPressed, menu, [this, list, menu] {
        for (int row = 0; row < list->count(); ++row)
            if (list->item(row)->flags() & Qt::ItemIsEnabled) {
                choose({list->item(row)->data(kKey).toString()});
                break;
            }
        menu->close();
    });
    connect(list, &QListWidget::itemChanged, this, [this, list](QListWidgetItem* item) {
        toggle(item->data(kKey).toString(), item->checkState() == Qt::Checked);
        tick(*list);  // what could not be ticked is not
    });
    connect(list, &QListWidget::itemActivated, menu, [this, menu](QListWidgetItem* item) {
        choose({item->data(kKey).toString()});
        menu->close();
    });
    auto* action = new QWidgetAction(menu);
    action->setDefaultWidget(page);
    menu->addAction(action);
    menu->popup(mapToGlobal(rect().bottomLeft()));
    find->setFocus();
}

}  // namespace fettle
