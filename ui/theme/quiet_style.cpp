#include "ui/theme/quiet_style.h"

#include <QAbstractScrollArea>
#include <QApplication>
#include <QLabel>
#include <QPainter>
#include <QStyleOption>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr int kTextLeft = 5;    // from the edge of a field, list or number to its first letter
constexpr int kMarkRight = 5;   // from the marks of lists and numbers to the right edge
constexpr int kFieldRoom = 8;   // of a field, beyond the height of its letters; even, so all centre alike
constexpr int kRuleRoom = 3;    // kept free for the rule, above too
constexpr int kFrameWidth = 2;  // of what scrolls: its content keeps off the hairline at every scale

bool has(const QStyleOption& option, QStyle::StateFlag state) {
    return option.state & state;
}

QColor ruleOf(const QStyleOption& option) {
    if (has(option, QStyle::State_HasFocus)) return option.palette.color(QPalette::Link);
    return option.palette.color(has(option, QStyle::State_Enabled) ? QPalette::Dark : QPalette::Mid);
}

QFontMetrics lettersOf(const QStyleOption& option, const QWidget* widget) {
    return widget ? widget->fontMetrics() : option.fontMetrics;
}

// Half the width of the mark of a list; of a number's it is a little less.
double listMark(const QFontMetrics& letters) {
    return std::max(3.5, letters.height() / 4.0);
}

double stepMark(const QFontMetrics& letters) {
    return std::max(3.0, letters.height() / 5.0);
}

int markRoom(const QFontMetrics& letters) {
    return int(std::ceil(2 * listMark(letters))) + 2 * kMarkRight;
}

// A rectangle in whole pixels of the screen, where one of the window's may be one and a half.
struct ScreenPixels {
    explicit ScreenPixels(const QPainter& painter) : to(painter.deviceTransform()) {}

    QRect of(const QRectF& rect) const {
        const QRectF there = to.mapRect(rect);
        const QPoint from(qRound(there.left()), qRound(there.top()));
        return {from, QSize(qRound(there.right()) - from.x(), qRound(there.bottom()) - from.y())};
    }
    int thick(int units) const { return std::max(1, qRound(units * std::abs(to.m22()))); }
    QRectF back(const QRect& rect) const { return to.inverted().mapRect(QRectF(rect)); }

    QTransform to;
};

// A field stands on its rule.
void drawField(const QStyleOption& option, QPainter& painter) {
    painter.fillRect(option.rect, option.palette.color(QPalette::Base));
    const ScreenPixels screen(painter);
    QRect rule = screen.of(option.rect);
    rule.setTop(rule.bottom() + 1 - screen.thick(has(option, QStyle::State_HasFocus) ? 2 : 1));
    painter.fillRect(screen.back(rule), ruleOf(option));
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

// Ends at the same distance from the right edge whatever its width.
void drawArrow(const QRectF& in, Points points, double wide, const QColor& ink, QPainter& painter) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink, 1.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF middle(in.right() - kMarkRight - wide, in.center().y());
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
    drawArrow(arrow, Points::Down, listMark(lettersOf(box, widget)),
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
        drawArrow(rect, points, stepMark(lettersOf(box, widget)),
                  box.palette.color(can ? QPalette::Text : QPalette::Mid), painter);
    };
    step(QStyle::SC_SpinBoxUp, QAbstractSpinBox::StepUpEnabled, Points::Up);
    step(QStyle::SC_SpinBoxDown, QAbstractSpinBox::StepDownEnabled, Points::Down);
}

// Text of several lines and lists stand in a hairline.
void drawHairline(const QStyleOption& option, QPainter& painter) {
    const ScreenPixels screen(painter);
    const QRect all = screen.of(option.rect);
    const int thick = screen.thick(1);
    for (const QRect& side : {QRect(all.left(), all.top(), all.width(), thick),
                              QRect(all.left(), all.bottom() + 1 - thick, all.width(), thick),
                              QRect(all.left(), all.top(), thick, all.height()),
                              QRect(all.right() + 1 - thick, all.top(), thick, all.height())})
        painter.fillRect(screen.back(side), ruleOf(option));
}

