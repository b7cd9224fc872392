#include "ui/plot/colour_legend.h"

#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QMenu>
#include <QPainter>
#include <QPushButton>
#include <QStyleOptionFocusRect>
#include <QWidgetAction>
#include <cmath>

#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr int kGapPx = 6;
constexpr double kBarEms = 6.5;

double toDb(double value) {
    return 20 * std::log10(value);
}
double fromDb(double db) {
    return std::pow(10, db / 20);
}

QDoubleSpinBox* endBox(double value, const QString& unit, bool decibels, const QString& name,
                       QWidget* parent) {
    auto* box = new QDoubleSpinBox(parent);
    box->setObjectName(name);
    box->setLocale(QLocale::c());
    box->setDecimals(decibels ? 1 : 6);
    box->setRange(decibels ? -120 : 1e-6, decibels ? 200 : 1e6);
    box->setStepType(decibels ? QAbstractSpinBox::DefaultStepType
                              : QAbstractSpinBox::AdaptiveDecimalStepType);
    box->setValue(decibels ? toDb(value) : value);
    box->setSuffix(QChar(' ') + unit);
    return box;
}

}  // namespace

ColourLegend::ColourLegend(const Theme& theme, QWidget* parent) : QAbstractButton(parent), theme_(theme) {
    setObjectName(QStringLiteral("colourLegend"));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    connect(this, &QAbstractButton::clicked, this, &ColourLegend::ask);
}

void ColourLegend::show(ColourRange range, const QString& unit, bool decibels, const ColourMap& map) {
    range_ = range;
    unit_ = unit;
    decibels_ = decibels;
    map_ = &map;
    setAccessibleName(tr("Colours: %1; press to change").arg(text()));
    setToolTip(accessibleName());
    updateGeometry();
    update();
}

QString ColourLegend::endText(double value) const {
    return decibels_ ? QString::number(toDb(value), 'f', 0) : significant(value, 2);
}

QString ColourLegend::text() const {
    return tr("%1 to %2 %3").arg(endText(range_.low), endText(range_.high), unit_);
}

QSize ColourLegend::sizeHint() const {
    const QFontMetrics metrics = fontMetrics();
    const int words = metrics.horizontalAdvance(endText(range_.low)) +
                      metrics.horizontalAdvance(endText(range_.high) + QChar(' ') + unit_);
    return {words + int(kBarEms * metrics.height()) + 4 * kGapPx, int(1.4 * metrics.height())};
}

void ColourLegend::paintEvent(QPaintEvent*) {
    if (!map_) return;
    QPainter painter(this);
    const QFontMetrics metrics = fontMetrics();
    const QString low = endText(range_.low), high = endText(range_.high) + QChar(' ') + unit_;
    const QRect inner = rect().adjusted(kGapPx, 0, -kGapPx, 0);
    painter.setPen(theme_.colour(Role::Ink));
    painter.drawText(inner, Qt::AlignLeft | Qt::AlignVCenter, low);
    painter.drawText(inner, Qt::AlignRight | Qt::AlignVCenter, high);
    const int left = inner.left() + metrics.horizontalAdvance(low) + kGapPx;
    const int right = inner.right() - metrics.horizontalAdvance(high) - kGapPx;
    const QRectF bar(left, rect().center().y() - 0.35 * metrics.height(), right - left,
                     0.7 * metrics.height());
    for (int x = 0; x < int(bar.width()); ++x) {
        const auto at = std::size_t(x * int(map_->size() - 1) / std::max(1, int(bar.width()) - 1));
        painter.fillRect(QRectF(bar.left() + x, bar.top(), 1, bar.height()), QColor::fromRgb((*map_)[at]));
    }
    painter.setPen(QPen(theme_.colour(Role::Ink), 1));
    const double step = decibels_ ? 10 : 20;  // dB: a tick every 10, or every decade
    for (double db = std::ceil(toDb(range_.low) / step) * step; db <= toDb(range_.high); db += step) {
        const double x = bar.left() + range_.share(fromDb(db)) * bar.width();
        painter.drawLine(QPointF(x, bar.bottom()), QPointF(x, bar.bottom() + 3));
    }
    if (hasFocus()) {
        QStyleOptionFocusRect focus;
        focus.initFrom(this);
        style()->drawPrimitive(QStyle::PE_FrameFocusRect, &focus, &painter, this);
    }
}

void ColourLegend::ask() {
    QMenu menu(this);
    auto* page = new QWidget(&menu);
    auto* form = new QFormLayout(page);
    auto* low = endBox(range_.low, unit_, decibels_, QStringLiteral("colourLow"), page);
    auto* high = endBox(range_.high, unit_, decibels_, QStringLiteral("colourHigh"), page);
    form->addRow(tr("Weakest"), low);
    form->addRow(tr("Strongest"), high);
    auto* byData = new QPushButton(tr("By the data"), page);
    byData->setObjectName(QStringLiteral("colourByData"));
    form->addRow(byData);
    const auto set = [&] {
        ColourRange range{decibels_ ? fromDb(low->value()) : low->value(),
                          decibels_ ? fromDb(high->value()) : high->value()};
        range.high = std::max(range.high, range.low * 1.1);
        emit rangeWanted(range);
    };
    connect(low, &QDoubleSpinBox::valueChanged, this, set);
    connect(high, &QDoubleSpinBox::valueChanged, this, set);
    connect(byData, &QPushButton::clicked, &menu, [&] {
        emit rangeWanted(std::nullopt);
        menu.close();
    });
    auto* action = new QWidgetAction(&menu);
    action->setDefaultWidget(page);
    menu.addAction(action);
    low->setFocus();
    menu.exec(mapToGlobal(rect().bottomLeft()));
}

}  // namespace fettle
