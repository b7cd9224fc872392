#include "core/simulate/random_stream.h"

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

void RandomStream::addNormal(double sigma, std::vector<double>& out) {
    for (double& value : out)
        value += sigma * normal();
}

}  // namespace fettle::sim
