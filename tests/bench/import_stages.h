// Why: what an import costs beside examining is to be worked on where it lies: the same recordings are taken
// through its stages one by one, on one thread. Units: milliseconds of the processor a recording, so that
// waiting for the disk and for neighbours does not count. Thread: one.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/machine/machine.h"
#include "core/store/fleet_file.h"

namespace fettle::bench {

struct ImportStages {
    std::size_t recordings = 0;
    double readMs = 0, examineMs = 0;  // what examining alone costs as well
    double formMs = 0;                 // rows and the examination's text
    double packMs = 0;                 // waveforms, spectra, text
    double writeMs = 0;                // bound and committed, a batch at a time
};

// Of those files that can be read and are of one of the machines; stored into `fleet`.
Result<ImportStages> importStages(FleetFile& fleet, const std::vector<std::string>& paths,
                                  const std::map<std::string, std::shared_ptr<const Machine>>& machines);
std::string tableOf(const ImportStages& stages);

}  // namespace fettle::bench
