#include "ui/window/dialog_bounds.h"

#include <QApplication>
#include <QDialog>
#include <QEvent>
#include <QLayout>
#include <algorithm>

namespace fettle {

DialogBounds::DialogBounds(QWidget& window) : QObject(&window), window_(window) {
    qApp->installEventFilter(this);
}

bool DialogBounds::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::Show) return false;
    auto* dialog = qobject_cast<QDialog*>(watched);
    if (!dialog || !dialog->parentWidget() || dialog->parentWidget()->window() != &window_) return false;
    const int width = std::min(dialog->width(), window_.width());
    int height = dialog->height();
    if (const QLayout* layout = dialog->layout(); layout && layout->hasHeightForWidth())
        height = std::max(height, layout->totalHeightForWidth(width));
    dialog->resize(width, std::min(height, window_.height()));
    return false;
}

}  // namespace fettle
