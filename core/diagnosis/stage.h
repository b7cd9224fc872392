// Why: a spalled race often sits in zone A, so a bearing finding is graded by stage, not by zone: early
// (lines in the envelope only), developed (harmonics with sidebands), late (lines in the velocity spectrum
// below 1 kHz as well). A stage says how bad, never whether: it is asked for findings only.
#pragma once

#include "core/diagnosis/examination.h"
#include "core/diagnosis/view.h"

namespace fettle {

// Common practice, no source: how many lines make a stage.
inline constexpr int kLateLines = 2, kDevelopedCarriers = 4, kDevelopedSidebands = 2;

Severity bearingStage(const Weighing& found, const ChannelViews& views);

}  // namespace fettle
