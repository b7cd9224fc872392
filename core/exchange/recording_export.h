// Why: raw recordings come out as they went in. What was whole numbers (WAV, FLAC) becomes WAV with the same
// whole numbers; 32-bit float WAV becomes float WAV with the same numbers; all else (CSV, double WAV, rates
// that are no whole Hz) becomes CSV with as many digits as give the same number back. The sidecar is the one
// that came with the recording, where it names machine and time; else one made from what is known. What is
// written is read back and compared before it is handed out. On demand as WAV or not at all, or as a
// universal file: 58b with the samples bit for bit, 58 to the 13 digits it prints; these hold scaled values,
// so that the sidecar is made anew. Thread: pure. Errors: Damaged where it would not come back the same,
// Unsupported where WAV cannot hold it.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

enum class ExportForm { AsItCame, Wav, Uff, Uff58b };

struct ExportedRecording {
    std::string extension;  // ".wav" | ".csv" | ".uff"
    std::string bytes;
    std::string sidecar;  // JSON text
};

// `sidecar` as it came, empty where there was none; `name` for errors.
Result<ExportedRecording> exportRecording(const Recording& recording, const std::string& sidecar,
                                          const std::string& name, ExportForm form = ExportForm::AsItCame);

}  // namespace fettle
