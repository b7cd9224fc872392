// Why: "is it only this one?" is answered by eye: the spectra of the machine and of its twins and train, of
// one moment and in one unit, below each other on one axis. The places are those of the comparison on the
// machine page (compare_strip.h), the one looked at on top. Reads on FleetWork. Thread: the window's.
#pragma once

#include <QDialog>
#include <QTimeZone>
#include <functional>
#include <vector>

#include "core/fleet/side_by_side.h"
#include "ui/pages/machine_requests.h"
#include "ui/plot/lanes_plot.h"
#include "ui/work/fleet_work.h"

class QLabel;

namespace fettle {

struct SideSpectraRequest {
    QString tag;                // of the machine looked at
    std::vector<SideRow> rows;  // as compared
    std::string view;           // of the envelope; empty: whole band
    QTimeZone zone = QTimeZone::utc();
    double fromHz = 0, untilHz = 0;  // the part that is seen now
    std::function<SpectrumPtr(const RecordingPlots&)>
        pick;  // which of a recording's spectra; runs on a worker
};

class SideSpectra : public QDialog {
    Q_OBJECT
  public:
    static constexpr std::size_t kMost = 10;

    SideSpectra(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent);
    void showPlaces(SideSpectraRequest request);

  private:
    void take(std::vector<Lane> lanes, std::size_t without, const SideSpectraRequest& request);

    FleetWork& work_;
    LanesPlot* plot_;
    QLabel* words_;
};

}  // namespace fettle
