// Why: whether a weight comes and goes or stays is half of the verdict: one stroke a recording over the
// weeks, from the zero line up (for) or down (against), with the line a finding needs. Plain data in. Units:
// decibans; milliseconds of UTC.
#pragma once

#include <QWidget>
#include <vector>

#include "ui/theme/theme.h"

namespace fettle {

struct WeightPoint {
    double ms = 0, dban = 0;
};

class WeightChart : public QWidget {
    Q_OBJECT
  public:
    WeightChart(const Theme& theme, QWidget* parent);

    void setPoints(std::vector<WeightPoint> points);  // any order
    const std::vector<WeightPoint>& points() const { return points_; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    double highestTen() const;  // a whole multiple of 10 that is still on the chart

    const Theme& theme_;
    std::vector<WeightPoint> points_;
    double low_ = -10, high_ = 30;
};

}  // namespace fettle
