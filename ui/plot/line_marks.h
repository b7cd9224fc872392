// Why: the lines a fault would draw are marked over the spectrum so that found, absent and left out differ by
// shape and fill, not by colour: full triangle with a stem, open triangle with a dotted stem, cross. Ordinary
// lines (shaft orders, mains) get a small tick. Names stand beside the marks where there is room, carriers
// first; the rest is said by the readout. Units: `at` in the x axis' unit.
#pragma once

#include <qwt_plot_item.h>

#include <QFontMetricsF>
#include <QString>
#include <optional>
#include <vector>

#include "ui/theme/theme.h"

namespace fettle {

enum class MarkKind { Found, Absent, LeftOut, Ordinary };

struct LineMark {
    double at = 0;  // found lines: where they were found
    QString name;
    QString note;  // for the readout: what was found, or why it was left out
    MarkKind kind = MarkKind::Ordinary;
    int importance = 0;  // smaller: named first
};

QColor inkOf(const Theme& theme, MarkKind kind);
// The symbol alone, its tip at `tip`; tables beside the plot use the same.
void paintMark(QPainter& painter, const Theme& theme, MarkKind kind, const QPointF& tip, double size);

class LineMarks : public QwtPlotItem {
  public:
    explicit LineMarks(const Theme& theme);

    void setMarks(std::vector<LineMark> marks);
    const std::vector<LineMark>& marks() const { return marks_; }
    // The mark whose symbol or name is within `px` of an x position.
    std::optional<LineMark> markNear(const QwtScaleMap& xMap, double x, double px) const;
    static double headroom(const QFontMetricsF& metrics);  // pixels needed above the curve

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 4; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    const Theme& theme_;
    std::vector<LineMark> marks_;
};

}  // namespace fettle
