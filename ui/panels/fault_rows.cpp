#include "ui/panels/fault_rows.h"

#include <QApplication>
#include <QPainter>
#include <algorithm>

namespace fettle {

namespace {

constexpr double kToldDban = 20, kSmaller = 0.88;

QFont smaller(const QFont& font) {
    QFont small = font;
    small.setPointSizeF(font.pointSizeF() * kSmaller);
    return small;
}

}  // namespace

void FaultRows::setSpan(double least, double most) {
    least_ = std::min(least, -10.0);
    most_ = std::max(most, 30.0);
}

QSize FaultRows::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const int line = option.fontMetrics.height();
    const bool detailed = !index.siblingAtColumn(Fault).data(kDetail).toString().isEmpty();
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.setHeight(int(line * (detailed ? 2.25 : 1.25)));
    return size;
}

void FaultRows::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    painter->save();
    if (index.column() == Fault && !index.data(kDetail).toString().isEmpty())
        paintFault(*painter, option, index);
    else
        QStyledItemDelegate::paint(painter, option, index);
    const QVariant weight = index.data(kWeight);
    if (index.column() == Bar && weight.isValid()) paintBar(*painter, option.rect, weight.toDouble());
    painter->restore();
}

// Name above, what is known of it below.
void FaultRows::paintFault(QPainter& painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    QStyleOptionViewItem ground = option;
    initStyleOption(&ground, index);
    const QString name = ground.text;
    const QIcon disc = ground.icon;
    ground.text.clear();
    ground.icon = {};
    ground.features &= ~QStyleOptionViewItem::HasDecoration;
    const QWidget* widget = option.widget;
    (widget ? widget->style() : QApplication::style())
        ->drawControl(QStyle::CE_ItemViewItem, &ground, &painter, widget);
    const int high = option.fontMetrics.height(), side = high;
    QRect line = option.rect.adjusted(3, high / 8, -3, 0);
    line.setHeight(high);
    disc.paint(&painter, QRect(line.left(), line.top(), side, high));
    line.setLeft(line.left() + side + high / 3);
    const bool chosen = option.state & QStyle::State_Selected;
    painter.setFont(option.font);
    painter.setPen(chosen ? option.palette.color(QPalette::HighlightedText) : theme_.colour(Role::Ink));
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter,
                     option.fontMetrics.elidedText(name, Qt::ElideRight, line.width()));
    const QFont small = smaller(option.font);
    painter.setFont(small);
    if (!chosen) painter.setPen(theme_.colour(Role::MutedInk));
    line.translate(0, high);
    painter.drawText(
        line, Qt::AlignLeft | Qt::AlignVCenter,
        QFontMetrics(small).elidedText(index.data(kDetail).toString(), Qt::ElideRight, line.width()));
}

void FaultRows::paintBar(QPainter& painter, const QRect& in, double dban) const {
    const QRectF cell = QRectF(in).adjusted(4, 0, -4, 0);
    const auto x = [&](double value) {
        return cell.left() + (value - least_) / (most_ - least_) * cell.width();
    };
    painter.setPen(QPen(theme_.colour(Role::Limit), 1, Qt::DashLine));
    painter.drawLine(QPointF(x(kToldDban), in.top()), QPointF(x(kToldDban), in.bottom() + 1));
    painter.setPen(QPen(theme_.colour(Role::MutedInk), 1));
    painter.drawLine(QPointF(x(0), in.top()), QPointF(x(0), in.bottom() + 1));
    const double high = painter.fontMetrics().height() * 0.6;
    const QRectF bar(std::min(x(0), x(dban)), cell.center().y() - high / 2, std::abs(x(dban) - x(0)), high);
    painter.fillRect(bar, theme_.colour(dban >= 0 ? Role::For : Role::Against));
}

}  // namespace fettle
