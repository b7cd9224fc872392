#include "core/store/packed_recording.h"

#include <fmt/format.h>

#include <utility>

#include "core/signal/recording_limits.h"
#include "core/store/packing.h"
#include "core/store/spectrum_codec.h"
#include "core/store/waveform_codec.h"

namespace fettle {

namespace {

Status checkRaw(const Recording& recording, bool levelsOnly, const std::string& file) {
    const std::string& name = recording.file;
    if (!recording.time)
        return fail(ErrorKind::Invalid, file, name, "a recording without a time is not kept");
    if (auto good = checkChannelCount(recording.channels.size(), file, name); !good || levelsOnly)
        return good;
    for (const Channel& channel : recording.channels) {
        if (auto good = checkSampleCount(channel.samples.size(), recording.channels.size(), file, name);
            !good)
            return good;
        if (channel.samples.size() != recording.channels[0].samples.size() ||
            channel.sampleRateHz != recording.channels[0].sampleRateHz)
            return fail(ErrorKind::Invalid, file, name,
                        "channels of one file must be of one rate and length");
    }
    return {};
}

Status checkNew(const NewRecording& recording, const std::string& file) {
    if (!recording.recording) return fail(ErrorKind::Invalid, file, "", "a recording without samples");
    if (auto good = checkRaw(*recording.recording, recording.levelsOnly, file); !good) return good;
    for (const StoredSpectrum& spectrum : recording.spectra)
        if (spectrum.lines.size() > kStoredLines)
            return fail(ErrorKind::Invalid, file, recording.recording->file,
                        fmt::format("a spectrum of {} lines, at most {} are kept", spectrum.lines.size(),
                                    kStoredLines));
    return {};
}

std::vector<PackedChannel> packedChannels(const Recording& recording) {
    std::vector<PackedChannel> packed;
    for (const Channel& channel : recording.channels)
        packed.push_back(
            {packWaveform(channel.samples, channel.bits, channel.scale), digestOf(channel.samples)});
    return packed;
}

RecordingPtr withoutSamples(const Recording& r) {
    Recording bare{r.file,         r.machine,    r.point,    r.time,
                   r.fileTime,     r.timeSource, r.received, r.capture,
                   r.simultaneous, r.speedRpm,   r.outputHz, r.frameTempC,
                   r.ambientTempC, r.loadPct,    {},         r.warnings};
    for (const Channel& c : r.channels)
        bare.channels.push_back(
            {c.name, c.point, c.unit, c.sampleRateHz, {}, c.fullScale, c.bits, c.scale, c.pointHint});
    return std::make_shared<const Recording>(std::move(bare));
}

}  // namespace

PackedRecording packComputed(NewRecording again) {
    PackedRecording packed{std::move(again), 0, {}, {}, ""};
    for (StoredSpectrum& spectrum : packed.row.spectra)
        packed.spectra.push_back(quantised(std::exchange(spectrum.lines, {})));
    if (!packed.row.levelsOnly) packed.examination = pack(std::exchange(packed.row.examinationJson, {}));
    return packed;
}

Result<PackedRecording> packRecording(NewRecording recording, const std::string& file) {
    if (auto good = checkNew(recording, file); !good) return fail(good.error());
    const RecordingPtr raw = std::move(recording.recording);
    PackedRecording packed = packComputed(std::move(recording));
    packed.samples = raw->channels[0].samples.size();
    if (!packed.row.levelsOnly) packed.waveforms = packedChannels(*raw);
    packed.row.recording = withoutSamples(*raw);
    return packed;
}

std::size_t bytesOf(const PackedRecording& packed) {
    std::size_t bytes = sizeof packed + packed.examination.size() + packed.row.sidecar.size() +
                        packed.row.trends.size() * sizeof(TrendRow) +
                        packed.row.measures.size() * sizeof(StoredMeasure);
    for (const PackedChannel& channel : packed.waveforms)
        bytes += channel.data.size();
    for (const std::string& lines : packed.spectra)
        bytes += lines.size();
    return bytes;
}

}  // namespace fettle
