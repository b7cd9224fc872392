// Any samples, bits and scale: what is packed comes back with the same bits.
#include <cmath>
#include <cstring>

#include "core/store/waveform_codec.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool waveformPack(const std::string& bytes) {
    if (bytes.size() < 9) return false;
    double scale = 1;
    std::memcpy(&scale, bytes.data() + 1, sizeof scale);
    std::vector<double> samples((bytes.size() - 9) / sizeof(double));
    if (!samples.empty()) std::memcpy(samples.data(), bytes.data() + 9, samples.size() * sizeof(double));
    const auto back =
        unpackWaveform(packWaveform(samples, int(static_cast<signed char>(bytes[0])), scale), samples.size());
    require(back.has_value(), "what was packed can be unpacked");
    require(back->size() == samples.size() && digestOf(*back) == digestOf(samples),
            "every sample comes back with the same bits");
    return true;
}

const Listed kWaveformPack("waveform_pack", waveformPack);

}  // namespace
}  // namespace fettle::fuzz
