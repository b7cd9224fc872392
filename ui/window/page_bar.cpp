#include "ui/window/page_bar.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QToolButton>

#include "ui/pages/page_parts.h"

namespace fettle {

PageBar::PageBar(const Theme& theme, const std::vector<QAction*>& pages, QWidget* parent)
    : QWidget(parent), theme_(theme), machine_(new QLabel(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(12, 2, 16, 4);
    row->setSpacing(4);
    for (QAction* page : pages) {
        auto* button = new QToolButton(this);
        button->setObjectName(page->objectName() + QStringLiteral(".button"));
        button->setDefaultAction(page);
        button->setAutoRaise(true);
        button->setToolButtonStyle(Qt::ToolButtonTextOnly);
        button->setStyleSheet(
            QStringLiteral("QToolButton { border: none; padding: 4px 10px; background: none; }"));
        button->setAccessibleName(page->text().remove(u'&'));
        button->setFocusPolicy(Qt::TabFocus);
        connect(page, &QAction::toggled, this, qOverload<>(&QWidget::update));
        row->addWidget(button);
        buttons_.push_back(button);
    }
    row->addStretch(1);
    row->addWidget(machine_);
    machine_->setObjectName(QStringLiteral("barMachine"));
    connect(&theme, &Theme::changed, this, qOverload<>(&QWidget::update));
}

void PageBar::setMachine(const QString& tag) {
    machine_->setText(tag);
    setInk(*machine_, theme_, Role::MutedInk);
}

void PageBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(QRect(0, height() - 1, width(), 1), theme_.colour(Role::Rule));
    for (const QToolButton* button : buttons_)
        if (button->isChecked())
            painter.fillRect(QRect(button->x() + 8, height() - 3, button->width() - 16, 3),
                             theme_.colour(Role::Accent));
}

}  // namespace fettle
