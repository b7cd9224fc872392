// Why: one recording touches ten tables; this is how they are filled and emptied again, inside a
// transaction of the caller. Rows clustered by channel and time are put in sorted by them, so that a batch
// fills pages instead of jumping between them. What is put in is packed already (packed_recording.h) and must
// stay until `flush`. Errors: Invalid for what contradicts itself; nothing of it stays.
#pragma once

#include "core/store/database.h"
#include "core/store/packed_recording.h"
#include "core/store/spectrum_spans.h"

namespace fettle {

class RecordingWriter {
  public:
    explicit RecordingWriter(Database& database) : database_(database), spans_(database) {}

    // False where the key is there already, or the same samples of its channels and moment from another file.
    Result<bool> put(const PackedRecording& packed);
    // What was computed from a recording: taken out, and put in anew.
    Status replace(std::int64_t id, const PackedRecording& again);
    // Trend rows, spectra with their spans, and measures of all that was put so far. Call once, at the end.
    Status flush();

  private:
    struct Facts {
        std::int64_t id = 0, machine = 0;
        Instant time{};
        bool spectraThinned = false;  // spans hold them still
    };
    struct Named {  // a channel of a recording
        std::string point, name, unit;
        std::int64_t id = 0;
    };
    using Channels = std::vector<Named>;
    struct TrendJob {
        std::int64_t channel;
        Facts facts;
        const TrendRow* row;
    };
    struct SpectrumJob {
        std::int64_t channel;
        Facts facts;
        int kind;
        double topHz;
        std::string_view lines;
    };

    struct MeasureJob {
        std::int64_t channel, measure;
        Facts facts;
        double value;
    };

    Result<bool> isKnown(const PackedRecording& packed);
    Result<Facts> insertRecording(const PackedRecording& packed);
    Result<std::int64_t> channelId(std::int64_t machine, const Named& named, const TrendRow* row);
    Status nameChannels(std::int64_t machine, Channels& channels, const std::vector<TrendRow>& trends);
    Status insertChannels(const Facts& facts, const Channels& channels, const PackedRecording& packed);
    Result<std::int64_t> idOf(const Channels& channels, const std::string& point, const std::string& name);
    Status insertComputed(const Facts& facts, const Channels& channels, const PackedRecording& packed);
    Status insertWeights(const Facts& facts, const std::vector<NewRecording::Weight>& weights);
    Result<std::int64_t> measureId(const StoredMeasure& measure);
    Result<Facts> factsOf(std::int64_t id);
    Result<Channels> channelsOf(std::int64_t id);
    Status removeComputed(const Facts& facts, const Channels& channels);
    Status removeSpectra(const Facts& facts, std::int64_t channel);
    Status insertTrends();
    Status insertSpectra();
    Status insertMeasures();

    Database& database_;
    SpectrumSpans spans_;
    std::vector<TrendJob> trends_;
    std::vector<SpectrumJob> spectra_;
    std::vector<MeasureJob> measures_;
};

}  // namespace fettle
