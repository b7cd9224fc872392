// Why: the waterfall's other picture: spectra as traces one behind the other, frequency or orders across,
// time upwards, the oldest in front. It shares spectra, range and colours with the raster (WaterfallLook),
// the span of time and the selection with everything; a click chooses the recording and the strongest line
// nearest to the pointer. Thread: the window's.
#pragma once

#include "ui/plot/plot_frame.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/waterfall_look.h"
#include "ui/plot/waterfall_table.h"

namespace fettle {

class CascadeItem;
class CursorItem;

class Cascade : public PlotFrame {
    Q_OBJECT
  public:
    Cascade(const Theme& theme, TimeAxis& axis, Selection& selection, WaterfallLook& look, QWidget* parent);
    ~Cascade() override;

    const CascadeItem& item() const { return *item_; }
    const ZoomSpan& across() const { return across_; }  // in units of the data

    QString tableText(TableExtent extent) const override;  // empty: too many numbers for a clipboard
    bool hasTable() const override { return !look_.empty(); }
    TableWriter tableWriter(TableExtent extent) const override;

  protected:
    void takeTheme() override;
    void showEvent(QShowEvent* event) override;

  private:
    WaterfallTable table(TableExtent extent) const;
    void connectGestures();
    void takeData();
    void showAcross();
    void showCursors();
    void hover(const QPointF& at);
    void choose(const QPointF& at);
    void step(int steps, bool far);
    std::optional<std::size_t> selectedRow() const;

    TimeAxis& axis_;
    Selection& selection_;
    WaterfallLook& look_;
    CascadeItem* item_;
    CursorItem* cursors_;
    double knownTop_ = -1;
    ZoomSpan across_;
};

}  // namespace fettle
