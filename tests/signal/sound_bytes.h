// Why: sound files made by hand, byte by byte from the published layouts, so that the reader is not tested
// against the same library it reads with. Source: WAV: Multimedia Programming Interface and Data
// Specifications 1.0 (1991) and WAVEFORMATEXTENSIBLE, from memory; FLAC: RFC 9639 sections 8 and 9 (stream
// info, frame header, verbatim subframe, CRC-8 x^8+x^2+x+1, CRC-16 x^16+x^15+x^2+1).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace fettle::bytes {

std::string little(std::uint64_t value, int count);
std::string big(std::uint64_t value, int count);

struct Wav {
    int tag = 1;  // 1 PCM, 3 IEEE float
    int channels = 1;
    std::uint32_t rate = 12800;
    int bits = 16;
    bool extensible = false;
};

// Head, body, and a pad byte where the body is odd.
std::string chunk(const std::string& id, const std::string& body);
std::string format(const Wav& wav);  // the body of the fmt chunk
std::string riff(const std::string& chunks);
std::string wav(const Wav& wav, const std::string& data);

// Samples stored as they are, in one frame of 16 to 65535 samples; `channels` hold whole numbers of so many
// bits.
std::string flac(const std::vector<std::vector<int>>& channels, int bits, std::uint32_t rate);
// The 34 bytes of a stream info block.
std::string flacInfo(std::uint32_t rate, int channels, int bits, std::uint64_t samples, std::uint32_t block);

// Overwrites bytes in the middle.
std::string with(std::string all, std::size_t at, const std::string& bytes);
// Bytes nobody meant anything by, the same on every machine.
std::string nonsense(std::uint32_t start, std::size_t count);

}  // namespace fettle::bytes
