// Why: weeks of spectra at one look: time across, frequency or orders up, strength as colour, gaps as gaps.
// The selected moment and frequency are cursors; a click chooses the recording and the strongest line under
// the pointer. Hover says the exact peak of the pixel. Spectra, range and colours are those of a
// WaterfallLook, which a cascade shares. The upright axis is in the unit people read in (Hz, r/min) or in
// orders. Data: immutable, made elsewhere. Thread: the window's.
#pragma once

#include <memory>
#include <optional>

#include "ui/plot/plot_frame.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/waterfall_look.h"
#include "ui/plot/waterfall_table.h"

namespace fettle {

class ColourLegend;
class CursorItem;
class WaterfallItem;

class Waterfall : public PlotFrame {
    Q_OBJECT
  public:
    Waterfall(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent);
    ~Waterfall() override;

    void setData(std::shared_ptr<const WaterfallData> data) { look_->setData(std::move(data)); }
    const std::shared_ptr<const WaterfallData>& data() const { return look_->data(); }
    WaterfallLook& look() { return *look_; }
    ColourLegend& legend() { return *legend_; }
    ColourRange range() const { return look_->range(); }
    void setRange(std::optional<ColourRange> range) { look_->setRange(range); }  // nothing: by the data
    const ZoomSpan& upright() const { return upright_; }                         // in units of the data
    void labelTimes(bool labelled);  // not needed over another plot of the same times

    QString tableText(TableExtent extent) const override;  // empty: too many numbers for a clipboard
    bool hasTable() const override { return !look_->empty(); }
    TableWriter tableWriter(TableExtent extent) const override;

  protected:
    void takeTheme() override;

  private:
    WaterfallTable table(TableExtent extent) const;
    void connectGestures();
    void takeData();
    void setScale();
    void showUpright();
    void showCursors();
    void hover(const QPointF& at);
    void choose(const QPointF& at);
    void step(int steps, bool far);
    WaterfallData::Part rowsAt(double x) const;
    WaterfallData::Part linesAt(double y, double px) const;
    std::optional<std::size_t> selectedRow() const;

    TimeAxis& axis_;
    Selection& selection_;
    WaterfallItem* item_;
    CursorItem* cursors_;
    WaterfallLook* look_;
    ColourLegend* legend_;
    double knownTop_ = -1;
    bool knownOrders_ = false;
    ZoomSpan upright_;
};

}  // namespace fettle
