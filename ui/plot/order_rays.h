// Why: the lines over a resonance map: orders, natural frequencies, bands of speed. Each has a rim of the
// ground so that it is seen on any colour. Units: r/min across; upright Hz or orders times `factor`.
#pragma once

#include <qwt_plot_item.h>

#include "ui/plot/resonance_plot.h"

namespace fettle {

class OrderRays : public QwtPlotItem {
  public:
    explicit OrderRays(const Theme& theme);
    void setData(std::shared_ptr<const ResonanceData> data);
    void setAxis(bool orders, double factor);
    void choose(int mark) { chosen_ = mark; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    void drawOrders(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                    const QRectF& canvas) const;
    void drawMark(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap, const QRectF& canvas,
                  const ResonanceMark& mark, bool chosen) const;
    double up(double hz, double rpm) const { return (orders_ ? 60 * hz / rpm : hz) * factor_; }
    void stroke(QPainter& painter, const QPolygonF& line, const QColor& ink, double width,
                Qt::PenStyle style) const;

    const Theme& theme_;
    std::shared_ptr<const ResonanceData> data_;
    bool orders_ = false;
    double factor_ = 1;
    int chosen_ = -1;
};

}  // namespace fettle
