#include "tests/bench/codec_bench.h"

#include <fmt/format.h>
#ifdef FETTLE_BENCH_ZLIB
#include <zlib.h>
#endif
#include <zstd.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>
#include <filesystem>
#include <functional>
#include <optional>
#include <span>

#include "core/signal/reader.h"
#include "core/signal/sound_memory.h"
#include "core/store/float_steps.h"
#include "core/store/waveform_codec.h"
#include "tests/bench/stopwatch.h"

namespace fettle::bench {

namespace {

constexpr std::size_t kMostSamples = 12'000'000;  // a folder

using Numbers = std::vector<std::int32_t>;

struct Case {
    std::vector<double> samples;
    int bits = 0;
    double scale = 1;
    std::string raw;  // as the file holds it
    int width = 4;    // bytes a sample
    Numbers numbers;  // empty: there are none
};

struct Method {
    const char* name;
    bool whole;  // needs whole numbers
    std::function<std::string(const Case&)> pack;
    std::function<bool(const Case&, const std::string&)> same;  // unpacks, and compares
};

std::string zstdOf(const std::string& bytes, int level) {
    std::string packed(ZSTD_compressBound(bytes.size()), '\0');
    packed.resize(ZSTD_compress(packed.data(), packed.size(), bytes.data(), bytes.size(), level));
    return packed;
}

std::string unzstd(const std::string& packed) {
    std::string bytes(std::size_t(ZSTD_getFrameContentSize(packed.data(), packed.size())), '\0');
    ZSTD_decompress(bytes.data(), bytes.size(), packed.data(), packed.size());
    return bytes;
}

#ifdef FETTLE_BENCH_ZLIB
std::string zlibOf(const std::string& bytes) {
    uLongf size = compressBound(bytes.size());
    std::string packed(size, '\0');
    compress2(reinterpret_cast<Bytef*>(packed.data()), &size, reinterpret_cast<const Bytef*>(bytes.data()),
              bytes.size(), 6);
    packed.resize(size);
    return packed;
}

std::string unzlib(const std::string& packed, std::size_t count) {
    std::string bytes(count, '\0');
    uLongf size = count;
    uncompress(reinterpret_cast<Bytef*>(bytes.data()), &size, reinterpret_cast<const Bytef*>(packed.data()),
               packed.size());
    return bytes;
}
#endif

using Words = std::vector<std::uint32_t>;

Words differences(const Numbers& numbers, int order) {
    Words words(numbers.begin(), numbers.end());
    for (int i = 0; i < order; ++i)
        for (std::size_t at = words.size(); at-- > 1;)
            words[at] -= words[at - 1];
    for (std::uint32_t& word : words)
        word = word << 1 ^ (word >> 31 ? ~0u : 0u);
    return words;
}

Numbers undone(Words words, int order) {
    for (std::uint32_t& word : words)
        word = word >> 1 ^ (word & 1 ? ~0u : 0u);
    for (int i = 0; i < order; ++i)
        for (std::size_t at = 1; at < words.size(); ++at)
            words[at] += words[at - 1];
    Numbers numbers;
    for (const std::uint32_t word : words)
        numbers.push_back(std::int32_t(word));
    return numbers;
}

int bitsOf(const Words& words) {
    std::uint32_t all = 1;
    for (const std::uint32_t word : words)
        all |= word;
    return int(std::bit_width(all));
}

std::string bytePlanes(const Words& words, int bytes) {
    std::string out;
    out.reserve(words.size() * std::size_t(bytes));
    for (int plane = 0; plane < bytes; ++plane)
        for (const std::uint32_t word : words)
            out += char(word >> (8 * plane));
    return out;
}

Words fromBytePlanes(const std::string& planes, std::size_t count) {
    Words words(count, 0);
    for (std::size_t i = 0; i < planes.size(); ++i)
        words[i % count] |= std::uint32_t(std::uint8_t(planes[i])) << (8 * (i / count));
    return words;
}

std::string bitPlanes(const Words& words, int bits) {
    const std::size_t row = (words.size() + 7) / 8;
    std::string out(row * std::size_t(bits), '\0');
    for (int bit = 0; bit < bits; ++bit)
        for (std::size_t i = 0; i < words.size(); ++i)
            out[std::size_t(bit) * row + i / 8] |= char((words[i] >> bit & 1) << (i % 8));
    return out;
}

Words fromBitPlanes(const std::string& planes, std::size_t count) {
    const std::size_t row = (count + 7) / 8;
    Words words(count, 0);
    for (std::size_t bit = 0; bit * row < planes.size(); ++bit)
        for (std::size_t i = 0; i < count; ++i)
            words[i] |= std::uint32_t(planes[bit * row + i / 8] >> (i % 8) & 1) << bit;
    return words;
}

int shortest(const Numbers& numbers) {
    const std::size_t count = std::min<std::size_t>(numbers.size(), 8192),
                      from = (numbers.size() - count) / 2;
    const Numbers stretch(numbers.begin() + std::ptrdiff_t(from),
                          numbers.begin() + std::ptrdiff_t(from + count));
    int best = 0;
    std::uint64_t fewest = ~0ull;
    for (int order = 0; order <= 2; ++order) {
        std::uint64_t bits = 0;
        for (const std::uint32_t word : differences(stretch, order))
            bits += std::uint64_t(std::bit_width(word));
        if (bits < fewest) fewest = bits, best = order;
    }
    return best;
}

enum class Planes { Bytes, Bits };

// `order` -1: the shortest, said in the first byte.
Method shuffled(const char* name, int order, Planes planes, int level) {
    return {name, true,
            [=](const Case& one) {
                const int taken = order < 0 ? shortest(one.numbers) : order;
                const Words words = differences(one.numbers, taken);
                const std::string out = planes == Planes::Bits ? bitPlanes(words, bitsOf(words))
                                                               : bytePlanes(words, (bitsOf(words) + 7) / 8);
                return std::string(1, char(taken)) + zstdOf(out, level);
            },
            [=](const Case& one, const std::string& packed) {
                const std::string out = unzstd(packed.substr(1));
                const std::size_t count = one.numbers.size();
                return undone(planes == Planes::Bits ? fromBitPlanes(out, count) : fromBytePlanes(out, count),
                              packed[0]) == one.numbers;
            }};
}

// libsndfile takes and gives numbers in the upper bits of 32.
std::string flacOf(const Case& one, double level) {
    std::int64_t largest = 0;
    for (const std::int32_t number : one.numbers)
        largest = std::max<std::int64_t>(largest, number < 0 ? -(std::int64_t(number) + 1) : number);
    const int bits = largest < 1 << 15 ? 16 : 24;
    SF_INFO info{};
    info.samplerate = 48000, info.channels = 1;
    info.format = SF_FORMAT_FLAC | (bits == 16 ? SF_FORMAT_PCM_16 : SF_FORMAT_PCM_24);
    SoundSink sink;
    SF_VIRTUAL_IO calls = sink.calls();
    SNDFILE* const sound = sf_open_virtual(&calls, SFM_WRITE, &info, &sink);
    if (!sound) return {};
    sf_command(sound, SFC_SET_COMPRESSION_LEVEL, &level, sizeof level);
    Numbers shifted(one.numbers);
    for (std::int32_t& number : shifted)
        number = std::int32_t(std::uint32_t(number) << (32 - bits));
    sf_write_int(sound, shifted.data(), sf_count_t(shifted.size()));
    sf_close(sound);
    return char(bits) + sink.take();
}

bool sameFlac(const Case& one, const std::string& packed) {
    SoundSource source("", std::string_view(packed).substr(1));
    SF_VIRTUAL_IO calls = source.calls();
    SF_INFO info{};
    SNDFILE* const sound = sf_open_virtual(&calls, SFM_READ, &info, &source);
    if (!sound) return false;
    Numbers numbers(one.numbers.size());
    sf_read_int(sound, numbers.data(), sf_count_t(numbers.size()));
    sf_close(sound);
    for (std::int32_t& number : numbers)
        number >>= 32 - packed[0];
    return numbers == one.numbers;
}

std::vector<Method> methods() {
    const auto flac = [](const char* name, double level) {
        return Method{name, true, [=](const Case& one) { return flacOf(one, level); }, sameFlac};
    };
    const auto zstd = [](const char* name, int level) {
        return Method{name, false, [=](const Case& one) { return zstdOf(one.raw, level); },
                      [](const Case& one, const std::string& packed) { return unzstd(packed) == one.raw; }};
    };
    return {{"stored form (waveform_codec)", false,
             [](const Case& one) { return packWaveform(one.samples, one.bits, one.scale); },
             [](const Case& one, const std::string& packed) {
                 const auto back = unpackWaveform(packed, one.samples.size());
                 return back && digestOf(*back) == digestOf(one.samples);
             }},
#ifdef FETTLE_BENCH_ZLIB
            {"zlib 6, raw", false, [](const Case& one) { return zlibOf(one.raw); },
             [](const Case& one, const std::string& packed) {
                 return unzlib(packed, one.raw.size()) == one.raw;
             }},
#endif
            zstd("zstd 3, raw", 3),
            shuffled("zstd 3, shuffled 1st difference", 1, Planes::Bytes, 3),
            shuffled("zstd 3, shuffled 2nd difference", 2, Planes::Bytes, 3),
            shuffled("zstd 3, shuffled shortest", -1, Planes::Bytes, 3),
            shuffled("zstd 1, shuffled shortest", -1, Planes::Bytes, 1),
            shuffled("zstd 1, bit planes of shortest", -1, Planes::Bits, 1),
            flac("FLAC 5", 5.0 / 8),
            flac("FLAC 8", 1)};
}

Case caseOf(const Channel& channel) {
    Case one{channel.samples, channel.bits, channel.scale, {}, channel.bits ? (channel.bits + 7) / 8 : 4, {}};
    std::vector<float> floats;
    for (const double sample : channel.samples) {
        if (channel.bits) {
            one.numbers.push_back(
                std::int32_t(std::llround(sample / channel.scale * std::ldexp(1.0, channel.bits - 1))));
            const auto bytes = std::uint32_t(one.numbers.back());
            one.raw.append(reinterpret_cast<const char*>(&bytes), std::size_t(one.width));
        } else {
            floats.push_back(float(sample / channel.scale));
        }
    }
    if (channel.bits) return one;
    one.raw.assign(reinterpret_cast<const char*>(floats.data()), floats.size() * sizeof(float));
    if (const auto stepped = steppedFloats(floats))
        one.numbers.assign(stepped->numbers.begin(), stepped->numbers.end());
    return one;
}

std::vector<Case> casesOf(const std::string& folder) {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (const auto ending = entry.path().extension(); ending == ".wav" || ending == ".flac")
            files.push_back(entry.path().string());
    std::sort(files.begin(), files.end());
    std::vector<Case> cases;
    std::size_t samples = 0;
    for (const std::string& file : files) {
        const auto recording = readRecording(RealFileSystem(), file);
        if (!recording) continue;
        for (const Channel& channel : (*recording)->channels)
            samples += channel.samples.size(), cases.push_back(caseOf(channel));
        if (samples >= kMostSamples) break;
    }
    return cases;
}

void measure(const Method& method, const std::vector<Case>& cases) {
    double raw = 0, left = 0, packMs = 0, unpackMs = 0;
    std::size_t wrong = 0, used = 0;
    for (const Case& one : cases) {
        if (method.whole && one.numbers.empty()) continue;
        std::string packed;
        packMs += onceMs([&] { packed = method.pack(one); });
        unpackMs += onceMs([&] { wrong += !method.same(one, packed); });
        raw += double(one.raw.size()), left += double(packed.size());
        ++used;
    }
    if (used == 0) return fmt::print("  {:<34} no whole numbers\n", method.name);
    fmt::print("  {:<34} {:>6.2f} {:>9.0f} {:>9.0f} {:>9}{}\n", method.name, raw / left, raw / packMs / 1e3,
               raw / unpackMs / 1e3, used, wrong ? fmt::format("  {} NOT THE SAME", wrong) : "");
}

}  // namespace

int codecBench(const std::vector<std::string>& folders) {
    for (const std::string& folder : folders) {
        const std::vector<Case> cases = casesOf(folder);
        std::size_t raw = 0;
        for (const Case& one : cases)
            raw += one.raw.size();
        fmt::print("{}: {} channels, {:.1f} MB\n  {:<34} {:>6} {:>9} {:>9} {:>9}\n", folder, cases.size(),
                   double(raw) / 1e6, "", "ratio", "pack MB/s", "back MB/s", "channels");
        if (cases.empty()) return 3;
        for (const Method& method : methods())
            measure(method, cases);
    }
    return 0;
}

}  // namespace fettle::bench
