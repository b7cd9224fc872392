#include "core/dsp/fft.h"

#include <gtest/gtest.h>

#include <numeric>
#include <thread>

#include "tests/dsp/signals.h"

namespace fettle {
namespace {

using Bins = FftVector<std::complex<double>>;

Bins binsOf(const std::vector<double>& signal) {
    Bins bins;
    forwardReal(FftVector<double>(signal.begin(), signal.end()), bins);
    return bins;
}

void expectNear(std::complex<double> value, std::complex<double> expected, double tolerance) {
    EXPECT_NEAR(value.real(), expected.real(), tolerance);
    EXPECT_NEAR(value.imag(), expected.imag(), tolerance);
}

TEST(Fft, OneToFour) {
    // By hand from the definition: 10, -2+2j, -2 (and -2-2j for the negative frequency).
    const Bins bins = binsOf({1, 2, 3, 4});
    ASSERT_EQ(bins.size(), 3u);
    expectNear(bins[0], 10, 1e-14);
    expectNear(bins[1], {-2, 2}, 1e-14);
    expectNear(bins[2], -2, 1e-14);
}

TEST(Fft, ComplexTransformHoldsBothSigns) {
    const Bins in{1, 2, 3, 4};
    Bins out;
    forwardComplex(in, out);
    ASSERT_EQ(out.size(), 4u);
    expectNear(out[1], {-2, 2}, 1e-14);
    expectNear(out[3], {-2, -2}, 1e-14);
}

TEST(Fft, FixedSignal) {
    // check value: NumPy 1.24.2
    const Bins bins = binsOf(signals::x());
    ASSERT_EQ(bins.size(), 129u);
    expectNear(bins[0], -18, 1e-12);
    expectNear(bins[1], {-2.02916257859, -0.128864220031}, 1e-10);
    expectNear(bins[25], {7.23805038714, 18.1993345791}, 1e-10);
}

TEST(Fft, ParsevalOfFixedSignal) {
    // check value: NumPy 1.24.2: sum |X|^2 / N = 64.1171875 = sum x^2
    const auto x = signals::x();
    const FftVector<std::complex<double>> in(x.begin(), x.end());
    Bins out;
    forwardComplex(in, out);
    double sum = 0;
    for (const auto& bin : out)
        sum += std::norm(bin);
    EXPECT_NEAR(sum / double(x.size()), 64.1171875, 1e-10);
}

TEST(Fft, AgreesWithTheDefinition) {
    for (const std::size_t n : {1u, 2u, 3u, 5u, 8u, 11u, 17u, 31u, 60u}) {
        const auto signal = signals::normalNoise(1, n, unsigned(n));
        const Bins bins = binsOf(signal);
        for (std::size_t k = 0; k < bins.size(); ++k) {
            std::complex<double> sum = 0;
            for (std::size_t i = 0; i < n; ++i)
                sum += signal[i] * std::polar(1.0, -kTwoPi * double(i * k) / double(n));
            EXPECT_LT(std::abs(bins[k] - sum), 1e-12 * double(n)) << n << " samples, bin " << k;
        }
    }
}

template <class Real>
class FftRoundTrip : public testing::Test {};
using Reals = testing::Types<float, double>;
TYPED_TEST_SUITE(FftRoundTrip, Reals);

// Odd, even, prime, a power of two, and products of small primes.
constexpr std::size_t kSizes[] = {1, 2, 3, 5, 7, 15, 16, 97, 255, 256, 1000, 1023, 4095, 7919, 12800};

TYPED_TEST(FftRoundTrip, RealComesBackTimesItsSize) {
    for (const std::size_t n : kSizes) {
        const auto noise = signals::normalNoise(1, n);
        FftVector<TypeParam> in(n), back;
        for (std::size_t i = 0; i < n; ++i)
            in[i] = TypeParam(noise[i]);
        const FftVector<TypeParam> kept = in;
        FftVector<std::complex<TypeParam>> bins;
        forwardReal(in, bins);
        EXPECT_EQ(in, kept) << "the input of a forward transform is kept, size " << n;
        EXPECT_EQ(bins.size(), n / 2 + 1);
        inverseReal(bins, n, back);
        ASSERT_EQ(back.size(), n);
        for (std::size_t i = 0; i < n; ++i)
            ASSERT_NEAR(back[i] / TypeParam(n), in[i], 40 * std::numeric_limits<TypeParam>::epsilon())
                << "size " << n;
    }
}

TYPED_TEST(FftRoundTrip, ComplexComesBackTimesItsSize) {
    for (const std::size_t n : kSizes) {
        const auto noise = signals::normalNoise(1, 2 * n);
        FftVector<std::complex<TypeParam>> in(n), bins, back;
        for (std::size_t i = 0; i < n; ++i)
            in[i] = {TypeParam(noise[2 * i]), TypeParam(noise[2 * i + 1])};
        const auto kept = in;
        forwardComplex(in, bins);
        inverseComplex(bins, back);
        EXPECT_EQ(in, kept);
        for (std::size_t i = 0; i < n; ++i)
            ASSERT_LT(std::abs(back[i] / TypeParam(n) - in[i]),
                      40 * std::numeric_limits<TypeParam>::epsilon())
                << "size " << n;
    }
}

TEST(Fft, EmptySignalIsNoError) {
    FftVector<double> none, back;
    Bins bins;
    forwardReal(none, bins);
    inverseReal(bins, 0, back);
    EXPECT_TRUE(back.empty());
    FftVector<std::complex<double>> empty, out;
    forwardComplex(empty, out);
    EXPECT_TRUE(out.empty());
}

TEST(Fft, ThreadsThatMakePlansTogetherGetTheSameNumbers) {
    // Sizes no other test uses, so that the threads meet in the planner as well.
    const std::vector<std::size_t> sizes{2310, 1155, 3003, 2002, 1331, 4096, 777, 2310, 1155};
    std::vector<FftVector<double>> in;
    for (const std::size_t n : sizes) {
        const auto noise = signals::normalNoise(1, n);
        in.emplace_back(noise.begin(), noise.end());
    }
    constexpr std::size_t kThreads = 8;
    std::vector<std::vector<Bins>> out(kThreads, std::vector<Bins>(sizes.size()));
    std::vector<std::thread> threads;
    for (std::size_t t = 0; t < kThreads; ++t)
        threads.emplace_back([&, t] {
            for (std::size_t i = 0; i < sizes.size(); ++i)
                forwardReal(in[i], out[t][i]);
        });
    for (auto& thread : threads)
        thread.join();
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        Bins alone;
        forwardReal(in[i], alone);
        for (std::size_t t = 0; t < kThreads; ++t)
            EXPECT_EQ(out[t][i], alone) << "thread " << t << ", size " << sizes[i];
    }
}

TEST(Fft, BuffersAreAligned) {
    for (const std::size_t n : {1u, 3u, 1001u}) {
        const FftVector<float> buffer(n);
        EXPECT_EQ(reinterpret_cast<std::uintptr_t>(buffer.data()) % 64, 0u);
    }
}

bool hasOnlySmallPrimes(std::size_t n) {
    for (const std::size_t prime : {2, 3, 5, 7})
        while (n % prime == 0)
            n /= prime;
    return n == 1;
}

TEST(Fft, QuickSizesByHand) {
    EXPECT_EQ(quickSizeAtMost(2), 2u);
    EXPECT_EQ(quickSizeAtMost(3), 2u);
    EXPECT_EQ(quickSizeAtMost(11), 10u);
    EXPECT_EQ(quickSizeAtMost(4097), 4096u);
    EXPECT_EQ(quickSizeAtLeast(2), 2u);
    EXPECT_EQ(quickSizeAtLeast(11), 12u);
    EXPECT_EQ(quickSizeAtLeast(22), 24u);
    EXPECT_EQ(quickSizeAtLeast(4097), 4116u);  // 2^2 3 7^3
}

TEST(Fft, QuickSizesAreTheNearestOnes) {
    std::size_t before = 2;
    for (std::size_t n = 2; n <= 3000; ++n) {
        if (n % 2 == 0 && hasOnlySmallPrimes(n)) before = n;
        EXPECT_EQ(quickSizeAtMost(n), before);
        const std::size_t after = quickSizeAtLeast(n);
        EXPECT_GE(after, n);
        EXPECT_EQ(after % 2, 0u);
        EXPECT_TRUE(hasOnlySmallPrimes(after));
        EXPECT_EQ(quickSizeAtMost(after), after);
        EXPECT_TRUE(after == n || quickSizeAtMost(after - 1) < n);
    }
}

}  // namespace
}  // namespace fettle
