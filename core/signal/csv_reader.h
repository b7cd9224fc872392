// Why: recordings as text, the form every logger and spreadsheet can write.
// Form: `# key: value` lines (csv_head.h), a header of channel names with units in brackets, then numbers.
// Fields are parted by comma, semicolon or tab; the decimal mark is point or comma; which was taken is said
// in a warning. The rate is
// `# sample_rate_hz` or comes from a column `t` or `time` in [s] or [ms] (csv_time.h), and then is said as
// well. Quotes, a UTF-8 byte-order mark and CR LF are accepted. Every line must end with a line end, as a cut
// file could not be told from a whole one; `# samples: N` is held against the lines found. Errors: Damaged
// and Invalid with the place "line L, column C", counted from 1 in lines and fields ("byte N" for what is no
// text); text in a number column, NaN, infinity and missing columns among them. Locale-free.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

Result<Recording> readCsv(const std::string& bytes, const std::string& file);

}  // namespace fettle
