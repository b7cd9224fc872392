// Why: the time waveform of the chosen recording: least and most kept at every zoom, two marks set by click
// and Shift and click with their distance in seconds and as a rate (hertz, orders, r/min), ticks once a turn
// and once an impact of the chosen fault counted from the first mark, the plain figures of what is visible
// (peak, r.m.s., crest, kurtosis) reckoned after a zoom has come to rest, never while painting. Z zooms to
// what lies between the marks. Data: immutable, made elsewhere. Thread: the window's.
#pragma once

#include <QTimer>
#include <memory>
#include <optional>
#include <vector>

#include "ui/model/units.h"
#include "ui/plot/plot_frame.h"
#include "ui/plot/series.h"
#include "ui/plot/zoom_span.h"

class QToolButton;

namespace fettle {

struct WaveformData {
    QString unit;
    double sampleRateHz = 0;
    std::vector<float> samples;
    double shaftHz = 0;  // 0: not known
};

struct WaveformPeriod {
    QString name;  // "turn", "BPFO of driver DE"
    double seconds = 0;
};

class CursorItem;
class LineItem;
class PeriodTicks;

class WaveformPlot : public PlotFrame {
    Q_OBJECT
  public:
    WaveformPlot(const Theme& theme, QWidget* parent);

    void setData(std::shared_ptr<const WaveformData> data);
    const std::shared_ptr<const WaveformData>& data() const { return data_; }
    void setUnits(Units units);
    void setImpact(const WaveformPeriod& impact);  // of the chosen fault; 0 s: none
    void zoomToMarks();
    QString figures() const;  // of what is visible, in words
    QString tableText(TableExtent extent) const override;

  protected:
    void takeTheme() override;

  private:
    void connectGestures();
    void addControls();
    void rebuild();
    void showAcross();
    void showCursors();
    void showTicks();
    void showFigures();
    void choose(const QPointF& at, Qt::KeyboardModifiers with);
    void hover(const QPointF& at);
    QString sayAt(double seconds) const;
    std::pair<std::size_t, std::size_t> visible() const;  // samples [first, last)

    LineItem* curve_;
    CursorItem* cursors_;
    PeriodTicks *turns_, *impacts_;
    QToolButton *turnsButton_, *impactsButton_, *zoomButton_;
    class QLabel* figures_;
    QTimer rest_;
    std::shared_ptr<const WaveformData> data_;
    WaveformPeriod impact_;
    Units units_;
    ZoomSpan across_;  // seconds
    std::optional<double> first_, second_;
};

}  // namespace fettle
