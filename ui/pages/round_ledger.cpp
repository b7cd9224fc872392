#include "ui/pages/round_ledger.h"

#include <QContextMenuEvent>
#include <QHeaderView>
#include <QScrollBar>
#include <algorithm>
#include <array>
#include <numeric>

#include "ui/model/words.h"
#include "ui/pages/round_delegate.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {
constexpr int kLeastChanged = 34;  // letters of the sentence before the others give way
}

RoundLedger::RoundLedger(LedgerModel& model, const Theme& theme, QWidget* parent)
    : QTableView(parent), model_(model) {
    setObjectName(QStringLiteral("ledger"));
    setAccessibleName(tr("Machines of the round"));
    setRuled(*this, theme);
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setModel(&model);
    setItemDelegate(new RoundDelegate(model, theme, this));
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    connect(horizontalHeader(), &QHeaderView::sectionClicked, this, &RoundLedger::sortBy);
    connect(&model, &QAbstractItemModel::modelReset, this, &RoundLedger::arrange);
    connect(&theme, &Theme::changed, viewport(), qOverload<>(&QWidget::update));
    connect(this, &QTableView::doubleClicked, this, [this](const QModelIndex& index) {
        if (const RoundMachine* machine = model_.machineAt(index.row()))
            emit machineOpened(shown(machine->tag));
        else
            foldCurrent();
    });
    arrange();
}

std::string RoundLedger::current() const {
    const RoundMachine* machine = model_.machineAt(currentIndex().row());
    return machine ? machine->tag : std::string();
}

void RoundLedger::setCurrent(const std::string& tag) {
    if (model_.rowOf(tag) < 0)
        for (const RoundMachine& machine : model_.round().list.machines)
            if (machine.tag == tag) model_.setFolded(model_.groupOf(machine), false);
    const int row = model_.rowOf(tag);
    if (row < 0) return;
    stand(row, LedgerModel::Name);
}

// Alone, whatever key is held: the view itself would add to the selection while Ctrl is down.
void RoundLedger::stand(int row, int column) {
    selectionModel()->setCurrentIndex(model_.index(row, column),
                                      QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
    scrollTo(currentIndex());
}

void RoundLedger::chooseFirst() {
    for (int row = 0; row < model_.rowCount(); ++row)
        if (const RoundMachine* machine = model_.machineAt(row)) return setCurrent(machine->tag);
}

void RoundLedger::foldCurrent() {
    const std::string group = model_.groupAt(currentIndex().row());
    if (group.empty()) return;
    model_.setFolded(group, !model_.folded(group));
    for (const int row : model_.groupRows())
        if (model_.groupAt(row) == group) stand(row, 0);
}

void RoundLedger::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    if (current.isValid()) kept_ = this->current();
    emit currentMachineChanged();
}

void RoundLedger::arrange() {
    const std::string wanted = kept_;
    clearSpans();
    verticalHeader()->setDefaultSectionSize(RoundDelegate::lineHeight(fontMetrics()));
    for (const int row : model_.groupRows()) {
        setSpan(row, 0, 1, LedgerModel::Columns);
        setRowHeight(row, RoundDelegate::groupLineHeight(fontMetrics()));
    }
    if (const int row = model_.rowOf(wanted); row >= 0) stand(row, LedgerModel::Name);
    fitColumns();
}

RoundLedger::Standing RoundLedger::standing() const {
    Standing standing;
    standing.top = verticalScrollBar()->value();
    for (const QModelIndex& index : selectionModel()->selectedRows())
        if (const RoundMachine* machine = model_.machineAt(index.row()))
            standing.chosen.push_back(machine->tag);
    return standing;
}

void RoundLedger::standAgain(const Standing& standing) {
    for (const std::string& tag : standing.chosen)
        if (const int row = model_.rowOf(tag); row >= 0)
            selectionModel()->select(model_.index(row, 0),
                                     QItemSelectionModel::Select | QItemSelectionModel::Rows);
    verticalScrollBar()->setValue(standing.top);
}

// The sentence gets what is left; where that is too little the others give way: first some width, then the
// age, then the strip.
void RoundLedger::fitColumns() {
    std::array<int, LedgerModel::Columns> widths{};
    for (int column = 0; column < LedgerModel::Columns; ++column)
        if (const int wide = RoundDelegate::columnWidth(fontMetrics(), column); wide > 0)
            widths[std::size_t(column)] = std::max(wide, horizontalHeader()->sectionSizeHint(column));
    if (model_.round().draft()) widths[LedgerModel::Decided] = 0;
    const int least = fontMetrics().averageCharWidth() * kLeastChanged;
    const auto lacking = [&] {
        return std::max(0, least - viewport()->width() + std::accumulate(widths.begin(), widths.end(), 0));
    };
    for (const int column : {LedgerModel::Name, LedgerModel::Decided, LedgerModel::Strip})
        widths[std::size_t(column)] -= std::min(lacking(), widths[std::size_t(column)] * 2 / 5);
    for (const int column : {LedgerModel::Age, LedgerModel::Strip})
        if (lacking() > 0) widths[std::size_t(column)] = 0;
    widths[LedgerModel::Changed] =
        std::max(least / 2, viewport()->width() - std::accumulate(widths.begin(), widths.end(), 0));
    const bool ageWasHidden = isColumnHidden(LedgerModel::Age);
    for (int column = 0; column < LedgerModel::Columns; ++column) {
        setColumnHidden(column, widths[std::size_t(column)] == 0);
        if (widths[std::size_t(column)] > 0) setColumnWidth(column, widths[std::size_t(column)]);
    }
    if (ageWasHidden != isColumnHidden(LedgerModel::Age)) emit columnsChanged();
}

// Another click on the same head turns the order round.
void RoundLedger::sortBy(int column) {
    const LedgerModel::Order order = LedgerModel::orderOf(column);
    emit orderWanted(order, order == model_.order() && !model_.backwards());
}

void RoundLedger::showOrder() {
    int column = 0;
    while (column + 1 < LedgerModel::Columns && LedgerModel::orderOf(column) != model_.order())
        ++column;
    horizontalHeader()->setSortIndicatorShown(model_.order() != LedgerModel::AsListed || model_.backwards());
    horizontalHeader()->setSortIndicator(column,
                                         model_.backwards() ? Qt::AscendingOrder : Qt::DescendingOrder);
}

void RoundLedger::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
}

void RoundLedger::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) arrange();
}

void RoundLedger::contextMenuEvent(QContextMenuEvent* event) {
    emit menuWanted(event->globalPos());
}

}  // namespace fettle
