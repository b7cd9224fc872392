// Why: dialogs take their size from their font; at 150 % in a small window that is more than there is. When a
// dialog is shown it is cut down to its window's size, and made high enough for words that wrap. Watches the
// application's dialogs for one main window. Thread: the window's.
#pragma once

#include <QObject>

class QWidget;

namespace fettle {

class DialogBounds : public QObject {
    Q_OBJECT
  public:
    explicit DialogBounds(QWidget& window);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    QWidget& window_;
};

}  // namespace fettle
