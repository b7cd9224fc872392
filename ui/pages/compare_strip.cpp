#include "ui/pages/compare_strip.h"

#include <QClipboard>
#include <QComboBox>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QSignalBlocker>
#include <QTableWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "ui/model/site_time.h"
#include "ui/model/table_text.h"
#include "ui/model/words.h"
#include "ui/plot/head_flow.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

enum Column { Value, AgainstHere, Where, Relation, When, kColumns };  // numbers first: never scrolled away

QString relationWord(Beside beside) {
    switch (beside) {
        case Beside::Here:
            return CompareStrip::tr("shown");
        case Beside::OtherDirection:
            return CompareStrip::tr("other direction");
        case Beside::OtherEnd:
            return CompareStrip::tr("other end");
        case Beside::OtherComponent:
            return CompareStrip::tr("other part of the train");
        case Beside::Twin:
            break;
    }
    return CompareStrip::tr("twin");
}

}  // namespace

CompareStrip::CompareStrip(QWidget* parent) : QWidget(parent) {
    setObjectName(QStringLiteral("compareStrip"));
    setAccessibleName(tr("Twins and train"));
    auto* title = new QLabel(tr("Where is it largest?"), this);
    quantityBox_ = new QComboBox(this);
    quantityBox_->setObjectName(QStringLiteral("compareQuantity"));
    quantityBox_->setAccessibleName(tr("Quantity that is compared"));
    quantityBox_->setToolTip(quantityBox_->accessibleName());
    quantityBox_->addItems({tr("velocity r.m.s."), tr("1x"), tr("above 1 kHz"), tr("line at the cursor")});
    connect(quantityBox_, &QComboBox::activated, this, &CompareStrip::rebuild);
    below_ = new QToolButton(this);
    below_->setObjectName(QStringLiteral("compareBelow"));
    below_->setText(tr("below each other"));
    below_->setAccessibleName(tr("Spectra of all places below each other"));
    below_->setToolTip(tr("The spectra of all places below each other on one axis (Y)"));
    below_->setFocusPolicy(Qt::StrongFocus);
    connect(below_, &QToolButton::clicked, this, &CompareStrip::belowWanted);
    auto* close = new QToolButton(this);
    close->setObjectName(QStringLiteral("compareClose"));
    close->setText(QStringLiteral("×"));
    close->setAccessibleName(tr("Close the comparison"));
    close->setToolTip(tr("Close the comparison (Esc)"));
    close->setFocusPolicy(Qt::StrongFocus);
    connect(close, &QToolButton::clicked, this, &CompareStrip::closed);
    words_ = new QLabel(this);
    words_->setObjectName(QStringLiteral("compareWords"));
    words_->setWordWrap(true);
    table_ = new QTableWidget(0, kColumns, this);
    table_->setObjectName(QStringLiteral("compareTable"));
    table_->setAccessibleName(tr("The same quantity elsewhere, largest first"));
    table_->setToolTip(
        tr("A row lays its spectrum over the one shown; Return goes there; Ctrl+C copies all"));
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setFrameStyle(QFrame::NoFrame);
    table_->setShowGrid(false);
    table_->setTabKeyNavigation(false);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setSectionResizeMode(Where, QHeaderView::Stretch);
    table_->installEventFilter(this);
    connect(table_, &QTableWidget::currentCellChanged, this, [this](int row) { emit chosenChanged(row); });
    connect(table_, &QTableWidget::cellActivated, this, [this](int row) { emit goTo(row); });
    auto* head = new HeadFlow;
    int at = 0;
    for (QWidget* part : std::initializer_list<QWidget*>{title, quantityBox_, below_, close})
        head->insertWidget(at++, part);
    head->setTailWidth(close->sizeHint().width());
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(6, 0, 0, 0);
    column->setSpacing(2);
    column->addLayout(head);
    column->addWidget(words_);
    column->addWidget(table_, 1);
}

void CompareStrip::setRows(std::vector<SideRow> rows, const QString& lineUnit) {
    rows_ = std::move(rows);
    below_->setEnabled(rows_.size() > 1);
    lineUnit_ = lineUnit;
    rebuild();
}

void CompareStrip::setWords(const QString& words) {
    words_->setText(words);
    words_->setVisible(!words.isEmpty());
}

void CompareStrip::setUnits(Units units) {
    units_ = units;
    rebuild();
}

void CompareStrip::setZone(const QTimeZone& zone) {
    zone_ = zone;
}

std::optional<double> CompareStrip::valueOf(const SideRow& row) const {
    switch (SideQuantity(quantityBox_->currentIndex())) {
        case SideQuantity::Velocity:
            return row.velocityMmS;
        case SideQuantity::Order1:
            return row.order1MmS;
        case SideQuantity::HighBand:
            return row.highBandG;
        case SideQuantity::Line:
            break;
    }
    return row.line;
}

