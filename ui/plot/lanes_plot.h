// Why: twins are told apart below each other, not over each other: one spectrum a lane, one axis across, one
// scale upright for all (or each its own), so that a line which only one of them draws is seen at once. Lanes
// are named in the plot with their highest line, so that a picture says it too. Across in the unit people
// read in (Hz, r/min) or in orders of each machine's own shaft, which puts lines of slightly different speeds
// above each other. Data: immutable, made elsewhere. Thread: the window's.
#pragma once

#include <vector>

#include "ui/model/selection.h"
#include "ui/plot/plot_frame.h"
#include "ui/plot/spectrum_data.h"
#include "ui/plot/zoom_span.h"

class QToolButton;

namespace fettle {

class CursorItem;
class LaneNames;
class LineItem;

struct Lane {
    QString name;  // "CW-PU-02 M-DE x, 4 May 2026 06:20"
    SpectrumPtr data;
};

class LanesPlot : public PlotFrame {
    Q_OBJECT
  public:
    LanesPlot(const Theme& theme, Selection& selection, QWidget* parent);
    ~LanesPlot() override;

    void setLanes(std::vector<Lane> lanes);  // all of one unit; the first on top
    const std::vector<Lane>& lanes() const { return lanes_; }
    void setOrders(bool orders);
    bool orders() const { return orders_; }
    void setOwnScales(bool own);
    void showHz(double from, double until);  // by the first lane
    const ZoomSpan& across() const { return across_; }
    // Upright place of a value in a lane: lane i of n stands on n - 1 - i and is one high.
    double placeOf(std::size_t lane, double value) const;
    QString tableText(TableExtent extent) const override;

  protected:
    void takeTheme() override;

  private:
    void connectGestures();
    void rebuild();
    void showAxes();
    void showCursor();
    void hover(const QPointF& at);
    void choose(const QPointF& at);
    double unitHz(const Lane& lane) const;  // Hz of one unit across
    std::optional<std::size_t> laneAt(double y) const;
    std::optional<std::size_t> peakAt(const Lane& lane, double x, double px) const;
    QString valueOf(const Lane& lane, std::size_t line) const;

    Selection& selection_;
    std::vector<Lane> lanes_;
    std::vector<LineItem*> curves_;
    std::vector<double> tops_;  // of each lane's scale
    LaneNames* names_;
    CursorItem* cursor_;
    QToolButton *ordersButton_, *ownButton_;
    ZoomSpan across_;
    bool orders_ = false, own_ = false;
};

}  // namespace fettle
