// Why: the whole journey of one machine's recordings: prepare, weigh, explain away, mean over recordings,
// grade, word. Thread: recordings are prepared and weighed on up to `threads` threads; the result does not
// depend on how many.
#pragma once

#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/diagnosis/examination.h"
#include "core/diagnosis/explain_away.h"
#include "core/diagnosis/prepare.h"

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

}  // namespace fettle
