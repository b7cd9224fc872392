// Why: the recording as it came, in time: impacts, clipping and steps are seen here first. A click sets a
// mark, Shift and a click a second one; the readout says the time between them and its rate in Hz and
// orders. Data: immutable, made elsewhere. Thread: the window's.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "ui/plot/plot_frame.h"
#include "ui/plot/series.h"
#include "ui/plot/zoom_span.h"

namespace fettle {

struct WaveformData {
    QString unit;
    double sampleRateHz = 0;
    std::vector<float> samples;
    double shaftHz = 0;  // 0: not known
};

class CursorItem;
class LineItem;

class WaveformPlot : public PlotFrame {
    Q_OBJECT
  public:
    WaveformPlot(const Theme& theme, QWidget* parent);

    void setData(std::shared_ptr<const WaveformData> data);
    const std::shared_ptr<const WaveformData>& data() const { return data_; }

  protected:
    void takeTheme() override;

  private:
    void connectGestures();
    void showAcross();
    void showCursors();
    void choose(const QPointF& at, Qt::KeyboardModifiers with);
    void hover(const QPointF& at);
    QString sayAt(double seconds) const;

    LineItem* curve_;
    CursorItem* cursors_;
    std::shared_ptr<const WaveformData> data_;
    ZoomSpan across_;  // seconds
    std::optional<double> first_, second_;
};

}  // namespace fettle
