// Why: the lines of a CSV recording before its numbers: `# key: value` lines about the capture and the header
// that names the channels. They fix the separator and which column is time. Keys: those of the sidecar
// (capture_facts.h; load_pct without its object), `simultaneous`, `sample_rate_hz`, `samples`. An unknown key
// is a warning; a value of the wrong kind is an error at column 2 of its line.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/signal/csv_text.h"
#include "core/signal/recording.h"

namespace fettle {

struct CsvColumn {
    std::string name;
    std::string unit;
    double secondsPerUnit = 0;  // > 0 for the time column, 0 for channels

    bool isTime() const { return secondsPerUnit > 0; }
};

struct CsvHead {
    Recording facts;  // no channels yet; warnings about the lines read
    std::optional<double> sampleRateHz;
    std::optional<std::uint64_t> samples;  // in each channel
    std::size_t samplesLine = 0;
    char separator = CsvFields::kNone;
    std::vector<CsvColumn> columns;  // at most one of them time, at least one not
    std::size_t headerLine = 0;

    std::optional<std::size_t> timeColumn() const;
    std::size_t channelCount() const { return columns.size() - (timeColumn() ? 1 : 0); }
};

// Leaves `lines` at the first line after the header.
Result<CsvHead> readCsvHead(CsvLines& lines, const std::string& file);

}  // namespace fettle
