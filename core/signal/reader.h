// Why: the one door through which recordings come in. A format is one row of the registry: name, extensions,
// a check of the first bytes, a read function. A file of named variables (MAT, HDF5) may hold more than its
// samples: which they are, and at what rate where it does not say, the sidecar or a rule tells, and is handed
// to such a reader as hints. Errors name file, place and rule; nothing is allocated on the say-so of a
// header.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/base/json_object.h"
#include "core/signal/recording.h"

namespace fettle {

// What a person says of a file of named variables.
struct ReadingHints {
    std::vector<std::string> samples;  // names, * stands for any letters; empty: what fits alone
    std::optional<double> sampleRateHz;

    bool empty() const { return samples.empty() && !sampleRateHz; }
};
// Of a sidecar's or rule's keys `samples` and `sample_rate_hz`; what is not of their kind is left out here
// and refused where the sidecar is applied.
ReadingHints hintsIn(const Json& keys);

struct ReaderRow {
    std::string name;                     // "WAV"
    std::vector<std::string> extensions;  // lower case, without the dot
    bool (*recognises)(const std::string& firstBytes);
    // The channels as the file alone tells them; the sidecar is applied by readRecording.
    Result<Recording> (*read)(const std::string& bytes, const std::string& file);
    // Of a file of named variables; else null.
    Result<Recording> (*readAs)(const std::string& bytes, const std::string& file,
                                const ReadingHints& hints) = nullptr;
};

const std::vector<ReaderRow>& readerRegistry();

// Reads a recording and its sidecar (same path, extension .json; absent is fine: said in a warning).
Result<RecordingPtr> readRecording(const FileSystem& files, const std::string& path);

// The same with what it was read from, for those who keep it or tell recordings apart by it.
struct ReadFile {
    RecordingPtr recording;
    std::string bytes, sidecar, format;  // sidecar: JSON text as found, empty: none; format: "WAV"
    bool ofVariables = false;            // read with hints
};
// `more` is what rules say; it holds where the sidecar says nothing.
Result<ReadFile> readWithSource(const FileSystem& files, const std::string& path,
                                const ReadingHints& more = {});

// Applies sidecar text to a recording as its file alone gave it.
Status applySidecar(Recording& recording, const std::string& sidecarText, const std::string& sidecarFile);

}  // namespace fettle
