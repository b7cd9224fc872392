#include "ui/pages/page_parts.h"

#include <QApplication>
#include <QPainter>
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

void setInk(QWidget& widget, const QColor& colour) {
    QPalette palette = widget.palette();
    palette.setColor(QPalette::WindowText, colour);
    palette.setColor(QPalette::Text, colour);
    widget.setPalette(palette);
}

ThinRule::ThinRule(const Theme& theme, QWidget* parent) : QWidget(parent), theme_(theme) {
    setFixedHeight(1);
    connect(&theme, &Theme::changed, this, qOverload<>(&QWidget::update));
}

void ThinRule::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), theme_.colour(Role::Rule));
}

}  // namespace fettle
