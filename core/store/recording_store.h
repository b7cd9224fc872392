// Why: recordings as they came, and what was weighed on them. One recording (file) is stored in one
// transaction with its waveforms, trend rows, spectra and examination, or not at all. Deduplicated by the
// bytes of the file, point, channels and start time (two recordings of a stopped machine can be alike but not
// at one moment at one point). Units: UTC milliseconds; samples exactly as read. Errors: NotFound, Damaged
// "waveform of recording 17", Unwritable (full disk).
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/time.h"
#include "core/signal/recording.h"
#include "core/store/trend_store.h"

namespace fettle {

class Database;
struct PackedRecording;  // packed_recording.h

inline constexpr const char* kLevelsFormat = "LEVELS";  // of a recording that is ready-made levels

using RecordingKey = std::array<std::uint8_t, 16>;  // XXH3 128 of all that makes a recording this one
RecordingKey recordingKey(const std::string& fileBytes, const Recording& recording);

// What is put in: the recording and everything that was computed from it.
struct NewRecording {
    std::int64_t machine = 0;
    RecordingKey key{};
    RecordingPtr recording;  // with machine, point, time set
    std::string format;      // "WAV"
    std::string sidecar;     // JSON text as found; empty: none
    std::string running;     // of the examination
    std::optional<double> speedRpm, speedPlusMinusRpm;
    std::string engine;
    std::string examinationJson;  // one recording's examination (core/exchange)
    struct Weight {
        std::string fault, at;
        double weightDban = 0;
    };
    std::vector<Weight> weights;   // every weighed hypothesis
    std::vector<TrendRow> trends;  // one an acceleration channel (others: only what applies)
    std::vector<StoredSpectrum> spectra;
    std::vector<StoredMeasure> measures;
    bool late = false;        // belongs to a week whose round is already closed
    bool levelsOnly = false;  // ready-made levels: channels without samples, nothing weighed
};

enum class PutRecording { Stored, AlreadyThere };

struct RecordingEntry {
    std::int64_t id = 0, machine = 0;
    Instant time{};
    std::string file, format, point, capture, running, engine;
    double sampleRateHz = 0, seconds = 0;
    std::optional<double> speedRpm, frameTempC, ambientTempC, loadPct, outputHz;
    std::vector<std::string> channels;
    bool hasWaveform = true, late = false;
    bool levelsOnly = false;           // ready-made levels of a table: there never was a waveform
    std::optional<Instant> thinnedAt;  // when retention took the waveform; empty: it did not
    Instant importedAt{};
};

struct RecordingHead {
    Instant time{};
    std::string point;
    bool late = false, levelsOnly = false;
};

struct WeightEntry {
    std::int64_t recording = 0;
    Instant time{};
    std::string fault, at;
    double weightDban = 0;
};

// Since when, and in how many recordings, a hypothesis has weighed so much.
struct WeightReached {
    std::string fault, at;
    Instant first{}, last{};
    std::size_t recordings = 0;
};

class RecordingStore {
  public:
    explicit RecordingStore(Database& database) : database_(database) {}

    Result<bool> knows(const RecordingKey& key);
    Result<PutRecording> put(const NewRecording& recording);  // one transaction
    // Several in one transaction, for bulk import; outcomes in order. All or none of them are there after a
    // kill; `put` of one and the same key twice in one call stores it once.
    Result<std::vector<PutRecording>> putAll(const std::vector<NewRecording>& recordings);
    Result<std::vector<PutRecording>> putPacked(std::span<const PackedRecording> recordings);

    Result<RecordingEntry> entry(std::int64_t id);
    // Of a machine within [from, until], oldest first.
    Result<std::vector<RecordingEntry>> list(std::int64_t machine, Instant from, Instant until);
    // The same, no more than what a round counts: one statement, whatever the number of recordings.
    Result<std::vector<RecordingHead>> heads(std::int64_t machine, Instant from, Instant until);
    Result<std::optional<Instant>> newest();  // of the whole fleet
    Result<std::optional<Instant>> newest(std::int64_t machine);
    Result<std::optional<Instant>> first(std::int64_t machine);  // the oldest
    Result<std::size_t> count();

    // Samples bit for bit as they were read, with all facts of the sidecar.
    Result<RecordingPtr> recording(std::int64_t id);
    Result<std::string> sidecar(std::int64_t id);
    Result<std::string> examinationJson(std::int64_t recording);
    // Examinations of a machine's recordings within [from, until], oldest first.
    struct Weighed {
        std::int64_t recording = 0;
        Instant time{};
        std::string running, json;
    };
    Result<std::vector<Weighed>> examinations(std::int64_t machine, Instant from, Instant until);
    // Oldest first; an empty fault: of all.
    Result<std::vector<WeightEntry>> weights(std::int64_t machine, Instant from, Instant until,
                                             const std::string& fault = "");
    Result<std::vector<WeightReached>> weightsReached(std::int64_t machine, double leastDban, Instant until);
    // Replaces what was computed from a recording (re-examination), in one transaction.
    Status replaceExamination(std::int64_t recording, const PackedRecording& again);

  private:
    Database& database_;
};

}  // namespace fettle
