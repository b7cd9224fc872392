// Why: chance that repeats itself: the same name and key give the same numbers on every computer, and a
// recording can be made alone without making those before it. The standard library's distributions differ
// between libraries. Source: generator xoshiro256** and seeding by splitmix64, D. Blackman and S. Vigna,
// "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47 (2021) art. 36; normal
// deviates by Box and Muller, Ann. Math. Stat. 29 (1958) 610. Thread: one stream belongs to one thread.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace fettle::sim {

// FNV-1a, 64 bits, of bytes; `from` continues an earlier value.
inline constexpr std::uint64_t kFnvStart = 14695981039346656037ULL;
std::uint64_t fnv1a(std::string_view bytes, std::uint64_t from = kFnvStart);

class RandomStream {
  public:
    explicit RandomStream(std::uint64_t key);
    // A stream of its own for one purpose.
    RandomStream(std::uint64_t key, std::string_view purpose)
        : RandomStream(fnv1a(purpose, key ^ kFnvStart)) {}

    std::uint64_t next();
    double uniform();  // 0 <= u < 1
    double between(double least, double most) { return least + (most - least) * uniform(); }
    double normal();                                 // mean 0, variance 1
    std::vector<double> normals(std::size_t count);  // the same as so many calls of normal(), sooner
    void addNormal(double sigma, std::vector<double>& out);

  private:
    void fillPairs(double* values, std::size_t pairs);

    std::array<std::uint64_t, 4> state_{};
    double spare_ = 0;
    bool hasSpare_ = false;
};

}  // namespace fettle::sim
