// Why: the path a measuring place moves on, seen along the shaft: the two radial directions with one scale,
// so that a circle is a circle. Of one turn, made of chosen orders, or as it was. What such a picture cannot
// say stands beside it: a sensor on a housing shows the housing, not the shaft in it; without a once-per-turn
// mark nobody knows where a turn begins, where the heavy spot is, or whether the path is run with the shaft
// or against it. Units: um or mil. Data: immutable, made elsewhere. Thread: the window's.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "ui/model/units.h"
#include "ui/plot/plot_frame.h"

class QComboBox;
class QLabel;

namespace fettle {

struct OrbitData {
    QString across, upright;  // names of the two directions
    std::vector<float> x, y;  // um
    QString what;             // "1x, ellipse 42.1 by 12.0 um peak, leaning 31 degrees"
    bool mark = false;        // a once-per-turn mark was recorded: the path's first point is at it
    QString turning;          // in words, where a tachometer lets it be said; else empty
};

enum class OrbitOf { First, Second, FirstAndSecond, FirstToFifth, Unfiltered };

class OrbitItem;

class OrbitPlot : public PlotFrame {
    Q_OBJECT
  public:
    OrbitPlot(const Theme& theme, QWidget* parent);

    void setData(std::shared_ptr<const OrbitData> data);
    const std::shared_ptr<const OrbitData>& data() const { return data_; }
    void setUnits(Units units);
    OrbitOf wanted() const;
    QString limits() const;  // what this picture cannot say
    QString tableText(TableExtent extent) const override;

  signals:
    void wantedChanged();

  protected:
    void takeTheme() override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void rebuild();
    void showAxes();

    OrbitItem* path_;
    QComboBox* whatBox_;
    QLabel* limits_;
    std::shared_ptr<const OrbitData> data_;
    Units units_;
    double most_ = 1;  // farthest from the middle, as shown
};

}  // namespace fettle
