#include "ui/plot/colour_legend.h"

#include <QApplication>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QKeyEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QPainter>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStyleOptionFocusRect>
#include <QWidgetAction>
#include <cmath>

namespace fettle {

namespace {

constexpr int kGapPx = 6;
constexpr double kBarEms = 5.5, kKeyStep = 0.05;
constexpr int kTicks = 4;

QDoubleSpinBox* numberBox(const QString& name, const QString& says, int decimals, double low, double high) {
    auto* box = new QDoubleSpinBox;
    box->setObjectName(name);
    box->setAccessibleName(says);
    box->setToolTip(says);
    box->setDecimals(decimals);
    box->setRange(low, high);
    box->setKeyboardTracking(false);
    return box;
}

QComboBox* choiceBox(const QString& name, const QString& says, const QStringList& choices, int chosen) {
    auto* box = new QComboBox;
    box->setObjectName(name);
    box->setAccessibleName(says);
    box->setToolTip(says);
    box->addItems(choices);
    box->setCurrentIndex(chosen);
    return box;
}

}  // namespace

ColourLegend::ColourLegend(const Theme& theme, WaterfallLook& look, QWidget* parent)
    : QAbstractButton(parent), theme_(theme), look_(look) {
    setObjectName(QStringLiteral("colourLegend"));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    connect(this, &QAbstractButton::clicked, this, &ColourLegend::ask);
    connect(&look_, &WaterfallLook::changed, this, &ColourLegend::take);
    connect(&look_, &WaterfallLook::lookChanged, this, &ColourLegend::take);
    take();
}

void ColourLegend::take() {
    setVisible(!look_.empty());
    setAccessibleName(tr("Strengths: %1; press to change, drag to move the ends").arg(text()));
    setToolTip(accessibleName());
    updateGeometry();
    update();
}

QString ColourLegend::text() const {
    const ColourRange range = look_.range();
    return tr("%1 to %2 %3").arg(look_.endText(range.low), look_.endText(range.high), look_.unit());
}

QSize ColourLegend::sizeHint() const {
    const QFontMetrics metrics = fontMetrics();
    const ColourRange range = look_.range();
    const int words = metrics.horizontalAdvance(look_.endText(range.low)) +
                      metrics.horizontalAdvance(look_.endText(range.high) + QChar(' ') + look_.unit());
    return {words + int(kBarEms * metrics.height()) + 4 * kGapPx, int(1.4 * metrics.height())};
}

QRectF ColourLegend::barRect() const {
    const QFontMetrics metrics = fontMetrics();
    const ColourRange range = look_.range();
    const int left = 2 * kGapPx + metrics.horizontalAdvance(look_.endText(range.low));
    const int right = width() - 2 * kGapPx -
                      metrics.horizontalAdvance(look_.endText(range.high) + QChar(' ') + look_.unit());
    return {double(left), rect().center().y() - 0.35 * metrics.height(), double(std::max(right - left, 1)),
            0.7 * metrics.height()};
}

void ColourLegend::drawTicks(QPainter& painter, const QRectF& bar) const {
    const ColourRange range = look_.range();
    const double low = look_.shown(range.low), high = look_.shown(range.high);
    const double rough = (high - low) / kTicks, whole = std::pow(10, std::floor(std::log10(rough)));
    const double step = rough / whole > 5 ? 10 * whole : rough / whole > 2 ? 5 * whole : 2 * whole;
    painter.setPen(QPen(theme_.colour(Role::Ink), 1));
    for (double at = std::ceil(low / step) * step; at <= high; at += step) {
        const double x = bar.left() + range.share(look_.stored(at)) * bar.width();
        painter.drawLine(QPointF(x, bar.bottom()), QPointF(x, bar.bottom() + 3));
    }
}

void ColourLegend::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const ColourRange range = look_.range();
    const ColourMap& map = look_.colours();
    const QRect inner = rect().adjusted(kGapPx, 0, -kGapPx, 0);
    painter.setPen(theme_.colour(Role::Ink));
    painter.drawText(inner, Qt::AlignLeft | Qt::AlignVCenter, look_.endText(range.low));
    painter.drawText(inner, Qt::AlignRight | Qt::AlignVCenter,
                     look_.endText(range.high) + QChar(' ') + look_.unit());
    const QRectF bar = barRect();
    for (int x = 0; x < int(bar.width()); ++x) {
        const auto at = std::size_t(x * int(map.size() - 1) / std::max(1, int(bar.width()) - 1));
        painter.fillRect(QRectF(bar.left() + x, bar.top(), 1, bar.height()), QColor::fromRgb(map[at]));
    }
    painter.setPen(QPen(theme_.colour(Role::Rule), 1));
    painter.drawRect(bar.adjusted(-0.5, -0.5, 0.5, 0.5));
    drawTicks(painter, bar);
    if (hasFocus()) {
        QStyleOptionFocusRect focus;
        focus.initFrom(this);
        style()->drawPrimitive(QStyle::PE_FrameFocusRect, &focus, &painter, this);
    }
}

void ColourLegend::mousePressEvent(QMouseEvent* event) {
    QAbstractButton::mousePressEvent(event);
    pressedAt_ = event->position();
    pressedRange_ = look_.range();
    pressedBar_ = barRect();
    dragging_ = false;
}

