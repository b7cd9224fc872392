// Why: a glance at a recording's first channel tells a dead sensor or a wrong scale from a good one: least
// and most of each stretch as one stroke, over the whole width. Plain data in; paint computes nothing but
// places. Thread: the window's.
#pragma once

#include <QWidget>
#include <array>
#include <vector>

#include "ui/theme/theme.h"

namespace fettle {

class OutlineView : public QWidget {
    Q_OBJECT
  public:
    OutlineView(const Theme& theme, QWidget* parent);
    void set(std::vector<std::array<float, 2>> outline, const QString& unit);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Theme& theme_;
    std::vector<std::array<float, 2>> outline_;
    float least_ = 0, most_ = 0;
    QString unit_;
};

}  // namespace fettle
