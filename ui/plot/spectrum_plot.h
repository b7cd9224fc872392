// Why: the chosen recording's spectrum as the verdict saw it: curve without a lost peak, the expected lines
// marked with names, a cursor alone or with its harmonics or sidebands, and a readout in Hz, orders, r/min
// and the amplitude with its unit. A click catches the highest peak nearby and sets the Selection's cursor;
// arrows move it by a line, with Shift to the next peak. Data: immutable, made elsewhere. Thread: the
// window's.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "ui/model/selection.h"
#include "ui/plot/line_marks.h"
#include "ui/plot/plot_frame.h"
#include "ui/plot/series.h"
#include "ui/plot/zoom_span.h"

class QComboBox;
class QToolButton;

namespace fettle {

struct SpectrumData {
    QString unit;           // "mm/s r.m.s.", "dB over floor"
    bool decibels = false;  // values are in dB already: no logarithmic axis
    double least = 0;       // the axis begins there
    double dfHz = 0;
    std::vector<float> values;
    double shaftHz = 0;  // 0: not known
};

enum class CursorKind { Single, Harmonics, Sidebands };

class CursorItem;
class LineItem;

class SpectrumPlot : public PlotFrame {
    Q_OBJECT
  public:
    SpectrumPlot(const Theme& theme, Selection& selection, const QString& name, const QString& title,
                 QWidget* parent);

    void setData(std::shared_ptr<const SpectrumData> data);
    const std::shared_ptr<const SpectrumData>& data() const { return data_; }
    void setMarks(std::vector<LineMark> marks);  // `at` in Hz
    const std::vector<LineMark>& marks() const { return marksHz_; }
    void setSidebandHz(double hz);  // 0: the shaft's
    void setCursorKind(CursorKind kind);
    void setOrders(bool orders);
    void setLogarithmic(bool logarithmic);
    void showHz(double from, double until);
    std::vector<double> cursorPlacesHz() const;  // the cursor, its harmonics or sidebands

  protected:
    void takeTheme() override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void addControls();
    void connectGestures();
    void rebuild();
    void showAxes();
    void showAcross();
    void showUpright();
    void showCursor();
    void choose(const QPointF& at, Qt::KeyboardModifiers with);
    void hover(const QPointF& at);
    void step(int steps, bool far);
    double unitHz() const;  // x axis unit in Hz
    std::size_t highestNear(double x, double px) const;
    QString sayAt(std::size_t line) const;

    Selection& selection_;
    LineItem* curve_;
    LineMarks* markItem_;
    CursorItem *cursors_, *cursorLabels_;
    QComboBox* kindBox_;
    QToolButton *ordersButton_, *logButton_;
    std::shared_ptr<const SpectrumData> data_;
    std::vector<LineMark> marksHz_;
    ZoomSpan across_;  // in Hz
    CursorKind kind_ = CursorKind::Single;
    double sidebandHz_ = 0;
    bool orders_ = false, logarithmic_ = false;
};

}  // namespace fettle
