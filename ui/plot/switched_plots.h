// Why: two pictures of one thing (raster and cascade, trend and scatter) take turns in one place, with the
// same controls in their heads. Holds the plots; the controls move to the head of the one that is shown.
// Thread: the window's.
#pragma once

#include <QStackedWidget>
#include <vector>

#include "ui/plot/plot_frame.h"

namespace fettle {

class SwitchedPlots : public QStackedWidget {
    Q_OBJECT
  public:
    explicit SwitchedPlots(const QString& name, QWidget* parent);

    void addPlot(PlotFrame* plot);
    void setControls(std::vector<QWidget*> controls);  // left to right
    void showPlot(PlotFrame* plot);
    PlotFrame* shownPlot() const;
    QSize minimumSizeHint() const override;

  private:
    std::vector<QWidget*> controls_;
};

}  // namespace fettle
