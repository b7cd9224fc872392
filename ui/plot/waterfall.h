// Why: weeks of spectra at one look: time across, frequency or orders up, strength as colour, gaps as gaps.
// The selected moment and frequency are cursors; a click chooses the recording and the strongest line under
// the pointer. Hover says the exact peak of the pixel. Data: immutable, made elsewhere. Thread: the window's.
#pragma once

#include <memory>
#include <optional>

#include "ui/plot/plot_frame.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/waterfall_data.h"

namespace fettle {

class ColourLegend;
class CursorItem;
class WaterfallItem;

class Waterfall : public PlotFrame {
    Q_OBJECT
  public:
    Waterfall(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent);
    ~Waterfall() override;

    void setData(std::shared_ptr<const WaterfallData> data);
    const std::shared_ptr<const WaterfallData>& data() const { return data_; }
    ColourRange range() const;
    void setRange(std::optional<ColourRange> range);  // nothing: by the data
    void labelTimes(bool labelled);                   // not needed over another plot of the same times

  protected:
    void takeTheme() override;

  private:
    void connectGestures();
    void setScale();
    void showUpright();
    void showCursors();
    void hover(const QPointF& at);
    void choose(const QPointF& at);
    void step(int steps, bool far);
    WaterfallData::Part rowsAt(double x) const;
    WaterfallData::Part linesAt(double y, double px) const;
    std::optional<std::size_t> selectedRow() const;
    double unitAt(std::size_t row) const;  // upright axis units to Hz

    TimeAxis& axis_;
    Selection& selection_;
    WaterfallItem* item_;
    CursorItem* cursors_;
    ColourLegend* legend_;
    std::shared_ptr<const WaterfallData> data_;
    std::optional<ColourRange> byHand_;
    ZoomSpan upright_;
};

}  // namespace fettle
