// Why: what the plots of a recording are compared with, asked of the fleet file on a worker: a reference, the
// band of the sound machine, an orbit, the same quantity elsewhere; and what follows from the description
// alone: where a bearing's lines may lie and which spacings sidebands of this machine can have. Plain data
// out. Thread: any, one FleetFile at a time. Errors: those of the stores.
#pragma once

#include <QTimeZone>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/fleet/side_by_side.h"
#include "core/machine/machine.h"
#include "ui/pages/machine_requests.h"
#include "ui/plot/orbit_plot.h"
#include "ui/plot/spectrum_data.h"

namespace fettle {

// The recording's plots; where it has not the view named, those of the whole band. With a time NotFound where
// the recording of that number is of another moment.
Result<RecordingPlots> plotsLike(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                 const std::string& view, std::optional<Instant> time = {});

// One band a kind; null with the reason where there is none.
struct SoundBands {
    std::shared_ptr<const SpectrumBandData> velocity, displacement, acceleration, envelope;
    QString why;
};
Result<SoundBands> soundBands(FleetFile& fleet, const std::string& tag, const Machine& machine,
                              const ChannelEntry& channel, double shaftHz);

struct OrbitRequest {
    std::int64_t recording = 0;
    std::string point;
    double shaftHz = 0;
    OrbitOf of = OrbitOf::First;
};
// Without data the words say why two radial directions at one moment are not there.
struct OrbitAnswer {
    std::shared_ptr<const OrbitData> data;
    QString words;
};
Result<OrbitAnswer> orbitOf(FleetFile& fleet, const Machine& machine, const OrbitRequest& request);

// Ranges of all four elements' lines up to topHz: the likely part within the usual slip, the farthest within
// the reach of a different inner build, both widened by how unsure the speed is (share of it).
std::vector<DefectBand> defectRanges(const BearingVariant& variant, double bearingShaftHz, double speedShare,
                                     double topHz);
std::vector<NamedSpacing> spacingsOf(const Machine& machine, double shaftHz, double mainsHz);

}  // namespace fettle
