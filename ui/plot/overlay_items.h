// Why: what is laid over a spectrum is told apart by kind of stroke, not by colour alone: the band of the
// sound machine is a hatched area with a dotted middle, ranges of a bearing's lines are upright stripes with
// names, and a small legend in the plot says what is what, so that a copied picture says it too. Units: of
// the axes; `sideways` turns cells in Hz into the axis' unit. Thread: the window's; draws shared data only.
#pragma once

#include <qwt_plot_item.h>

#include <QColor>
#include <vector>

#include "ui/plot/spectrum_data.h"
#include "ui/theme/theme.h"

namespace fettle {

class BandItem : public QwtPlotItem {
  public:
    BandItem();
    // Values as shown; cells of `cell` in the axis' unit.
    void setBand(std::vector<float> low, std::vector<float> middle, std::vector<float> high, double cell);
    void clear() { setBand({}, {}, {}, 1); }
    void setColour(const QColor& colour);
    bool empty() const { return middle_.empty(); }

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 11; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    std::vector<float> low_, middle_, high_;
    double cell_ = 1;
    QColor colour_;
};

class RangeItem : public QwtPlotItem {
  public:
    explicit RangeItem(const Theme& theme);
    void setRanges(std::vector<DefectBand> ranges, double unitHz);  // unitHz: of the axis
    const std::vector<DefectBand>& ranges() const { return ranges_; }

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 12; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    const Theme& theme_;
    std::vector<DefectBand> ranges_;
    double unitHz_ = 1;
};

struct LegendEntry {
    enum Stroke { Line, Area, Range };
    Stroke stroke = Line;
    QColor colour;
    QString text;
};

class LegendItem : public QwtPlotItem {
  public:
    explicit LegendItem(const Theme& theme);
    void setEntries(std::vector<LegendEntry> entries);
    const std::vector<LegendEntry>& entries() const { return entries_; }
    void setTop(double px) { top_ = px; }  // kept free above it

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 13; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    const Theme& theme_;
    std::vector<LegendEntry> entries_;
    double top_ = 0;
};

}  // namespace fettle
