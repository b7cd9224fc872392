// Why: the axis always says what its numbers are: quantity, r.m.s., peak, peak to peak or density, linear or
// decibels, in the units people read in. One place turns the measured r.m.s. lines into those numbers, for
// the curve, for what is laid over it, for readouts and tables alike. Decibels are re 1 of the unit beside
// them. What is in decibels already (over the floor) stays as it is. Thread: any.
#pragma once

#include <QCoreApplication>
#include <span>

#include "ui/model/units.h"
#include "ui/plot/spectrum_data.h"

namespace fettle {

class SpectrumReading {
    Q_DECLARE_TR_FUNCTIONS(fettle::SpectrumReading)

  public:
    SpectrumReading() = default;
    // `units` all false: as stored, for what is exported.
    SpectrumReading(const SpectrumData& data, AmplitudeChoice choice, Units units);

    const QString& unit() const { return unit_; }        // "mm/s peak", "dB re 1 mm/s r.m.s."
    bool decibels() const { return decibels_; }          // numbers shown are decibels
    bool readable() const { return readable_; }          // another reading may be chosen
    double shown(double rms) const;                      // measured line to number shown
    double ratioDb(double shownA, double shownB) const;  // how far A stands above B
    std::vector<float> shown(std::span<const float> rms) const;
    double bottom(double top) const;  // of a scale in decibels whose highest value is `top`

  private:
    LineReading reading_ = LineReading::Rms;
    bool decibels_ = false, readable_ = false, asIs_ = true;
    double factor_ = 1, bandwidthHz_ = 0;
    QString unit_;
};

}  // namespace fettle
