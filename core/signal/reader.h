// Why: the one door through which recordings come in. A format is one row of the registry: name, extensions,
// a check of the first bytes, a read function. Errors name file, place and rule; nothing is allocated on the
// say-so of a header.
#pragma once

#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/signal/recording.h"

namespace fettle {

struct ReaderRow {
    std::string name;                     // "WAV"
    std::vector<std::string> extensions;  // lower case, without the dot
    bool (*recognises)(const std::string& firstBytes);
    // The channels as the file alone tells them; the sidecar is applied by readRecording.
    Result<Recording> (*read)(const std::string& bytes, const std::string& file);
};

const std::vector<ReaderRow>& readerRegistry();

// Reads a recording and its sidecar (same path, extension .json; absent is fine: said in a warning).
Result<RecordingPtr> readRecording(const FileSystem& files, const std::string& path);

// The same with what it was read from, for those who keep it or tell recordings apart by it.
struct ReadFile {
    RecordingPtr recording;
    std::string bytes, sidecar, format;  // sidecar: JSON text as found, empty: none; format: "WAV"
};
Result<ReadFile> readWithSource(const FileSystem& files, const std::string& path);

// Applies sidecar text to a recording as its file alone gave it.
Status applySidecar(Recording& recording, const std::string& sidecarText, const std::string& sidecarFile);

}  // namespace fettle
