#include "tests/fuzz/target.h"

#include <cmath>
#include <stdexcept>

#include "core/base/text.h"
#include "core/signal/recording_limits.h"

namespace fettle::fuzz {

namespace {
std::vector<Target>& list() {
    static std::vector<Target> all;
    return all;
}
}  // namespace

const std::vector<Target>& targets() {
    return list();
}

Listed::Listed(const char* name, bool (*run)(const std::string& bytes)) {
    list().push_back({name, run});
}

void require(bool holds, const std::string& promise) {
    if (!holds) throw std::logic_error(promise);
}

Halves halvesOf(const std::string& bytes) {
    static const std::string parting = "\n----\n";
    const std::size_t at = bytes.find(parting);
    if (at == std::string::npos) return {bytes, {}};
    return {bytes.substr(0, at), bytes.substr(at + parting.size())};
}

Channel plainChannel(const std::string& name) {
    Channel channel;
    channel.name = name;
    channel.sampleRateHz = 12800;
    channel.samples = {0.5, -0.25, 0};
    return channel;
}

void requireSound(const Recording& recording) {
    require(!recording.channels.empty(), "a recording has a channel");
    const Channel& first = recording.channels[0];
    require(first.sampleRateHz >= kLeastRateHz && first.sampleRateHz <= kMostRateHz, "the rate is in range");
    require(!first.samples.empty(), "a channel has samples");
    for (const Channel& channel : recording.channels) {
        require(channel.samples.size() == first.samples.size(), "channels are of one length");
        require(channel.sampleRateHz == first.sampleRateHz, "channels are of one rate");
        require(std::isfinite(channel.fullScale) && std::isfinite(channel.scale), "scales are finite");
        require(isUtf8(channel.name) && isUtf8(channel.unit), "names and units are UTF-8");
        for (const double sample : channel.samples)
            require(std::abs(sample) <= kLargestSample, "samples are finite and not larger than may be");
    }
}

}  // namespace fettle::fuzz
