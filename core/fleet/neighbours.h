// Why: whose line is it, asked of the fleet file: the line as it stands in the stored 800-line velocity
// spectra of one machine, the running states of every machine of its area, itself among them. There: 6 dB or
// more above the median of the twelve cells to either side (common practice, no source). A cell is as wide as
// the stored spectrum has it, some 1 Hz: what lies closer together is one line here, and a line of the
// machine itself there is told. Times UTC. Thread: as the FleetFile; reads only. Errors: those of the stores;
// NotFound where no spectrum reaches the line.
#pragma once

#include <string>
#include <vector>

#include "core/round/whose_line.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct LineQuestion {
    std::string machine;  // tag
    double hz = 0;
    std::string until;       // last day of the site; empty: of the newest recording
    int days = 182;          // so many days to it
    bool everyArea = false;  // all machines, not those of the same area alone
};

struct WhoseLine {
    std::string where;  // channel whose spectra were read: "M-DE x"
    double cellHz = 0;
    std::size_t recordings = 0, there = 0;
    std::string own;  // a line of the machine itself in the same cells: "1 x shaft at 24.2 Hz"; empty: none
    std::vector<LeavesWith> machines;
};
Result<WhoseLine> whoseLine(FleetFile& fleet, const LineQuestion& question);

// Whether a line stands at `hz` in a stored spectrum.
bool lineStands(const SpectrumAt& spectrum, double hz);

}  // namespace fettle
