// Why: the whole journey of one machine's recordings: prepare, weigh, explain away, mean over recordings,
// grade, word. Thread: recordings are prepared and weighed on up to `threads` threads; the result does not
// depend on how many.
#pragma once

#include <optional>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/diagnosis/examination.h"
#include "core/diagnosis/explain_away.h"
#include "core/diagnosis/prepare.h"
#include "core/diagnosis/waterfall_lines.h"

namespace fettle {

struct ExamineOptions {
    bool ignoreSpeed = false;
    int threads = 1;
    WeighingSettings settings = {};
    Progress progress = {};
    CancelToken cancel = {};
};

// Fails only when cancelled, when there is no recording, or when the program's own tables cannot be read.
Result<Examination> examine(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                            const ExamineOptions& options = {});

// What a channel is followed by besides its levels.
inline constexpr double kHighBandHz = 1000;
struct ChannelExtras {
    double offset = 0;                       // mean of the samples, in the channel's unit
    std::optional<double> peakG, highBandG;  // about the mean; r.m.s. above kHighBandHz; acceleration only
};

// One recording with all that the fleet file keeps of it, out of one set of transforms.
struct ExaminedRecording {
    Examination examination;                 // of this recording alone
    std::vector<WaterfallLines> waterfalls;  // of the acceleration channels that can be weighed
    std::vector<ChannelExtras> extras;       // one a channel of the recording
};
Result<ExaminedRecording> examineRecording(const Machine& machine, const RecordingPtr& recording,
                                           const ExamineOptions& options = {});

}  // namespace fettle
