// Why: between what an examination gives and what the fleet file keeps stands one translation, used when a
// recording is imported and when it is weighed again, so that both leave the same rows. Units in the names of
// either side. Thread: pure.
#pragma once

#include <string>

#include "core/diagnosis/examine.h"
#include "core/store/recording_store.h"

namespace fettle {

// Fills everything that follows from the examination; key, format, sidecar and late are the caller's.
NewRecording storedForm(const RecordingPtr& recording, std::int64_t machine, const Machine& description,
                        const ExaminedRecording& examined);

}  // namespace fettle
