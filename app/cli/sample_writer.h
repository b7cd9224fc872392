// Why: the sample fleet as a folder: machines/TAG.json, recordings/TAG/NAME.flac (or .wav) each with its
// sidecar, events.json, and truth.json last, so that a folder that has it is whole. Recordings are made on
// several threads; what is written does not depend on how many. A file that has its own name is complete, and
// a sidecar is there before its recording. Errors: the simulator's, and what cannot be written.
#pragma once

#include <algorithm>
#include <string>
#include <thread>

#include "core/base/file_system.h"
#include "core/simulate/sample_plan.h"

namespace fettle {

struct SampleOrder {
    std::string folder;
    sim::SampleOptions options;
    int threads = int(std::max(1u, std::thread::hardware_concurrency()));
};

// How many recordings were written. `files` is used by several threads.
Result<std::size_t> writeSample(FileSystem& files, const sim::Scenario& scenario, const SampleOrder& order);

}  // namespace fettle
