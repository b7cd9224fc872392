// Why: how vibration went from run to run is seen at once as arrows on one polar plot: the initial one, those
// with trial masses, what is predicted, what the check found; for four runs without phase the circles and the
// point in which they meet. Angles run the way the rotor's drawing counts. Amounts in one unit. A value and a
// function, for the window and for paper. Thread: the window's. Paints only.
#pragma once

#include <QCoreApplication>
#include <QRectF>
#include <QString>
#include <vector>

#include "ui/plot/drawn_picture.h"

class QPainter;

namespace fettle {

struct PolarPicture {
    struct Arrow {
        QString name;
        double amount = 0, degrees = 0;
        bool strong = false;  // in the accent ink
        bool dashed = false;  // not measured
    };
    struct Circle {
        QString name;
        double centre = 0, degrees = 0, radius = 0;
    };
    QString title, unit;
    bool clockwise = true;  // degrees grow clockwise
    std::vector<Arrow> arrows;
    std::vector<Circle> circles;
    double limit = 0;  // a dashed ring; 0: none
    QString limitName;
    QString empty;  // said where there is nothing to draw
};

void paintPolar(QPainter& painter, const QRectF& rect, const PolarPicture& polar, const Theme& theme,
                const QFont& font);

class PolarDrawing : public DrawnPicture<PolarPicture> {
    Q_DECLARE_TR_FUNCTIONS(fettle::PolarDrawing)
  public:
    explicit PolarDrawing(const Theme& theme, QWidget* parent = nullptr);
};

}  // namespace fettle
