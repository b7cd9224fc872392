// Why: three pages, one slim bar: their names, the chosen one underlined in the accent ink. Thread: the
// window's.
#pragma once

#include <QWidget>
#include <vector>

#include "ui/theme/theme.h"

class QAction;
class QLabel;
class QToolButton;

namespace fettle {

class PageBar : public QWidget {
    Q_OBJECT
  public:
    // One button for each action; checkable actions of one group.
    PageBar(const Theme& theme, const std::vector<QAction*>& pages, QWidget* parent = nullptr);
    void setMachine(const QString& tag);  // beside the names

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Theme& theme_;
    std::vector<QToolButton*> buttons_;
    QLabel* machine_;
};

}  // namespace fettle
