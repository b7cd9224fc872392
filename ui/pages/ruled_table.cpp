#include "ui/pages/ruled_table.h"

#include <QPainter>
#include <algorithm>

namespace fettle {

namespace {
constexpr int kCellMargin = 8;
const QString kSortMark = QStringLiteral(" \u2193");

int headHeight(const QFontMetrics& letters) {
    return letters.height() + 2 * kCellMargin - 2;
}

bool isSortedBy(const QHeaderView& header, int section) {
    return header.isSortIndicatorShown() && header.sortIndicatorSection() == section;
}
}  // namespace

RuledHeader::RuledHeader(const Theme& theme, QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent), theme_(theme) {
    setSectionsClickable(true);
    setHighlightSections(false);
    setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    connect(&theme, &Theme::changed, this, [this] { viewport()->update(); });
}

QSize RuledHeader::sizeHint() const {
    return {QHeaderView::sizeHint().width(), headHeight(fontMetrics())};
}

QSize RuledHeader::sectionSizeFromContents(int section) const {
    if (!model()) return QHeaderView::sectionSizeFromContents(section);
    const QString text = model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
    const int mark = isSortIndicatorShown() ? fontMetrics().horizontalAdvance(kSortMark) : 0;
    return {fontMetrics().horizontalAdvance(text) + mark + 2 * kCellMargin + 2, headHeight(fontMetrics())};
}

void RuledHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
    painter->save();
    painter->fillRect(rect, theme_.colour(Role::Ground));
    painter->setPen(QPen(theme_.colour(Role::MutedInk), 1));
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    const auto align = Qt::Alignment(
        model()->headerData(section, Qt::Horizontal, Qt::TextAlignmentRole).value<Qt::Alignment::Int>());
    QString text = model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
    if (isSortedBy(*this, section)) text += kSortMark;
    painter->setPen(theme_.colour(isSortedBy(*this, section) ? Role::Ink : Role::MutedInk));
    const QRect inside = rect.adjusted(kCellMargin, 0, -kCellMargin, 0);
    painter->drawText(inside, int(align ? align : Qt::AlignLeft | Qt::AlignVCenter),
                      fontMetrics().elidedText(text, Qt::ElideRight, inside.width()));
    painter->restore();
}

void RuledDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    QStyleOptionViewItem cell = option;
    cell.state &= ~QStyle::State_HasFocus;
    const bool chosen = option.state & QStyle::State_Selected;
    painter->fillRect(option.rect, theme_.colour(chosen ? Role::AccentGround : Role::Ground));
    cell.rect.adjust(kCellMargin - 4, 0, 4 - kCellMargin, 0);
    QStyledItemDelegate::paint(painter, cell, index);
    painter->setPen(QPen(theme_.colour(Role::Rule), 1));
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
}

QSize RuledDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QStyleOptionViewItem cell = option;
    cell.rect.adjust(kCellMargin - 4, 0, 4 - kCellMargin, 0);
    return QStyledItemDelegate::sizeHint(cell, index) + QSize(2 * kCellMargin - 8, kCellMargin);
}

void setRuled(QTableView& view, const Theme& theme) {
    auto* header = new RuledHeader(theme, &view);
    view.setHorizontalHeader(header);
    header->show();
    view.setItemDelegate(new RuledDelegate(theme, &view));
    view.setShowGrid(false);
    view.setFrameShape(QFrame::NoFrame);
    view.setSelectionBehavior(QAbstractItemView::SelectRows);
    view.setSelectionMode(QAbstractItemView::SingleSelection);
    view.setCornerButtonEnabled(false);
    view.verticalHeader()->hide();
    view.verticalHeader()->setDefaultSectionSize(view.fontMetrics().height() + kCellMargin);
    view.setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    view.setWordWrap(false);
}

void keepHeadsWhole(QTableView& view) {
    const QHeaderView& heads = *view.horizontalHeader();
    for (int column = 0; column < heads.count(); ++column)
        view.setColumnWidth(column, std::max(view.columnWidth(column), heads.sectionSizeHint(column)));
}

}  // namespace fettle
