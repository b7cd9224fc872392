// Why: a picture in colours says nothing without its scale: the legend always stands in the waterfall's head,
// with both ends, ticks and the unit. Pressed, it lets scale, map and range be set: by hand or between two
// percentiles of the data. Dragged, the nearer end follows the pointer; Left and Right move the weak end,
// Down and Up the strong one. Shows and sets a WaterfallLook. Thread: the window's.
#pragma once

#include <QAbstractButton>

#include "ui/plot/waterfall_look.h"

class QFormLayout;

namespace fettle {

class ColourLegend : public QAbstractButton {
    Q_OBJECT
  public:
    ColourLegend(const Theme& theme, WaterfallLook& look, QWidget* parent);

    QString text() const;  // "-60 to -6 dB re 1 mm/s r.m.s."
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }
    QRectF barRect() const;  // of the colours

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void take();
    void ask();
    void addScale(QFormLayout& form);
    void addRange(QFormLayout& form);
    void moveEnd(bool high, double byShare);
    void drawTicks(QPainter& painter, const QRectF& bar) const;

    const Theme& theme_;
    WaterfallLook& look_;
    QPointF pressedAt_;
    QRectF pressedBar_;  // its words, and so its width, change while the end moves
    ColourRange pressedRange_;
    bool dragging_ = false;
};

}  // namespace fettle
