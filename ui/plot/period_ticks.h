// Why: whether something strikes once a turn or once a ball is seen when ticks of that period stand along the
// waveform: short strokes at the upper or lower edge, counted from a moment the reader sets, numbered where
// there is room, none where they would be a grey bar. Units: seconds. Thread: the window's.
#pragma once

#include <qwt_plot_item.h>

#include <QColor>
#include <QString>

namespace fettle {

class PeriodTicks : public QwtPlotItem {
  public:
    explicit PeriodTicks(bool above);
    void setPeriod(double seconds, double origin, const QString& name);
    void setColour(const QColor& colour);

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 14; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    bool above_;
    double seconds_ = 0, origin_ = 0;
    QString name_;
    QColor colour_;
};

}  // namespace fettle
