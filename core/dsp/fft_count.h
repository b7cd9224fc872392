// Why: what paints must not transform; a test that watches this number sees it where it does. Thread: any.
#pragma once

#include <cstdint>

namespace fettle {

std::uint64_t transformsRun();  // by this program so far

}  // namespace fettle
