// Why: whether a weight comes and goes or stays is half of the verdict: one stroke a recording over the
// weeks, from the zero line up (for) or down (against), with the line a finding needs. A click chooses the
// recording, with Ctrl the week that ends there; Left and Right go through them, Home and End to the first
// and the last, Return to the week. Plain data in. Units: decibans; milliseconds of UTC, shown by the site's
// clock. Thread: the window's.
#pragma once

#include <QTimeZone>
#include <QWidget>
#include <optional>
#include <vector>

#include "ui/theme/theme.h"

namespace fettle {

struct WeightPoint {
    double ms = 0, dban = 0;
    std::int64_t recording = 0;
};

class WeightChart : public QWidget {
    Q_OBJECT
  public:
    WeightChart(const Theme& theme, QWidget* parent);

    void setPoints(std::vector<WeightPoint> points);  // any order
    const std::vector<WeightPoint>& points() const { return points_; }
    void setZone(const QTimeZone& zone);
    void setChosen(std::optional<std::int64_t> recording);  // marked
    double xOf(const WeightPoint& point) const;
    std::optional<std::size_t> nearest(double x) const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  signals:
    void recordingPicked(qint64 recording, double ms);
    void weekPicked(double ms);  // that ends there

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool event(QEvent* event) override;

  private:
    double highestTen() const;  // a whole multiple of 10 that is still on the chart
    QRectF area() const;
    double y(double dban) const;
    QString dayOf(double ms) const;
    QString textOf(const WeightPoint& point) const;
    void paintLevels(QPainter& painter) const;
    void paintStrokes(QPainter& painter) const;
    std::optional<std::size_t> chosenPlace() const;
    void pick(std::size_t place);
    void say();

    const Theme& theme_;
    std::vector<WeightPoint> points_;
    QTimeZone zone_ = QTimeZone::utc();
    std::optional<std::int64_t> chosen_;
    double low_ = -10, high_ = 30;
};

}  // namespace fettle
