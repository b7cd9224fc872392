// Why: a MAT or HDF5 file holds named variables, and nothing in the format says which are samples and what
// the rate is. The rules stand here, apart from any library, and what was assumed is a warning. Samples: real
// numbers in a vector, or a matrix of one long dimension (16 times the other, channels along the short one),
// of 32 or more. Named ones (sidecar or rule, else a text `samples` of the file) are taken in their order; *
// stands for any letters. Without a name the only one that fits is taken; of several none. A vector `t` or
// `time` is time, not samples. Rate: a number named fs, sample_rate and its like at the samples or anywhere
// in the file, or dt; else from the vector of time; else what sidecar or rule says. Facts: texts and numbers
// named as the keys of a sidecar. Errors: Invalid "/samples" or "/sample_rate_hz", which only a person can
// answer, with the candidates. Source: names common practice, no source. Thread: pure.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/signal/reader.h"
#include "core/signal/variable_list.h"

namespace fettle {

struct VariableChoice {
    std::vector<std::size_t> samples;  // places in the list
    std::optional<std::size_t> time;   // a vector of time, where nothing else tells the rate
    std::optional<double> sampleRateHz;
    std::vector<std::string> warnings;  // clauses
};

Result<VariableChoice> chooseVariables(const VariableList& list, const ReadingHints& hints,
                                       const std::string& file);

// How many samples a channel and channels a variable that fits has; nothing where it does not.
struct VariableSize {
    std::uint64_t samples = 0, channels = 0;
    bool longFirst = true;  // the long dimension is the first one
};
std::optional<VariableSize> sizeOf(const Variable& variable);

bool matchesName(const std::string& pattern, const std::string& name);  // * for any letters

}  // namespace fettle
