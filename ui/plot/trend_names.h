// Why: a reader of several lines should not have to look from a legend to a line and back: each bears its
// name at its end. Names that would stand on each other move apart. Units: those of the axes.
#pragma once

#include <qwt_plot_item.h>

#include <QFontMetricsF>
#include <QString>
#include <vector>

#include "ui/plot/series.h"
#include "ui/theme/theme.h"

namespace fettle {

class LineNames : public QwtPlotItem {
  public:
    struct Named {
        QString name;
        SeriesPtr series;
        Role ink = Role::Curve;
        bool right = false;  // on the right axis
    };
    explicit LineNames(const Theme& theme);
    void setNames(std::vector<Named> names);
    const std::vector<Named>& names() const { return names_; }

    struct Label {
        QRectF box;
        QString name;
        Role ink;
    };
    std::vector<Label> labels(const QwtScaleMap& xMap, const QwtScaleMap& yMap, const QRectF& canvas,
                              const QFontMetricsF& metrics) const;
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    const Theme& theme_;
    std::vector<Named> names_;
};

}  // namespace fettle
