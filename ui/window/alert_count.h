// Why: on every page the status line says how many alerts nobody has seen to; a click or the key opens them.
// Thread: the window's.
#pragma once

#include <QToolButton>

#include "ui/theme/theme.h"

namespace fettle {

class AlertCount : public QToolButton {
    Q_OBJECT
  public:
    AlertCount(const Theme& theme, QAction* opens, QWidget* parent = nullptr);
    void setOpen(int open);  // below 0: no fleet is open

  private:
    const Theme& theme_;
};

}  // namespace fettle
