#include "core/simulate/exact_math.h"

#include <bit>
#include <cmath>
#include <cstdint>

namespace fettle::sim::exact {

namespace {
constexpr double kTurn = 6.283185307179586;
constexpr double kRounder = 6755399441055744.0;  // 1.5 x 2^52: adding it leaves no room for a fraction
constexpr double kLn2High = 0x1.62E42FEEp-1;     // short enough that a whole multiple below 2^20 is exact
constexpr double kLn2Low = 0x1.A39EF35793C76p-33;
constexpr double kLog2E = 1.4426950408889634;
constexpr double kLn10Over20 = 0.11512925464970228;

inline double whole(double x) {
    return (x + kRounder) - kRounder;
}

// Taylor series of sin to x^19 for 0 <= x <= pi/2: the next term is below 3e-16.
inline double sineOfQuarter(double x) {
    const double y = x * x;
    double s = -1.0 / 121645100408832000.0;
    s = s * y + 1.0 / 355687428096000.0;
    s = s * y - 1.0 / 1307674368000.0;
    s = s * y + 1.0 / 6227020800.0;
    s = s * y - 1.0 / 39916800.0;
    s = s * y + 1.0 / 362880.0;
    s = s * y - 1.0 / 5040.0;
    s = s * y + 1.0 / 120.0;
    s = s * y - 1.0 / 6.0;
    return x + x * y * s;
}

inline double sineInline(double turns) {
    const double r = turns - whole(turns);
    const double a = std::fabs(r);
    const double b = 0.5 - a;
    return std::copysign(sineOfQuarter(kTurn * (a < b ? a : b)), r);
}

inline double cosineInline(double turns) {
    return sineInline(turns - whole(turns) + 0.25);
}

// Without a branch and without a conversion of integers, so that it runs several numbers at a time.
inline double logarithmInline(double x) {
    const auto bits = std::bit_cast<std::uint64_t>(x);
    const double exponent = std::bit_cast<double>((bits >> 52) | 0x4330000000000000ULL) - (0x1p52 + 1023);
    const double full = std::bit_cast<double>((bits & 0xFFFFFFFFFFFFFULL) | 0x3FF0000000000000ULL);
    const bool high = full > 1.4142135623730951;
    const double m = high ? 0.5 * full : full, power = high ? exponent + 1 : exponent;
    const double s = (m - 1) / (m + 1), y = s * s;
    double sum = 1.0 / 23;
    sum = sum * y + 1.0 / 21;
    sum = sum * y + 1.0 / 19;
    sum = sum * y + 1.0 / 17;
    sum = sum * y + 1.0 / 15;
    sum = sum * y + 1.0 / 13;
    sum = sum * y + 1.0 / 11;
    sum = sum * y + 1.0 / 9;
    sum = sum * y + 1.0 / 7;
    sum = sum * y + 1.0 / 5;
    sum = sum * y + 1.0 / 3;
    sum = sum * y + 1.0;
    return power * kLn2High + (2 * s * sum + power * kLn2Low);
}
}  // namespace

double nearestWhole(double x) {
    return whole(x);
}
double steady(double x) {
    return whole(x * 4294967296.0) / 4294967296.0;
}
double sine(double turns) {
    return sineInline(turns);
}
double cosine(double turns) {
    return cosineInline(turns);
}

double exponential(double x) {
    if (x < -700) return 0;
    if (x > 700) x = 700;
    const double k = whole(x * kLog2E);
    const double r = (x - k * kLn2High) - k * kLn2Low;
    double sum = 1;
    for (int n = 16; n >= 1; --n)
        sum = 1 + sum * r / n;
    return sum * std::bit_cast<double>(std::uint64_t(std::int64_t(k) + 1023) << 52);
}

double logarithm(double x) {
    return logarithmInline(x);
}

double fromDecibels(double amplitudeDb) {
    return exponential(amplitudeDb * kLn10Over20);
}

void phasors(const std::vector<double>& turns, std::vector<double>& cosines, std::vector<double>& sines) {
    const std::size_t n = turns.size();
    cosines.resize(n);
    sines.resize(n);
    const double* in = turns.data();
    double* c = cosines.data();
    double* s = sines.data();
    for (std::size_t i = 0; i < n; ++i) {
        s[i] = sineInline(in[i]);
        c[i] = cosineInline(in[i]);
    }
}

void addSines(const std::vector<double>& turns, double gain, std::vector<double>& out) {
    const double* in = turns.data();
    double* o = out.data();
    for (std::size_t i = 0; i < turns.size(); ++i)
        o[i] += gain * sineInline(in[i]);
}

void boxMuller(double* first, double* second, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
        const double radius = std::sqrt(-2 * logarithmInline(first[i])), angle = second[i];
        first[i] = radius * cosineInline(angle);
        second[i] = radius * sineInline(angle);
    }
}

}  // namespace fettle::sim::exact
