// A waveform's blob, with the number of samples its own head states.
#include <cstring>

#include "core/signal/recording_limits.h"
#include "core/store/waveform_codec.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool waveformUnpack(const std::string& bytes) {
    std::uint64_t stated = 0;
    if (bytes.size() >= 24) std::memcpy(&stated, bytes.data() + 16, sizeof stated);
    const auto samples = unpackWaveform(bytes, stated);
    if (samples) require(samples->size() == stated, "as many samples as were asked for");
    require(!unpackWaveform(bytes, stated + 1), "another number of samples is refused");
    return samples.has_value();
}

const Listed kWaveformUnpack("waveform_unpack", waveformUnpack);

}  // namespace
}  // namespace fettle::fuzz
