// A recording of any kind with its sidecar, by the one door; what is taken is written out and read back.
#include "core/base/file_system_fake.h"
#include "core/exchange/recording_export.h"
#include "core/signal/reader.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool recording(const std::string& bytes) {
    const Halves halves = halvesOf(bytes);
    MemoryFileSystem files;
    files.put("r.json", halves.first);
    files.put("r.csv", halves.second);
    const auto read = readRecording(files, "r.csv");
    if (!read) return false;
    requireSound(**read);
    const auto written = exportRecording(**read, halves.first, "r");
    require(written.has_value(),
            "what was read can be written: " + (written ? std::string() : written.error().sentence()));
    return true;
}

const Listed kRecording("recording", recording);

}  // namespace
}  // namespace fettle::fuzz
