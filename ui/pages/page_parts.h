// Why: the few marks of a well-set report that all pages share: title, muted text, thin rules. Colours come
// from the theme, never from here. Thread: the window's.
#pragma once

#include <QFrame>
#include <QLabel>
#include <QTabWidget>

#include "ui/theme/theme.h"

class QLayout;
class QStandardItem;

namespace fettle {

void setTitleFont(QLabel& label);
// Tabs as words over a thin rule, the chosen one underlined.
void setQuietTabs(QTabWidget& tabs);
// What stands on a tab ends where the buttons below the tabs do.
void endAtTheRight(QLayout& lines);
// The widget's letters in the ink of a role, whatever theme is chosen later; the theme outlives the widget.
void setInk(QWidget& widget, const Theme& theme, Role role);
// A cell to read, whole in its tip.
QStandardItem* readOnlyItem(const QString& text);
// A paragraph of plain text that can be marked and copied.
QLabel* selectableText(QWidget* parent, const char* name);
// A control with what tests, readers of the screen and the hand over it are told.
template <class Widget>
Widget* named(Widget* widget, const char* name, const QString& accessible, const QString& help) {
    widget->setObjectName(QString::fromLatin1(name));
    widget->setAccessibleName(accessible);
    widget->setToolTip(help);
    return widget;
}
// A rule of one pixel across, in the theme's colour.
class ThinRule : public QWidget {
    Q_OBJECT
  public:
    explicit ThinRule(const Theme& theme, QWidget* parent = nullptr);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Theme& theme_;
};

}  // namespace fettle
