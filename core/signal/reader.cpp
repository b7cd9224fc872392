#include "core/signal/reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/signal/capture_facts.h"
#include "core/signal/csv_reader.h"
#include "core/signal/recording_limits.h"
#include "core/signal/sidecar.h"
#include "core/signal/sound_file.h"
#include "core/signal/uff_reader.h"
#include "core/signal/uff_text.h"
#include "core/signal/variable_file.h"

namespace fettle {

namespace {
constexpr std::size_t kFirstBytes = 1024;

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

bool looksLikeUff(const std::string& first) {
    return first.size() > 6 && UffLines(first).ended() && UffLines(first).isMark();
}

bool looksLikeMat(const std::string& first) {
    return startsWith(first, "MATLAB 5.0 MAT-file") || startsWith(first, "MATLAB 7.3 MAT-file");
}

// At the front or behind a head of 512 bytes that is the user's own.
bool looksLikeHdf5(const std::string& first) {
    constexpr std::string_view sign = "\x89HDF\r\n\x1a\n";
    return startsWith(first, sign) ||
           (first.size() >= 520 && startsWith(std::string_view(first).substr(512), sign));
}

// Common files that are no recordings, so that the refusal can name them.
const char* foreignKind(const std::string& first) {
    static constexpr std::pair<std::string_view, const char*> kinds[] = {
        {"%PDF", "a PDF document"},     {"PK\x03\x04", "a ZIP archive or spreadsheet"},
        {"\x1f\x8b", "a gzip archive"}, {"OggS", "an Ogg sound file"},
        {"FORM", "an AIFF sound file"}, {"ID3", "an MP3 sound file"},
        {"riff", "a W64 sound file"},   {"SQLite format 3", "an SQLite database"},
        {"{", "a JSON document"},
    };
    for (const auto& [start, kind] : kinds)
        if (startsWith(first, start)) return kind;
    return nullptr;
}

std::string kinds() {
    std::vector<std::string> names;
    for (const ReaderRow& row : readerRegistry())
        names.push_back(row.name);
    return joined(names, ", ");
}

Error unknownKind(const std::string& first, const std::string& path) {
    const char* kind = foreignKind(first);
    const std::string word = kind ? fmt::format("; it looks like {}", kind) : "";
    return Error{ErrorKind::Unsupported, path, "byte 0",
                 "not a recording of a known kind (" + kinds() + ")" + word};
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

Result<Recording> readByKind(const std::string& path, const ReadingHints& hints, ReadFile& out) {
    if (out.bytes.empty()) return fail(ErrorKind::Damaged, path, "byte 0", "the file is empty");
    const std::string first = out.bytes.substr(0, kFirstBytes);
    const ReaderRow* row = rowFor(first, path);
    if (!row) return fail(unknownKind(first, path));
    out.format = row->name;
    out.ofVariables = row->readAs != nullptr;
    auto recording = row->readAs ? row->readAs(out.bytes, path, hints) : row->read(out.bytes, path);
    if (!recording && !row->recognises(first))
        recording.error().rule += fmt::format(" (taken for {} by its name)", row->name);
    return recording;
}

// Empty where there is none.
Result<std::string> sidecarText(const FileSystem& files, const std::string& recordingPath) {
    const std::string path = sidecarPath(recordingPath);
    return files.exists(path) ? files.read(path, kMostSidecarBytes) : Result<std::string>(std::string());
}

Status addSidecar(const FileSystem& files, Recording& recording, const std::string& text) {
    const std::string path = sidecarPath(recording.file);
    if (!text.empty() || files.exists(path)) return applySidecar(recording, text, path);
    recording.warnings.push_back(
        fmt::format("{}: no such sidecar: units, machine and time are as the recording alone "
                    "tells them",
                    oneLine(path)));
    givePoints(recording);
    return {};
}

// What the sidecar says comes first.
ReadingHints joinedHints(const std::string& sidecar, const ReadingHints& more) {
    const auto json = parseJson(sidecar.empty() ? "{}" : sidecar, "");
    ReadingHints hints = json ? hintsIn(*json) : ReadingHints{};
    if (hints.samples.empty()) hints.samples = more.samples;
    if (!hints.sampleRateHz) hints.sampleRateHz = more.sampleRateHz;
    return hints;
}
}  // namespace

const std::vector<ReaderRow>& readerRegistry() {
    static const std::vector<ReaderRow> rows = {
        {"WAV", {"wav", "wave"}, looksLikeWav, readWav},
        {"FLAC", {"flac"}, looksLikeFlac, readFlac},
        {"CSV", {"csv", "tsv", "txt"}, looksLikeCsv, readCsv},
        {"UFF", {"uff", "unv"}, looksLikeUff, readUff},
        {"MAT", {"mat"}, looksLikeMat, readMat, readMatAs},
        {"HDF5", {"h5", "hdf5", "hdf"}, looksLikeHdf5, readHdf5, readHdf5As},
    };
    return rows;
}

ReadingHints hintsIn(const Json& keys) {
    ReadingHints hints;
    if (!keys.is_object()) return hints;
    if (keys.contains("samples")) {
        const Json& names = keys["samples"];
        if (names.is_string()) hints.samples.push_back(names.get<std::string>());
        if (names.is_array())
            for (const Json& name : names)
                if (name.is_string()) hints.samples.push_back(name.get<std::string>());
    }
    if (keys.contains("sample_rate_hz") && keys["sample_rate_hz"].is_number())
        hints.sampleRateHz = keys["sample_rate_hz"].get<double>();
    return hints;
}

Result<ReadFile> readWithSource(const FileSystem& files, const std::string& path, const ReadingHints& more) {
    auto bytes = files.read(path, kMostRecordingBytes);
    if (!bytes) return fail(bytes.error());
    auto sidecar = sidecarText(files, path);
    ReadFile out;
    out.bytes = std::move(*bytes);
    auto recording = readByKind(path, joinedHints(sidecar.value_or(""), more), out);
    if (!recording) return fail(recording.error());
    if (!sidecar) return fail(sidecar.error());
    if (auto added = addSidecar(files, *recording, *sidecar); !added) return fail(added.error());
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
