// Why: universal files (data sets 58 and 58b) are how measuring programs hand time records to each other.
// Each time record is a channel; those of one file are one capture and must share their time base. Other data
// sets and other functions (spectra, frequency responses) are passed over with a word; complex time records
// are refused, unevenly spaced ones where a step is off by more than 1 %. What the file says and how it is
// taken: the label of the units, else SI where data set 164 states it, else no unit; directions X Y Z of one
// node name the channels x, y, z; the name of the response entity, or the node's number, stands for a
// measuring point where the machine has one of that name and nobody names another; the date has no zone and
// counts only where a sidecar or rule says `"file_time": "utc"`. The increment has six digits or so: the
// rate is the whole number of Hz within them that shares most with powers of two and ten, and it is said.
// A file cut between two data sets cannot be told from a whole one. Errors: as uff_function.h and
// uff_values.h; Unsupported for a file without a time record; Invalid naming the data sets that differ.
// Source: as uff_function.h; data set 164, units, from memory.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

Result<Recording> readUff(const std::string& bytes, const std::string& file);

// The rate in Hz of an increment in seconds as printed (see above).
double uffRateOf(double step, const std::string& asPrinted);

}  // namespace fettle
