#include "ui/panels/evidence_view.h"

#include <QApplication>
#include <QClipboard>
#include <QEvent>
#include <QHeaderView>
#include <algorithm>
#include <cmath>

#include "ui/model/table_text.h"
#include "ui/panels/evidence_model.h"

namespace fettle {

namespace {
constexpr int kBarEms = 4;
// The first to go where there is not room for all.
constexpr EvidenceModel::Column kSpared[] = {EvidenceModel::Share, EvidenceModel::Expected,
                                             EvidenceModel::RankP, EvidenceModel::Order, EvidenceModel::Db};
}  // namespace

EvidenceView::EvidenceView(const Theme& theme, Selection& selection, QWidget* parent)
    : QTableView(parent), selection_(selection), model_(new EvidenceModel(theme, this)) {
    setObjectName(QStringLiteral("evidenceTable"));
    setAccessibleName(tr("Lines and what each added or took away"));
    setModel(model_);
    setItemDelegate(new EvidenceBars(theme, *model_, this));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setFrameStyle(QFrame::NoFrame);
    setWordWrap(false);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    verticalHeader()->hide();
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionsClickable(false);
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &EvidenceView::chooseRow);
    connect(this, &QAbstractItemView::clicked, this, &EvidenceView::chooseRow);
    connect(&selection_, &Selection::cursorChanged, this, &EvidenceView::markCursor);
    connect(&selection_, &Selection::unitsChanged, this, [this] {
        model_->setUnits(selection_.units());
        fitColumns();
    });
    model_->setUnits(selection_.units());
    connect(&theme, &Theme::changed, viewport(), qOverload<>(&QWidget::update));
    fitColumns();
}

void EvidenceView::setRows(ArithmeticRows rows) {
    choosing_ = true;  // a reset must not move the cursor
    model_->setRows(std::move(rows));
    choosing_ = false;
    fitColumns();
    updateGeometry();
    markCursor();
}

const ArithmeticRows& EvidenceView::rows() const {
    return model_->rows();
}

void EvidenceView::showSum(bool shown) {
    sum_ = shown;
    fitColumns();
}

void EvidenceView::copyTable() const {
    QApplication::clipboard()->setText(withoutFormulas(model_->asTable()));
}

void EvidenceView::chooseRow(const QModelIndex& index) {
    if (choosing_ || !index.isValid()) return;
    const double hz = placeHz(rows()[std::size_t(index.row())]);
    choosing_ = true;
    if (hz > 0) selection_.setCursorHz(hz);
    choosing_ = false;
}

void EvidenceView::markCursor() {
    if (choosing_) return;
    choosing_ = true;
    int nearest = -1;
    double away = toleranceHz_;
    for (std::size_t i = 0; selection_.cursorHz() && i < rows().size(); ++i) {
        const double place = placeHz(rows()[i]);
        if (place <= 0 || std::abs(place - *selection_.cursorHz()) > away) continue;
        away = std::abs(place - *selection_.cursorHz());
        nearest = int(i);
    }
    if (nearest >= 0)
        selectRow(nearest);
    else
        clearSelection();
    choosing_ = false;
}

QSize EvidenceView::sizeHint() const {
    const int rows = model_->rowCount() * verticalHeader()->defaultSectionSize();
    return {20 * fontMetrics().averageCharWidth(), horizontalHeader()->sizeHint().height() + rows + 2};
}

void EvidenceView::spareColumns() {
    for (const int column : kSpared)
        setColumnHidden(column, false);
    int wide = kBarEms * fontMetrics().height();
    const auto widthOf = [this](int column) {
        return std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column));
    };
    for (int column = 0; column < int(EvidenceModel::Bar); ++column)
        wide += isColumnHidden(column) ? 0 : widthOf(column);
    for (const int column : kSpared) {
        if (wide <= viewport()->width()) return;
        wide -= widthOf(column);
        setColumnHidden(column, true);
    }
}

// What must be read gets the width of its text, the bars what is left.
void EvidenceView::fitColumns() {
    verticalHeader()->setDefaultSectionSize(int(fontMetrics().height() * 1.3));
    setColumnHidden(EvidenceModel::Sum, !sum_);
    QHeaderView* head = horizontalHeader();
    spareColumns();
    for (int column = 0; column < int(EvidenceModel::kColumns); ++column)
        head->setSectionResizeMode(
            column, column == EvidenceModel::Bar ? QHeaderView::Stretch : QHeaderView::ResizeToContents);
    head->setMinimumSectionSize(2 * fontMetrics().averageCharWidth());
}

void EvidenceView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
}

void EvidenceView::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange && model_) {
        fitColumns();
        updateGeometry();
    }
}

}  // namespace fettle
