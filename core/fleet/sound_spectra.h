// Why: the spectra of the days that stand for the sound machine, the same days the trend's baseline has, as
// one band at the speed of the recording it is laid over. Running recordings only, at speeds within a tenth
// of that. Thread: as the FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <string>

#include "core/store/fleet_file.h"
#include "core/trend/spectrum_band.h"

namespace fettle {

struct SoundBand {
    SpectrumBand band;
    int days = 0;          // of the calendar, from the baseline's first to its last
    std::string from, to;  // those days
    std::string why;       // where there is no band
};
Result<SoundBand> soundBand(FleetFile& fleet, const std::string& tag, const Machine& machine,
                            const ChannelEntry& channel, WaterfallKind kind, double shaftHz);

}  // namespace fettle
