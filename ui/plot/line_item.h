// Why: draws a Series as a line with a readable width; long smooth polylines are split by Qwt's painter,
// because a single one takes a hundred times as long. Points are marked where there is room for them.
// Thread: the window's; reads shared data only.
#pragma once

#include <qwt_plot_item.h>

#include <QColor>

#include "ui/plot/series.h"

namespace fettle {

class LineItem : public QwtPlotItem {
  public:
    LineItem();

    void setSeries(SeriesPtr series);
    const SeriesPtr& series() const { return series_; }
    void setColour(const QColor& colour);
    void setDotted(bool withPoints);  // points where they are farther apart than they are wide
    void setWidth(double width) { width_ = width; }
    void setStyle(Qt::PenStyle style);
    const QColor& ink() const { return colour_; }

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 2; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    void drawPoints(QPainter& painter, const std::vector<QPolygonF>& pieces, double room) const;

    SeriesPtr series_;
    QColor colour_;
    double width_ = 1.3;
    Qt::PenStyle style_ = Qt::SolidLine;
    bool points_ = false;
};

}  // namespace fettle
