// Why: the chosen recording's spectrum as the verdict saw it: curve without a lost peak, the expected lines
// marked with names, cursors (one, two, harmonics, sidebands) with a table of their lines, and a readout in
// Hz, orders, r/min and the amplitude with its unit. Over it what it is compared with: a reference recording
// drawn at this one's speed, the band of the sound machine, the ranges of a bearing's lines. The amplitude is
// read as chosen and always named on the axis. A click catches the highest peak nearby and sets the
// Selection's cursor; arrows move it by a line, with Shift to the next peak, with Alt by a tenth of a line.
// Data: immutable, made elsewhere. Thread: the window's.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "ui/model/selection.h"
#include "ui/plot/line_marks.h"
#include "ui/plot/plot_frame.h"
#include "ui/plot/series.h"
#include "ui/plot/spectrum_cursor.h"
#include "ui/plot/spectrum_data.h"
#include "ui/plot/spectrum_reading.h"
#include "ui/plot/zoom_span.h"

class QActionGroup;
class QComboBox;
class QToolButton;

namespace fettle {

class BandItem;
class CursorItem;
class CursorStrip;
class CursorTable;
class LegendItem;
class LineItem;
class RangeItem;

class SpectrumPlot : public PlotFrame {
    Q_OBJECT
  public:
    SpectrumPlot(const Theme& theme, Selection& selection, const QString& name, const QString& title,
                 QWidget* parent);

    void setData(std::shared_ptr<const SpectrumData> data);
    const std::shared_ptr<const SpectrumData>& data() const { return data_; }
    void setMarks(std::vector<LineMark> marks);  // `at` in Hz
    const std::vector<LineMark>& marks() const { return marksHz_; }
    void setReference(std::shared_ptr<const SpectrumReference> reference);  // null: none
    const std::shared_ptr<const SpectrumReference>& reference() const { return reference_; }
    void setBand(std::shared_ptr<const SpectrumBandData> band);  // null: none
    void setRanges(std::vector<DefectBand> ranges, const QString& of);
    const std::vector<DefectBand>& ranges() const { return ranges_; }
    void setSpacings(std::vector<NamedSpacing> spacings);
    QToolButton& overlayButton() const { return *overlayButton_; }  // its menu is the page's

    void setSidebandHz(double hz);  // 0: the shaft's
    void setCursorKind(CursorKind kind);
    void setSecondHz(std::optional<double> hz);
    const SpectrumCursor& cursor() const { return cursor_; }
    void setOrders(bool orders);
    void setLogarithmic(bool logarithmic);
    void setAmplitude(AmplitudeChoice choice);
    AmplitudeChoice amplitude() const { return amplitude_; }
    const SpectrumReading& reading() const { return reading_; }
    void showTable(bool shown);
    void showHz(double from, double until);
    const ZoomSpan& acrossHz() const { return across_; }
    std::vector<double> cursorPlacesHz() const;  // the cursor, its harmonics or sidebands
    std::vector<CursorRow> cursorLines() const;
    QStringList legend() const;
    QString tableText(TableExtent extent) const override;

  protected:
    void takeTheme() override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void addControls();
    QToolButton* amplitudeMenu();
    void addCursorParts();
    void connectGestures();
    void rebuild();
    void rebuildOverlays();
    void rebuildLegend();
    void showAxes();
    void showAcross();
    void showUpright();
    void showAmplitudeChoice();
    void showCursor();
    void showDifference(const std::vector<CursorRow>& rows);
    void choose(const QPointF& at, Qt::KeyboardModifiers with);
    void hover(const QPointF& at);
    void step(int steps, bool far);
    void nudge(int steps, bool other);
    bool usable() const;     // there are lines
    double unitHz() const;   // x axis unit in Hz
    double stretch() const;  // of the reference's frequencies, to this speed
    float highestWithin(const std::vector<float>& values, double dfHz) const;
    std::size_t highestNear(double x, double px) const;
    QString sayAt(std::size_t line) const;

    Selection& selection_;
    LineItem *curve_, *referenceCurve_;
    LineMarks* markItem_;
    BandItem* bandItem_;
    RangeItem* rangeItem_;
    LegendItem* legend_;
    CursorItem *cursors_, *cursorLabels_;
    CursorStrip* strip_;
    CursorTable* table_;
    QComboBox* kindBox_;
    QToolButton *ordersButton_, *amplitudeButton_, *overlayButton_, *tableButton_;
    QActionGroup *readings_ = nullptr, *scales_ = nullptr;
    std::shared_ptr<const SpectrumData> data_;
    std::shared_ptr<const SpectrumReference> reference_;
    std::shared_ptr<const SpectrumBandData> band_;
    std::vector<LineMark> marksHz_;
    std::vector<DefectBand> ranges_;
    QString rangesOf_;
    std::vector<float> shownValues_, shownReference_;
    SpectrumReading reading_;
    AmplitudeChoice amplitude_;
    ZoomSpan across_;  // in Hz
    SpectrumCursor cursor_;
    bool orders_ = false;
};

}  // namespace fettle
