#include "core/simulate/random_stream.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "core/simulate/exact_math.h"

namespace fettle::sim {

namespace {
std::uint64_t splitMix(std::uint64_t& state) {
    state += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}
}  // namespace

std::uint64_t fnv1a(std::string_view bytes, std::uint64_t from) {
    for (const char c : bytes) {
        from ^= static_cast<unsigned char>(c);
        from *= 1099511628211ULL;
    }
    return from;
}

RandomStream::RandomStream(std::uint64_t key) {
    for (auto& word : state_)
        word = splitMix(key);
}

std::uint64_t RandomStream::next() {
    const std::uint64_t result = std::rotl(state_[1] * 5, 7) * 9;
    const std::uint64_t t = state_[1] << 17;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= t;
    state_[3] = std::rotl(state_[3], 45);
    return result;
}

double RandomStream::uniform() {
    return double(next() >> 11) * 0x1.0p-53;
}

double RandomStream::normal() {
    if (hasSpare_) {
        hasSpare_ = false;
        return spare_;
    }
    const double radius = std::sqrt(-2 * exact::logarithm(1 - uniform()));
    const double angle = uniform();
    spare_ = radius * exact::sine(angle);
    hasSpare_ = true;
    return radius * exact::cosine(angle);
}

// Drawn one after another, then turned into normal deviates all at once: compilers do four at a time.
void RandomStream::fillPairs(double* values, std::size_t pairs) {
    constexpr std::size_t kAtOnce = 256;
    std::array<double, kAtOnce> first, second;
    for (std::size_t done = 0; done < pairs; done += kAtOnce) {
        const std::size_t count = std::min(kAtOnce, pairs - done);
        for (std::size_t i = 0; i < count; ++i) {
            first[i] = 1 - uniform();
            second[i] = uniform();
        }
        exact::boxMuller(first.data(), second.data(), count);
        for (std::size_t i = 0; i < count; ++i) {
            values[2 * (done + i)] = first[i];
            values[2 * (done + i) + 1] = second[i];
        }
    }
}

std::vector<double> RandomStream::normals(std::size_t count) {
    std::vector<double> values(count);
    std::size_t at = 0;
    if (hasSpare_ && count > 0) values[at++] = normal();
    const std::size_t pairs = (count - at) / 2;
    fillPairs(values.data() + at, pairs);
    at += 2 * pairs;
    if (at < count) values[at] = normal();
    return values;
}

void RandomStream::addNormal(double sigma, std::vector<double>& out) {
    const std::vector<double> chance = normals(out.size());
    for (std::size_t i = 0; i < out.size(); ++i)
        out[i] += sigma * chance[i];
}

}  // namespace fettle::sim
