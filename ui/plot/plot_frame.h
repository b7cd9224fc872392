// Why: what every plot of the window has in common: a head row (title, controls of the page, readout at the
// right; what does not fit goes on in a next row, so that the height follows from the width alone and nothing
// jumps), one Qwt plot in the theme's colours, words in its place while there is nothing to show, a table
// beside it where one is wanted, and every plot copied and saved the same way. Subclasses get data as
// immutable shared values and only draw them: nothing here or below queries, transforms or reads a file.
// Thread: the window's.
#pragma once

#include <QColor>
#include <QWidget>

#include "ui/plot/plot_export.h"
#include "ui/theme/theme.h"

class QBoxLayout;
class QLabel;
class QMenu;
class QPainter;
class QSplitter;
class QStackedLayout;
class QwtPlot;
class QwtPlotGrid;

namespace fettle {

class Gestures;
class HeadFlow;

class PlotFrame : public QWidget {
    Q_OBJECT
  public:
    // `name`: object name; the canvas is called name + "Canvas".
    PlotFrame(const Theme& theme, const QString& name, const QString& title, QWidget* parent);
    ~PlotFrame() override;

    void addControl(QWidget* control);    // into the head row, before those already there
    void addStrip(QWidget* strip);        // a row below the head; hidden ones take no room
    void setSide(QWidget* side);          // beside the plot, at its right
    void setTitle(const QString& title);  // as seen; the accessible name stays
    // Words instead of the plot: what is missing and what to do next. Empty: the plot.
    void setWords(const QString& words);
    QString words() const;
    QString readout() const;
    void say(const QString& text) { setReadout(text); }  // until the next thing is said
    // What it is of, "KL-ID-01 M-DE x, 5 May 2026 06:20 UTC": goes with pictures and tables.
    void setSubject(const QString& subject) { subject_ = subject; }
    QString caption() const;  // its name and what it is of
    // The numbers behind it, columns parted by tabs, first rows beginning with '#': what they are of. Empty:
    // this plot has none.
    virtual QString tableText(TableExtent extent) const;
    virtual bool hasTable() const { return !tableText(TableExtent::AsShown).isEmpty(); }
    // The same into a file; of what is too long for one text, row by row.
    virtual TableWriter tableWriter(TableExtent extent) const;
    void saveAs();  // asks for a name
    void saveTo(const QString& path, TableExtent extent);

    QwtPlot& plot() const { return *plot_; }
    QWidget* canvas() const;
    // Vector drawing of the plot alone into `rect` (device units of the painter), for the sheet.
    void renderTo(QPainter& painter, const QRectF& rect);
    QSize minimumSizeHint() const override;

  protected:
    void setReadout(const QString& text);  // empty: what it says at rest
    void setAtRest(const QString& text);
    virtual void takeTheme();  // colours; base: axes, canvas, grid
    const Theme& theme() const { return theme_; }
    QColor colour(Role role) const { return theme_.colour(role); }
    void hideGrid();
    virtual void fillMenu(QMenu& menu);  // of the right button; base: copy and save
    // "# caption" and what part it is; the first rows of a table.
    QString tableHead(const QString& extent) const;
    Gestures& gestures() { return *gestures_; }
    void changeEvent(QEvent* event) override;

  private:
    void buildHead();
    void buildActions();
    void copyAsTable(TableExtent extent);

    const Theme& theme_;
    QwtPlot* plot_;
    Gestures* gestures_;
    HeadFlow* head_;
    QBoxLayout* column_;
    QSplitter* across_;
    QLabel *title_, *readout_, *words_;
    QAction *copyAction_, *tableAction_, *saveAction_;
    QString atRest_, subject_;
    QStackedLayout* stack_;
    QwtPlotGrid* grid_;
};

}  // namespace fettle
