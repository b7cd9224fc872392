// Why: most of what it takes to store a recording needs no database: waveforms, spectra and examination are
// packed by whoever examined it, so that the one writer only binds and commits. Units: as NewRecording.
// Errors: Invalid for what contradicts itself. Memory: the samples are let go; what waits for the writer is
// as small as it will be in the file. Thread: any; nothing is shared.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/store/recording_store.h"

namespace fettle {

struct PackedChannel {
    std::string data;
    std::uint64_t digest = 0;
};

struct PackedRecording {
    NewRecording row;                      // without samples, lines of spectra and text of the examination
    std::size_t samples = 0;               // of each channel
    std::vector<PackedChannel> waveforms;  // one a channel; none of levels alone and of a re-examination
    std::vector<std::string> spectra;      // quantised; beside row.spectra
    std::string examination;               // packed; empty of levels alone
};

// `file`, the fleet file, is only named in errors: Invalid for what may not be put in.
Result<PackedRecording> packRecording(NewRecording recording, const std::string& file);
// What was computed from a recording, to replace what was there; its recording may be missing.
PackedRecording packComputed(NewRecording again);

// Roughly what it holds in memory.
std::size_t bytesOf(const PackedRecording& packed);

}  // namespace fettle
