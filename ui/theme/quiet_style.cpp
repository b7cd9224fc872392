#include "ui/theme/quiet_style.h"

#include <QApplication>
#include <QLabel>
#include <QPainter>
#include <QPlainTextEdit>
#include <QStyleOption>
#include <algorithm>

namespace fettle {

namespace {

bool has(const QStyleOption& option, QStyle::StateFlag state) {
    return option.state & state;
}

QColor ruleOf(const QStyleOption& option) {
    if (has(option, QStyle::State_HasFocus)) return option.palette.color(QPalette::Link);
    return option.palette.color(has(option, QStyle::State_Enabled) ? QPalette::Dark : QPalette::Mid);
}

// A field stands on its rule.
void drawField(const QStyleOption& option, QPainter& painter) {
    painter.fillRect(option.rect, option.palette.color(QPalette::Base));
    const int thick = has(option, QStyle::State_HasFocus) ? 2 : 1;
    painter.fillRect(QRect(option.rect.left(), option.rect.bottom() + 1 - thick, option.rect.width(), thick),
                     ruleOf(option));
}

void drawButton(const QStyleOption& option, QPainter& painter) {
    const bool raisedOnlyUnderPointer = has(option, QStyle::State_AutoRaise);
    const bool hovered = has(option, QStyle::State_Enabled) && has(option, QStyle::State_MouseOver);
    const bool on = has(option, QStyle::State_On);
    const bool down = on || has(option, QStyle::State_Sunken);
    const bool focus = has(option, QStyle::State_HasFocus);
    if (raisedOnlyUnderPointer && !hovered && !down && !focus) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(
        QPen(focus || on
                 ? option.palette.color(QPalette::Link)
                 : option.palette.color(has(option, QStyle::State_Enabled) ? QPalette::Dark : QPalette::Mid),
             1));
    painter.setBrush(down      ? option.palette.color(QPalette::Highlight)
                     : hovered ? option.palette.color(QPalette::Button)
                               : option.palette.color(QPalette::Base));
    painter.drawRoundedRect(QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5), 2, 2);
    painter.restore();
}

void drawCheckBox(const QStyleOption& option, QPainter& painter) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5);
    painter.setPen(QPen(ruleOf(option), 1));
    painter.setBrush(option.palette.color(QPalette::Base));
    painter.drawRect(box);
    const QColor ink = option.palette.color(QPalette::Link);
    if (has(option, QStyle::State_On)) {
        painter.setPen(QPen(ink, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.drawPolyline(QPolygonF{{box.left() + box.width() * 0.2, box.top() + box.height() * 0.55},
                                       {box.left() + box.width() * 0.42, box.top() + box.height() * 0.78},
                                       {box.left() + box.width() * 0.82, box.top() + box.height() * 0.22}});
    } else if (has(option, QStyle::State_NoChange)) {
        painter.fillRect(box.adjusted(3, 3, -3, -3), ink);
    }
    painter.restore();
}

enum class Points { Up, Down };

void drawArrow(const QRectF& in, Points points, double wide, const QColor& ink, QPainter& painter) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink, 1.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF middle = in.center();
    const double drop = points == Points::Down ? wide / 2 : -wide / 2;
    painter.drawPolyline(QPolygonF{{middle.x() - wide, middle.y() - drop},
                                   {middle.x(), middle.y() + drop},
                                   {middle.x() + wide, middle.y() - drop}});
    painter.restore();
}

void drawList(const QStyle& style, const QStyleOptionComboBox& box, QPainter& painter,
              const QWidget* widget) {
    drawField(box, painter);
    const QRect arrow = style.subControlRect(QStyle::CC_ComboBox, &box, QStyle::SC_ComboBoxArrow, widget);
    drawArrow(arrow, Points::Down, std::max(3.5, painter.fontMetrics().height() / 4.0),
              box.palette.color(has(box, QStyle::State_Enabled) ? QPalette::Text : QPalette::Mid), painter);
}

