// Why: a benchmark has nobody to ask: what it cannot do ends it with a word. Thread: any.
#pragma once

#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>

#include "core/base/result.h"

namespace fettle::bench {

template <class Value>
Value orEnd(Result<Value> result) {
    if (result) {
        if constexpr (std::is_void_v<Value>)
            return;
        else
            return std::move(*result);
    }
    fmt::print(stderr, "benchmark: {}\n", result.error().sentence());
    std::exit(3);
}

}  // namespace fettle::bench