QString CompareStrip::unit() const {
    switch (SideQuantity(quantityBox_->currentIndex())) {
        case SideQuantity::Velocity:
        case SideQuantity::Order1:
            return QStringLiteral("mm/s r.m.s.");
        case SideQuantity::HighBand:
            return QStringLiteral("g r.m.s.");
        case SideQuantity::Line:
            break;
    }
    return lineUnit_;
}

QString CompareStrip::nameOf(const SideRow& row, const QString& hereTag) {
    const QString place = shown(row.channel.point + " " + row.channel.name);
    return shown(row.tag) == hereTag ? place : tr("%1 %2").arg(shown(row.tag), place);
}

void CompareStrip::rebuild() {
    std::stable_sort(rows_.begin(), rows_.end(), [this](const SideRow& a, const SideRow& b) {
        return valueOf(a).value_or(-1) > valueOf(b).value_or(-1);
    });
    const auto here = std::find_if(rows_.begin(), rows_.end(),
                                   [](const SideRow& row) { return row.beside == Beside::Here; });
    const QString hereTag = here == rows_.end() ? QString() : shown(here->tag);
    const double hereValue = here == rows_.end() ? 0.0 : valueOf(*here).value_or(0.0);
    const ShownUnit shownAs = shownUnit(unit(), units_);
    const QSignalBlocker quiet(table_);
    table_->setHorizontalHeaderLabels({shownAs.unit, tr("× shown"), tr("where"), tr("what"), tr("recorded")});
    table_->setRowCount(int(rows_.size()));
    for (int i = 0; i < table_->rowCount(); ++i) {
        const SideRow& row = rows_[std::size_t(i)];
        const auto value = valueOf(row);
        const bool ratio = value && hereValue > 0;
        QString place = nameOf(row, hereTag);
        if (!row.channel.direction.empty() && row.channel.direction != "unknown")
            place = tr("%1, %2").arg(place, shown(row.channel.direction));
        const QStringList texts = {value ? significant(shownAs.shown(*value)) : QStringLiteral("-"),
                                   ratio ? significant(*value / hereValue, 2) : QString(), place,
                                   relationWord(row.beside), shortMomentText(row.time, zone_)};
        for (int column = 0; column < kColumns; ++column) {
            auto* cell = new QTableWidgetItem(texts[column]);
            cell->setToolTip(texts.mid(Where).join(QStringLiteral("; ")));
            if (column == Value || column == AgainstHere)
                cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            if (row.beside == Beside::Here) {
                QFont bold = cell->font();
                bold.setBold(true);
                cell->setFont(bold);
            }
            table_->setItem(i, column, cell);
        }
        table_->setRowHeight(i, fontMetrics().height() + 4);
    }
    fitColumns();
    if (!rows_.empty() && valueOf(rows_[0])) setWords(tr("Largest: %1.").arg(table_->item(0, Where)->text()));
}

// What stands in the row's tooltip as well gives way before the table scrolls.
void CompareStrip::fitColumns() {
    const QHeaderView& header = *table_->horizontalHeader();
    const QAbstractItemView& cells = *table_;
    int wanted = 0;
    std::array<int, kColumns> wide;
    for (int column = 0; column < kColumns; ++column) {
        wide[std::size_t(column)] =
            std::max(cells.sizeHintForColumn(column), header.sectionSizeHint(column)) + 1;
        wanted += wide[std::size_t(column)];
    }
    for (const int column : {When, Relation}) {
        const bool room = wanted <= table_->viewport()->width();
        table_->setColumnHidden(column, !room);
        if (!room) wanted -= wide[std::size_t(column)];
    }
}

void CompareStrip::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitColumns();
}

void CompareStrip::setChosen(int row) {
    table_->setCurrentCell(row, row < 0 ? -1 : 0);
}

int CompareStrip::chosen() const {
    return table_->currentRow();
}

QSize CompareStrip::minimumSizeHint() const {
    return {13 * fontMetrics().height(), 6 * fontMetrics().height()};
}

QString CompareStrip::tableText() const {
    QStringList lines;
    QStringList heads;
    for (int column = 0; column < kColumns; ++column)
        heads << table_->horizontalHeaderItem(column)->text();
    lines << heads.join(QLatin1Char('\t'));
    for (int i = 0; i < table_->rowCount(); ++i) {
        QStringList fields;
        for (int column = 0; column < kColumns; ++column)
            fields << table_->item(i, column)->text();
        lines << fields.join(QLatin1Char('\t'));
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

bool CompareStrip::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress && event->type() != QEvent::ShortcutOverride)
        return QWidget::eventFilter(watched, event);
    auto& key = static_cast<QKeyEvent&>(*event);
    const bool copy = key.matches(QKeySequence::Copy), close = key.key() == Qt::Key_Escape;
    if (!copy && !close) return QWidget::eventFilter(watched, event);
    event->accept();
    if (event->type() == QEvent::ShortcutOverride) return true;
    if (copy)
        QGuiApplication::clipboard()->setText(withoutFormulas(tableText()));
    else
        emit closed();
    return true;
}

}  // namespace fettle
