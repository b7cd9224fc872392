// Why: a mass put at "60 degrees" counted the wrong way doubles the trouble, so the convention is drawn and
// not only told: the rotor seen from the stated side, which way it turns, where the mark is and which way
// degrees are counted, the places there are, masses and sensors. Shown when the mark is at the pick-up, which
// is drawn at the top. Degrees are those the user counts; sensors are told by their place round the housing,
// counted the same way from the pick-up. A value and a function, for the window and for paper. Thread: the
// window's. Paints only.
#pragma once

#include <QCoreApplication>
#include <QRectF>
#include <QString>
#include <vector>

#include "ui/plot/drawn_picture.h"

class QPainter;

namespace fettle {

struct RotorPicture {
    struct Place {
        int number = 0;
        double degrees = 0;
        bool free = true;
    };
    struct Mass {
        QString name;
        double degrees = 0;
        bool trial = false;  // else to be fitted
    };
    struct Sensor {
        QString name;
        double degrees = 0;
    };
    QString title, seenFrom;    // "Plane 1"; "seen from the coupling side"
    bool clockwise = true;      // as seen
    bool withRotation = false;  // places are counted with the rotation, else against it
    std::vector<Place> places;
    std::vector<Mass> masses;
    std::vector<Sensor> sensors;
};

// On the screen, clockwise from the top, of a counted angle.
double screenDegrees(const RotorPicture& rotor, double degrees);
void paintRotor(QPainter& painter, const QRectF& rect, const RotorPicture& rotor, const Theme& theme,
                const QFont& font);

class RotorDrawing : public DrawnPicture<RotorPicture> {
    Q_DECLARE_TR_FUNCTIONS(fettle::RotorDrawing)
  public:
    explicit RotorDrawing(const Theme& theme, QWidget* parent = nullptr);
};

}  // namespace fettle
