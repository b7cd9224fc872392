// Why: behind a trend stands its own past: the baseline as a band (stronger over its own days, fainter after
// them), an upright line from which on it has stayed apart, and the growths that fit as a fan that meets the
// limit, with the date in words. Labels stand beside what they name. Data: immutable, made elsewhere; nothing
// is computed here but places. Units: those of the axes.
#pragma once

#include <qwt_plot_item.h>
#include <QCoreApplication>

#include <memory>

#include "ui/plot/trend_plot.h"

namespace fettle {

class PastMarks : public QwtPlotItem {
    Q_DECLARE_TR_FUNCTIONS(fettle::PastMarks)

  public:
    explicit PastMarks(const Theme& theme);
    void setData(std::shared_ptr<const TrendData> data);
    void setCurves(std::vector<SeriesPtr> curves);  // the name of the baseline keeps off these
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    void drawBaseline(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                      const QRectF& canvas) const;
    void drawSince(QPainter& painter, const QwtScaleMap& xMap, const QRectF& canvas) const;
    void drawFan(QPainter& painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                 const QRectF& canvas) const;
    void label(QPainter& painter, QRectF box, const QString& text, Role ink) const;

    const Theme& theme_;
    std::shared_ptr<const TrendData> data_;
    std::vector<SeriesPtr> curves_;
};

}  // namespace fettle