void drawSpinBox(const QStyle& style, const QStyleOptionSpinBox& box, QPainter& painter,
                 const QWidget* widget) {
    drawField(box, painter);
    if (box.buttonSymbols == QAbstractSpinBox::NoButtons) return;
    const auto step = [&](QStyle::SubControl control, QAbstractSpinBox::StepEnabledFlag enabled,
                          Points points) {
        const QRect rect = style.subControlRect(QStyle::CC_SpinBox, &box, control, widget);
        const bool can = has(box, QStyle::State_Enabled) && box.stepEnabled.testFlag(enabled);
        if (can && box.activeSubControls.testFlag(control) && has(box, QStyle::State_MouseOver))
            painter.fillRect(rect, box.palette.color(QPalette::Button));
        drawArrow(rect, points, std::max(2.5, painter.fontMetrics().height() / 6.0),
                  box.palette.color(can ? QPalette::Text : QPalette::Mid), painter);
    };
    step(QStyle::SC_SpinBoxUp, QAbstractSpinBox::StepUpEnabled, Points::Up);
    step(QStyle::SC_SpinBoxDown, QAbstractSpinBox::StepDownEnabled, Points::Down);
}

// Text of several lines stands in a hairline.
void drawTextFrame(const QStyleOption& option, QPainter& painter) {
    painter.save();
    painter.setPen(QPen(ruleOf(option), 1));
    painter.drawRect(option.rect.adjusted(0, 0, -1, -1));
    painter.restore();
}

}  // namespace

void QuietStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    switch (element) {
        case PE_PanelLineEdit:
            // The line within a list or a spin box stands on that one's rule.
            if (const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
                frame && frame->lineWidth <= 0)
                return painter->fillRect(option->rect, option->palette.color(QPalette::Base));
            return drawField(*option, *painter);
        case PE_FrameLineEdit:
            return drawField(*option, *painter);
        case PE_Frame:
            if (qobject_cast<const QPlainTextEdit*>(widget)) return drawTextFrame(*option, *painter);
            return QProxyStyle::drawPrimitive(element, option, painter, widget);
        case PE_PanelButtonCommand:
        case PE_PanelButtonTool:
            return drawButton(*option, *painter);
        case PE_IndicatorCheckBox:
        case PE_IndicatorItemViewItemCheck:
            return drawCheckBox(*option, *painter);
        default:
            QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

void QuietStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                    QPainter* painter, const QWidget* widget) const {
    const auto* list = qstyleoption_cast<const QStyleOptionComboBox*>(option);
    const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
    if (control == CC_ComboBox && list)
        drawList(*proxy(), *list, *painter, widget);
    else if (control == CC_SpinBox && spin)
        drawSpinBox(*proxy(), *spin, *painter, widget);
    else
        QProxyStyle::drawComplexControl(control, option, painter, widget);
}

// Marks grow with the letters.
int QuietStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    const int usual = QProxyStyle::pixelMetric(metric, option, widget);
    const bool indicator = metric == PM_IndicatorWidth || metric == PM_IndicatorHeight;
    return indicator ? std::max(usual, QFontMetrics(QApplication::font()).height() - 2) : usual;
}

QSize QuietStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                                   const QWidget* widget) const {
    const QSize usual = QProxyStyle::sizeFromContents(type, option, contents, widget);
    return type == CT_PushButton ? usual + QSize(16, 2) : usual;
}

// Qt guesses (Qt::AutoText), and a tag or a note of a user's may look like markup.
void QuietStyle::polish(QWidget* widget) {
    QProxyStyle::polish(widget);
    auto* label = qobject_cast<QLabel*>(widget);
    if (label && label->textFormat() == Qt::AutoText) label->setTextFormat(Qt::PlainText);
}

int QuietStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* returned) const {
    if (hint == SH_DialogButtonBox_ButtonsHaveIcons) return 0;  // words; icons keep another theme's colours
    if (hint == SH_EtchDisabledText || hint == SH_DitherDisabledText) return 0;
    return QProxyStyle::styleHint(hint, option, widget, returned);
}

}  // namespace fettle
