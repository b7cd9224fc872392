// Why: WAV and FLAC in and out of memory; the only user of libsndfile. The library never sees a user's
// header: it is handed a plain one made from what riff_walk and flac_walk have checked, followed by the
// file's own samples. Units: integer files give numbers from -1 to below 1 (full scale 1), float files the
// numbers as stored (full scale 0). Errors: the walks' own; Damaged "ends after n of m frames"; Invalid
// "channel 2, sample 17" for NaN and infinity, both counted from 1. Thread: any; nothing is shared.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

Result<Recording> readWav(const std::string& bytes, const std::string& file);
Result<Recording> readFlac(const std::string& bytes, const std::string& file);

enum class SoundFormat { WavPcm16, WavPcm24, WavFloat32, Flac16, Flac24 };

// The bytes of a sound file. `channels` are of one length and at least one. For the integer formats samples
// are within -1 to 1 and are rounded to the nearest number the format holds; 1 itself becomes the largest
// one. The rate is whole Hz. The same input gives the same bytes with the same library; no time or program
// stamp is written into WAV files. `file` is only named in errors: Invalid "channel 1, sample 3", Unsupported
// for what the format cannot hold.
Result<std::string> writeSoundFile(const std::vector<std::vector<double>>& channels, double sampleRateHz,
                                   SoundFormat format, const std::string& file = "");
// The same of one channel whose numbers are whole already: of `bits` (16 or 24) in two's complement, at least
// one. The bytes are those that writeSoundFile makes of number / 2^(bits - 1).
Result<std::string> writeFlacNumbers(std::span<const std::int32_t> numbers, int bits, int sampleRateHz);

}  // namespace fettle
