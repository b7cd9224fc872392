#include "ui/plot/cursor_table.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>

#include "ui/model/numbers.h"
#include "ui/model/table_text.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {
enum Column { Name, OrderColumn, Frequency, Amplitude, OverFloor, kColumns };
}

CursorTable::CursorTable(const QString& name, QWidget* parent) : QTableWidget(0, kColumns, parent) {
    setObjectName(name);
    setAccessibleName(tr("Lines of the cursor"));
    setToolTip(tr("Lines of the cursor; Ctrl+C copies the chosen rows, or all"));
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setFrameStyle(QFrame::NoFrame);
    setShowGrid(false);
    setTabKeyNavigation(false);
    verticalHeader()->hide();
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setHighlightSections(false);
    connect(this, &QTableWidget::cellActivated, this,
            [this](int row, int) { emit placeChosen(rows_[std::size_t(row)].hz); });
}

void CursorTable::setRows(std::vector<CursorRow> rows, const QString& amplitudeUnit, Units units) {
    rows_ = std::move(rows);
    const ShownUnit hertz = shownUnit(QStringLiteral("Hz"), units);
    heads_ = {tr("line"), tr("order"), hertz.unit, amplitudeUnit, tr("dB over floor")};
    setHorizontalHeaderLabels(heads_);
    setColumnHidden(Amplitude, amplitudeUnit == heads_[OverFloor]);  // the same number twice
    setRowCount(int(rows_.size()));
    for (int i = 0; i < rowCount(); ++i) {
        const CursorRow& row = rows_[std::size_t(i)];
        const QStringList texts = {row.name.isEmpty() ? QStringLiteral("1") : row.name,
                                   row.order ? fixedText(*row.order, 3) : QString(),
                                   fixedText(hertz.shown(row.hz), 2), significant(row.value, 4),
                                   fixedText(row.overFloorDb, 1)};
        for (int column = 0; column < kColumns; ++column) {
            auto* cell = new QTableWidgetItem(texts[column]);
            cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            setItem(i, column, cell);
        }
        setRowHeight(i, fontMetrics().height() + 4);
    }
}

QString CursorTable::text(bool chosenOnly) const {
    const bool some = chosenOnly && !selectedItems().isEmpty();
    QStringList lines = {heads_.join(QLatin1Char('\t'))};
    for (int i = 0; i < rowCount(); ++i) {
        if (some && !item(i, 0)->isSelected()) continue;
        QStringList fields;
        for (int column = 0; column < kColumns; ++column)
            fields << item(i, column)->text();
        lines << fields.join(QLatin1Char('\t'));
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

QSize CursorTable::sizeHint() const {
    return {24 * fontMetrics().height(), 8 * fontMetrics().height()};
}

// Its own copy goes before the plot's.
bool CursorTable::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride &&
        static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy)) {
        event->accept();
        return true;
    }
    return QTableWidget::event(event);
}

void CursorTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy))
        QGuiApplication::clipboard()->setText(withoutFormulas(text(true)));
    else
        QTableWidget::keyPressEvent(event);
}

}  // namespace fettle
