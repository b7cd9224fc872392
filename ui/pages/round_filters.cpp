#include "ui/pages/round_filters.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QSignalBlocker>

#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

// The key behind the chosen row; empty for the first, which is all.
std::string keyOf(const QComboBox& choice) {
    return kept(choice.currentData().toString());
}

}  // namespace

QString groupingName(LedgerModel::Grouping grouping) {
    switch (grouping) {
        case LedgerModel::ByArea:
            return tr("by area");
        case LedgerModel::ByCriticality:
            return tr("by criticality");
        case LedgerModel::Together:
            return tr("not grouped");
        case LedgerModel::ByUrgency:
        case LedgerModel::Groupings:
            break;
    }
    return tr("by urgency");
}

QString orderName(LedgerModel::Order order) {
    switch (order) {
        case LedgerModel::ByTag:
            return tr("sorted by tag");
        case LedgerModel::ByFinding:
            return tr("sorted by finding");
        case LedgerModel::ByLevel:
            return tr("sorted by level");
        case LedgerModel::ByWeight:
            return tr("sorted by weight");
        case LedgerModel::ByAge:
            return tr("sorted by age");
        case LedgerModel::ByDecision:
            return tr("sorted by decision");
        case LedgerModel::AsListed:
        case LedgerModel::Orders:
            break;
    }
    return tr("as listed");
}

RoundFilters::RoundFilters(QWidget* parent) : QWidget(parent) {
    grouping_ = choice("groupChoice", tr("Grouped"), tr("What the ledger's groups are (V: the next)"));
    order_ = choice("orderChoice", tr("Sorted"),
                    tr("What the groups are sorted by (S: the next, Shift+S: the other way round)"));
    urgency_ = choice("urgencyFilter", tr("Filter by urgency"), tr("Show machines of one urgency"));
    decision_ = choice("decisionFilter", tr("Filter by decision"),
                       tr("Show machines by what was decided; undecided: all that the round still asks"));
    area_ = choice("areaFilter", tr("Filter by area"), tr("Show machines of one area"));
    text_ = new QLineEdit(this);
    text_->setObjectName(QStringLiteral("textFilter"));
    text_->setAccessibleName(tr("Filter by text"));
    text_->setToolTip(tr("Show machines whose tag, asset number, service, area or finding has this text"));
    text_->setPlaceholderText(tr("filter: tag, service, finding"));
    text_->setClearButtonEnabled(true);
    text_->setMinimumWidth(text_->fontMetrics().averageCharWidth() * 14);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    for (QWidget* part : std::initializer_list<QWidget*>{grouping_, order_, urgency_, decision_, area_})
        row->addWidget(part);
    row->addWidget(text_, 1);
    fill();
    connect(grouping_, &QComboBox::activated, this,
            [this](int index) { emit groupingWanted(LedgerModel::Grouping(index)); });
    connect(order_, &QComboBox::activated, this,
            [this](int index) { emit orderWanted(LedgerModel::Order(index)); });
    for (QComboBox* one : {urgency_, decision_, area_})
        connect(one, &QComboBox::currentIndexChanged, this, [this] { emit filterChanged(filter()); });
    connect(text_, &QLineEdit::textChanged, this, [this] { emit filterChanged(filter()); });
}

QComboBox* RoundFilters::choice(const char* name, const QString& label, const QString& hint) {
    auto* made = new QComboBox(this);
    made->setObjectName(QString::fromLatin1(name));
    made->setAccessibleName(label);
    made->setToolTip(hint);
    made->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    made->setMinimumContentsLength(8);
    return made;
}

void RoundFilters::fill() {
    for (int i = 0; i < LedgerModel::Groupings; ++i)
        grouping_->addItem(groupingName(LedgerModel::Grouping(i)));
    for (int i = 0; i < LedgerModel::Orders; ++i)
        order_->addItem(orderName(LedgerModel::Order(i)));
    urgency_->addItem(tr("every urgency"), QString());
    for (const char* urgency : {"act", "plan", "watch", "unseen", "leave"})
        urgency_->addItem(urgencyWord(std::string(urgency)), QString::fromLatin1(urgency));
    decision_->addItem(tr("every decision"), QString());
    decision_->addItem(tr("undecided"), QStringLiteral("undecided"));
    decision_->addItem(tr("accepted"), QStringLiteral("accept"));
    decision_->addItem(tr("disputed"), QStringLiteral("dispute"));
    decision_->addItem(tr("put off"), QStringLiteral("defer"));
    area_->addItem(tr("all areas"), QString());
}

void RoundFilters::setAreas(const QStringList& areas) {
    const QSignalBlocker quiet(area_);
    const QVariant wanted = area_->currentData();
    area_->clear();
    area_->addItem(tr("all areas"), QString());
    for (const QString& area : areas)
        area_->addItem(area, area);
    area_->setCurrentIndex(std::max(0, area_->findData(wanted)));
    area_->setVisible(areas.size() > 1);
}

void RoundFilters::setDraft(bool draft) {
    decision_->setVisible(!draft);
}

void RoundFilters::showOrder(LedgerModel::Grouping grouping, LedgerModel::Order order, bool backwards) {
    grouping_->setCurrentIndex(int(grouping));
    for (int i = 0; i < LedgerModel::Orders; ++i) {
        const QString name = orderName(LedgerModel::Order(i));
        order_->setItemText(i, i == int(order) && backwards ? tr("%1, turned").arg(name) : name);
    }
    order_->setCurrentIndex(int(order));
}

void RoundFilters::setUrgencyAndText(const std::string& urgency, const QString& text) {
    clear();
    urgency_->setCurrentIndex(std::max(0, urgency_->findData(shown(urgency))));
    text_->setText(text);
}

void RoundFilters::clear() {
    text_->clear();
    for (QComboBox* one : {urgency_, decision_, area_})
        one->setCurrentIndex(0);
}

void RoundFilters::focusText() {
    text_->setFocus(Qt::ShortcutFocusReason);
    text_->selectAll();
}

LedgerFilter RoundFilters::filter() const {
    return {area_->currentData().toString(), text_->text().trimmed(), keyOf(*decision_), keyOf(*urgency_)};
}

}  // namespace fettle
