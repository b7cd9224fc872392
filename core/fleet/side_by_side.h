// Why: the first question about a raised level is where it is largest: the same quantity at the same moment
// at the other directions and ends of the machine, on what it drives, and on machines of the same build doing
// the same work. One row a channel. The recording nearest to the moment counts, within three days, running
// ones only. Twins: same kind, power and poles of the driver and the same kind of driven machine. Units in
// the names. Thread: as the FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/store/fleet_file.h"

namespace fettle {

enum class Beside { Here, OtherDirection, OtherEnd, OtherComponent, Twin };

struct SideRow {
    Beside beside = Beside::Here;
    std::string tag, service;
    ChannelEntry channel;
    std::string at;  // of the point
    std::int64_t recording = 0;
    Instant time{};
    double shaftHz = 0;  // 0: not known
    std::optional<double> velocityMmS, order1MmS, highBandG;
    std::optional<double> line;  // the stored line at the order asked for, in the unit of its kind
};

struct SideQuestion {
    std::string tag;
    std::int64_t channel = 0;
    Instant moment{};
    std::optional<double> order;                   // of a line
    WaterfallKind kind = WaterfallKind::Velocity;  // in which spectra that line is read
};

// The asked channel first, then by how near they are; those without a recording near the moment are left out.
Result<std::vector<SideRow>> sideBySide(FleetFile& fleet, const SideQuestion& question,
                                        const CancelToken& cancel);
bool areTwins(const Machine& a, const Machine& b);

}  // namespace fettle
