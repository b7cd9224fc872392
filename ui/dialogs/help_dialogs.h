// Why: Help shows the keys from the same table the actions are made of, and what the program is made of, with
// versions and licences. Thread: the window's.
#pragma once

#include <QDialog>

#include "ui/theme/theme.h"

namespace fettle {

class ShortcutsDialog : public QDialog {
    Q_OBJECT
  public:
    ShortcutsDialog(const Theme& theme, QWidget* parent);
};

class AboutDialog : public QDialog {
    Q_OBJECT
  public:
    AboutDialog(const Theme& theme, QWidget* parent);
};

}  // namespace fettle