void ColourLegend::mouseMoveEvent(QMouseEvent* event) {
    if (!(event->buttons() & Qt::LeftButton)) return;
    const double by = event->position().x() - pressedAt_.x();
    if (!dragging_ && std::abs(by) < QApplication::startDragDistance()) return;
    dragging_ = true;
    const bool high = pressedAt_.x() > pressedBar_.center().x();
    const double share = by / pressedBar_.width();
    ColourRange range = pressedRange_;
    (high ? range.high : range.low) = pressedRange_.value(high ? 1 + share : share);
    if (range.low > 0 && range.high > range.low * 1.1) look_.setRange(range);
}

void ColourLegend::mouseReleaseEvent(QMouseEvent* event) {
    if (dragging_) {
        setDown(false);
        return;
    }
    QAbstractButton::mouseReleaseEvent(event);
}

void ColourLegend::moveEnd(bool high, double byShare) {
    const ColourRange before = look_.range();
    ColourRange range = before;
    (high ? range.high : range.low) = before.value((high ? 1 : 0) + byShare);
    if (range.low > 0 && range.high > range.low * 1.1) look_.setRange(range);
}

void ColourLegend::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
            return moveEnd(false, -kKeyStep);
        case Qt::Key_Right:
            return moveEnd(false, kKeyStep);
        case Qt::Key_Down:
            return moveEnd(true, -kKeyStep);
        case Qt::Key_Up:
            return moveEnd(true, kKeyStep);
        default:
            QAbstractButton::keyPressEvent(event);
    }
}

void ColourLegend::addScale(QFormLayout& form) {
    auto* scale = choiceBox(QStringLiteral("strengthScale"), tr("Scale of the strengths"),
                            {tr("decibels"), tr("linear")}, look_.linear() ? 1 : 0);
    connect(scale, &QComboBox::activated, &look_, [this](int at) { look_.setLinear(at == 1); });
    form.addRow(tr("&Scale"), scale);
    auto* map = choiceBox(QStringLiteral("colourMap"), tr("Map of colours"),
                          {tr("blue to yellow"), tr("greys")}, int(look_.map()));
    connect(map, &QComboBox::activated, &look_, [this](int at) { look_.setMap(MapChoice(at)); });
    form.addRow(tr("&Colours"), map);
}

// Ends by hand follow what is shown; percentiles bring back a range by the data.
void ColourLegend::addRange(QFormLayout& form) {
    auto* low = numberBox(QStringLiteral("colourLow"), tr("Weakest strength shown"), 6, -400, 1e6);
    auto* high = numberBox(QStringLiteral("colourHigh"), tr("Strongest strength shown"), 6, -400, 1e6);
    auto* lowShare =
        numberBox(QStringLiteral("colourLowShare"), tr("Weakest, percentile of the data"), 2, 0, 99);
    auto* highShare =
        numberBox(QStringLiteral("colourHighShare"), tr("Strongest, percentile of the data"), 2, 1, 100);
    const auto show = [this, low, high, lowShare, highShare] {
        const QSignalBlocker quiet[] = {QSignalBlocker(low), QSignalBlocker(high), QSignalBlocker(lowShare),
                                        QSignalBlocker(highShare)};
        for (QDoubleSpinBox* box : {low, high}) {
            box->setSuffix(QChar(' ') + look_.unit());
            box->setDecimals(look_.linear() ? 6 : 1);
            box->setStepType(look_.linear() ? QAbstractSpinBox::AdaptiveDecimalStepType
                                            : QAbstractSpinBox::DefaultStepType);
        }
        low->setValue(look_.shown(look_.range().low));
        high->setValue(look_.shown(look_.range().high));
        lowShare->setValue(100 * look_.lowShare());
        highShare->setValue(100 * look_.highShare());
    };
    show();
    const auto byHand = [this, low, high] {
        const double weak = look_.stored(low->value());
        if (weak > 0) look_.setRange(ColourRange{weak, look_.stored(high->value())});
    };
    const auto byShare = [this, lowShare, highShare] {
        look_.setShares(lowShare->value() / 100, highShare->value() / 100);
    };
    connect(low, &QDoubleSpinBox::valueChanged, &look_, byHand);
    connect(high, &QDoubleSpinBox::valueChanged, &look_, byHand);
    connect(lowShare, &QDoubleSpinBox::valueChanged, &look_, byShare);
    connect(highShare, &QDoubleSpinBox::valueChanged, &look_, byShare);
    connect(&look_, &WaterfallLook::lookChanged, low, show);
    form.addRow(tr("&Weakest"), low);
    form.addRow(tr("S&trongest"), high);
    form.addRow(tr("Weakest, &percentile"), lowShare);
    form.addRow(tr("Strongest, p&ercentile"), highShare);
}

void ColourLegend::ask() {
    auto* menu = new QMenu(this);
    menu->setObjectName(QStringLiteral("colourMenu"));
    menu->setAttribute(Qt::WA_DeleteOnClose);
    auto* page = new QWidget(menu);
    auto* form = new QFormLayout(page);
    addScale(*form);
    addRange(*form);
    auto* byData = new QPushButton(tr("By the &data"), page);
    byData->setObjectName(QStringLiteral("colourByData"));
    connect(byData, &QPushButton::clicked, menu, [this, menu] {
        look_.setShares(WaterfallData::kLowShare, WaterfallData::kHighShare);
        menu->close();
    });
    form->addRow(byData);
    auto* action = new QWidgetAction(menu);
    action->setDefaultWidget(page);
    menu->addAction(action);
    menu->popup(mapToGlobal(rect().bottomLeft()));
    page->findChild<QComboBox*>(QStringLiteral("strengthScale"))->setFocus();
}

}  // namespace fettle
