// Why: the lines of a cursor as numbers beside the plot: order, frequency, amplitude, height over the floor;
// chosen rows or all of them are copied with Ctrl+C, columns parted by tabs, units in the head. A row chosen
// says its frequency. Thread: the window's.
#pragma once

#include <QTableWidget>

#include "ui/model/units.h"
#include "ui/plot/spectrum_cursor.h"

namespace fettle {

class CursorTable : public QTableWidget {
    Q_OBJECT
  public:
    CursorTable(const QString& name, QWidget* parent);

    void setRows(std::vector<CursorRow> rows, const QString& amplitudeUnit, Units units);
    QString text(bool chosenOnly) const;
    QSize sizeHint() const override;

  signals:
    void placeChosen(double hz);

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    std::vector<CursorRow> rows_;
    QStringList heads_;
};

}  // namespace fettle
