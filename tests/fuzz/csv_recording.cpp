#include "core/signal/csv_reader.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool csvRecording(const std::string& bytes) {
    const auto read = readCsv(bytes, "r.csv");
    if (read) requireSound(*read);
    return read.has_value();
}

const Listed kCsvRecording("csv_recording", csvRecording);

}  // namespace
}  // namespace fettle::fuzz
