// Why: quantities over the months, on the waterfall's time axis: points and line, gaps as gaps, limits as
// named lines, events as marks, the selected moment as a cursor. Recordings of a stopped machine are shown
// hollow and never joined. The first quantity is the one whose limits and past are shown; others stand beside
// it, each with a colour and a kind of line of its own and its name at its end; those of another unit have
// the axis at the right, and there is no third unit. Data: in stored units, immutable, made elsewhere; shown
// in those people read in. Thread: the window's.
#pragma once

#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "ui/plot/plot_frame.h"
#include "ui/plot/series.h"
#include "ui/plot/time_axis.h"

namespace fettle {

struct TrendSample {
    double ms = 0, value = 0;
    std::int64_t recording = 0;
    bool running = true;
};

struct TrendLimit {
    QString name;  // "B/C"
    double value = 0;
    bool own = false;  // of the machine's own past; else of a standard
};

// What was usual: its days, and the band in which most of them lay.
struct TrendBaseline {
    double fromMs = 0, untilMs = 0;
    double low = 0, middle = 0, high = 0;
};

// Where the level is heading: the growths that fit, from the last day to where they meet the limit.
struct TrendFan {
    double ms = 0, value = 0;  // the last day and the level fitted there
    double limit = 0;
    double earliestMs = 0, middleMs = 0;
    std::optional<double> latestMs;  // empty: no end
    QString words;                   // "B/C about 13 Jul 2026 (20 Jun to 30 Aug)"
};

struct TrendEvent {
    double ms = 0;
    QString kind, text;
};

struct TrendData {
    QString quantity, unit;  // "velocity r.m.s.", "mm/s"
    std::vector<TrendSample> samples;
    std::vector<TrendLimit> limits;
    bool fromZero = true;
    bool smooth = false;  // computed, not measured: drawn without points
    std::optional<TrendBaseline> baseline;
    std::optional<double> sinceMs;  // it has stayed apart from then on
    std::optional<TrendFan> fan;
};

class CursorItem;
class EventMarks;
class LimitLines;
class LineItem;
class LineNames;
class PastMarks;
class StoppedPoints;

class TrendPlot : public PlotFrame {
    Q_OBJECT
  public:
    TrendPlot(const Theme& theme, TimeAxis& axis, Selection& selection, QWidget* parent);
    ~TrendPlot() override;

    using DataPtr = std::shared_ptr<const TrendData>;
    void setData(DataPtr data) { setAll({std::move(data)}); }
    // Those of a third unit are left out. The first may be empty: nothing is shown.
    void setAll(std::vector<DataPtr> all);
    void setEvents(std::vector<TrendEvent> events);
    void setNote(const QString& note);  // said at rest, instead of the zone's name
    const DataPtr& data() const;        // the first one, as stored
    const std::vector<DataPtr>& all() const { return stored_; }
    const SeriesPtr& series() const;  // of its running recordings, as drawn
    QString tableText(TableExtent extent) const override;

  protected:
    void takeTheme() override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void connectGestures();
    void takeUnits();
    void showLines();
    void showUpright();
    void scaleAxis(int axis);
    void nameAxis(int axis);
    bool onRight(const TrendData& data) const;
    const TrendData* firstOn(int axis) const;
    void showZone();
    double aboveForEvents() const;
    void showCursor();
    void hover(const QPointF& at);
    void choose(const QPointF& at);
    void step(int steps, bool far);
    const TrendSample* nearest(double ms) const;  // of the first quantity, as shown

    TimeAxis& axis_;
    Selection& selection_;
    std::vector<LineItem*> lines_;
    StoppedPoints* stopped_;
    LimitLines *limits_, *rightLimits_;
    EventMarks* events_;
    PastMarks* past_;
    LineNames* names_;
    CursorItem* cursor_;
    std::vector<DataPtr> stored_, shown_;
    QString note_;
};

}  // namespace fettle
