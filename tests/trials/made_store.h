// Why: trials that ask what a fleet file says of made recordings put them in as import would, but keep
// neither samples nor spectra: no verdict and no alert reads those. Thread: pure. Errors: end the program
// with a word.
#pragma once

#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>
#include <utility>

#include "core/base/result.h"
#include "core/machine/machine.h"
#include "core/signal/recording.h"
#include "core/store/recording_store.h"

namespace fettle::trials {

template <class T>
T wanted(Result<T> result) {
    if (result) return std::move(*result);
    fmt::print(stderr, "{}\n", result.error().sentence());
    std::exit(3);
}
inline void wantedDone(const Status& status) {
    if (status) return;
    fmt::print(stderr, "{}\n", status.error().sentence());
    std::exit(3);
}

// Examined on its own; `machine` as in the fleet file.
NewRecording storedRow(const Machine& described, std::int64_t machine, const RecordingPtr& recording);

}  // namespace fettle::trials
