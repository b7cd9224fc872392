// Why: a small button above a plot: words, a name for tests, one sentence for the pointer and for those who
// listen, and reached by Tab, which Qt's own tool buttons are not. Thread: the window's.
#pragma once

#include <QToolButton>

namespace fettle {

inline QToolButton* plotTool(const QString& text, const QString& name, const QString& help, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setText(text);
    button->setObjectName(name);
    button->setAccessibleName(help);
    button->setToolTip(help);
    button->setFocusPolicy(Qt::StrongFocus);
    return button;
}

}  // namespace fettle
