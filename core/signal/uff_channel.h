// Why: what a channel of a universal file is called, where it sits and what its unit is follows from numbers
// and free labels; the choices are made here, in one place, and told (uff_reader.h says which). Units: labels
// in the trade's spelling become ours (g, m/s2, mm/s); others stay as they are. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/signal/recording.h"
#include "core/signal/uff_function.h"

namespace fettle {

// Names, units and hints at points, without rate and samples. `si`: data set 164 states units code 1.
std::vector<Channel> uffChannels(const std::vector<const UffFunction*>& functions, bool si,
                                 std::vector<std::string>& warnings, const std::string& file);

}  // namespace fettle
