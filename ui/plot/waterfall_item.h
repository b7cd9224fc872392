// Why: paints a WaterfallData so that every pixel is the maximum of all cells below it; samples of a picture
// would lose lines. Everything else (axes, printing, pixel ratio, caching of the image) stays Qwt's. Thread:
// the window's; reads the shared data only.
#pragma once

#include <qwt_plot_rasteritem.h>

#include <memory>

#include "ui/plot/waterfall_data.h"

namespace fettle {

class WaterfallItem : public QwtPlotRasterItem {
  public:
    WaterfallItem();

    void setData(std::shared_ptr<const WaterfallData> data);
    void setScale(std::shared_ptr<const ColourScale> scale);
    void setUprightFactor(double factor);  // units of the axis in one of the data

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 1; }
    QwtInterval interval(Qt::Axis axis) const override;

  protected:
    QImage renderImage(const QwtScaleMap& xMap, const QwtScaleMap& yMap, const QRectF& area,
                       const QSize& size) const override;

  private:
    std::shared_ptr<const WaterfallData> data_;
    std::shared_ptr<const ColourScale> scale_;
    double factor_ = 1;
};

}  // namespace fettle
