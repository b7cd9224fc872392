// Why: carrier, harmonics, spacing and pairs of a cursor are numbers a person sets exactly: one compact row
// with what the chosen kind of cursor needs and nothing else, hidden for a lone cursor. The carrier moves in
// tenths of a line, so a comb of twenty can be laid on its lines. Shown in Hz or r/min. Thread: the window's.
#pragma once

#include <QWidget>
#include <vector>

#include "ui/model/units.h"
#include "ui/plot/spectrum_cursor.h"

class QDoubleSpinBox;
class QLabel;
class QMenu;
class QSpinBox;
class QToolButton;

namespace fettle {

class CursorStrip : public QWidget {
    Q_OBJECT
  public:
    CursorStrip(const QString& name, QWidget* parent);

    // What stands; emits nothing. `carrierHz` empty: no cursor set yet. `stepHz`: a line.
    void show(const SpectrumCursor& cursor, std::optional<double> carrierHz, double shaftHz, double stepHz,
              Units units);
    void setSpacings(std::vector<NamedSpacing> spacings);
    void setDifference(const QString& words);  // between two cursors

  signals:
    void carrierChanged(double hz);
    void secondChanged(double hz);
    void cursorChanged(int harmonics, int pairs, double spacingHz);

  private:
    QDoubleSpinBox* hertzBox(const QString& name, const QString& says);
    void fillSpacings();
    void tell();

    QLabel *carrierName_, *secondName_, *harmonicsName_, *spacingName_, *pairsName_, *difference_;
    QDoubleSpinBox *carrier_, *second_, *spacing_;
    QSpinBox *harmonics_, *pairs_;
    QToolButton* presets_;
    QMenu* menu_;
    std::vector<NamedSpacing> spacings_;
    double factor_ = 1, carrierHz_ = 0;
};

}  // namespace fettle
