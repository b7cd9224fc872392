// Why: a level that rises with speed, load or heat is not a fault: drawn against what it may follow, and not
// only over time, it tells. A point a recording, coloured by time (the colours' legend names the span's
// ends), the chosen recording ringed; a click chooses the nearest. What lies outside the shown span of time
// is left out. Data: immutable, made elsewhere, in stored units; shown in those people read in. Thread: the
// window's.
#pragma once

#include <memory>
#include <vector>

#include "ui/plot/plot_frame.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/trend_plot.h"

namespace fettle {

struct ScatterPoint {
    double ms = 0, x = 0, y = 0;
    std::int64_t recording = 0;
};

struct ScatterData {
    QString xName, xUnit, yName, yUnit;
    std::vector<ScatterPoint> points;  // in order of time
    std::vector<TrendLimit> limits;    // of y
};

class PointCloud;

class ScatterPlot : public PlotFrame {
    Q_OBJECT
  public:
    ScatterPlot(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent);
    ~ScatterPlot() override;

    void setData(std::shared_ptr<const ScatterData> data);
    const std::shared_ptr<const ScatterData>& data() const { return stored_; }
    // Pixel of a point on the canvas.
    QPointF placeOf(const ScatterPoint& shown) const;
    QString tableText(TableExtent extent) const override;

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void connectGestures();
    void takeUnits();
    void showSpan();
    void showSelected();
    void setScales();
    void hover(const QPointF& at);
    void choose(const QPointF& at);
    void step(int steps, bool far);
    const ScatterPoint* nearest(const QPointF& at) const;

    TimeAxis& axis_;
    Selection& selection_;
    PointCloud* cloud_;
    LimitLines* limits_;
    std::shared_ptr<const ScatterData> stored_, shown_;
    ZoomSpan x_, y_;
};

}  // namespace fettle