bool isFieldWithMarks(const QStyleOptionComplex& option) {
    const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(&option);
    return !spin || spin->buttonSymbols != QAbstractSpinBox::NoButtons;
}

// Where the text of a list or number is; a line edit in it keeps two more units to its own letters.
QRect textPlace(const QStyleOptionComplex& option, bool lineEdit, const QWidget* widget) {
    const int marks = isFieldWithMarks(option) ? markRoom(lettersOf(option, widget)) : kRuleRoom;
    return QStyle::visualRect(
        option.direction, option.rect,
        option.rect.adjusted(kTextLeft - (lineEdit ? 2 : 1), kRuleRoom, -marks, -kRuleRoom));
}

QRect marksPlace(const QStyleOptionComplex& option, const QWidget* widget) {
    const int wide = markRoom(lettersOf(option, widget));
    QRect place = option.rect;
    place.setLeft(place.right() + 1 - wide);
    return QStyle::visualRect(option.direction, option.rect, place);
}

QRect spinPlace(const QStyleOptionSpinBox& spin, QStyle::SubControl part, const QWidget* widget) {
    if (part == QStyle::SC_SpinBoxEditField) return textPlace(spin, true, widget);
    if (spin.buttonSymbols == QAbstractSpinBox::NoButtons) return {};
    QRect place = marksPlace(spin, widget).adjusted(0, 1, 0, -2);
    const int half = place.height() / 2;
    if (part == QStyle::SC_SpinBoxUp) place.setHeight(half);
    if (part == QStyle::SC_SpinBoxDown) place.setTop(place.top() + half);
    return place;
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
            if (qobject_cast<const QAbstractScrollArea*>(widget)) return drawHairline(*option, *painter);
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

QRect QuietStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                                 const QWidget* widget) const {
    const auto* list = qstyleoption_cast<const QStyleOptionComboBox*>(option);
    const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
    if (control == CC_ComboBox && list && part == SC_ComboBoxEditField)
        return textPlace(*list, list->editable, widget);
    if (control == CC_ComboBox && list && part == SC_ComboBoxArrow) return marksPlace(*list, widget);
    if (control == CC_SpinBox && spin &&
        (part == SC_SpinBoxEditField || part == SC_SpinBoxUp || part == SC_SpinBoxDown))
        return spinPlace(*spin, part, widget);
    return QProxyStyle::subControlRect(control, option, part, widget);
}

QRect QuietStyle::subElementRect(SubElement element, const QStyleOption* option,
                                 const QWidget* widget) const {
    const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
    if (element == SE_LineEditContents && frame && frame->lineWidth > 0)
        return option->rect.adjusted(kTextLeft - 2, kRuleRoom, 2 - kTextLeft, -kRuleRoom);
    return QProxyStyle::subElementRect(element, option, widget);
}

// Marks grow with the letters.
int QuietStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    if (metric == PM_DefaultFrameWidth && qobject_cast<const QAbstractScrollArea*>(widget))
        return kFrameWidth;
    const int usual = QProxyStyle::pixelMetric(metric, option, widget);
    const bool indicator = metric == PM_IndicatorWidth || metric == PM_IndicatorHeight;
    return indicator ? std::max(usual, QFontMetrics(QApplication::font()).height() - 2) : usual;
}

QSize QuietStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                                   const QWidget* widget) const {
    const QSize usual = QProxyStyle::sizeFromContents(type, option, contents, widget);
    if (type == CT_PushButton) return usual + QSize(16, 2);
    if (type != CT_LineEdit && type != CT_ComboBox && type != CT_SpinBox) return usual;
    const QFontMetrics letters = lettersOf(*option, widget);
    const int marks = type == CT_LineEdit ? kTextLeft : markRoom(letters);
    return {std::max(usual.width(), contents.width() + 2 * kTextLeft + marks), letters.height() + kFieldRoom};
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
