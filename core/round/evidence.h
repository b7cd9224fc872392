// Why: what one machine's week weighs: one e-value a bearing (the mean over the families looked for there),
// one a machine (the mean over bearings). Means of e-values are e-values whatever their dependence (Vovk and
// Wang, Ann. Statist. 49 (2021), section 3), so nothing is gained by asking for more. Thread: pure.
#pragma once

#include <optional>
#include <vector>

#include "core/diagnosis/examination.h"

namespace fettle {

// Every hypothesis once: as worded where it is a finding, else as considered.
std::vector<Hypothesis> hypothesesOf(const Examination& week);
// Empty where nothing was weighed.
std::optional<double> machineDban(const std::vector<Hypothesis>& hypotheses);

}  // namespace fettle
