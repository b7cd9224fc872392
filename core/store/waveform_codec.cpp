#include "core/store/waveform_codec.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>
#include <optional>

#include "core/signal/recording_limits.h"
#include "core/store/flac_numbers.h"
#include "core/store/float_steps.h"
#include "core/store/packing.h"

namespace fettle {

static_assert(std::endian::native == std::endian::little, "the fleet file is little endian");

namespace {
enum Kind : std::uint8_t { Whole = 1, Decimal = 2, Float32 = 3, Float64 = 4, Stepped = 5 };

enum Coder : std::uint8_t { Planes = 0, Flac = 1 };

constexpr std::uint8_t kFirstForm = 1, kSecondForm = 2;  // older programs refuse the second in a clear word
constexpr int kMostDifferences = 2, kMostPlaces = 6;
constexpr std::size_t kPiece = 8192;         // numbers
constexpr double kLargestWhole = 1LL << 52;  // so that second differences fit

struct Head {
    std::uint8_t version = kFirstForm, kind = Float64, differences = 0, width = 8, detail = 0;
    std::uint8_t coder = Planes;
    std::uint8_t unused[2] = {};
    double scale = 1;
    std::uint64_t samples = 0;
};
static_assert(sizeof(Head) == 24);

using Whole64 = std::vector<std::uint64_t>;  // two's complement: differences wrap, and wrap back

bool sameBits(double a, double b) {
    return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

// How a stored number becomes a sample; as the readers do it, so the roundings are the same.
class Scaling {
  public:
    explicit Scaling(const Head& head, double step = 0)
        : scale_(head.scale), whole_(head.kind == Whole), step_(step) {
        factor_ = whole_ ? std::ldexp(1.0, 1 - head.detail) : kTens[head.detail];
        back_ = (whole_ ? 1 / factor_ : factor_) / scale_;
    }
    double sample(double number) const {
        if (step_ != 0) return double(static_cast<float>(number * step_)) * scale_;
        return (whole_ ? number * factor_ : number / factor_) * scale_;
    }
    double number(double sample) const { return sample * back_; }  // all but rounded

  private:
    static constexpr double kTens[kMostPlaces + 1] = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
    double scale_, factor_, back_;  // back_: numbers a sample
    bool whole_;
    double step_;  // 0: none
};

// The stored numbers, if they give back every sample.
std::optional<Whole64> numbersOf(std::span<const double> samples, const Head& head) {
    const Scaling scaling(head);
    Whole64 numbers;
    numbers.reserve(samples.size());
    for (const double sample : samples) {
        const double number = scaling.number(sample);
        if (!(std::abs(number) < kLargestWhole)) return std::nullopt;
        // From the integer, as unpacking will: it has lost the sign of a zero.
        const auto whole = static_cast<std::int64_t>(number + (number < 0 ? -0.5 : 0.5));
        if (!sameBits(scaling.sample(double(whole)), sample)) return std::nullopt;
        numbers.push_back(static_cast<std::uint64_t>(whole));
    }
    return numbers;
}

std::optional<Whole64> wholeNumbersOf(std::span<const double> samples, int bits, Head& head) {
    if (bits < 1 || bits > 32) return std::nullopt;
    head.kind = Whole, head.detail = std::uint8_t(bits);
    return numbersOf(samples, head);
}

std::optional<Whole64> decimalNumbersOf(std::span<const double> samples, Head& head) {
    head.kind = Decimal;
    for (int places = 0; places <= kMostPlaces; ++places) {
        head.detail = std::uint8_t(places);
        if (auto numbers = numbersOf(samples, head)) return numbers;
    }
    return std::nullopt;
}

// The stored float32 values, if they give back every sample.
std::optional<std::vector<float>> floatsOf(std::span<const double> samples, double scale) {
    std::vector<float> floats;
    floats.reserve(samples.size());
    for (const double sample : samples) {
        floats.push_back(static_cast<float>(sample / scale));
        if (!sameBits(double(floats.back()) * scale, sample)) return std::nullopt;
    }
    return floats;
}

void difference(Whole64& numbers) {
    for (std::size_t i = numbers.size(); i-- > 1;)
        numbers[i] -= numbers[i - 1];
}

void sum(Whole64& numbers) {
    for (std::size_t i = 1; i < numbers.size(); ++i)
        numbers[i] += numbers[i - 1];
}

std::uint64_t zigzag(std::uint64_t number) {
    return number << 1 ^ (number >> 63 ? ~std::uint64_t(0) : 0);
}

std::uint64_t unzigzag(std::uint64_t number) {
    return number >> 1 ^ (number & 1 ? ~std::uint64_t(0) : 0);
}

// Lowest bytes of all values first, then the next ones.
std::string planes(const char* values, std::size_t count, std::size_t stride, std::size_t width) {
    std::string bytes(count * width, '\0');
    char* out = bytes.data();
    for (std::size_t plane = 0; plane < width; ++plane)
        for (std::size_t i = 0; i < count; ++i)
            *out++ = values[i * stride + plane];
    return bytes;
}

void fromPlanes(std::string_view bytes, char* values, std::size_t count, std::size_t stride,
                std::size_t width) {
    const char* in = bytes.data();
    for (std::size_t plane = 0; plane < width; ++plane)
        for (std::size_t i = 0; i < count; ++i)
            values[i * stride + plane] = *in++;
}

template <class Value>
std::string bytesOf(const Value& value) {
    return {reinterpret_cast<const char*>(&value), sizeof value};
}

std::string withHead(const Head& head, const std::string& body) {
    return bytesOf(head) + body;
}

// The second form: a digest of all else, so that a decoder is never given damaged bytes.
std::string secondForm(Head head, const std::string& stepped, const std::string& body) {
    head.version = kSecondForm;
    const std::string first = bytesOf(head), rest = stepped + body;
    return first + bytesOf(digest64(first + rest)) + rest;
}

std::string packPlanes(const Whole64& zigzags, Head& head) {
    std::uint64_t all = 0;
    for (const std::uint64_t number : zigzags)
        all |= number;
    head.width = std::uint8_t(std::max<std::size_t>(1, (std::size_t(std::bit_width(all)) + 7) / 8));
    return pack(planes(reinterpret_cast<const char*>(zigzags.data()), zigzags.size(), 8, head.width),
                kNumbersLevel);
}

std::uint64_t bitsOf(const Whole64& numbers) {
    std::uint64_t bits = 0;
    for (const std::uint64_t number : numbers)
        bits += std::uint64_t(std::bit_width(zigzag(number)));
    return bits;
}

// How often to take differences until the numbers are shortest, judged by a stretch from the middle. On
// recordings of nodes within 1 % of the best of packing each.
int shortestDifferences(const Whole64& numbers) {
    const std::size_t count = std::min(numbers.size(), kPiece), from = (numbers.size() - count) / 2;
    Whole64 stretch(numbers.begin() + std::ptrdiff_t(from), numbers.begin() + std::ptrdiff_t(from + count));
    int best = 0;
    std::uint64_t fewest = ~std::uint64_t(0);
    for (int order = 0; order <= kMostDifferences; ++order) {
        if (const std::uint64_t bits = bitsOf(stretch); bits < fewest) fewest = bits, best = order;
        difference(stretch);
    }
    return best;
}

std::string packShortest(Whole64 numbers, Head& head) {
    head.differences = std::uint8_t(shortestDifferences(numbers));
    for (int order = 0; order < head.differences; ++order)
        difference(numbers);
    std::transform(numbers.begin(), numbers.end(), numbers.begin(), zigzag);
    return packPlanes(numbers, head);
}

// `stepped`: of kind Stepped what the numbers alone do not say; else empty.
std::string packNumbers(Whole64 numbers, Head head, const std::string& stepped = "") {
    if (const auto flac = toFlac(numbers)) {
        head.coder = Flac, head.width = std::uint8_t(flac->bits / 8);
        return secondForm(head, stepped, flac->bytes);
    }
    const std::string body = packShortest(std::move(numbers), head);
    return head.kind == Stepped ? secondForm(head, stepped, body) : withHead(head, body);
}

std::string packStepped(const SteppedFloats& found, Head head) {
    head.kind = Stepped;
    std::string stepped = bytesOf(found.step) + bytesOf(std::uint32_t(found.negativeZeros.size()));
    for (const std::uint32_t place : found.negativeZeros)
        stepped += bytesOf(place);
    return packNumbers({found.numbers.begin(), found.numbers.end()}, head, stepped);
}

std::string packFloats(std::span<const double> samples, Head head) {
    head.detail = 0;
    if (const auto floats = floatsOf(samples, head.scale)) {
        if (const auto stepped = steppedFloats(*floats)) return packStepped(*stepped, head);
        head.kind = Float32, head.width = 4;
        return withHead(
            head,
            pack(planes(reinterpret_cast<const char*>(floats->data()), floats->size(), 4, 4), kNumbersLevel));
    }
    head.kind = Float64, head.width = 8;
    return withHead(head, pack(planes(reinterpret_cast<const char*>(samples.data()), samples.size(), 8, 8),
                               kNumbersLevel));
}

bool isFloating(const Head& head) {
    return head.kind == Float32 || head.kind == Float64;
}

std::optional<std::string> formFault(const Head& head) {
    if (head.version != kFirstForm && head.version != kSecondForm)
        return fmt::format("is packed in form {}, not known here", head.version);
    const bool second = head.version == kSecondForm;
    const bool known = head.kind == Whole || head.kind == Decimal || (isFloating(head) && !second) ||
                       (head.kind == Stepped && second);
    if (!known) return "is of a kind that is none";
    if (head.coder > Flac || (head.coder == Flac && !second)) return "is packed in a way that is none";
    return std::nullopt;
}

std::optional<std::string> faultOf(const Head& head, std::uint64_t samples) {
    if (auto fault = formFault(head)) return fault;
    if (head.samples != samples || samples > kMostSamples)
        return fmt::format("holds {} samples, {} are stated", head.samples, samples);
    if (isFloating(head) && head.width != (head.kind == Float32 ? 4 : 8))
        return "has numbers of a wrong width";
    if (head.width < 1 || head.width > 8 || head.differences > kMostDifferences)
        return "has numbers of a wrong width";
    if (head.kind == Whole && (head.detail < 1 || head.detail > 32)) return "has numbers of a wrong size";
    if (head.kind != Whole && head.detail > kMostPlaces) return "has numbers of a wrong size";
    return std::nullopt;
}

template <class Value>
bool take(std::string_view& bytes, Value& value) {
    if (bytes.size() < sizeof value) return false;
    std::memcpy(&value, bytes.data(), sizeof value);
    bytes.remove_prefix(sizeof value);
    return true;
}

// Of kind Stepped, what stands before the numbers.
struct Steps {
    double step = 0;  // 0: none
    std::vector<std::uint32_t> negativeZeros;
};

std::optional<std::string> takeSteps(std::string_view& bytes, const Head& head, Steps& steps) {
    if (head.kind != Stepped) return std::nullopt;
    std::uint32_t zeros = 0;
    if (!take(bytes, steps.step) || !take(bytes, zeros) || bytes.size() / 4 < zeros)
        return "breaks off in its head";
    if (!std::isfinite(steps.step) || !(steps.step > 0)) return "has numbers of a wrong size";
    steps.negativeZeros.resize(zeros);
    for (std::uint32_t& place : steps.negativeZeros)
        if (!take(bytes, place) || place >= head.samples) return "has a zero beyond its end";
    return std::nullopt;
}

tl::expected<std::string, std::string> unpackedPlanes(std::string_view packed, const Head& head) {
    const std::size_t wanted = head.samples * head.width;
    auto bytes = unpack(packed, wanted);
    if (bytes && bytes->size() != wanted)
        return tl::unexpected<std::string>("holds fewer samples than stated");
    return bytes;
}

tl::expected<Whole64, std::string> unpackedNumbers(std::string_view packed, const Head& head) {
    if (head.coder == Flac) return fromFlac(packed, head.samples);
    const auto bytes = unpackedPlanes(packed, head);
    if (!bytes) return tl::unexpected(bytes.error());
    Whole64 numbers(head.samples);
    fromPlanes(*bytes, reinterpret_cast<char*>(numbers.data()), numbers.size(), 8, head.width);
    std::transform(numbers.begin(), numbers.end(), numbers.begin(), unzigzag);
    for (int order = 0; order < head.differences; ++order)
        sum(numbers);
    return numbers;
}

std::vector<double> samplesOf(const Whole64& numbers, const Head& head, const Steps& steps) {
    const Scaling scaling(head, steps.step);
    std::vector<double> samples(numbers.size());
    std::transform(numbers.begin(), numbers.end(), samples.begin(), [&](std::uint64_t number) {
        return scaling.sample(double(static_cast<std::int64_t>(number)));
    });
    for (const std::uint32_t place : steps.negativeZeros)
        samples[place] = -0.0 * head.scale;
    return samples;
}

std::vector<double> unpackFloats(std::string_view bytes, const Head& head) {
    if (head.kind == Float64) {
        std::vector<double> samples(head.samples);
        fromPlanes(bytes, reinterpret_cast<char*>(samples.data()), samples.size(), 8, 8);
        return samples;
    }
    std::vector<float> floats(head.samples);
    fromPlanes(bytes, reinterpret_cast<char*>(floats.data()), floats.size(), 4, 4);
    std::vector<double> samples(floats.size());
    std::transform(floats.begin(), floats.end(), samples.begin(),
                   [&](float value) { return double(value) * head.scale; });
    return samples;
}
}  // namespace

std::string packWaveform(std::span<const double> samples, int bits, double scale) {
    Head head;
    head.samples = samples.size();
    head.scale = std::isfinite(scale) && scale != 0 ? scale : 1;
    if (auto numbers = wholeNumbersOf(samples, bits, head)) return packNumbers(std::move(*numbers), head);
    if (auto numbers = decimalNumbersOf(samples, head)) return packNumbers(std::move(*numbers), head);
    return packFloats(samples, head);
}

tl::expected<std::vector<double>, std::string> unpackWaveform(std::string_view packed,
                                                              std::uint64_t samples) {
    Head head;
    std::string_view rest = packed;
    if (!take(rest, head)) return tl::unexpected<std::string>("breaks off in its head");
    if (auto fault = faultOf(head, samples)) return tl::unexpected(*fault);
    if (std::uint64_t digest = 0; head.version == kSecondForm) {
        if (!take(rest, digest)) return tl::unexpected<std::string>("breaks off in its head");
        if (digest64(std::string(packed.substr(0, sizeof head)).append(rest)) != digest)
            return tl::unexpected<std::string>("is not what was packed");
    }
    Steps steps;
    if (auto fault = takeSteps(rest, head, steps)) return tl::unexpected(*fault);
    if (isFloating(head))
        return unpackedPlanes(rest, head).map([&](const std::string& bytes) {
            return unpackFloats(bytes, head);
        });
    return unpackedNumbers(rest, head).map([&](const Whole64& numbers) {
        return samplesOf(numbers, head, steps);
    });
}

std::uint64_t digestOf(std::span<const double> samples) {
    return digest64({reinterpret_cast<const char*>(samples.data()), samples.size_bytes()});
}

}  // namespace fettle
