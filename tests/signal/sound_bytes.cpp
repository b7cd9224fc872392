#include "tests/signal/sound_bytes.h"

#include <algorithm>

namespace fettle::bytes {

std::string little(std::uint64_t value, int count) {
    std::string all;
    for (int i = 0; i < count; ++i)
        all += static_cast<char>(i < 8 ? value >> (8 * i) & 0xff : 0);
    return all;
}

std::string big(std::uint64_t value, int count) {
    std::string all = little(value, count);
    std::reverse(all.begin(), all.end());
    return all;
}

std::string chunk(const std::string& id, const std::string& body) {
    return id + little(body.size(), 4) + body + std::string(body.size() % 2, '\0');
}

std::string format(const Wav& wav) {
    const auto frame = static_cast<std::uint64_t>(wav.channels * wav.bits / 8);
    const std::string shape = little(wav.channels, 2) + little(wav.rate, 4) + little(frame * wav.rate, 4) +
                              little(frame, 2) + little(wav.bits, 2);
    if (!wav.extensible) return little(wav.tag, 2) + shape;
    const std::string tail("\x00\x00\x00\x00\x10\x00\x80\x00\x00\xAA\x00\x38\x9B\x71", 14);
    return little(0xFFFE, 2) + shape + little(22, 2) + little(wav.bits, 2) + little(0, 4) +
           little(wav.tag, 2) + tail;
}

std::string riff(const std::string& chunks) {
    return "RIFF" + little(chunks.size() + 4, 4) + "WAVE" + chunks;
}

std::string wav(const Wav& wav, const std::string& data) {
    return riff(chunk("fmt ", format(wav)) + chunk("data", data));
}

namespace {
std::uint64_t crc(const std::string& bytes, int width, std::uint64_t polynomial) {
    std::uint64_t remainder = 0;
    const std::uint64_t top = std::uint64_t(1) << (width - 1), mask = (top << 1) - 1;
    for (const char byte : bytes) {
        remainder ^= std::uint64_t(static_cast<unsigned char>(byte)) << (width - 8);
        for (int i = 0; i < 8; ++i)
            remainder = (remainder << 1 ^ (remainder & top ? polynomial : 0)) & mask;
    }
    return remainder;
}
}  // namespace

std::string flacInfo(std::uint32_t rate, int channels, int bits, std::uint64_t samples, std::uint32_t block) {
    const std::uint64_t packed = std::uint64_t(rate) << 44 | std::uint64_t(channels - 1) << 41 |
                                 std::uint64_t(bits - 1) << 36 | samples;
    return big(block, 2) + big(block, 2) + big(0, 3) + big(0, 3) + big(packed, 8) + std::string(16, '\0');
}

std::string flac(const std::vector<std::vector<int>>& channels, int bits, std::uint32_t rate) {
    const auto count = static_cast<std::uint32_t>(channels[0].size());
    const int lanes = static_cast<int>(channels.size());
    // Sync and fixed block size; 16 bit block size follows, rate as in the stream info; independent channels,
    // bits as in the stream info; frame number 0.
    std::string frame =
        big(0xFFF8, 2) + big(0x70, 1) + big((lanes - 1) << 4, 1) + big(0, 1) + big(count - 1, 2);
    frame += big(crc(frame, 8, 0x07), 1);
    for (const auto& channel : channels) {
        frame += '\x02';  // verbatim, no wasted bits
        for (const int sample : channel)
            frame += big(static_cast<std::uint64_t>(sample), bits / 8);
    }
    frame += big(crc(frame, 16, 0x8005), 2);
    return "fLaC" + big(0x80, 1) + big(34, 3) + flacInfo(rate, lanes, bits, count, count) + frame;
}

std::string with(std::string all, std::size_t at, const std::string& bytes) {
    return all.replace(at, bytes.size(), bytes);
}

// Linear congruence of Numerical Recipes (Press et al., 2nd edition, section 7.1): s <- 1664525 s +
// 1013904223.
std::string nonsense(std::uint32_t start, std::size_t count) {
    std::string all;
    for (std::uint32_t s = start * 2654435761u + 1; all.size() < count;) {
        s = s * 1664525u + 1013904223u;
        all += static_cast<char>(s >> 24);
    }
    return all;
}

}  // namespace fettle::bytes
