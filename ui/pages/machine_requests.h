// Why: what the machine page asks of the fleet file besides its history (history_requests.h), as functions
// that run on a worker: each reads, turns what it read into the plain data a plot or panel shows, and returns
// it as a value. Nothing here knows a widget. Times UTC. Thread: any, one FleetFile at a time. Errors: those
// of the stores.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/fleet/machine_desk.h"
#include "core/store/fleet_file.h"
#include "ui/panels/evidence_panel.h"
#include "ui/plot/spectrum_plot.h"
#include "ui/plot/trend_plot.h"
#include "ui/plot/waveform_plot.h"

namespace fettle {

struct MachineFacts {
    MachineEntry entry;
    std::shared_ptr<const Machine> machine;
    std::vector<ChannelEntry> channels;
    std::vector<TrendEvent> events;
    std::optional<Instant> first, newest;  // recordings; empty: none
    QTimeZone zone = QTimeZone::utc();     // of the site
};
Result<MachineFacts> machineFacts(FleetFile& fleet, const std::string& tag);

// The seven days to `until` joined; nothing where no running recording was weighed in them.
Result<std::shared_ptr<const PanelContent>> weekContent(FleetFile& fleet, const std::string& tag,
                                                        Instant until);
Result<std::shared_ptr<const PanelContent>> recordingContent(FleetFile& fleet, std::int64_t recording,
                                                             Instant time);

struct RecordingPlots {
    std::int64_t recording = 0;
    std::string channel, view, quantity;
    std::shared_ptr<const SpectrumData> velocity, plain, envelope;  // empty where the channel has none
    std::shared_ptr<const SpectrumData> displacement;               // of the velocity's lines
    bool wholeBand = false;  // the envelope is that of the whole band, as the waterfall keeps it
    std::shared_ptr<const WaveformData> waveform;
    double shaftHz = 0, mainsHz = 0;
};
Result<RecordingPlots> recordingPlots(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                      const std::string& view);

// Marks of a hypothesis' lines, `at` in Hz; and the ordinary lines of shaft and mains.
std::vector<LineMark> marksOf(const Hypothesis& hypothesis);
std::vector<LineMark> ordinaryMarks(double shaftHz, double mainsHz);

}  // namespace fettle
