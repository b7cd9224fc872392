// Why: what every plot of the window has in common: a head row (title, controls of the page, readout at the
// right, always the same height so that nothing jumps), one Qwt plot in the theme's colours, words in its
// place while there is nothing to show. Subclasses get data as immutable shared values and only draw them:
// nothing here or below queries, transforms or reads a file. Thread: the window's.
#pragma once

#include <QColor>
#include <QWidget>

#include "ui/theme/theme.h"

class QBoxLayout;
class QLabel;
class QPainter;
class QStackedLayout;
class QwtPlot;
class QwtPlotGrid;

namespace fettle {

class Gestures;

class PlotFrame : public QWidget {
    Q_OBJECT
  public:
    // `name`: object name; the canvas is called name + "Canvas".
    PlotFrame(const Theme& theme, const QString& name, const QString& title, QWidget* parent);
    ~PlotFrame() override;

    void addControl(QWidget* control);    // into the head row, before those already there
    void setTitle(const QString& title);  // as seen; the accessible name stays
    // Words instead of the plot: what is missing and what to do next. Empty: the plot.
    void setWords(const QString& words);
    QString words() const;
    QString readout() const;

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
    Gestures& gestures() { return *gestures_; }
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void buildHead();
    void placeReadout();  // beside the controls, below them where there is no room

    const Theme& theme_;
    QwtPlot* plot_;
    Gestures* gestures_;
    QBoxLayout* head_;
    QLabel *title_, *readout_, *readoutBelow_, *words_;
    QString atRest_;
    QStackedLayout* stack_;
    QwtPlotGrid* grid_;
};

}  // namespace fettle
