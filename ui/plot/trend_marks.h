// Why: what stands about a trend besides its line: limits with their names, dated events, recordings of a
// stopped machine. Each draws plain data in the theme's inks. Units: those of the axes.
#pragma once

#include <qwt_plot_item.h>

#include <QFontMetricsF>

#include <vector>

#include "ui/plot/series.h"
#include "ui/plot/trend_plot.h"

namespace fettle {

class LimitLines : public QwtPlotItem {
  public:
    explicit LimitLines(const Theme& theme);
    void setLimits(std::vector<TrendLimit> limits);
    void setCurves(std::vector<SeriesPtr> curves);  // names keep off these
    void setBelowEvents(bool below);                // names keep out of the row in which events stand
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

    struct Named {
        double y = 0;
        QRectF box;  // of the name
        QString name;
        bool own = false;  // dotted
    };
    std::vector<Named> named(const QwtScaleMap& yMap, const QRectF& canvas,
                             const QFontMetricsF& metrics) const;

  private:
    const Theme& theme_;
    std::vector<TrendLimit> limits_;
    std::vector<SeriesPtr> curves_;
    bool belowEvents_ = false;
};

class EventMarks : public QwtPlotItem {
  public:
    explicit EventMarks(const Theme& theme);
    static double rowHeight(const QFontMetricsF& metrics);  // at the top of the canvas
    void setEvents(std::vector<TrendEvent> events);
    const std::vector<TrendEvent>& events() const { return events_; }
    const TrendEvent* near(const QwtScaleMap& xMap, double x, double px) const;
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    const Theme& theme_;
    std::vector<TrendEvent> events_;
};

class StoppedPoints : public QwtPlotItem {
  public:
    explicit StoppedPoints(const Theme& theme);
    void setPoints(std::vector<QPointF> points);  // ascending in x
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    const Theme& theme_;
    std::vector<QPointF> points_;
};

}  // namespace fettle
