// Why: spectra drawn as traces one behind the other show the shape of a peak that colours do not. Each trace
// is the maximum of the spectra of one step of time, and each column of pixels the maximum of the lines below
// it, so that no peak is lost; what a nearer trace covers of a farther one is not drawn (a floating horizon,
// front to back: T. J. Wright, IEEE Trans. Computers C-22 (1973) 28-33). Drawn twice as large and smoothed.
// The upright axis is time: a trace stands on its moment and rises by its strength. Axes: x in units of the
// look's upright axis, y milliseconds. Thread: the window's; reads shared data only.
#pragma once

#include <qwt_plot_item.h>

#include <QImage>
#include <optional>
#include <vector>

#include "ui/plot/waterfall_look.h"

namespace fettle {

class CascadeItem : public QwtPlotItem {
  public:
    static constexpr double kRise = 0.45;  // of the span of time, at full strength
    CascadeItem(const Theme& theme, const WaterfallLook& look);

    void setSelected(std::optional<std::size_t> row);  // its trace is drawn in the cursor's ink

    struct Trace {
        WaterfallData::Part rows;
        double ms = 0;  // where it stands
    };
    // Front first, as many as stand apart in the height.
    std::vector<Trace> traces(const QwtScaleMap& yMap) const;
    // The row whose trace is seen nearest to a place, and the strongest line about it.
    std::optional<WaterfallData::Cell> cellAt(const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                                              const QPointF& at) const;

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 7; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    QImage picture(const QwtScaleMap& xMap, const QwtScaleMap& yMap, QSize size) const;
    double riseOf(float value, double fullPx) const;

    const Theme& theme_;
    const WaterfallLook& look_;
    std::optional<std::size_t> selected_;
};

}  // namespace fettle
