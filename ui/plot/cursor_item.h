// Why: a cursor has to be seen on paper, on dark and on the waterfall's colours alike: a line in the cursor's
// ink with a rim of the ground on either side. Upright lines at several places of the x axis, level ones of
// the y axis. Units: of the axes.
#pragma once

#include <qwt_plot_item.h>

#include <QColor>
#include <QString>
#include <vector>

namespace fettle {

struct CursorLine {
    double at = 0;
    QString label;  // drawn at its end; may be empty
    bool upright = true;
    Qt::PenStyle style = Qt::SolidLine;
    bool operator==(const CursorLine&) const = default;
};

class CursorItem : public QwtPlotItem {
  public:
    CursorItem();

    void setLines(std::vector<CursorLine> lines);
    const std::vector<CursorLine>& lines() const { return lines_; }
    void setColours(const QColor& ink, const QColor& rim);
    void setRimmed(bool rimmed) { rimmed_ = rimmed; }
    // Lines may stand below a curve and their labels above it: two items then.
    enum Parts { Lines = 1, Labels = 2 };
    void setParts(int parts) { parts_ = parts; }

    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 3; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

  private:
    void drawStroke(QPainter& painter, const QLineF& stroke, Qt::PenStyle style) const;
    void drawLabel(QPainter& painter, const QString& label, QPointF at, const QRectF& canvas) const;

    std::vector<CursorLine> lines_;
    QColor ink_, rim_;
    bool rimmed_ = true;
    int parts_ = Lines | Labels;
};

}  // namespace fettle
