#include "tests/ui/widget_audit.h"

#include <QAbstractButton>
#include <QAbstractScrollArea>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QRubberBand>
#include <QScrollArea>
#include <QScrollBar>
#include <QSizeGrip>
#include <QSplitter>
#include <QStackedWidget>
#include <QStyle>
#include <QStyleOptionComboBox>
#include <QTabBar>
#include <QTextDocument>
#include <QToolButton>
#include <algorithm>
#include <functional>

namespace fettle::desk_test {

namespace {

constexpr int kSlack = 2;  // px: rounding of fonts

QString nameOf(const QWidget& widget) {
    QStringList path;
    for (const QWidget* one = &widget; one && path.size() < 4; one = one->parentWidget()) {
        const QString name = one->objectName();
        path.prepend(name.isEmpty() ? QString::fromLatin1(one->metaObject()->className()) : name);
        if (one->isWindow()) break;
    }
    return path.join(QChar('/'));
}

// What Qt itself is made of, and what scrolls.
bool isPartOfAnother(const QWidget& widget) {
    const QWidget* parent = widget.parentWidget();
    if (!parent) return false;
    return qobject_cast<const QComboBox*>(parent) || qobject_cast<const QAbstractSpinBox*>(parent) ||
           qobject_cast<const QTabBar*>(parent) || qobject_cast<const QLineEdit*>(parent) ||
           qobject_cast<const QHeaderView*>(parent) || qobject_cast<const QMenuBar*>(parent) ||
           widget.objectName().startsWith(QStringLiteral("qt_"));
}

void eachShown(QWidget& root, const std::function<void(QWidget&)>& visit) {
    const QList<QWidget*> all = root.findChildren<QWidget*>();
    for (QWidget* widget : all)
        if (widget->isVisibleTo(&root) && !widget->isWindow() && !isPartOfAnother(*widget) &&
            widget->width() > 0 && widget->height() > 0)
            visit(*widget);
}

QString labelTrouble(const QLabel& label) {
    if (label.text().isEmpty() || label.sizePolicy().horizontalPolicy() == QSizePolicy::Ignored) return {};
    if (label.wordWrap()) {
        const int needs = label.heightForWidth(label.width());
        return needs > label.height() + kSlack
                   ? QStringLiteral("needs %1 px of height, has %2").arg(needs).arg(label.height())
                   : QString();
    }
    const int needs = label.sizeHint().width();
    return needs > label.width() + kSlack
               ? QStringLiteral("needs %1 px, has %2").arg(needs).arg(label.width())
               : QString();
}

QString comboTrouble(const QComboBox& box) {
    QStyleOptionComboBox option;
    option.initFrom(&box);
    const QRect field =
        box.style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, &box);
    const int needs = box.fontMetrics().horizontalAdvance(box.currentText());
    return needs > field.width() + kSlack
               ? QStringLiteral("needs %1 px, has %2").arg(needs).arg(field.width())
               : QString();
}

QString textOf(const QWidget& widget) {
    if (const auto* label = qobject_cast<const QLabel*>(&widget)) return label->text();
    if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) return button->text();
    if (const auto* box = qobject_cast<const QComboBox*>(&widget)) return box->currentText();
    return {};
}

QString clippingOf(const QWidget& widget) {
    if (const auto* label = qobject_cast<const QLabel*>(&widget)) return labelTrouble(*label);
    if (const auto* box = qobject_cast<const QComboBox*>(&widget)) return comboTrouble(*box);
    if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) {
        if (button->text().isEmpty()) return {};
        const int needs = std::min(button->minimumSizeHint().width(), button->sizeHint().width());
        if (needs > button->width() + kSlack)
            return QStringLiteral("needs %1 px, has %2").arg(needs).arg(button->width());
    }
    return {};
}

bool takesFocus(const QWidget& widget) {
    return widget.focusPolicy() != Qt::NoFocus && widget.isEnabled() &&
           !qobject_cast<const QScrollBar*>(&widget) && !qobject_cast<const QSizeGrip*>(&widget);
}

bool hasName(QWidget& widget) {
    if (!widget.accessibleName().isEmpty()) return true;
    QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(&widget);
    return spoken && !spoken->text(QAccessible::Name).isEmpty();
}

// Only what is worked with: a field, a list, a button; not an area that scrolls what lies in it, nor the head
// of a table, whose sorting has a key or a menu of its own.
bool isControl(const QWidget& widget) {
    if (qobject_cast<const QHeaderView*>(&widget)) return false;
    return qobject_cast<const QAbstractButton*>(&widget) || qobject_cast<const QComboBox*>(&widget) ||
           qobject_cast<const QLineEdit*>(&widget) || qobject_cast<const QAbstractSpinBox*>(&widget) ||
           (qobject_cast<const QAbstractScrollArea*>(&widget) && !qobject_cast<const QScrollArea*>(&widget));
}

}  // namespace

QStringList clippedTexts(QWidget& root) {
    QStringList troubles;
    eachShown(root, [&](QWidget& widget) {
        const QString trouble = clippingOf(widget);
        if (!trouble.isEmpty())
            troubles << QStringLiteral("%1 \"%2\" %3").arg(nameOf(widget), textOf(widget).left(60), trouble);
    });
    return troubles;
}

QStringList overlaps(QWidget& root) {
    QStringList troubles;
    QList<QWidget*> parents = root.findChildren<QWidget*>();
    parents << &root;
    for (QWidget* parent : parents) {
        if (!parent->isVisible() || !parent->layout() || qobject_cast<QStackedWidget*>(parent)) continue;
        QList<QWidget*> inside;
        for (QObject* child : parent->children())
            if (auto* widget = qobject_cast<QWidget*>(child);
                widget && widget->isVisible() && !widget->isWindow() && !qobject_cast<QRubberBand*>(widget) &&
                parent->layout()->indexOf(widget) >= 0)
                inside << widget;
        for (qsizetype i = 0; i < inside.size(); ++i)
            for (qsizetype j = i + 1; j < inside.size(); ++j) {
                const QRect common = inside[i]->geometry() & inside[j]->geometry();
                if (common.width() > kSlack && common.height() > kSlack)
                    troubles
                        << QStringLiteral("%1 and %2 overlap").arg(nameOf(*inside[i]), nameOf(*inside[j]));
            }
    }
    return troubles;
}

QStringList namelessControls(QWidget& root) {
    QStringList troubles;
    eachShown(root, [&](QWidget& widget) {
        if (takesFocus(widget) && isControl(widget) && !hasName(widget))
            troubles << QStringLiteral("%1 has no accessible name").arg(nameOf(widget));
    });
    return troubles;
}

// By Tab, or as one of a row of its kind of which one takes Tab and the arrows walk.
static bool isReached(const QWidget& widget) {
    if (widget.focusPolicy() & Qt::TabFocus) return true;
    if (!widget.parentWidget() || !(widget.focusPolicy() & Qt::ClickFocus)) return false;
    for (const QObject* child : widget.parentWidget()->children()) {
        const auto* other = qobject_cast<const QWidget*>(child);
        if (other && other->metaObject() == widget.metaObject() && (other->focusPolicy() & Qt::TabFocus))
            return true;
    }
    return false;
}

QStringList unreachableControls(QWidget& root) {
    QStringList troubles;
    eachShown(root, [&](QWidget& widget) {
        if (widget.isEnabled() && isControl(widget) && !isReached(widget))
            troubles << QStringLiteral("%1 is out of the keyboard's reach").arg(nameOf(widget));
    });
    return troubles;
}

}  // namespace fettle::desk_test
