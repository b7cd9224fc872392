// Why: which speeds of an inverter machine are better skipped, and why: the map of level by speed and
// frequency from what weeks of recordings have left in the fleet file, with a table of the bands, how many
// recordings each stands on, and what the map cannot say. Choosing a band marks it in the map. Opened with
// open(); deletes itself when closed. Thread: the window's. Errors: a sentence in the dialog.
#pragma once

#include <QDialog>
#include <memory>

#include "core/fleet/resonance_desk.h"
#include "ui/model/units.h"
#include "ui/plot/resonance_plot.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QLabel;
class QTableWidget;

namespace fettle {

// What the plot draws of one channel; `median`: else the largest of each bin.
std::shared_ptr<const ResonanceData> resonanceData(const MachineResonance& found, std::size_t channel,
                                                   bool median);

class ResonanceDialog : public QDialog {
    Q_OBJECT
  public:
    ResonanceDialog(FleetWork& work, const Theme& theme, const QString& machine, const Units& units,
                    QWidget* parent);

    const MachineResonance* found() const { return found_.get(); }

  private:
    void build(const Theme& theme);
    QWidget* buildBelow(const Theme& theme);
    void read();
    void take(Result<MachineResonance> found);
    void showMap();
    void showBands();
    void showWords();
    void chooseBand();

    FleetWork& work_;
    QString machine_;
    Units units_;
    std::shared_ptr<const MachineResonance> found_;
    QComboBox *channel_, *value_;
    ResonancePlot* plot_;
    QLabel *summary_, *limits_;
    QTableWidget* bands_;
};

}  // namespace fettle
