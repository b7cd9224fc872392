// Why: weeks of speeds at one look: speed across, frequency or orders up, level as colour; an order runs
// along a diagonal (in orders: level), a natural frequency stays level (in orders: it falls). Orders and
// found frequencies are drawn thin over the picture, the bands of speed to skip as bars at its foot. Data:
// immutable, made elsewhere; shown in the units people read in. Thread: the window's.
#pragma once

#include <memory>
#include <vector>

#include "ui/plot/plot_frame.h"
#include "ui/plot/waterfall_look.h"
#include "ui/plot/zoom_span.h"

class QToolButton;

namespace fettle {

class ColourLegend;
class OrderRays;
class WaterfallItem;

// A natural frequency and the band of speed in which an order meets it.
struct ResonanceMark {
    double hz = 0, fromRpm = 0, toRpm = 0;
    int order = 0;
};

struct ResonanceData {
    std::shared_ptr<const WaterfallData> hz,
        orders;  // rows: bins of speed; `ms`: r/min, `recording`: how many
    std::vector<ResonanceMark> marks;
    std::vector<int> lines;  // orders that are drawn
    double shownHz = 200;    // at first
};

class ResonancePlot : public PlotFrame {
    Q_OBJECT
  public:
    ResonancePlot(const Theme& theme, const Units& units, QWidget* parent);
    ~ResonancePlot() override;

    void setData(std::shared_ptr<const ResonanceData> map);
    void setOrders(bool orders);
    void choose(int mark);  // drawn thicker; -1: none
    QString tableText(TableExtent extent) const override;

  protected:
    void takeTheme() override;

  private:
    void connectGestures();
    void takeGrid();
    void showAxes();
    void setScale();
    void hover(const QPointF& at);

    Selection selection_;  // of its own: holds the units
    std::shared_ptr<const ResonanceData> data_;
    WaterfallItem* item_;
    OrderRays* rays_;
    WaterfallLook* look_;
    ColourLegend* legend_;
    QToolButton* ordersButton_;
    ZoomSpan across_, upright_;
    bool orders_ = false;
};

}  // namespace fettle
