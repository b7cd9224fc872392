#include "ui/pages/page_parts.h"

#include <QApplication>
#include <QLayout>
#include <QPainter>
#include <QStandardItem>
#include <QTabBar>

namespace fettle {

void setTitleFont(QLabel& label) {
    QFont font = QApplication::font();
    font.setPointSizeF(font.pointSizeF() * 1.5);
    label.setFont(font);
}

void setQuietTabs(QTabWidget& tabs) {
    tabs.setDocumentMode(true);
    tabs.tabBar()->setStyleSheet(QStringLiteral(
        "QTabBar::tab { border: none; background: none; padding: 5px 10px; margin-right: 6px; }"
        "QTabBar::tab:selected { border-bottom: 2px solid palette(link); }"));
    tabs.tabBar()->setDrawBase(false);
}

void endAtTheRight(QLayout& lines) {
    QMargins margins = lines.contentsMargins();
    margins.setRight(0);
    lines.setContentsMargins(margins);
}

namespace {

constexpr const char* kInk = "fettleInk";  // role of the widget's ink

void takeInk(QWidget& widget, const Theme& theme) {
    const QColor colour = theme.colour(Role(widget.property(kInk).toInt()));
    QPalette palette;  // of these two alone: all else is the application's
    palette.setColor(QPalette::WindowText, colour);
    palette.setColor(QPalette::Text, colour);
    widget.setPalette(palette);
}

}  // namespace

void setInk(QWidget& widget, const Theme& theme, Role role) {
    const bool follows = widget.property(kInk).isValid();
    widget.setProperty(kInk, int(role));
    takeInk(widget, theme);
    if (follows) return;
    QObject::connect(&theme, &Theme::changed, &widget, [&widget, &theme] { takeInk(widget, theme); });
}

QStandardItem* readOnlyItem(const QString& text) {
    auto* item = new QStandardItem(text);
    item->setEditable(false);
    item->setToolTip(text);
    return item;
}

QLabel* selectableText(QWidget* parent, const char* name) {
    auto* label = new QLabel(parent);
    label->setObjectName(QString::fromLatin1(name));
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    return label;
}

ThinRule::ThinRule(const Theme& theme, QWidget* parent) : QWidget(parent), theme_(theme) {
    setFixedHeight(1);
    connect(&theme, &Theme::changed, this, qOverload<>(&QWidget::update));
}

void ThinRule::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), theme_.colour(Role::Rule));
}

}  // namespace fettle
