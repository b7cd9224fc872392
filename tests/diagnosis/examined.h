// Why: most tests want the examination itself; that it was made is asked here once. Thread: pure functions.
#pragma once

#include <gtest/gtest.h>

#include "core/diagnosis/examine.h"

namespace fettle::made {

inline Examination examinedTogether(const Machine& machine, const std::vector<RecordingPtr>& recordings) {
    const auto result = examine(machine, recordings);
    EXPECT_TRUE(result);
    return result ? *result : Examination{};
}

inline Examination examined(const Machine& machine, const RecordingPtr& recording) {
    return examinedTogether(machine, {recording});
}

}  // namespace fettle::made
