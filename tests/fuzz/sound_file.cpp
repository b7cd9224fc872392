// WAV and FLAC: the project's own walk over the file first, then libsndfile.
#include "core/signal/sound_file.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool soundFile(const std::string& bytes) {
    const bool flac = bytes.starts_with("fLaC");
    const auto read = flac ? readFlac(bytes, "r.flac") : readWav(bytes, "r.wav");
    if (read) requireSound(*read);
    return read.has_value();
}

const Listed kSoundFile("sound_file", soundFile);

}  // namespace
}  // namespace fettle::fuzz
