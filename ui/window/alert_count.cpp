#include "ui/window/alert_count.h"

#include <QAction>

#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

AlertCount::AlertCount(const Theme& theme, QAction* opens, QWidget* parent)
    : QToolButton(parent), theme_(theme) {
    setObjectName(QStringLiteral("statusAlerts"));
    setAutoRaise(true);
    setFocusPolicy(Qt::TabFocus);
    setToolTip(tr("Alerts between rounds (%1)").arg(opens->shortcut().toString(QKeySequence::NativeText)));
    connect(this, &QToolButton::clicked, opens, &QAction::trigger);
    setOpen(-1);
}

void AlertCount::setOpen(int open) {
    setVisible(open >= 0);
    const QString text = open > 0 ? counted(open, tr("open alert"), tr("open alerts")) : tr("no open alert");
    setText(text);
    setAccessibleName(text);
    QFont strong = font();
    strong.setBold(open > 0);
    setFont(strong);
    setInk(*this, theme_, open > 0 ? Role::Ink : Role::MutedInk);
}

}  // namespace fettle
