// Why: a bearing with two damaged elements, or one whose faulty element is heard on the lines of another, is
// first of all a damaged bearing. Where two elements of one bearing are both found, each finding says so, and
// whether they agree on the cage shift: outer race, inner race and cage of one bearing move together, so
// that agreement is evidence in itself and its lack speaks against one of them. Source: kinematics of the
// cage ratio, family.h; which element failed first cannot be told from lines (common practice, no source).
// Thread: pure.
#pragma once

#include <vector>

#include "core/diagnosis/examination.h"

namespace fettle {

// Adds to `sentence` and `against` of the findings (those with a sentence) that share a bearing; others are
// let be.
void wordMixedDamage(std::vector<Hypothesis>& hypotheses);

}  // namespace fettle
