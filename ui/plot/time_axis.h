// Why: waterfall and trend stand above each other and share one time axis: the same span, the same pixels.
// What is shown is the Selection's span; this object knows how far the data reach, zooms and shifts, and
// keeps the left and right edges of the attached plots' canvases at the same pixel. Ticks and words are by
// the site's clock. Thread: the window's; axis and plots may go in any order.
#pragma once

#include <QObject>
#include <QPointer>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "ui/model/selection.h"
#include "ui/plot/zoom_span.h"

class QwtPlot;

namespace fettle {

double toMs(Instant time);
Instant toInstant(double ms);

class TimeAxis : public QObject {
    Q_OBJECT
  public:
    explicit TimeAxis(Selection& selection, QObject* parent = nullptr);
    ~TimeAxis() override;

    void setBounds(TimeSpan bounds);  // all there is; what was shown stays shown where it can
    const ZoomSpan& span() const { return span_; }

    void setZone(const QTimeZone& zone);  // UTC at first
    QString zoneName() const;             // "Europe/London"
    QString text(double ms) const;        // "2026-05-04 07:20 UTC+1"

    void zoom(double factor, double aboutMs);
    void pan(double byMs);
    void show(double fromMs, double untilMs);
    void showAll();
    void bring(double ms);

    // The moment whose recording is shown although none was chosen: the strongest of the week.
    void setShown(std::optional<double> ms);
    std::optional<double> shown() const { return shown_; }

    // Gives the plot its time scale; `ticksOnly`: no labels below it.
    void attach(QwtPlot& plot, bool ticksOnly);
    // The same for a plot whose upright axis is time; `above`: room beyond the end, as a share of the span.
    void attachUpright(QwtPlot& plot, double above);
    void align();  // after fonts or scales changed

  signals:
    void changed();

  private:
    std::vector<QwtPlot*> plots() const;  // those that are still there
    void setScale(QwtPlot& plot, int axis, double until, int fromUtc);
    void take();  // the Selection's span
    void publish();
    void setScales();
    double alignRight();  // room taken; negative: none

    Selection& selection_;
    ZoomSpan span_;
    QTimeZone zone_ = QTimeZone::utc();
    std::vector<QPointer<QwtPlot>> plots_;
    std::vector<std::pair<QPointer<QwtPlot>, double>> uprights_;
    std::optional<double> shown_;
    bool publishing_ = false;
    double extent_ = -1, right_ = -1;  // as aligned last
    int overhang_ = -1;
    std::size_t aligned_ = 0;
};

}  // namespace fettle
