#include "core/signal/reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/signal/capture_facts.h"
#include "core/signal/csv_reader.h"
#include "core/signal/recording_limits.h"
#include "core/signal/sidecar.h"
#include "core/signal/sound_file.h"

namespace fettle {

namespace {
constexpr std::size_t kFirstBytes = 512;

bool startsWith(std::string_view bytes, std::string_view start) {
    return bytes.substr(0, start.size()) == start;
}

bool looksLikeWav(const std::string& first) {
    if (startsWith(first, "RF64") || startsWith(first, "RIFX")) return true;
    return startsWith(first, "RIFF") && first.size() >= 12 && first.compare(8, 4, "WAVE") == 0;
}

bool looksLikeFlac(const std::string& first) {
    return startsWith(first, "fLaC");
}

// Only a `#` line at the front is a sign; a bare header could be any text and is told by its extension.
bool looksLikeCsv(const std::string& first) {
    return startsWith(first, "#") || startsWith(first, "\xef\xbb\xbf#");
}

// Common files that are no recordings, so that the refusal can name them.
const char* foreignKind(const std::string& first) {
    static constexpr std::pair<std::string_view, const char*> kinds[] = {
        {"%PDF", "a PDF document"},     {"PK\x03\x04", "a ZIP archive or spreadsheet"},
        {"\x1f\x8b", "a gzip archive"}, {"MATLAB", "a MATLAB file"},
        {"\x89HDF", "an HDF5 file"},    {"OggS", "an Ogg sound file"},
        {"FORM", "an AIFF sound file"}, {"ID3", "an MP3 sound file"},
        {"riff", "a W64 sound file"},   {"SQLite format 3", "an SQLite database"},
        {"{", "a JSON document"},       {"    -1", "a universal file"},
    };
    for (const auto& [start, kind] : kinds)
        if (startsWith(first, start)) return kind;
    return nullptr;
}

Error unknownKind(const std::string& first, const std::string& path) {
    const char* kind = foreignKind(first);
    const std::string word = kind ? fmt::format("; it looks like {}", kind) : "";
    return Error{ErrorKind::Unsupported, path, "byte 0", "not a WAV, FLAC or CSV recording" + word};
}

// By the first bytes, then by the extension; null where neither tells.
const ReaderRow* rowFor(const std::string& first, const std::string& path) {
    const std::vector<ReaderRow>& rows = readerRegistry();
    for (const ReaderRow& row : rows)
        if (row.recognises(first)) return &row;
    const std::string extension = extensionOf(path);
    for (const ReaderRow& row : rows)
        if (std::count(row.extensions.begin(), row.extensions.end(), extension)) return &row;
    return nullptr;
}

Result<Recording> readByKind(const std::string& bytes, const std::string& path, std::string& format) {
    if (bytes.empty()) return fail(ErrorKind::Damaged, path, "byte 0", "the file is empty");
    const std::string first = bytes.substr(0, kFirstBytes);
    const ReaderRow* row = rowFor(first, path);
    if (!row) return fail(unknownKind(first, path));
    format = row->name;
    auto recording = row->read(bytes, path);
    if (!recording && !row->recognises(first))
        recording.error().rule += fmt::format(" (taken for {} by its name)", row->name);
    return recording;
}

// The sidecar's text; empty where there is none.
Result<std::string> addSidecar(const FileSystem& files, Recording& recording) {
    const std::string path = sidecarPath(recording.file);
    if (!files.exists(path)) {
        recording.warnings.push_back(
            fmt::format("{}: no such sidecar: units, machine and time are as the recording alone "
                        "tells them",
                        oneLine(path)));
        givePoints(recording);
        return std::string();
    }
    auto text = files.read(path, kMostSidecarBytes);
    if (!text) return text;
    if (auto applied = applySidecar(recording, *text, path); !applied) return fail(applied.error());
    return text;
}
}  // namespace

const std::vector<ReaderRow>& readerRegistry() {
    static const std::vector<ReaderRow> rows = {
        {"WAV", {"wav", "wave"}, looksLikeWav, readWav},
        {"FLAC", {"flac"}, looksLikeFlac, readFlac},
        {"CSV", {"csv", "tsv", "txt"}, looksLikeCsv, readCsv},
    };
    return rows;
}

Result<ReadFile> readWithSource(const FileSystem& files, const std::string& path) {
    auto bytes = files.read(path, kMostRecordingBytes);
    if (!bytes) return fail(bytes.error());
    ReadFile out;
    out.bytes = std::move(*bytes);
    auto recording = readByKind(out.bytes, path, out.format);
    if (!recording) return fail(recording.error());
    auto sidecar = addSidecar(files, *recording);
    if (!sidecar) return fail(sidecar.error());
    out.sidecar = std::move(*sidecar);
    out.recording = std::make_shared<const Recording>(std::move(*recording));
    return out;
}

Result<RecordingPtr> readRecording(const FileSystem& files, const std::string& path) {
    auto read = readWithSource(files, path);
    if (!read) return fail(read.error());
    return std::move(read->recording);
}

}  // namespace fettle
