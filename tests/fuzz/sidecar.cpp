#include "core/signal/reader.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool sidecar(const std::string& bytes) {
    Recording recording;
    recording.file = "r.wav";
    for (const char* name : {"1", "2"})
        recording.channels.push_back(plainChannel(name));
    const bool taken = applySidecar(recording, bytes, "r.json").has_value();
    requireSound(recording);
    return taken;
}

const Listed kSidecar("sidecar", sidecar);

}  // namespace
}  // namespace fettle::fuzz
